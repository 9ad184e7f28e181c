#!/usr/bin/python3
# SPDX-License-Identifier: MIT
"""Every route file fits routes/route.schema.json, and what the program prints of it fits src/app/comparison.schema.json.

usage: check_schemas.py PROGRAM
Needs Debian's python3-jsonschema.
"""
import csv
import io
import json
import pathlib
import subprocess
import sys

import jsonschema

ROOT = pathlib.Path(__file__).resolve().parents[2]


# Files that users copy, and their schemas.
DATA_FILES = [("examples/prices.schema.json", "examples/prices.json"),
              ("hazard-data/schemes/label_sheets.schema.json", "hazard-data/schemes/label_sheets.json")]


def validator(path):
    schema = json.loads((ROOT / path).read_text(encoding="utf-8"))
    jsonschema.Draft202012Validator.check_schema(schema)
    return jsonschema.Draft202012Validator(schema)


def faults(check, name, document):
    return [f"{name} /{'/'.join(map(str, error.absolute_path))}: {error.message[:200]}"
            for error in check.iter_errors(document)]


def printed(program, folder, form, *more):
    run = subprocess.run([program, "compare", folder, "--format", form, *more], capture_output=True, text=True)
    if run.returncode != 0:
        raise SystemExit(f"{folder}: exit status {run.returncode}\n{run.stderr}")
    return run.stdout


def rows_differ(document, text):
    """The CSV rows are the figures of the JSON, one of one route a row."""
    rows = {(row["route"], row["figure"]): row["value"] for row in csv.DictReader(io.StringIO(text))}
    wanted = {(route["id"], figure["id"]): figure["value"]
              for route in document["routes"] for figure in route["figures"]}
    found = [f"no row for {key}" for key in wanted.keys() - rows.keys()]
    found += [f"a row too many for {key}" for key in rows.keys() - wanted.keys()]
    for key in wanted.keys() & rows.keys():
        if (None if rows[key] == "" else float(rows[key])) != wanted[key]:
            found.append(f"{key}: {rows[key]} in CSV, {wanted[key]} in JSON")
    return found


def main(program):
    route_check, output_check = validator("routes/route.schema.json"), validator("src/app/comparison.schema.json")
    found, checked = [], 0
    for schema, path in DATA_FILES:
        found += faults(validator(schema), path, json.loads((ROOT / path).read_text(encoding="utf-8")))
        checked += 1
    for folder in sorted(path for path in (ROOT / "routes").iterdir() if path.is_dir()):
        for path in sorted(folder.glob("*.json")):
            found += faults(route_check, path.relative_to(ROOT), json.loads(path.read_text(encoding="utf-8")))
            checked += 1
        document = json.loads(printed(program, str(folder), "json"))
        found += faults(output_check, folder.name, document)
        found += rows_differ(document, printed(program, str(folder), "csv"))
        found += faults(output_check, folder.name + " with draws",
                        json.loads(printed(program, str(folder), "json", "--draws", "10000")))
        checked += 3
        del document["routes"][0]["figures"][0]["unit"]  # the check must be able to fail
        if not faults(output_check, folder.name, document):
            found.append(f"{folder.name}: the schema lets a figure without unit pass")
    print("\n".join(found + [f"{checked} documents checked, {len(found)} faults"]))
    return 1 if found else 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1]))
