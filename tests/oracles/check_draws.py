#!/usr/bin/python3
# SPDX-License-Identifier: MIT
"""Means and standard uncertainties of drawn figures are those of the NumPy twin, within what so many draws leave open.

    check_draws.py PROGRAM

The twin samples with NumPy's own generator and works every route by matrices, so nothing but the description of the
format is shared. Routes whose limiting reactant differs from draw to draw are left out: the twin keeps one basis.
"""
import json
import math
import pathlib
import subprocess
import sys

ROOT = pathlib.Path(__file__).resolve().parents[2]
ROUTES = [f"routes/4-bromoacetanilide/{name}.json" for name in ("A3", "A3w", "A4", "A5", "A7b")]
DRAWS = 40000
# Of some 300 comparisons none should fail by chance: six standard errors of the mean; a deviation of so many draws is
# known to a third of a per cent where the distribution is normal, and to a few where it has tails.
STANDARD_ERRORS, OF_DEVIATION = 6, 0.04


def run(*command):
    return json.loads(subprocess.run(command, cwd=ROOT, check=True, capture_output=True, text=True).stdout)


def main(program):
    ours = run(program, "compare", *ROUTES, "--draws", str(DRAWS), "--format", "json")["certainty"]
    theirs = run(sys.executable, "tests/bench/numpy_twin.py", str(DRAWS), *ROUTES)
    compared, varying, faults = 0, 0, []
    for route in ours["routes"]:
        twin = theirs["routes"][route["id"]]
        for figure in route["figures"]:
            other = twin.get(figure["id"])
            if other is None or figure["mean"] is None or math.isnan(other["mean"]):
                continue
            mean, deviation = figure["mean"], figure["standard_uncertainty"]
            rounding = 1e-8 * abs(mean)
            error = math.hypot(deviation / math.sqrt(ours["draws"]), other["deviation"] / math.sqrt(theirs["draws"]))
            compared += 1
            varying += deviation > rounding
            if (abs(mean - other["mean"]) > STANDARD_ERRORS * error + rounding
                    or abs(deviation - other["deviation"]) > OF_DEVIATION * deviation + rounding):
                faults.append(f"{route['id']} {figure['id']}: {mean:g} +/- {deviation:g}, NumPy {other['mean']:g} "
                              f"+/- {other['deviation']:g}")
    print(f"{compared} figures compared, {varying} of them vary")
    print("\n".join(faults))
    return 1 if faults or varying < 200 else 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1]))
