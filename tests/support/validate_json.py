"""Checks JSON files against a JSON Schema: validate_json.py SCHEMA FILE...

Exit 0 all valid, 1 not, 77 (a skip for ctest) where python3-jsonschema is not installed.
"""
import json
import sys

try:
    import jsonschema
except ImportError:
    print("skipped: python3-jsonschema is not installed")
    sys.exit(77)


def load(path):
    with open(path, encoding="utf-8") as file:
        return json.load(file)


def main():
    schema = load(sys.argv[1])
    jsonschema.Draft202012Validator.check_schema(schema)
    validator = jsonschema.Draft202012Validator(schema)
    faults = 0
    for path in sys.argv[2:]:
        for error in validator.iter_errors(load(path)):
            faults += 1
            place = "/".join(str(step) for step in error.absolute_path)
            print(f"{path}: /{place}: {error.message}")
    print(f"{len(sys.argv) - 2} files, {faults} faults")
    return 1 if faults or len(sys.argv) < 3 else 0


sys.exit(main())
