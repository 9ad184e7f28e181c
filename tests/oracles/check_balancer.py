# SPDX-License-Identifier: MIT
"""`routeweigh balance` against the null space of SymPy (Debian package python3-sympy), exact in both.

    check_balancer.py PROGRAM [COUNT [FIRST SEED]]

Well-known equations with their coefficients from memory, then COUNT random ones (default 400): built to balance in one way,
built of several reactions, and thrown together. Formulas are read here once more, written with brackets, hydrates and charges.
"""
import json
import math
import random
import re
import subprocess
import sys

import sympy
from scipy.optimize import linprog

# Left coefficients, right coefficients, from memory: exercises of first-year courses. The last is a classic of the
# "redox challenges" kind (R. Stout, J. Chem. Educ. 1995, 72, 1125; memory).
WELL_KNOWN = [
    ("H2 + O2 -> H2O", [2, 1], [2]),
    ("KMnO4 + HCl -> KCl + MnCl2 + H2O + Cl2", [2, 16], [2, 2, 8, 5]),
    ("K2Cr2O7 + FeSO4 + H2SO4 -> Cr2(SO4)3 + Fe2(SO4)3 + K2SO4 + H2O", [1, 6, 7], [1, 3, 1, 7]),
    ("C3H5N3O9 -> N2 + CO2 + H2O + O2", [4], [6, 12, 10, 1]),
    ("Ca3(PO4)2 + SiO2 + C -> CaSiO3 + CO + P4", [2, 6, 10], [6, 10, 1]),
    ("CuSO4.5H2O -> CuSO4 + H2O", [1], [1, 5]),
    ("KAl(SO4)2.12H2O -> KAl(SO4)2 + H2O", [1], [1, 12]),
    ("MnO4^- + Fe^2+ + H+ -> Mn^2+ + Fe^3+ + H2O", [1, 5, 8], [1, 5, 4]),
    ("Cr2O7^2- + C2H6O + H+ -> Cr^3+ + C2H4O2 + H2O", [2, 3, 16], [4, 3, 11]),
    ("BrO3- + Br- + H+ -> Br2 + H2O", [1, 5, 6], [3, 3]),
    ("FeS2 + O2 -> Fe2O3 + SO2", [4, 11], [2, 8]),
    ("Pb(N3)2 + Cr(MnO4)2 -> Cr2O3 + MnO2 + NO + Pb3O4", [15, 44], [22, 88, 90, 5]),
    ("[Cr(N2H4CO)6]4[Cr(CN)6]3 + KMnO4 + H2SO4 -> K2Cr2O7 + MnSO4 + CO2 + KNO3 + K2SO4 + H2O",
     [10, 1176, 1399], [35, 1176, 420, 660, 223, 1879]),
]
OTHERS = [  # (equation, outcome)
    ("H2O2 + HBr -> Br2 + H2O + O2", "not_unique"),
    ("C + O2 -> CO + CO2", "not_unique"),
    ("KClO3 + HCl -> KCl + Cl2 + ClO2 + H2O", "not_unique"),
    ("H2O -> H2 + O2 + N2", "impossible"),
    ("H2 + Cl2 -> NaCl", "impossible"),
    ("NaCl -> NaCl + KCl + KBr", "impossible"),
    ("H2O + NaCl -> NaOH", "impossible"),
    ("CO -> CO2 + H2 + H2O", "impossible"),
    ("NaCl -> Na+ + Cl^2-", "impossible"),
]
TOKEN = re.compile(r"([A-Z][a-z]?)(\d*)|([(\[])|([)\]])(\d*)|(\^)?(\d*)([+-])$|[.\u00b7](\d*)")


def composition(formula):
    """Atoms by symbol, the charge under "charge"."""
    levels, factor, whole = [{}], 1, {}

    def add(target, source, times):
        for element, count in source.items():
            target[element] = target.get(element, 0) + times * count

    at = 0
    while at < len(formula):
        match = TOKEN.match(formula, at)
        if not match:
            raise ValueError(f"{formula} at {at}")
        symbol, count, opened, closed, times, _, size, sign, part = match.groups()
        if symbol:
            add(levels[-1], {symbol: 1}, int(count or 1))
        elif opened:
            levels.append({})
        elif closed:
            inner = levels.pop()
            add(levels[-1], inner, int(times or 1))
        elif sign:
            whole["charge"] = int(size or 1) * (1 if sign == "+" else -1)
        else:
            add(whole, levels[0], factor)
            levels, factor = [{}], int(part or 1)
        at = match.end()
    add(whole, levels[0], factor)
    return {element: count for element, count in whole.items() if count}


def sides(equation):
    return [[re.match(r"(?:(\d+) )?(.*)$", term).groups() for term in side.split(" + ")] for side in equation.split(" -> ")]


def columns(equation):
    """Terms as compositions, those of the right side negative, and the coefficients as written."""
    left, right = sides(equation)
    terms = [composition(name) for _, name in left]
    terms += [{e: -n for e, n in composition(name).items()} for _, name in right]
    return terms, [int(count or 1) for count, _ in left + right]


def whole_numbers(vector):
    vector = [sympy.Rational(x) for x in vector]
    scale = math.lcm(*(int(x.q) for x in vector))
    numbers = [int(x * scale) for x in vector]
    divisor = math.gcd(*numbers)
    return [n // divisor for n in numbers]


def expected(equation):
    terms, written = columns(equation)
    elements = sorted({element for term in terms for element in term})
    rows = [[term.get(element, 0) for term in terms] for element in elements]
    matrix = sympy.Matrix(rows)
    space = matrix.nullspace()
    result = {"matrix": matrix, "dimension": len(space), "solutions": None,
              "one_sided": sorted(e for e, row in zip(elements, rows) if all(x >= 0 for x in row) or all(x <= 0 for x in row)),
              "balanced": not any(matrix * sympy.Matrix(written))}
    # A solution in which every term takes part, scaled so that the least of them is 1.
    possible = linprog([1] * len(terms), A_eq=rows, b_eq=[0] * len(rows), bounds=(1, None), method="highs").status == 0
    result["outcome"] = ("unique" if len(space) == 1 else "not_unique") if possible else "impossible"
    if result["outcome"] == "unique":
        numbers = whole_numbers(space[0])
        result["solutions"] = [numbers if numbers[0] > 0 else [-n for n in numbers]]
    return result


def faults(equation, answer):
    """What the answer of the program gets wrong."""
    want = expected(equation)
    for key in ("outcome", "balanced"):
        if answer[key] != want[key]:
            yield f"{key} {answer[key]}, expected {want[key]}"
            return
    if sorted(answer["one_sided"]) != want["one_sided"]:
        yield f"on one side {answer['one_sided']}, expected {want['one_sided']}"
    found = [solution["coefficients"] for solution in answer["solutions"]]
    if want["solutions"] is not None and found != want["solutions"]:
        yield f"coefficients {found}, expected {want['solutions']}"
    if want["outcome"] == "impossible" and (found or not answer["reason"]):
        yield "impossible, but with solutions or without a reason"
    if want["outcome"] == "not_unique":
        if len(found) != want["dimension"] or sympy.Matrix(found).rank() != want["dimension"]:
            yield f"{len(found)} solutions are not {want['dimension']} independent ones"
        for solution in found:
            if any(want["matrix"] * sympy.Matrix(solution)) or min(solution) < 0 or math.gcd(*solution) != 1:
                yield f"{solution} is no solution in smallest whole numbers"


ELEMENTS = ["H", "C", "N", "O", "S", "P", "Cl", "Br", "Na", "K", "Fe", "Mn", "Cr", "Cu", "Ca", "Ce"]


def text_of(draw, atoms):
    """A formula of these atoms, written in one of several ways."""
    atoms = dict(atoms)
    charge = atoms.pop("charge", 0)
    simple = lambda counts: "".join(e + (str(n) if n > 1 else "") for e, n in counts)
    items = list(atoms.items())
    draw.shuffle(items)
    times = draw.choice([2, 3])
    inside = [(e, draw.randint(1, n // times)) for e, n in items if n >= times and draw.random() < 0.5]
    text = None
    if inside and draw.random() < 0.5:
        rest = [(e, n - times * dict(inside).get(e, 0)) for e, n in items]
        rest = [(e, n) for e, n in rest if n > 0]
        brackets = draw.choice(["()", "[]"])
        text = simple(rest) + brackets[0] + simple(inside) + brackets[1] + str(times)
    elif charge == 0 and atoms.get("H", 0) > 2 and atoms.get("O", 0) > 1 and len(atoms) > 2 and draw.random() < 0.5:
        water = draw.randint(1, min(atoms["H"] // 2, atoms["O"]))
        rest = [(e, n - water * {"H": 2, "O": 1}.get(e, 0)) for e, n in items]
        rest = [(e, n) for e, n in rest if n > 0]
        if rest:
            text = simple(rest) + draw.choice([".", "\u00b7"]) + (str(water) if water > 1 else "") + "H2O"
    if text is None:
        text = simple(items)
    if charge:
        text += "^" + (str(abs(charge)) if abs(charge) > 1 else "") + ("+" if charge > 0 else "-")
    return text


def random_atoms(draw, pool, charged):
    atoms = {element: draw.choice([1, 1, 1, 2, 2, 3, 4, 6]) for element in draw.sample(pool, draw.randint(1, min(4, len(pool))))}
    if charged and draw.random() < 0.5:
        atoms["charge"] = draw.choice([-3, -2, -1, 1, 2, 3])
    return atoms


def random_equation(seed):
    draw = random.Random(seed)
    pool = draw.sample(ELEMENTS, draw.randint(2, 6))
    charged = draw.random() < 0.3
    if seed % 3 == 0:  # thrown together
        left = [random_atoms(draw, pool, charged) for _ in range(draw.randint(1, 4))]
        right = [random_atoms(draw, pool, charged) for _ in range(draw.randint(1, 4))]
    else:  # what goes in is dealt out again; with few products in several ways at once
        left = [random_atoms(draw, pool, charged) for _ in range(draw.randint(1, 3 + seed % 3))]
        total = {}
        for atoms in left:
            times = draw.randint(1, 6)
            for element, count in atoms.items():
                total[element] = total.get(element, 0) + times * count
        right = [{} for _ in range(draw.randint(1, 4))]
        for element, count in total.items():
            part = draw.choice(right)
            if element != "charge" and draw.random() < 0.6:
                other, share = draw.choice(right), draw.randint(0, count)
                other[element] = other.get(element, 0) + share
                count -= share
            part[element] = part.get(element, 0) + count
        right = [{e: n for e, n in atoms.items() if n} for atoms in right]
        right = [atoms for atoms in right if any(e != "charge" for e in atoms)]
        lost = total.get("charge", 0) - sum(atoms.get("charge", 0) for atoms in right)
        if lost and right:
            right[0]["charge"] = right[0].get("charge", 0) + lost
        right = [{e: n for e, n in atoms.items() if n} for atoms in right]
    if not right:
        right = [{"H": 2}]
    counts = [draw.choice(["", "", "", "2 ", "3 "]) for _ in left + right]
    texts = [count + text_of(draw, atoms) for count, atoms in zip(counts, left + right)]
    return " + ".join(texts[:len(left)]) + " -> " + " + ".join(texts[len(left):])


def main(program, count="400", first="0"):
    equations = [e for e, _, _ in WELL_KNOWN] + [e for e, _ in OTHERS]
    for equation, left, right in list(WELL_KNOWN):
        a, b = sides(equation)
        equations.append(" + ".join(f"{n} {name}" for n, (_, name) in zip(left, a)) + " -> "
                         + " + ".join(f"{n} {name}" for n, (_, name) in zip(right, b)))
    equations += [random_equation(int(first) + i) for i in range(int(count))]
    known = {e: left + right for e, left, right in WELL_KNOWN}
    outcome_of = dict(OTHERS)
    wrong, outcomes = [], {}
    for equation in equations:
        done = subprocess.run([program, "balance", equation, "--format", "json"], capture_output=True, text=True, check=False)
        if done.returncode != 0:
            found = [f"exit status {done.returncode}: {done.stderr.strip()}"]
        else:
            answer = json.loads(done.stdout)
            found = list(faults(equation, answer))
            outcomes[answer["outcome"]] = outcomes.get(answer["outcome"], 0) + 1
            if equation in known and [s["coefficients"] for s in answer["solutions"]] != [known[equation]]:
                found.append(f"not the coefficients {known[equation]} that the books give")
            if equation in outcome_of and answer["outcome"] != outcome_of[equation]:
                found.append(f"{answer['outcome']} is not {outcome_of[equation]}")
        wrong += [f"{equation}: {fault}" for fault in found]
    print("\n".join(wrong))
    print(f"{len(equations)} equations, {', '.join(f'{n} {o}' for o, n in sorted(outcomes.items()))}; {len(wrong)} faults")
    # A draw in which one kind is missing proves little.
    return 1 if wrong or min(outcomes.get(o, 0) for o in ("unique", "not_unique", "impossible")) < 10 else 0


if __name__ == "__main__":
    sys.exit(main(*sys.argv[1:]))
