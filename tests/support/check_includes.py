#!/usr/bin/env python3
"""Reads every #include of core/, app/ and resources/ and fails on an arrow that is not allowed.

Arrows add up along a chain: rules may include geometry, since rules -> perimeter -> plan ->
geometry. Beyond arrows: no Qt in core/ and app/tools, Boost.Geometry only in core/geometry's .cpp
files, Eigen only in core/airflow's and core/suction's, nlohmann/json only in .cpp files (json_fwd.hpp anywhere), CLI11
only in app/cli.

usage: check_includes.py ROOT
"""
import pathlib
import re
import sys

ARROWS = {
    "base": [],
    "geometry": ["base"],
    "airflow": ["base"],
    "plan": ["geometry"],
    "perimeter": ["plan"],
    "rules": ["perimeter"],
    "suction": ["rules", "airflow"],
    "build": ["rules", "airflow"],
    "siting": ["suction", "build"],
    "price": ["siting"],
    "drawing": ["siting"],
    "dossier": ["drawing", "price"],
    "tools": ["perimeter"],
    "files": ["rules", "airflow", "price", "resources"],
    "resources": [],
    "words": ["base"],
    "session": ["siting", "tools", "files", "words"],
    "paint": ["drawing", "words"],
    "canvas": ["session", "paint"],
    "tape": ["session", "paint"],
    "stages": ["session", "paint", "dossier"],
    "window": ["canvas", "tape", "stages"],
    "cli": ["dossier", "paint", "files"],
    "main": ["window", "cli"],
}
NO_QT = {"base", "airflow", "geometry", "plan", "perimeter", "rules", "suction", "build",
         "siting", "price", "drawing", "dossier", "tools", "resources"}
INCLUDE = re.compile(r'^\s*#\s*include\s*(["<])([^">]+)[">]')


def reachable(folder):
    seen, todo = {folder}, [folder]
    while todo:
        for other in ARROWS[todo.pop()]:
            if other not in seen:
                seen.add(other)
                todo.append(other)
    return seen


ALLOWED = {folder: reachable(folder) for folder in ARROWS}


def folder_of(path, root):
    parts = path.relative_to(root).parts
    if parts == ("app", "main.cpp"):
        return "main"
    return "resources" if parts[0] == "resources" else parts[1]


def is_qt(target):
    return re.match(r"(Q[A-Z]|Qt)", target) is not None


def objection(path, folder, quote, target):
    """Why this include is not allowed, or nothing."""
    header = path.suffix == ".h"
    if quote == '"':
        other = target.split("/")[0]
        if "/" not in target or other not in ARROWS:
            return "names no folder of core/, app/ or resources/"
        if other not in ALLOWED[folder]:
            return f"{folder} may not include {other}"
        return None
    if is_qt(target) and folder in NO_QT:
        return f"no Qt in {folder}"
    if target.startswith("boost/geometry") and (folder != "geometry" or header):
        return "Boost.Geometry belongs in core/geometry/*.cpp"
    if re.match(r"(Eigen|unsupported/Eigen)/", target) and (folder not in ("airflow", "suction") or header):
        return "Eigen belongs in core/airflow/*.cpp and core/suction/*.cpp"
    if target.startswith("nlohmann/") and header and target != "nlohmann/json_fwd.hpp":
        return "nlohmann/json belongs in .cpp files"
    if target.startswith("CLI/") and folder != "cli":
        return "CLI11 belongs in app/cli"
    return None


def sources(root):
    for top in ("core", "app", "resources"):
        for pattern in ("*.h", "*.cpp"):
            yield from sorted((root / top).rglob(pattern))


def check(root):
    complaints, count = [], 0
    for path in sources(root):
        folder = folder_of(path, root)
        if folder not in ARROWS:
            complaints.append(f"{path}: folder {folder} has no arrows; add it here first")
            continue
        for number, line in enumerate(path.read_text(encoding="utf-8").splitlines(), 1):
            match = INCLUDE.match(line)
            if not match:
                continue
            count += 1
            why = objection(path, folder, *match.groups())
            if why:
                complaints.append(f"{path}:{number}: {match.group(2)}: {why}")
    return complaints, count


def main():
    if len(sys.argv) != 2:
        sys.exit(__doc__)
    complaints, count = check(pathlib.Path(sys.argv[1]).resolve())
    for complaint in complaints:
        print(complaint)
    print(f"{count} includes read, {len(complaints)} not allowed")
    sys.exit(1 if complaints or count == 0 else 0)


if __name__ == "__main__":
    main()
