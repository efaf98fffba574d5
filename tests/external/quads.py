"""Bilinear quadrilaterals for -div(T grad s) + L s = q, shared by the scripts beside it.

Nothing of it is shared with the program but the equation.
"""
import numpy as np
from scipy.sparse import coo_matrix

GAUSS = 1.0 / np.sqrt(3.0)


def block_points(corners, u, v):
    """Places of a quadrilateral's own coordinates u, v in 0..1, corners against the clock."""
    a, b, c, d = (np.array(p, dtype=float) for p in corners)
    return (np.multiply.outer((1 - u) * (1 - v), a) + np.multiply.outer(u * (1 - v), b)
            + np.multiply.outer(u * v, c) + np.multiply.outer((1 - u) * v, d))


def quads_of(numbers):
    """Elements of a block whose nodes are numbered by row."""
    return np.stack([numbers[:-1, :-1], numbers[:-1, 1:], numbers[1:, 1:], numbers[1:, :-1]],
                    -1).reshape(-1, 4)


class Triplets:
    """A sparse matrix put together of small ones."""

    def __init__(self):
        self.rows, self.columns, self.values = [], [], []

    def add(self, numbers, matrix):
        size = numbers.shape[1]
        self.rows.append(np.repeat(numbers, size, axis=1).ravel())
        self.columns.append(np.tile(numbers, (1, size)).ravel())
        self.values.append(matrix.reshape(len(numbers), -1).ravel())

    def matrix(self, n, name=None):
        """`name`: the unknown of each node, where some are one."""
        rows, columns = np.concatenate(self.rows), np.concatenate(self.columns)
        if name is not None:
            rows, columns = name[rows], name[columns]
        return coo_matrix((np.concatenate(self.values), (rows, columns)), shape=(n, n)).tocsc()


def stiffness(points, quads, transmissivity, leakage):
    """Of each element, two Gauss points each way."""
    corners = points[quads]
    out = np.zeros((len(quads), 4, 4))
    for x in (-GAUSS, GAUSS):
        for y in (-GAUSS, GAUSS):
            shape = 0.25 * np.array([(1 - x) * (1 - y), (1 + x) * (1 - y), (1 + x) * (1 + y),
                                     (1 - x) * (1 + y)])
            slope = 0.25 * np.array([[y - 1, 1 - y, 1 + y, -1 - y], [x - 1, -1 - x, 1 + x, 1 - x]])
            jacobian = np.einsum("ak,ekx->eax", slope, corners)
            area = np.linalg.det(jacobian)
            gradient = np.einsum("exa,ak->exk", np.linalg.inv(jacobian), slope)
            out += area[:, None, None] * (
                transmissivity * np.einsum("exk,exl->ekl", gradient, gradient)
                + leakage * np.outer(shape, shape))
    return out


def edge_mass(points, edges):
    length = np.linalg.norm(points[edges[:, 1]] - points[edges[:, 0]], axis=1)
    return length[:, None, None] * np.array([[2.0, 1.0], [1.0, 2.0]]) / 6.0


def add_wall(triplets, points, one, other, conductance):
    """Joins the two sides of a wall, edge by edge."""
    mass = conductance * edge_mass(points, one)
    triplets.add(np.hstack([one, other]), np.block([[mass, -mass], [-mass, mass]]))
