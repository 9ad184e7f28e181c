# SPDX-License-Identifier: MIT
"""Every figure of every route file, from the program and from the independent reading, equal to 1e-9.

    compare_with_twin.py PROGRAM [ROUTES]

Runs `PROGRAM compare FOLDER --format json` for every folder below ROUTES (default: routes/ of the project) and reads the
same files with twin.py. A figure that either side lacks, a null against a number, an interval that differs: all are faults.
"""
import json
import os
import subprocess
import sys

import twin

TOLERANCE = 1e-9
# What stands for "nothing" (a trace that cancels) may differ by rounding; all figures are per gram or percent.
ZERO = 1e-12
NANOGRAM = 1e-9


def equal(a, b, zero=ZERO):
    if a is None or b is None:
        return a is None and b is None
    return abs(a - b) <= max(TOLERANCE * max(abs(a), abs(b)), zero)


def compare_route(printed, expected, zero=ZERO):
    faults, compared = [], 0
    figures = {figure["id"]: figure for figure in printed["figures"]}
    for figure, value in expected["figures"].items():
        compared += 1
        if figure not in figures:
            faults.append(f"{figure} is missing")
            continue
        if not equal(figures[figure]["value"], value, zero):
            faults.append(f"{figure}: {figures[figure]['value']!r}, expected {value!r}")
        if figure in expected["intervals"]:
            for end, bound in zip(("low", "high"), expected["intervals"][figure]):
                compared += 1
                if not equal(figures[figure].get(end), bound, zero):
                    faults.append(f"{figure}, {end} end: {figures[figure].get(end)!r}, expected {bound!r}")
    faults += [f"{figure} is not known here" for figure in figures if figure not in expected["figures"]]
    return compare_streams(printed, expected, faults, compared)


def compare_streams(printed, expected, faults, compared):
    """Every substance of every stream in both readings, to a nanogram a run."""
    streams = {(stream["step"], stream["name"]): stream for stream in printed["streams"]}
    for stream in expected["streams"]:
        found = streams.pop((stream["step"], stream["name"]), {"substances": [], "kind": None})
        here = {entry["substance"]: (entry["grams"], entry["grams_unreacted"]) for entry in found["substances"]}
        for name in {**here, **stream["substances"]}:
            for mine, theirs in zip(stream["substances"].get(name, (0.0, 0.0)), here.get(name, (0.0, 0.0))):
                compared += 1
                if not equal(theirs, mine, NANOGRAM):
                    faults.append(f"stream {stream['name']} of {stream['step']}: {name}: {theirs!r} g, expected {mine!r} g")
    faults += [f"stream {name} of {step} is not known here" for (step, name), stream in streams.items()
               if any(entry["grams"] > NANOGRAM for entry in stream["substances"])]
    return faults, compared


def main(arguments):
    program = arguments[0]
    root = arguments[1] if len(arguments) > 1 else os.path.join(twin.ROOT, "routes")
    catalogue = twin.read_catalogue(os.path.join(twin.ROOT, "hazard-data"))
    faults, total, seen = 0, 0, 0
    for folder in sorted({os.path.dirname(path) for path in twin.files_of([root])}):
        expected = {}
        for path in twin.files_of([folder]):
            with open(path, encoding="utf-8") as file:
                raw = json.load(file)
            expected[raw["id"]] = twin.route_figures(twin.read_route(raw, catalogue), catalogue)
        run = subprocess.run([program, "compare", folder, "--format", "json"], capture_output=True, text=True)
        if run.returncode != 0:
            print(f"{folder}: exit status {run.returncode}\n{run.stderr}")
            faults += 1
            continue
        document = json.loads(run.stdout)
        printed = {route["id"]: route for route in document["routes"]}
        twin.add_comparison(list(expected.values()), document["baseline"])
        for name in sorted(set(expected) | set(printed)):
            if name not in printed or name not in expected:
                found, compared = [f"only {'the program' if name in printed else 'the twin'} has it"], 0
            else:
                found, compared = compare_route(printed[name], expected[name])
            seen, total, faults = seen + 1, total + compared, faults + len(found)
            for fault in found:
                print(f"{name}: {fault}")
    print(f"{seen} routes, {total} values compared, {faults} faults")
    return 1 if faults or not total else 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
