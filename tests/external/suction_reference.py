#!/usr/bin/env python3
"""Suction under floors with walls that end freely or run askew, to an accuracy of some 1e-4.

For the places where a field under a slab is hardest to compute: inner corners and the ends of walls,
where the flow is infinite. Finite elements that share nothing with the program:

  -div(T grad s) + L s = q,   T ds/dn + G s = 0 at edges,   T ds/dn = G_w (s1 - s2) at walls

  * The sump's own field K0(r/lambda)/(2 pi T) is taken out exactly; what is solved for is the rest,
    which is smooth at the sump and driven by what that field sends through edges and walls.
  * Bilinear quadrilaterals follow every edge and wall, finer towards inner corners and wall ends:
    places at t^3, so that the error still falls with the square of the spacing there.
  * Two meshes, one twice as fine, led on to no spacing at all (Richardson's extrapolation).

usage: suction_reference.py [CASE ...]     prints JSON: for each case its floor and the suction per
unit flow, Pa s/m3, at points. Deterministic; about 20 s for all. Exit 77 (a skip for ctest) where
python3-scipy is not installed. Floors are invented.
"""
import json
import sys

sys.dont_write_bytecode = True  # a test leaves the sources as they are
try:
    import numpy as np
    from scipy.sparse.linalg import splu
    from scipy.special import k0, k1

    from quads import Triplets, add_wall, block_points, edge_mass, quads_of, stiffness
except ImportError:
    print("skipped: python3-scipy is not installed")
    sys.exit(77)

# Blocks: corners against the clock, then where places crowd along the first and the last side:
# "" nowhere, "-" at the beginning, "+" at the end, "-+" at both. Walls: ends, and which end is free.
SKEW = [[0, 0], [11, 1], [12, 8.5], [1, 7.5]]
FOOT, HEAD = [4.95, 0.45], [7.6, 8.1]  # of the wall, on the south and the north side


def along(a, b, t):
    return [a[0] + t * (b[0] - a[0]), a[1] + t * (b[1] - a[1])]


def split_floor(cuts):
    """The skew floor in two columns beside the wall's line, cut across it at shares of its length."""
    blocks = []
    stops = [0.0] + cuts + [1.0]
    for row, (low, high) in enumerate(zip(stops, stops[1:])):
        crowd = ("-" if row > 0 else "") + ("+" if row < len(stops) - 2 else "")
        west = [along(SKEW[0], SKEW[3], t) for t in (low, high)]
        line = [along(FOOT, HEAD, t) for t in (low, high)]
        east = [along(SKEW[1], SKEW[2], t) for t in (low, high)]
        blocks.append(([west[0], line[0], line[1], west[1]], "+", crowd))
        blocks.append(([line[0], east[0], east[1], line[1]], "-", crowd))
    return blocks


def skew(wall_conductance, cuts, walls):
    return {"outline_m": SKEW, "transmissivity_m3_s_pa": 8e-5, "leakage_m_s_pa": 5e-6,
            "joint_m2_s_pa": 5e-6, "wall_m2_s_pa": wall_conductance, "sump_m": [3.0, 3.2],
            "walls_m": [[along(FOOT, HEAD, a), along(FOOT, HEAD, b)] for a, b, _ in walls],
            "free": [f for _, _, f in walls], "blocks": split_floor(cuts)}


CASES = {
    "l_shape": {
        "outline_m": [[0, 0], [10, 0], [10, 5], [6, 5], [6, 8], [0, 8]],
        "transmissivity_m3_s_pa": 8e-5, "leakage_m_s_pa": 3e-6, "joint_m2_s_pa": 4e-6,
        "wall_m2_s_pa": 0.0, "sump_m": [1.7, 1.3], "walls_m": [], "free": [],
        "blocks": [([[0, 0], [6, 0], [6, 5], [0, 5]], "+", "+"),
                   ([[6, 0], [10, 0], [10, 5], [6, 5]], "-", "+"),
                   ([[0, 5], [6, 5], [6, 8], [0, 8]], "+", "-")]},
    "skew_leaky_wall": skew(2e-5, [0.5], [(0.0, 1.0, "")]),
    "skew_tight_wall_with_door": skew(0.0, [0.45, 0.6], [(0.0, 0.45, "+"), (0.6, 1.0, "-")]),
    "skew_tight_wall_ending": skew(0.0, [0.6], [(0.0, 0.6, "+")]),
    "skew_leaky_wall_ending": skew(1e-5, [0.6], [(0.0, 0.6, "+")]),
}


def places(n, crowd):
    t = np.linspace(0.0, 1.0, n + 1)
    if crowd == "-":
        return t ** 3
    if crowd == "+":
        return 1.0 - (1.0 - t) ** 3
    if crowd == "-+":
        return np.where(t < 0.5, 4.0 * t ** 3, 1.0 - 4.0 * (1.0 - t) ** 3)
    return t


def on_wall(points, wall, free):
    """Which points a wall parts in two: all of it but its free ends."""
    a, b = np.array(wall[0]), np.array(wall[1])
    u = (b - a) / np.linalg.norm(b - a)
    l = (points - a) @ u
    off = np.abs((points - a) @ np.array([-u[1], u[0]]))
    low = 1e-9 if "-" in free else -1e-9
    high = np.linalg.norm(b - a) + (-1e-9 if "+" in free else 1e-9)
    return (off < 1e-9) & (l > low) & (l < high)


def side_of(point, wall):
    a, b = np.array(wall[0]), np.array(wall[1])
    d = b - a
    return 1 if d[0] * (point[1] - a[1]) - d[1] * (point[0] - a[0]) > 0 else -1


class Mesh:
    """Nodes of all blocks, one where blocks meet, two where a wall parts them."""

    def __init__(self, case, n):
        points, sides, quads, first = [], [], [], 0
        for corners, crowd_u, crowd_v in case["blocks"]:
            u, v = np.meshgrid(places(n, crowd_u), places(n, crowd_v))
            block = block_points(corners, u, v).reshape(-1, 2)
            side = np.zeros(len(block), dtype=int)
            for wall, free in zip(case["walls_m"], case["free"]):
                side[on_wall(block, wall, free)] = side_of(np.mean(corners, axis=0), wall)
            number = first + np.arange((n + 1) ** 2).reshape(n + 1, n + 1)
            first += (n + 1) ** 2
            points.append(block)
            sides.append(side)
            quads.append(quads_of(number))
        points = np.vstack(points)
        key = np.column_stack([np.round(points * 1e8).astype(np.int64), np.concatenate(sides)])
        _, chosen, name = np.unique(key, axis=0, return_index=True, return_inverse=True)
        self.points = points[chosen]
        self.quads = name.reshape(-1)[np.vstack(quads)]

    def outer_edges(self):
        """Sides of elements with nothing beyond, the floor on their left."""
        q = self.quads
        edges = np.vstack([q[:, [0, 1]], q[:, [1, 2]], q[:, [2, 3]], q[:, [3, 0]]])
        _, first, count = np.unique(np.sort(edges, axis=1), axis=0, return_index=True,
                                    return_counts=True)
        return edges[first[count == 1]]


class SumpField:
    """K0(r/lambda)/(2 pi T) and its gradient."""

    def __init__(self, case):
        self.at = np.array(case["sump_m"])
        self.t = case["transmissivity_m3_s_pa"]
        self.length = np.sqrt(self.t / case["leakage_m_s_pa"])

    def value(self, points):
        r = np.linalg.norm(points - self.at, axis=-1)
        return k0(r / self.length) / (2.0 * np.pi * self.t)

    def gradient(self, points):
        away = points - self.at
        r = np.linalg.norm(away, axis=-1)[..., None]
        return -k1(r / self.length) / (2.0 * np.pi * self.t * self.length) * away / r


def boundary_load(mesh, edges, sump, joint, load):
    """What the sump's own field sends through edges: -(T ds0/dn + G s0)."""
    a, b = mesh.points[edges[:, 0]], mesh.points[edges[:, 1]]
    normal = np.column_stack([(b - a)[:, 1], -(b - a)[:, 0]])  # outwards, as long as the edge
    length = np.linalg.norm(b - a, axis=1)
    for x, weight in ((0.5 - np.sqrt(0.15), 5 / 18), (0.5, 8 / 18), (0.5 + np.sqrt(0.15), 5 / 18)):
        at = (1 - x) * a + x * b
        flux = -weight * (sump.t * np.sum(sump.gradient(at) * normal, axis=1)
                          + joint * sump.value(at) * length)
        np.add.at(load, edges[:, 0], (1 - x) * flux)
        np.add.at(load, edges[:, 1], x * flux)


def couple(mesh, edges, conductance, triplets):
    """The two sides of a wall: edges with the same middle, run opposite ways."""
    middle = np.round((mesh.points[edges[:, 0]] + mesh.points[edges[:, 1]]) * 1e7).astype(np.int64)
    order = np.lexsort((middle[:, 1], middle[:, 0]))
    one, other = edges[order[0::2]], edges[order[1::2]][:, ::-1]
    assert np.allclose(mesh.points[one], mesh.points[other])
    add_wall(triplets, mesh.points, one, other, conductance)


def solve(case, n):
    mesh = Mesh(case, n)
    sump = SumpField(case)
    triplets = Triplets()
    triplets.add(mesh.quads, stiffness(mesh.points, mesh.quads, sump.t,
                                       case["leakage_m_s_pa"]))
    edges = mesh.outer_edges()
    middle = 0.5 * (mesh.points[edges[:, 0]] + mesh.points[edges[:, 1]])
    walls = np.zeros(len(edges), dtype=bool)
    for wall in case["walls_m"]:
        walls |= on_wall(middle, wall, "")
    load = np.zeros(len(mesh.points))
    boundary_load(mesh, edges[~walls], sump, case["joint_m2_s_pa"], load)
    triplets.add(edges[~walls], case["joint_m2_s_pa"] * edge_mass(mesh.points, edges[~walls]))
    if walls.any():
        boundary_load(mesh, edges[walls], sump, 0.0, load)
        if case["wall_m2_s_pa"] > 0.0:
            couple(mesh, edges[walls], case["wall_m2_s_pa"], triplets)
    rest = splu(triplets.matrix(len(mesh.points)), permc_spec="MMD_AT_PLUS_A",
                options={"SymmetricMode": True}).solve(load)
    return mesh, rest + sump.value(mesh.points)


def from_line(point, line):
    a, b = np.array(line[0]), np.array(line[1])
    t = np.clip((point - a) @ (b - a) / ((b - a) @ (b - a)), 0.0, 1.0)
    return np.linalg.norm(a + t * (b - a) - point)


def asked_points(case):
    """A few nodes of every block that each mesh has, 0.3 m or more from walls, 0.5 m from the sump
    and from the inner corner."""
    out = []
    for corners, crowd_u, crowd_v in case["blocks"]:
        u, v = places(8, crowd_u), places(8, crowd_v)
        for i, j in ((1, 1), (2, 2), (4, 3), (2, 4), (6, 4), (4, 5), (2, 6), (6, 6), (1, 7)):
            at = block_points(corners, u[i], v[j])
            walls = min([from_line(at, wall) for wall in case["walls_m"]], default=9.0)
            bend = np.linalg.norm(at - np.array(case["outline_m"][3]))
            if walls >= 0.3 and bend >= 0.5 and np.linalg.norm(at - case["sump_m"]) >= 0.5:
                out.append(at)
    return out


def at_nodes(mesh, suction, points):
    found = []
    for point in points:
        away = np.linalg.norm(mesh.points - point, axis=1)
        node = int(away.argmin())
        assert away[node] < 1e-7, point
        found.append(float(suction[node]))
    return np.array(found)


def reference(case, n):
    points = asked_points(case)
    coarse = at_nodes(*solve(case, n), points)
    fine = at_nodes(*solve(case, 2 * n), points)
    best = (4.0 * fine - coarse) / 3.0
    floor = {key: value for key, value in case.items() if key not in ("blocks", "free")}
    floor["points"] = [{"at_m": [float(x) for x in p], "suction_pa_s_m3": float(s)}
                       for p, s in zip(points, best)]
    floor["led_on_by"] = float(np.abs(best / fine - 1.0).max())
    return floor


def main():
    names = sys.argv[1:] or list(CASES)
    json.dump({name: reference(CASES[name], 64) for name in names}, sys.stdout, indent=1)


if __name__ == "__main__":
    main()
