# SPDX-License-Identifier: MIT
"""Puts what was measured beside what was asked for.

    summary.py FOLDER   reads bench.json (Google Benchmark), cold.json (hyperfine), twin.json (time_twin.py)
"""

import json
import math
import pathlib
import statistics
import sys

NANOSECONDS = {"ns": 1, "us": 1e3, "ms": 1e6, "s": 1e9}


# Of evaluating one draw of the ten routes: additions, multiplications, divisions, comparisons and choices of two
# doubles at once, and stores; counted by instruction with valgrind --tool=callgrind --dump-instr=yes.
PACKED_OPERATIONS, STORES = 22_800, 14_700


def read(folder, name):
    return json.loads((pathlib.Path(folder) / name).read_text(encoding="utf-8"))


def in_process(folder):
    """Time by name of benchmark (ns), and the label of each."""
    times, labels = {}, {}
    for run in read(folder, "bench.json")["benchmarks"]:
        if run.get("run_type") == "iteration":
            times[run["name"]] = run["cpu_time"] * NANOSECONDS[run["time_unit"]]
            labels[run["name"]] = run.get("label", "")
    return times, labels


def exponent(times, name):
    """Slope of log time over log size, least squares over the sizes from 100 on."""
    points = [(math.log(int(key.rsplit("/", 1)[1])), math.log(time)) for key, time in times.items()
              if key.startswith(name + "/") and int(key.rsplit("/", 1)[1]) >= 100]
    x0 = statistics.mean(x for x, _ in points)
    y0 = statistics.mean(y for _, y in points)
    return sum((x - x0) * (y - y0) for x, y in points) / sum((x - x0) ** 2 for x, _ in points)


def sampling_rows(folder):
    """A million draws of ten routes on two threads, beside NumPy; seconds are those of one core."""
    runs = {run["name"]: run for run in read(folder, "bench.json")["benchmarks"]}
    most, few = (read(folder, f"draws-{draws}.json")["benchmarks"][0] for draws in (1000000, 100000))
    many = {int(name.split("/")[1]): run for name, run in runs.items() if name.startswith("draw_many_routes/")}
    seconds = {count: sum(run[stage] for stage in ("sampling_seconds", "evaluation_seconds", "summing_seconds"))
               for count, run in many.items()}
    numpy = read(folder, "numpy.json")
    per_draw = {stage: (most[stage] / most["draws"] * 1e6, numpy[stage] / numpy["draws"] * 1e6)
                for stage in ("sampling_seconds", "evaluation_seconds", "summing_seconds")}
    ours, theirs = per_draw["evaluation_seconds"]
    arithmetic, memory = (count * runs[name]["cpu_time"] / runs[name]["operations"] / 1e3
                          for count, name in ((PACKED_OPERATIONS, "packed_operations"), (STORES, "packed_stores")))
    numbers = (per_draw["sampling_seconds"][0] / most["inputs"] * 1e3, per_draw["sampling_seconds"][1] / numpy["inputs"] * 1e3)
    return [
        ("a million draws of ten routes, all figures, two threads", most["real_time"] / 1e3, "s", "", None),
        ("evaluating one draw of ten routes, one core", ours, "us", "", None),
        ("the same in NumPy, in blocks", theirs, "us", "", None),
        ("evaluation against NumPy, one core each", theirs / ours, "times", "", None),
        ("evaluation on two threads against NumPy, which uses one", 2 * theirs / ours, "times", ">=", 10),
        ("arithmetic bound: its operations, alone", arithmetic, "us", "", None),
        ("memory bound: its stores into the nearest cache, alone", memory, "us", "", None),
        ("evaluation over the greater of the two bounds", ours / max(arithmetic, memory), "times", "<=", 3),
        ("drawing one number, one core", numbers[0], "ns", "<=", numbers[1]),
        ("summing up one draw: moments, intervals, one core", per_draw["summing_seconds"][0], "us", "", None),
        ("growth with the number of draws", math.log(most["real_time"] / few["real_time"]) / math.log(10), "exponent",
         "<=", 1.1),
        ("growth with the number of routes, 10 to 80", math.log(seconds[80] / seconds[10]) / math.log(8), "exponent", "<=",
         1.1),
        # Of the pairs of routes those are counted draw by draw that overlap: of the 80 routes, ten eight times over,
        # more than of ten different ones.
        ("the same with the order of every pair", math.log(many[80]["real_time"] / many[10]["real_time"]) / math.log(8),
         "exponent", "", None),
        ("memory of a million draws over that of 100,000", most["memory_MB"] / few["memory_MB"], "times", "<=", 1.1)]


def main(folder):
    times, labels = in_process(folder)
    cold = {run["command"]: run for run in read(folder, "cold.json")["results"]}
    program, twin = cold["routeweigh"], cold["twin"]
    slow = read(folder, "twin.json")
    one = {labels[name]: time for name, time in times.items() if name.startswith("evaluate_one_route/")}
    ratios = {route: slow[route] * 1e9 / one[route] for route in one}
    rows = [
        ("compare of ten routes, cold process, JSON out, median", program["median"] * 1e3, "ms", "<=", 15),
        ("the same by the Python reading", twin["median"] * 1e3, "ms", "", None),
        ("cold ratio", twin["median"] / program["median"], "times", "", None),
        ("one evaluation, slowest of the ten routes", max(one.values()) / 1e3, "us", "<=", 2),
        ("one evaluation, fastest of the ten routes", min(one.values()) / 1e3, "us", "", None),
        ("in-process ratio, smallest of the ten routes", min(ratios.values()), "times", ">=", 50),
        ("in-process ratio, median", statistics.median(ratios.values()), "times", "", None),
        ("growth with the number of routes, to 10,000", exponent(times, "compare_many_routes"), "exponent", "<=", 1.1),
        ("growth with the steps of a route, to 10,000, compiling", exponent(times, "compile_long_route"), "exponent",
         "<=", 1.1),
        ("growth with the steps of a route, to 10,000, evaluating", exponent(times, "evaluate_long_route"), "exponent",
         "<=", 1.1),
    ]
    rows += sampling_rows(folder)
    short = 0
    for what, value, unit, sign, bound in rows:
        verdict = ""
        if bound is not None:
            met = value <= bound if sign == "<=" else value >= bound
            short += not met
            verdict = f"asked {sign} {bound}: {'met' if met else 'FALLS SHORT'}"
        print(f"{what:57} {value:10.3g} {unit:9} {verdict}")
    return 1 if short else 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1]))
