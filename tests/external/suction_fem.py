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

sys.dont_write_bytecode = True  # a test leaves the sources as they are
try:
    import numpy as np
    from scipy.sparse.linalg import spsolve

    from quads import Triplets, add_wall, block_points, edge_mass, quads_of, stiffness
except ImportError:
    sys.exit(77)


class Mesh:
    def __init__(self):
        self.points = np.zeros((0, 2))
        self.quads = np.zeros((0, 4), dtype=int)

    def add_block(self, corners, n):
        """A quadrilateral as n x n elements; its nodes are its own. Returns their numbers by row."""
        u, v = np.meshgrid(np.linspace(0.0, 1.0, n + 1), np.linspace(0.0, 1.0, n + 1))
        numbers = len(self.points) + np.arange((n + 1) ** 2).reshape(n + 1, n + 1)
        self.points = np.vstack([self.points, block_points(corners, u, v).reshape(-1, 2)])
        self.quads = np.vstack([self.quads, quads_of(numbers)])
        return numbers


def edges_of(line):
    return np.stack([line[:-1], line[1:]], 1)


def solved(triplets, count, node, tied):
    """Unit flow from a node of `count`; `tied`: pairs of nodes that are one."""
    name = np.arange(count)
    for one, other in tied:
        name[other] = name[one]
    used, name = np.unique(name, return_inverse=True)
    load = np.zeros(len(used))
    load[name[node]] = 1.0
    return spsolve(triplets.matrix(len(used), name), load)[name]


def nearest(mesh, point):
    away = np.linalg.norm(mesh.points - np.array(point), axis=1)
    if away.min() > 1e-6:
        sys.exit(f"no node at {point}: nearest {away.min()} m away")
    return int(away.argmin())


def solve(case, n):
    mesh = Mesh()
    blocks = [mesh.add_block(corners, n) for corners in case["blocks"]]
    triplets = Triplets()
    triplets.add(mesh.quads, stiffness(mesh.points, mesh.quads, case["transmissivity_m3_s_pa"],
                                       case["leakage_m_s_pa"]))
    sides = {"south": lambda b: b[0, :], "east": lambda b: b[:, -1],
             "north": lambda b: b[-1, :], "west": lambda b: b[:, 0]}
    for block, side in case["edges"]:
        edges = edges_of(sides[side](blocks[block]))
        triplets.add(edges, case["joint_m2_s_pa"] * edge_mass(mesh.points, edges))
    for (one, its), (other, others) in case["walls"]:
        add_wall(triplets, mesh.points, edges_of(sides[its](blocks[one])),
                 edges_of(sides[others](blocks[other])), case["wall_m2_s_pa"])
    tied = []
    for (one, its), (other, others) in case["joined"]:
        tied.append((sides[its](blocks[one]), sides[others](blocks[other])))
    suction = solved(triplets, len(mesh.points), nearest(mesh, case["sump_m"]), tied)
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
