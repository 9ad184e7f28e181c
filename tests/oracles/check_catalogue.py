#!/usr/bin/env python3
# SPDX-License-Identifier: MIT
"""Check hazard-data/ against references outside the project: a JSON Schema validator, two chemistry toolkits
(RDKit, Open Babel), the check digits of CAS and CLP index numbers, and the class table of the CLP regulation.

Needs the Debian packages python3-jsonschema, python3-rdkit, python3-openbabel.
Usage: check_catalogue.py [--data DIR]; one line per failure, exit status 1 when there is one.
"""
import argparse
import json
import sys
from pathlib import Path

sys.dont_write_bytecode = True
sys.path.insert(0, str(Path(__file__).resolve().parent))
import catalogue_identity
import catalogue_hazards
import catalogue_materials


class Report:
    """Counts what was checked and prints what failed."""

    def __init__(self):
        self.passed = 0
        self.failed = 0

    def check(self, condition, message):
        if condition:
            self.passed += 1
        else:
            self.failed += 1
            print("FAIL " + message)
        return bool(condition)


def refuse_duplicates(pairs):
    keys = [key for key, _ in pairs]
    twice = sorted({key for key in keys if keys.count(key) > 1})
    if twice:
        raise ValueError("key given twice: " + ", ".join(twice))
    return dict(pairs)


def load(path):
    with open(path, encoding="utf-8") as file:
        return json.load(file, object_pairs_hook=refuse_duplicates)


def check_schema(report, schema, definition, document, name):
    import jsonschema

    part = {"$schema": schema["$schema"], "$defs": schema["$defs"], "$ref": "#/$defs/" + definition}
    validator = jsonschema.Draft202012Validator(part, format_checker=jsonschema.FormatChecker())
    errors = sorted(validator.iter_errors(document), key=lambda error: list(map(str, error.absolute_path)))
    for error in errors:
        pointer = "/" + "/".join(map(str, error.absolute_path))
        report.check(False, "%s %s: %s" % (name, pointer, error.message[:200]))
    if not errors:
        report.check(True, name)


def main():
    import jsonschema

    parser = argparse.ArgumentParser(description=__doc__.split("\n")[0])
    parser.add_argument("--data", type=Path, default=Path(__file__).resolve().parents[2] / "hazard-data")
    data = parser.parse_args().data

    report = Report()
    schema = load(data / "catalogue.schema.json")
    jsonschema.Draft202012Validator.check_schema(schema)
    substances_file = load(data / "substances.json")
    materials_file = load(data / "materials.json")
    check_schema(report, schema, "substances_file", substances_file, "substances.json")
    check_schema(report, schema, "materials_file", materials_file, "materials.json")

    kinds = {"health banding": "health_banding_file", "column model": "column_model_file",
             "hazard score": "hazard_score_file", "benign list": "benign_file", "solvent families": "solvents_file",
             "mixture limits": "mixture_limits_file", "mixture notes": "mixture_notes_file",
             "flash point data": "flash_point_file", "label elements": "label_elements_file",
             "structures": "structures_file", "glassware": "glassware_file"}
    for waste in ("acids and bases", "incompatible wastes", "local rules", "mixed liquids", "quench", "reactivity groups",
                  "reactivity pairs", "special meetings"):
        kinds[waste] = "waste_file"
    for bench in ("instruments", "label sheets", "stockroom", "utilities"):
        kinds[bench] = "bench_file"
    schemes = {}
    for path in sorted((data / "schemes").glob("*.json")):
        scheme = load(path)
        report.check(scheme.get("id") == path.stem, "schemes/%s: id is %s" % (path.name, scheme.get("id")))
        schemes[path.stem] = scheme
        if report.check(scheme.get("kind") in kinds, "schemes/%s: unknown kind %s" % (path.name, scheme.get("kind"))):
            check_schema(report, schema, kinds[scheme["kind"]], scheme, "schemes/" + path.name)
    for name in ("niosh_2019_132", "hse_ilo", "trgs_600", "hazard_score", "benign", "ghs_limits_eu", "ghs_limits_un", "ghs_limits_us",
                 "ghs_mixture_notes", "ghs_flash_points", "ghs_label_elements"):
        report.check(name in schemes, "schemes/%s.json is missing" % name)

    if report.failed:  # the rest relies on the shape
        print("%d checks passed, %d failed" % (report.passed, report.failed))
        return 1
    substances = substances_file["substances"]
    materials = materials_file["materials"]
    catalogue_identity.check(report, substances)
    catalogue_hazards.check(report, substances, schemes)
    catalogue_materials.check(report, substances, materials, schemes["benign"])

    if report.failed:
        print("%d checks passed, %d failed" % (report.passed, report.failed))
        return 1
    print("%d checks passed" % report.passed)
    return 0


if __name__ == "__main__":
    sys.exit(main())
