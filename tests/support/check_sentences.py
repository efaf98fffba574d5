#!/usr/bin/env python3
"""Every message id in the sources has a sentence in app/words/*Sentences.cpp, and the other way.

An id in the sources is a string literal of lower-case words joined by dots whose first word is a
theme of the tables, or whatever stands first in a Message(...). A literal that ends with a dot
("thing.") is put together at run time: it uses every sentence that begins so; those who do this
test the full ids in C++.

usage: check_sentences.py ROOT [--manual]     --manual: also writes resources/manual/messages.md
"""
import pathlib
import re
import sys

ENTRY = re.compile(r'\{\s*"([^"]+)"\s*,\s*QT_TRANSLATE_NOOP\(\s*"Sentences"\s*,((?:\s*"(?:[^"\\]|\\.)*")+)\s*\)',
                   re.S)
LITERAL = re.compile(r'"((?:[^"\\\n]|\\.)*)"')
MESSAGE = re.compile(r'\bMessage[({]\s*"([^"]+)"')
ID = re.compile(r"[a-z]+(\.[a-z0-9_-]+)+\Z")
PREFIX = re.compile(r"[a-z]+(\.[a-z0-9_-]+)*\.\Z")
# Fixed ids of app/words itself.
BUILT_IN = {"text", "quantity.unknown", "quantity.of"}
SPEAKERS = ("core", "app/files", "app/cli", "app/tools", "app/session", "app/paint", "app/canvas",
            "app/tape", "app/stages", "app/window")
# Ids of the window's actions look like ids of messages; this table has them all.
ACTIONS = "app/window/Actions.cpp"
MANUAL = "resources/manual/messages.md"


def sentences(root):
    found = {}
    for path in sorted((root / "app/words").glob("*Sentences.cpp")):
        for match in ENTRY.finditer(path.read_text(encoding="utf-8")):
            parts = re.findall(r'"((?:[^"\\]|\\.)*)"', match.group(2))
            found[match.group(1)] = "".join(parts).replace('\\"', '"')
    return found


def uncommented(text):
    return re.sub(r"//[^\n]*|/\*.*?\*/", "", text, flags=re.S)


def used(root, themes):
    ids, prefixes = {}, set()
    table = root / ACTIONS
    actions = set(LITERAL.findall(table.read_text(encoding="utf-8"))) if table.exists() else set()
    for top in SPEAKERS:
        for path in sorted((root / top).rglob("*")):
            if path.suffix not in (".h", ".cpp"):
                continue
            text = uncommented(path.read_text(encoding="utf-8"))
            for match in MESSAGE.finditer(text):
                ids.setdefault(match.group(1), path)
            for literal in LITERAL.findall(text):
                if literal.split(".")[0] not in themes or literal in actions:
                    continue
                if ID.match(literal):
                    ids.setdefault(literal, path)
                elif PREFIX.match(literal):
                    prefixes.add(literal)
    return ids, prefixes


def complaints(root):
    table = sentences(root)
    ids, prefixes = used(root, {i.split(".")[0] for i in table})
    out = []
    for name, path in sorted(ids.items()):
        if name not in table and name not in BUILT_IN and not name.endswith("."):
            out.append(f"{path.relative_to(root)}: no sentence for {name}")
    for name in sorted(table):
        if name not in ids and name not in BUILT_IN and not any(name.startswith(p) for p in prefixes):
            out.append(f"app/words: nobody says {name}")
    return out, len(table)


def manual(root):
    """The manual's list: what each id says, by theme."""
    themes = {
        "file": "Files",
        "underlay": "Pictures under the plan",
        "import": "Outlines from drawings and maps",
        "job": "Job files as JSON",
        "plan": "Plans that contradict themselves, and what is missing",
        "sheet": "Rule sheets",
        "fans": "Fan tables",
        "prices": "Price books",
        "price": "Quotes",
        "airflow": "Air flow and fans",
        "suction": "Suction under the floor",
        "section": "Drill section",
        "study": "Siting",
        "waiver": "Waivers that accept nothing",
        "cli": "Command line",
    }
    table = sentences(root)
    lines = ["# Messages by id", "",
             "Ids never change their meaning. Words in braces are filled in when the message is shown.",
             "This list is written by `tests/support/check_sentences.py . --manual`; a test fails when it",
             "is out of date. What a message's gravity means stands in [command-line.md](command-line.md).", ""]
    for theme, title in themes.items():
        rows = sorted((i, s) for i, s in table.items() if i.split(".")[0] == theme)
        if not rows:
            continue
        lines += [f"## {title}", "", "| id | says |", "|---|---|"]
        lines += ["| `%s` | %s |" % (i, s.replace("|", "\\|")) for i, s in rows]
        lines.append("")
    return "\n".join(lines)


def main():
    if len(sys.argv) < 2:
        sys.exit(__doc__)
    root = pathlib.Path(sys.argv[1]).resolve()
    text = manual(root)
    if "--manual" in sys.argv:
        (root / MANUAL).write_text(text, encoding="utf-8")
    out, count = complaints(root)
    path = root / MANUAL
    if not path.exists() or path.read_text(encoding="utf-8") != text:
        out.append(f"{MANUAL} is out of date: run tests/support/check_sentences.py . --manual")
    for line in out:
        print(line)
    print(f"{count} sentences, {len(out)} complaints")
    sys.exit(1 if out or count == 0 else 0)


if __name__ == "__main__":
    main()
