#!/usr/bin/python3
# SPDX-License-Identifier: MIT
"""The course of a substance in the flask, against SciPy's integrator for stiff equations.

usage: check_course.py PROBE
Closed solutions of portions and drips against Radau, with constants up to nine powers of ten apart, equal, and nearly
equal. Needs Debian's python3-scipy.
"""
import math
import random
import subprocess
import sys

import numpy
from scipy.integrate import solve_ivp

rng = random.Random(20261126)


def integrate(made, portions, t_end):
    """B at t_end, each portion by itself with its own constant of use; pulses start it, drips feed it."""
    total = 0.0
    for start, until, amount, used in portions:
        if t_end <= start:
            continue
        drips = until > start
        rate = amount / (until - start) if drips else 0.0
        a0, b0 = (0.0, 0.0) if drips else ((0.0, amount) if math.isinf(made) else (amount, 0.0))
        state = numpy.array([a0, b0])
        for begin, end, feed in ((start, min(until, t_end), rate), (max(start, until), t_end, 0.0)):
            if end <= begin:
                continue

            def slope(_, y, feed=feed):
                if math.isinf(made):
                    return [0.0, feed - used * y[1]]
                return [feed - made * y[0], made * y[0] - used * y[1]]

            jacobian = [[0.0, 0.0], [0.0, -used]] if math.isinf(made) else [[-made, 0.0], [made, -used]]
            run = solve_ivp(slope, (begin, end), state, method="Radau", jac=numpy.array(jacobian), rtol=1e-9,
                            atol=1e-13)
            if not run.success:
                raise SystemExit(run.message)
            state = run.y[:, -1]
        total += state[1]
    return total


def cases():
    yield math.inf, 30.0, [(0.0, 0.0, 1.0, 0.1)]
    for made, used in ((1e4, 1e-4), (1e-4, 1e4), (1e5, 1e-4), (0.05, 0.05), (0.05, 0.0500001), (0.05, 0.050004), (3.0, 0.0)):
        yield made, 40.0, [(0.0, 0.0, 1.0, used)]
        yield made, 40.0, [(0.0, 60.0, 1.0, used)]
        yield made, 90.0, [(0.0, 60.0, 1.0, used)]
    for _ in range(60):
        made = math.inf if rng.random() < 0.2 else 10 ** rng.uniform(-4, 4)
        portions = []
        for _ in range(rng.randint(1, 4)):
            start = rng.uniform(0, 100)
            until = start if rng.random() < 0.5 else start + rng.uniform(1, 100)
            portions.append((start, until, rng.uniform(0.1, 2), 0.0 if rng.random() < 0.1 else 10 ** rng.uniform(-4, 4)))
        yield made, rng.uniform(1, 250), portions


def check_closed(probe):
    listed = list(cases())
    lines = [" ".join([repr(made), repr(t), str(len(portions))] + [repr(x) for p in portions for x in p])
             for made, t, portions in listed]
    run = subprocess.run([probe], input="\n".join(lines) + "\n", capture_output=True, text=True, check=True)
    faults, worst = [], 0.0
    for (made, t, portions), text in zip(listed, run.stdout.split(), strict=True):
        ours, theirs = float(text), integrate(made, portions, t)
        difference = abs(ours - theirs) / max(abs(theirs), 1e-6)
        worst = max(worst, difference)
        if difference > 1e-5:
            faults.append(f"made {made}, t {t}, {portions}: {ours} here, {theirs} by SciPy")
    print(f"{len(listed)} courses, largest relative difference {worst:.1e}")
    return faults


def main(probe):
    faults = check_closed(probe)
    print("\n".join(faults + [f"{len(faults)} faults"]))
    return 1 if faults else 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1]))
