#!/usr/bin/python3
# SPDX-License-Identifier: MIT
"""Route, mixture, rules and log files fit their schemas, and what the program prints of them fits those in src/app.

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
              ("hazard-data/label_sheets.schema.json", "hazard-data/schemes/label_sheets.json"),
              ("examples/course.schema.json", "examples/course.json")]


def validator(path):
    schema = json.loads((ROOT / path).read_text(encoding="utf-8"))
    jsonschema.Draft202012Validator.check_schema(schema)
    return jsonschema.Draft202012Validator(schema)


def faults(check, name, document):
    return [f"{name} /{'/'.join(map(str, error.absolute_path))}: {error.message[:200]}"
            for error in check.iter_errors(document)]


def printed(program, folder, form, *call):
    command = [program, *(call or ("compare",)), folder, "--format", form]
    run = subprocess.run(command, capture_output=True, text=True)
    if run.returncode != 0:
        raise SystemExit(f"{' '.join(command)}: exit status {run.returncode}\n{run.stderr}")
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


def waste_faults(program):
    """The shipped rules, the example house and its log; and what is printed with each of them."""
    check = validator("src/app/waste.schema.json")
    rules_check, log_check = validator("hazard-data/local_rules.schema.json"), validator("hazard-data/container_log.schema.json")
    house, log = (f"examples/marrow-point-college/{name}" for name in ("rules.json", "halogenated-log.json"))
    found, checked = [], 0
    for path in ("hazard-data/schemes/local_rules_us.json", "hazard-data/schemes/local_rules_eu.json", house):
        document = json.loads((ROOT / path).read_text(encoding="utf-8"))
        found += faults(rules_check, path, document)
        document.pop("based_on", None)
        del document["contact"]  # the check must be able to fail
        if not faults(rules_check, path, document):
            found.append(f"{path}: the schema lets rules without a contact pass")
        checked += 1
    found += faults(log_check, log, json.loads((ROOT / log).read_text(encoding="utf-8")))
    for folder in sorted(path for path in (ROOT / "routes").iterdir() if path.is_dir()):
        for options in (["--rules", "US"], ["--rules", "EU", "--students", "24"],
                        ["--rules", str(ROOT / house), "--log", str(ROOT / log), "--students", "24", "--team", "2"]):
            document = json.loads(printed(program, str(folder), "json", "waste", *options))
            found += faults(check, f"waste of {folder.name}, {options[1]}", document)
            rows = list(csv.DictReader(io.StringIO(printed(program, str(folder), "csv", "waste", *options))))
            wanted = [(route["id"], stream["name"], stream["goes_to"]) for route in document["routes"]
                      for stream in route["streams"]]
            if [(row["route"], row["stream"], row["goes_to"]) for row in rows] != wanted:
                found.append(f"{folder.name}: the CSV rows are not the streams of the JSON")
            checked += 2
    return found, checked


def hazards_faults(program):
    """Bottles and streams by each set of limits, and stated mixtures."""
    check, found, checked = validator("src/app/hazards.schema.json"), [], 0
    folders = sorted(str(path) for path in (ROOT / "routes").iterdir() if path.is_dir())
    calls = [(folder, ("hazards", "--rules", name)) for folder in folders for name in ("EU", "UN", "US")]
    stated = validator("hazard-data/mixture.schema.json")
    for path in sorted((ROOT / "examples").rglob("*.json")):
        content = json.loads(path.read_text(encoding="utf-8"))
        if not str(content.get("$schema", "")).endswith("mixture.schema.json"):
            continue
        found += faults(stated, path.relative_to(ROOT), content)
        del content["ingredients"]
        found += [] if faults(stated, path.name, content) else ["the schema lets a mixture without ingredients pass"]
        calls.append((str(path), ("classify", "--pair")))
    for subject, call in calls:
        document = json.loads(printed(program, subject, "json", *call))
        found += faults(check, f"{' '.join(call)} {subject}", document)
        rows = list(csv.DictReader(io.StringIO(printed(program, subject, "csv", *call))))
        wanted = sum(len(route["bottles"]) + sum(len(stream["readings"]) for stream in route["streams"])
                     for route in document.get("routes", [])) or 1
        if len(rows) != wanted:
            found.append(f"{' '.join(call)} {subject}: {len(rows)} rows in CSV, {wanted} in JSON")
        checked += 2
        del document["jurisdiction" if call[0] == "hazards" else "classification"]  # the check must be able to fail
        if not faults(check, subject, document):
            found.append(f"{subject}: the schema lets what lacks a member pass")
    if len(calls) == 3 * len(folders):
        found.append("no example of a stated mixture was found")
    return found, checked


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
                        json.loads(printed(program, str(folder), "json", "compare", "--draws", "10000")))
        checked += 3
        del document["routes"][0]["figures"][0]["unit"]  # the check must be able to fail
        if not faults(output_check, folder.name, document):
            found.append(f"{folder.name}: the schema lets a figure without unit pass")
    for more, count in (waste_faults(program), hazards_faults(program)):
        found, checked = found + more, checked + count
    print("\n".join(found + [f"{checked} documents checked, {len(found)} faults"]))
    return 1 if found else 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1]))
