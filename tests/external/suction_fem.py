#!/usr/bin/env python3
"""Suction fields by finite elements, to hold beside the program's finite volumes.

Bilinear quadrilaterals on blocks that follow every edge and wall exactly; a leaky wall joins the
doubled nodes of its two sides by its own mass matrix; solved by SciPy. Nothing is shared with the
program but the equation

  -div(T grad s) + L s = q,  T ds/dn + G s = 0 at edges,  T ds/dn = G_w (s1 - s2) at walls.

usage: suction_fem.py CASES.json    writes {case: {point: suction per flow}} to stdout
"""
import json
import sys

try:
    import numpy as np
    from scipy.sparse import coo_matrix
    from scipy.sparse.linalg import spsolve
except ImportError:
    sys.exit(77)

GAUSS = [(-1.0 / np.sqrt(3.0)), (1.0 / np.sqrt(3.0))]


class Mesh:
    def __init__(self):
        self.points = np.zeros((0, 2))
        self.quads = np.zeros((0, 4), dtype=int)

    def add_block(self, corners, n):
        """A quadrilateral as n x n elements; its nodes are its own. Returns their numbers by row."""
        u = np.linspace(0.0, 1.0, n + 1)
        x, y = np.meshgrid(u, u)
        a, b, c, d = (np.array(p) for p in corners)
        places = (np.multiply.outer((1 - x) * (1 - y), a) + np.multiply.outer(x * (1 - y), b) +
                  np.multiply.outer(x * y, c) + np.multiply.outer((1 - x) * y, d))
        first = len(self.points)
        numbers = first + np.arange((n + 1) * (n + 1)).reshape(n + 1, n + 1)
        self.points = np.vstack([self.points, places.reshape(-1, 2)])
        quads = np.stack([numbers[:-1, :-1], numbers[:-1, 1:], numbers[1:, 1:], numbers[1:, :-1]], -1)
        self.quads = np.vstack([self.quads, quads.reshape(-1, 4)])
        return numbers


class Equations:
    def __init__(self, mesh, transmissivity, leakage):
        self.mesh = mesh
        self.rows, self.columns, self.values = [], [], []
        corners = mesh.points[mesh.quads]
        matrix = np.zeros((len(mesh.quads), 4, 4))
        for xi in GAUSS:
            for eta in GAUSS:
                shape = 0.25 * np.array([(1 - xi) * (1 - eta), (1 + xi) * (1 - eta),
                                         (1 + xi) * (1 + eta), (1 - xi) * (1 + eta)])
                slope = 0.25 * np.array([[-(1 - eta), 1 - eta, 1 + eta, -(1 + eta)],
                                         [-(1 - xi), -(1 + xi), 1 + xi, 1 - xi]])
                jacobian = np.einsum("ak,ekx->eax", slope, corners)
                area = np.linalg.det(jacobian)
                gradient = np.einsum("exa,ak->exk", np.linalg.inv(jacobian), slope)
                matrix += area[:, None, None] * (
                    transmissivity * np.einsum("exk,exl->ekl", gradient, gradient) +
                    leakage * np.outer(shape, shape))
        self.add(mesh.quads, matrix)

    def add(self, numbers, matrix):
        size = numbers.shape[1]
        self.rows.append(np.repeat(numbers, size, axis=1).ravel())
        self.columns.append(np.tile(numbers, (1, size)).ravel())
        self.values.append(matrix.reshape(len(numbers), -1).ravel())

    def line_mass(self, line):
        length = np.linalg.norm(self.mesh.points[line[1:]] - self.mesh.points[line[:-1]], axis=1)
        return length[:, None, None] * np.array([[2.0, 1.0], [1.0, 2.0]]) / 6.0

    def add_edge(self, line, conductance):
        self.add(np.stack([line[:-1], line[1:]], 1), conductance * self.line_mass(line))

    def add_wall(self, one, other, conductance):
        mass = conductance * self.line_mass(one)
        numbers = np.stack([one[:-1], one[1:], other[:-1], other[1:]], 1)
        self.add(numbers, np.block([[mass, -mass], [-mass, mass]]))

    def solved(self, node, tied):
        """Unit flow from a node; `tied`: pairs of nodes that are one."""
        n = len(self.mesh.points)
        name = np.arange(n)
        for one, other in tied:
            name[other] = name[one]
        used, name = np.unique(name, return_inverse=True)
        rows = name[np.concatenate(self.rows)]
        columns = name[np.concatenate(self.columns)]
        matrix = coo_matrix((np.concatenate(self.values), (rows, columns)),
                            shape=(len(used), len(used))).tocsc()
        load = np.zeros(len(used))
        load[name[node]] = 1.0
        return spsolve(matrix, load)[name]


def nearest(mesh, point):
    away = np.linalg.norm(mesh.points - np.array(point), axis=1)
    if away.min() > 1e-6:
        sys.exit(f"no node at {point}: nearest {away.min()} m away")
    return int(away.argmin())


def solve(case, n):
    mesh = Mesh()
    blocks = [mesh.add_block(corners, n) for corners in case["blocks"]]
    equations = Equations(mesh, case["transmissivity_m3_s_pa"], case["leakage_m_s_pa"])
    sides = {"south": lambda b: b[0, :], "east": lambda b: b[:, -1],
             "north": lambda b: b[-1, :], "west": lambda b: b[:, 0]}
    for block, side in case["edges"]:
        equations.add_edge(sides[side](blocks[block]), case["joint_m2_s_pa"])
    for (one, its), (other, others) in case["walls"]:
        equations.add_wall(sides[its](blocks[one]), sides[others](blocks[other]),
                           case["wall_m2_s_pa"])
    tied = []
    for (one, its), (other, others) in case["joined"]:
        tied.append((sides[its](blocks[one]), sides[others](blocks[other])))
    suction = equations.solved(nearest(mesh, case["sump_m"]), tied)
    return {key: suction[nearest(mesh, [float(x) for x in key.split(",")])]
            for key in case["points_m"]}


def main():
    if len(sys.argv) != 2:
        sys.exit(__doc__)
    with open(sys.argv[1], encoding="utf-8") as file:
        cases = json.load(file)["cases"]
    found = {}
    for name, case in cases.items():
        coarse, fine = solve(case, case["n"]), solve(case, 2 * case["n"])
        # Second order (4/3 at an inner corner, whose share is small): led on to no mesh size at all.
        found[name] = {key: (4.0 * fine[key] - coarse[key]) / 3.0 for key in fine}
        worst = max(abs(fine[key] / coarse[key] - 1.0) for key in fine)
        print(f"{name}: halving the mesh changes {worst:.1e}", file=sys.stderr)
    json.dump(found, sys.stdout)


if __name__ == "__main__":
    main()
