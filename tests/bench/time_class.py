# SPDX-License-Identifier: MIT
"""Class results of a million rows beside Python's csv module with NumPy, in one run, and the memory that both take.

    time_class.py PROGRAM ROUTE FOLDER [ROWS]   exit status 1 when the figures differ or a bound is not met
"""

import json
import os
import pathlib
import random
import statistics
import subprocess
import sys
import time

HERE = pathlib.Path(__file__).resolve().parent
REPEATS = 5
FASTER = 5  # times
MEMORY = 1.05  # of the larger table over the smaller one


def write_table(path, rows, seed=1):
    """A class of invented benches: semicolons, decimal commas, four sections."""
    dice = random.Random(seed)
    with open(path, "w", encoding="utf-8", newline="") as table:
        table.write("\ufeffbench;section;boat and product (g);boat (g);melts from (degC);melts to (degC)\r\n")
        for row in range(rows):
            section = row % 4
            mass, boat = dice.gauss(1.65 + 0.01 * section, 0.15), dice.uniform(1.15, 1.25)
            low = dice.gauss(165.5, 0.8)
            line = f"A{row};Section {section};{mass + boat:.3f};{boat:.3f};{low:.1f};{low + abs(dice.gauss(1.5, 0.7)):.1f}"
            table.write(line.replace(".", ",") + "\r\n")


def run(command):
    """Seconds, greatest resident memory in MB, output."""
    start = time.perf_counter()
    process = subprocess.Popen(command, stdout=subprocess.PIPE)
    output = process.stdout.read()
    _, status, usage = os.wait4(process.pid, 0)
    if status != 0:
        raise SystemExit(f"{command[0]} ended with {status}")
    return time.perf_counter() - start, usage.ru_maxrss / 1024, output


def differences(ours, other):
    found = [f"{key}: {ours[key]} and {other[key]}" for key in ("rows", "check", "not_possible") if ours[key] != other[key]]
    pairs = [("all", ours["percent_yield"], other["percent_yield"])] + [
        (section["section"], section, match) for section in ours["sections"] for match in other["sections"]
        if match["section"] == section["section"]]
    for name, one, two in pairs:
        for key, value in two.items():
            if key != "section" and abs(one[key] - value) > (0.0051 if key[0] in "qm" and key != "mean" else 1e-8):
                found.append(f"{name} {key}: {one[key]} and {value}")
    if abs(ours["tests"]["kruskal_wallis"]["h"] - other["h"]) > 1e-3 * other["h"]:
        found.append(f"H: {ours['tests']['kruskal_wallis']['h']} and {other['h']}")
    return found


def main(program, route, folder, rows=1000000):
    table, larger = pathlib.Path(folder, "class.csv"), pathlib.Path(folder, "class-larger.csv")
    write_table(table, rows)
    write_table(larger, 3 * rows)
    ours = [program, "results", route, str(table), "--format", "json"]
    theory = json.loads(run(ours)[2])["theoretical"]
    other = [sys.executable, str(HERE / "read_class.py"), str(table), repr(theory)]
    times = {"program": [], "python": []}
    for _ in range(REPEATS):  # by turns, so that a busy moment hits both
        seconds, memory, document = run(ours)
        times["program"].append(seconds)
        seconds, python_memory, figures = run(other)
        times["python"].append(seconds)
    _, larger_memory, _ = run(ours[:3] + [str(larger)] + ours[4:])
    found = differences(json.loads(document), json.loads(figures))
    medians = {name: statistics.median(values) for name, values in times.items()}
    factor = medians["python"] / medians["program"]
    print(f"class results, {rows} rows: {medians['program']:.3f} s and {memory:.1f} MB; csv and NumPy: "
          f"{medians['python']:.3f} s and {python_memory:.1f} MB; {factor:.1f} times as fast (at least {FASTER} asked for)")
    print(f"three times the rows: {larger_memory:.1f} MB, {larger_memory / memory:.3f} times as much (at most {MEMORY})")
    print("\n".join(found) or "the figures agree")
    table.unlink()
    larger.unlink()
    return 1 if found or factor < FASTER or larger_memory > MEMORY * memory else 0


if __name__ == "__main__":
    sys.exit(main(*sys.argv[1:4], *map(int, sys.argv[4:])))
