# SPDX-License-Identifier: MIT
"""Extents against SciPy's HiGHS (Debian package python3-scipy): shipped routes, random pots, overall equations.

    check_extents.py [PROGRAM]

Three checks. Every shipped route is worked through twice, with the twin's own simplex and with HiGHS in its place, and
extents, ceilings and figures must agree. Random pots compare the two solvers alone. The overall equation of every step
must be a non-negative combination of its reactions; where the same reactions allow a higher atom economy the notes of the
file must say "excess written as stoichiometry", and nowhere else. With PROGRAM the figures that rest on extents are also
compared with what the program prints.
"""
import json
import os
import random
import subprocess
import sys

import numpy
from scipy.optimize import linprog

import twin
import twin_pot

TOLERANCE = 1e-7
RESTING_ON_EXTENTS = ("theoretical_yield", "bromine_ceiling", "_flask", "_waste", "waste_water_intensity")
TIGHT = {"primal_feasibility_tolerance": 1e-10, "dual_feasibility_tolerance": 1e-10}  # a trace is a trace to HiGHS too
OWN_SIMPLEX = twin_pot.simplex


def highs(rows, limits, objectives):
    """As twin_pot.simplex: the objectives one after the other, each kept at its best for the next."""
    scale = max(limits, default=0.0) or 1.0
    matrix = [list(map(float, row)) for row in rows]
    bounds = [limit / scale for limit in limits]
    best = None
    for objective in objectives:
        # Nothing is always allowed, so "infeasible" is the presolve's word for unbounded; the second try says so.
        for presolve in (True, False):
            found = linprog([-float(c) for c in objective], A_ub=numpy.array(matrix) if matrix else None,
                            b_ub=bounds if matrix else None, bounds=(0, None), method="highs", options={"presolve": presolve, **TIGHT})
            if found.status in (0, 3):
                break
        if found.status == 3:
            raise twin_pot.Unbounded
        if found.status != 0:
            raise ArithmeticError(found.message)
        best = found.x
        matrix.append([-float(c) for c in objective])
        bounds.append(found.fun + 1e-13)
    return [float(x) * scale for x in best]


def near(a, b, size):
    return abs(a - b) <= TOLERANCE * max(size, 1e-12)


def shipped_routes(routes, catalogue):
    """Every route with either solver."""
    faults, compared = [], 0
    for raw in routes:
        records = []
        for solver in (OWN_SIMPLEX, highs):
            twin_pot.simplex = solver
            records.append(twin.route_figures(twin.read_route(raw, catalogue), catalogue))
        twin_pot.simplex = OWN_SIMPLEX
        own, other = records
        for mine, theirs in zip(own["extents"], other["extents"]):
            size = max((x for _, x in mine["reactions"]), default=0.0)
            for (equation, x), (_, y) in zip(mine["reactions"], theirs["reactions"]):
                compared += 1
                if not near(x, y, size):
                    faults.append(f"{raw['id']}, {mine['stage']}: {equation}: {x} against {y}")
        for figure, value in own["figures"].items():
            if value is not None:
                compared += 1
                if not near(value, other["figures"][figure], abs(value) + 1e-3):
                    faults.append(f"{raw['id']}: {figure}: {value} against {other['figures'][figure]}")
        if own["conflicts"]:
            faults.append(f"{raw['id']}: reactions compete without a priority: {own['conflicts']}")
    return faults, compared


def random_pot(seed):
    """Rows and limits of a pot where each substance is used by at most two reactions."""
    draw = random.Random(seed)
    substances, reactions = draw.randint(3, 9), draw.randint(1, 7)
    rows = [[0.0] * reactions for _ in range(substances)]
    for r in range(reactions):
        for s in draw.sample(range(substances), draw.randint(1, min(3, substances))):
            rows[s][r] += draw.randint(1, 3)
        for s in draw.sample(range(substances), draw.randint(1, min(3, substances))):
            rows[s][r] -= draw.randint(1, 3)
    limits = [draw.choice([0.0, draw.uniform(0.001, 5.0)]) for _ in range(substances)]
    split = draw.randint(0, reactions)
    levels = [[float(r < split) for r in range(reactions)], [1.0] * reactions]
    return rows, limits, levels


def random_pots(count):
    faults, bounded = [], 0
    for seed in range(count):
        rows, limits, objectives = random_pot(seed)
        answers = []
        for solver in (OWN_SIMPLEX, highs):
            try:
                x = solver(rows, limits, objectives)
                answers.append([sum(c * v for c, v in zip(objective, x)) for objective in objectives])
            except twin_pot.Unbounded:
                answers.append(None)
        bounded += answers[0] is not None
        if (answers[0] is None) != (answers[1] is None) or (
                answers[0] and not all(near(a, b, max(answers[0])) for a, b in zip(*answers))):
            faults.append(f"random pot {seed}: {answers[0]} against {answers[1]}")
    return faults, bounded


def overall_equations(routes, catalogue):
    """Each overall equation proved from the reactions, and the best atom economy that these allow."""
    faults, proved = [], 0
    for raw in routes:
        route = twin.read_route(raw, catalogue)
        allowed = any("excess written as stoichiometry" in note for note in raw.get("notes", []))
        better = False
        for step in route.steps:
            reactions = [r for stage in step.stages for r in stage.reactions]
            declared = {}
            for sign, side in ((-1, step.overall[0]), (1, step.overall[1])):
                for count, substance in side:
                    declared[substance.id] = declared.get(substance.id, 0) + sign * count
            names = sorted({s for r in reactions for s in r.change} | set(declared))
            matrix = numpy.array([[r.change.get(s, 0) for r in reactions] for s in names], float)
            found = linprog(numpy.ones(len(reactions)), A_eq=matrix, b_eq=[declared.get(s, 0) for s in names],
                            bounds=(0, None), method="highs")
            if found.status != 0:
                faults.append(f"{raw['id']}, {step.id}: the overall equation does not follow from the reactions")
                continue
            proved += 1
            charged = {s for c in step.charges for s in c.amounts}
            weights = [catalogue.substances[s].molar_mass for s in names]
            # One mole of product; u is what is used up of each substance, and only what was charged can be.
            size = len(reactions)
            wide = numpy.hstack([-matrix, -numpy.eye(len(names))])
            cap = [(0, None)] * size + [(0, None if s in charged and s != step.product else 0) for s in names]
            one = numpy.array([[r.change.get(step.product, 0) for r in reactions] + [0] * len(names)], float)
            best = linprog([0] * size + weights, A_ub=wide, b_ub=numpy.zeros(len(names)), A_eq=one, b_eq=[1], bounds=cap, method="highs")
            used = sum(n * s.molar_mass for n, s in step.overall[0]) / declared[step.product]
            if best.status == 0 and best.fun < used * (1 - 1e-9):
                better = True
                product = catalogue.substances[step.product].molar_mass
                print(f"{raw['id']}, {step.id}: atom economy {100 * product / used:.4g} %, "
                      f"the same reactions allow {100 * product / best.fun:.4g} %")
        if better != allowed:
            faults.append(f"{raw['id']}: a better combination {'exists' if better else 'does not exist'} and the notes say otherwise")
    return faults, proved


def program_figures(program, folder, routes, catalogue):
    """Figures of the program that rest on extents, against the twin with HiGHS."""
    twin_pot.simplex = highs
    expected = {raw["id"]: twin.route_figures(twin.read_route(raw, catalogue), catalogue)["figures"] for raw in routes}
    twin_pot.simplex = OWN_SIMPLEX
    faults, compared = [], 0
    for name in sorted(os.listdir(folder)):
        path = os.path.join(folder, name)
        if not os.path.isdir(path):
            continue
        printed = subprocess.run([program, "compare", path, "--format", "json"], check=True, capture_output=True, text=True)
        for route in json.loads(printed.stdout)["routes"]:
            values = {figure["id"]: figure["value"] for figure in route["figures"]}
            for figure, value in expected[route["id"]].items():
                if figure.endswith(RESTING_ON_EXTENTS) and value is not None:
                    compared += 1
                    if values.get(figure) is None or not near(values[figure], value, abs(value) + 1e-3):
                        faults.append(f"{route['id']}: {figure}: {values.get(figure)} against {value}")
    if not compared:
        faults.append("the program printed nothing to compare")
    return faults, compared


def main(arguments):
    catalogue = twin.read_catalogue(os.path.join(twin.ROOT, "hazard-data"))
    folder = os.path.join(twin.ROOT, "routes")
    routes = []
    for path in twin.files_of([folder]):
        with open(path, encoding="utf-8") as file:
            routes.append(json.load(file))
    faults, compared = shipped_routes(routes, catalogue)
    more, bounded = random_pots(2000)
    faults += more
    more, proved = overall_equations(routes, catalogue)
    faults += more
    print(f"{len(routes)} routes, {compared} extents and figures, {bounded} bounded random pots of 2000, {proved} overall equations proved")
    if arguments:
        more, count = program_figures(arguments[0], folder, routes, catalogue)
        faults += more
        print(f"{count} figures of the program")
    for fault in faults:
        print("  ", fault)
    return 1 if faults or not routes else 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
