#!/usr/bin/python3
# SPDX-License-Identifier: MIT
"""Class results beside NumPy and SciPy: quartiles, spread, sections compared, outliers; also counted in steps.

usage: check_class_results.py PROGRAM
Tables of random classes (fixed seeds) are read by the program and by Python's csv module.
"""
import csv
import io
import json
import pathlib
import random
import subprocess
import sys

import numpy
import scipy.stats

ROOT = pathlib.Path(__file__).resolve().parents[2]
ROUTE = ROOT / "routes/4-bromoacetanilide/A3.json"
DIALECTS = [(",", ".", "\n", ""), (";", ",", "\r\n", "\ufeff"), ("\t", ".", "\r", ""), (";", ".", "\n\n", "\ufeff")]


def table(seed, rows, sections, dialect):
    """A class as text: yields spread about a middle of each section, some wild ones among them."""
    separator, point, line_end, mark = dialect
    dice = random.Random(seed)
    middles = [dice.uniform(1.3, 1.8) for _ in range(sections)]
    lines = [separator.join(["bench", "section", "boat and product (g)", "boat (g)"])]
    for row in range(rows):
        section = dice.randrange(sections)
        mass = dice.gauss(middles[section], 0.12) if dice.random() < 0.95 else dice.uniform(0.2, 2.1)
        boat = dice.uniform(1.15, 1.25)
        numbers = [f"{mass + boat:.3f}", f"{boat:.3f}"]
        lines.append(separator.join([f"A{row}", f"group {section}"] + [number.replace(".", point) for number in numbers]))
    return mark + line_end.join(lines) + line_end


def figures_of(text, dialect, theory):
    """Percent yield by section of the rows that are possible, read without the program."""
    separator, point, _, _ = dialect
    rows = csv.DictReader(io.StringIO(text.lstrip("\ufeff").replace("\r\n", "\n").replace("\r", "\n")), delimiter=separator)
    by_section = {}
    for row in rows:
        if not row["bench"]:
            continue
        gross, boat = (float(row[name].replace(point, ".")) for name in ("boat and product (g)", "boat (g)"))
        mass = round(gross - boat, 3)  # as the numbers are written
        if 0 < mass <= theory + 0.002 + 1e-12:  # two readings of 0.001 g
            by_section.setdefault(row["section"], []).append(100 * mass / theory)
    return by_section


def differ(name, ours, other, tolerance):
    if abs(ours - other) <= tolerance * max(1, abs(other)):
        return []
    return [f"{name}: {ours} here, {other} there"]


def compare(program, seed, rows, sections):
    dialect = DIALECTS[seed % len(DIALECTS)]
    text = table(seed, rows, sections, dialect)
    run = subprocess.run([program, "results", ROUTE, "-", "--format", "json"], input=text.encode(), capture_output=True)
    if run.returncode != 0:
        return [f"seed {seed}: exit status {run.returncode}: {run.stderr.decode()[:300]}"]
    document = json.loads(run.stdout)
    by_section = figures_of(text, dialect, document["theoretical"])
    steps = document["yields_counted_in_steps"]
    order = 0.005 + 1e-9 if steps else 1e-9  # of order statistics, per cent
    found = []

    def spread(name, ours, values):
        values = numpy.array(values)
        quartiles = numpy.percentile(values, [25, 50, 75])
        for key, other in zip(("quartile_1", "median", "quartile_3"), quartiles):
            if abs(ours[key] - other) > order:
                found.append(f"seed {seed}, {name}: {key} {ours[key]} here, {other} there")
        found.extend(differ(f"seed {seed}, {name}: count", ours["count"], len(values), 0))
        found.extend(differ(f"seed {seed}, {name}: mean", ours["mean"], values.mean(), 1e-12))
        found.extend(differ(f"seed {seed}, {name}: deviation", ours["standard_deviation"], values.std(ddof=1), 1e-10))

    everything = numpy.concatenate([numpy.array(values) for values in by_section.values()])
    spread("all", document["percent_yield"], everything)
    for section in document["sections"]:
        spread(section["section"], section, by_section[section["section"]])
    if sections > 1:
        ours = document["tests"]["kruskal_wallis"]
        h, p = scipy.stats.kruskal(*by_section.values())
        found += differ(f"seed {seed}: H", ours["h"], h, 1e-3 if steps else 1e-9)
        found += differ(f"seed {seed}: p", ours["p"], p, 1e-3 if steps else 1e-9)
    mad = scipy.stats.median_abs_deviation(everything)
    ours = document["tests"]["modified_z_score"]
    if abs(ours["median_absolute_deviation"] - mad) > 2 * order:
        found.append(f"seed {seed}: MAD {ours['median_absolute_deviation']} here, {mad} there")
    outliers = int((numpy.abs(0.6745 * (everything - numpy.median(everything)) / mad) > 3.5).sum())
    if abs(ours["outliers"] - outliers) > (0.01 * outliers if steps else 0):
        found.append(f"seed {seed}: {ours['outliers']} outliers here, {outliers} there")
    return found


def main(program):
    found = []
    cases = [(seed, 10 + 17 * seed, 1 + seed % 5) for seed in range(24)] + [(24, 90000, 3), (25, 70000, 1)]
    for seed, rows, sections in cases:
        found += compare(program, seed, rows, sections)
    print("\n".join(found + [f"{len(cases)} classes compared, {len(found)} differences"]))
    return 1 if found else 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1]))
