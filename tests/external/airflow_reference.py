#!/usr/bin/env python3
"""Duty points by SciPy: the same systems as core/airflow, solved by other code and other methods.

usage: airflow_reference.py CASES.json     prints a JSON list: one list of ground flows, m3/s, a case

Written from the formulas, not from the program: Colebrook-White by brentq, one sump by brentq,
several by fsolve. Exit 77 (a skip for ctest) where python3-scipy is not installed.

A case: air {temperature_c, pressure_pa}, house_pa, ground (rows of Pa s/m3),
legs [{line, pipe, valve_k, inertia, background_pa, annulus}], lines [{pipe, fan, speed}];
pipe {bore_m, length_m, roughness_m, k}; annulus {hole_m, pipe_od_m, depth_m, open_share};
fan {shut_off_pa, free_flow_m3_s, exponent} at 1.2 kg/m3.
"""
import json
import math
import sys

try:
    import numpy
    from scipy.optimize import brentq, fsolve
except ImportError:
    print("skipped: python3-scipy is not installed")
    sys.exit(77)


def density(air):
    return air["pressure_pa"] / (287.05287 * (air["temperature_c"] + 273.15))


def viscosity(air):
    t = air["temperature_c"] + 273.15
    return 1.458e-6 * t ** 1.5 / (t + 110.4)


def friction(reynolds, roughness):
    """Laminar to 2300, Colebrook-White from 4000, between them a smooth blend."""
    laminar = 64.0 / reynolds
    if reynolds <= 2300.0:
        return laminar

    def off(f):
        return 1.0 / math.sqrt(f) + 2.0 * math.log10(
            roughness / 3.7 + 2.51 / (reynolds * math.sqrt(f)))

    turbulent = brentq(off, 1e-4, 1.0, xtol=1e-15, rtol=1e-14)
    if reynolds >= 4000.0:
        return turbulent
    t = (reynolds - 2300.0) / 1700.0
    w = 3.0 * t ** 2 - 2.0 * t ** 3
    return laminar + w * (turbulent - laminar)


def pipe_loss(pipe, flow, air, extra_k=0.0):
    if flow == 0.0:
        return 0.0
    speed = abs(flow) / (math.pi * pipe["bore_m"] ** 2 / 4.0)
    reynolds = density(air) * speed * pipe["bore_m"] / viscosity(air)
    wall = friction(reynolds, pipe["roughness_m"] / pipe["bore_m"])
    head = density(air) * speed ** 2 / 2.0
    loss = head * (wall * pipe["length_m"] / pipe["bore_m"] + pipe["k"] + extra_k)
    return math.copysign(loss, flow)


def leak(gap, suction, air):
    """By brentq on its own equation."""
    w = (gap["hole_m"] - gap["pipe_od_m"]) / 2.0
    if w <= 0.0 or gap["open_share"] <= 0.0 or suction == 0.0:
        return 0.0
    around = gap["open_share"] * math.pi * (gap["hole_m"] + gap["pipe_od_m"]) / 2.0
    plates = around * w ** 3 / (12.0 * viscosity(air) * gap["depth_m"])
    opening = 0.6 * around * w
    size = abs(suction)

    def off(q):
        return q / plates + density(air) / 2.0 * (q / opening) ** 2 - size

    return math.copysign(brentq(off, 0.0, size * plates, xtol=1e-18, rtol=1e-14), suction)


def fan_pressure(line, flow, air):
    fan, n = line["fan"], line["speed"]
    share = flow / n / fan["free_flow_m3_s"]
    fall = math.copysign(abs(share) ** fan["exponent"], share)
    return density(air) / 1.2 * n ** 2 * fan["shut_off_pa"] * (1.0 - fall)


def disagreements(case, q):
    air, legs, lines = case["air"], case["legs"], case["lines"]
    pit = numpy.array(case["ground"]) @ q
    total = numpy.array(q, dtype=float)
    through = [0.0] * len(lines)
    for i, leg in enumerate(legs):
        pit[i] += leg["background_pa"] + leg["inertia"] * q[i] * abs(q[i])
        total[i] += leak(leg["annulus"], pit[i] - case["house_pa"], air)
        through[leg["line"]] += total[i]
    out = []
    for i, leg in enumerate(legs):
        line, flow = lines[leg["line"]], through[leg["line"]]
        out.append(pit[i] + pipe_loss(leg["pipe"], total[i], air, leg["valve_k"])
                   + pipe_loss(line["pipe"], flow, air) - case["house_pa"]
                   - fan_pressure(line, flow, air))
    return numpy.array(out)


def solve(case):
    if len(case["legs"]) == 1:
        root = brentq(lambda q: disagreements(case, numpy.array([q]))[0], -2.0, 2.0, xtol=1e-16,
                      rtol=1e-14)
        return [root]
    start = numpy.full(len(case["legs"]), 0.01)
    root, _, state, message = fsolve(lambda q: disagreements(case, q), start, xtol=1e-13,
                                     full_output=True)
    # fsolve calls it no progress when it stands at the last digits; pressures are what counts.
    if numpy.abs(disagreements(case, root)).max() > 1e-6:
        raise RuntimeError(f"fsolve: {state}: {message}")
    return list(root)


def main():
    if len(sys.argv) != 2:
        sys.exit(__doc__)
    with open(sys.argv[1], encoding="utf-8") as file:
        cases = json.load(file)
    print(json.dumps([solve(case) for case in cases]))


if __name__ == "__main__":
    main()
