# SPDX-License-Identifier: MIT
"""How often each step runs, what is fed back, the streams of the whole route, and whether every gram is there."""
from twin_data import in_unit


def solve(matrix, right):
    """Gaussian elimination with row exchange."""
    size = len(right)
    table = [list(map(float, row)) + [value] for row, value in zip(matrix, right)]
    for i in range(size):
        best = max(range(i, size), key=lambda r: abs(table[r][i]))
        table[i], table[best] = table[best], table[i]
        for r in range(size):
            if r != i and table[r][i]:
                times = table[r][i] / table[i][i]
                table[r] = [a - times * b for a, b in zip(table[r], table[i])]
    return [table[i][-1] / table[i][i] for i in range(size)]


def set_scales(route, catalogue):
    """Runs of every step per run of the final one, by mass (bench) and by equation (per mole of product)."""
    steps, size = route.steps, len(route.steps)
    by_mass = [[0.0] * size for _ in steps]
    by_equation = [[0.0] * size for _ in steps]
    goal_mass, goal_equation = [0.0] * size, [0.0] * size
    for k, step in enumerate(steps):
        made = sum(n for n, s in step.overall[1] if s.id == step.product)
        by_mass[k][k] = step.isolated
        by_equation[k][k] = float(made)
        if step is route.final:
            goal_mass[k], goal_equation[k] = step.isolated, 1.0
    for j, step in enumerate(steps):
        fed = {id(c.feeds): c.feeds for c in step.charges if c.feeds}
        for charge in step.charges:
            if charge.feeds:
                by_mass[steps.index(charge.feeds)][j] -= charge.amounts[charge.feeds.product]
        for maker in fed.values():
            by_equation[steps.index(maker)][j] -= sum(n for n, s in step.overall[0] if s.id == maker.product)
    for step, runs, turns in zip(steps, solve(by_mass, goal_mass), solve(by_equation, goal_equation)):
        if runs < 0:
            raise ValueError(f"route {route.id}: the steps use more of {step.product} than they make")
        step.runs, step.turns = runs, turns


def scaled_streams(route, reading):
    """{(step id, stream): {substance: mol per run of the final step}} and the kind of each stream."""
    streams, kinds = {}, {}
    for step in route.steps:
        run = getattr(step, reading)
        for name, amounts in run.streams.items():
            streams[step.id, name] = {s: n * step.runs for s, n in amounts.items()}
            kinds[step.id, name] = run.kinds[name]
    return streams, kinds


def feed_back(route, catalogue, nominal, unreacted):
    """Takes what `reuse` feeds back out of the streams; returns the credits by (step id, substance).

    The same amount in both readings, so that the inputs are the same, and never more than either stream holds.
    """
    credits = {}
    for link in route.raw.get("reuse", []):
        substance = catalogue.substance(link["substance"]).id
        source, to = (link["from"]["step"], link["from"]["stream"]), next(s for s in route.steps if s.id == link["to"])
        charged = sum(c.amounts.get(substance, 0.0) for c in to.charges if not c.feeds) * to.runs
        held = [streams.get(source, {}).get(substance, 0.0) for streams in (nominal, unreacted)]
        credit = min(in_unit(link["fraction"], "fraction") * held[0], held[1], charged - credits.get((to.id, substance), 0.0))
        credits[to.id, substance] = credits.get((to.id, substance), 0.0) + credit
        if credit > 0:
            for streams in (nominal, unreacted):
                streams[source][substance] -= credit
    return credits


def closure(route, catalogue):
    """Largest relative difference between what enters and what leaves a step, by mass and by element."""
    worst = 0.0
    for step in route.steps:
        for run in (step.nominal, step.unreacted):
            into, out, total = {}, {}, 0.0
            for charge in step.charges:
                for substance, amount in charge.amounts.items():
                    # What is taken from the air follows the reading that the figures use.
                    if charge.raw["amount"] == "as used":
                        amount = run.used_from_air.get(substance, 0.0)
                    into[substance] = into.get(substance, 0.0) + amount
            for amounts in run.streams.values():
                for substance, amount in amounts.items():
                    out[substance] = out.get(substance, 0.0) + amount
            out[step.product] = out.get(step.product, 0.0) + step.isolated
            sums = {"mass": [0.0, 0.0]}
            for side, amounts in enumerate((into, out)):
                for substance, amount in amounts.items():
                    entry = catalogue.substances[substance]
                    sums["mass"][side] += amount * entry.molar_mass
                    for element, count in entry.atoms.items():
                        sums.setdefault(element, [0.0, 0.0])[side] += count * amount
            for before, after in sums.values():
                total = max(before, after)
                worst = max(worst, abs(before - after) / total if total else 0.0)
    return worst


def stream_rows(catalogue, *readings):
    """Streams as the program prints them: grams by substance in both readings, per run of the final step."""
    rows = []
    for step, name in dict.fromkeys(key for streams, _ in readings for key in streams):
        amounts = [streams.get((step, name), {}) for streams, _ in readings]
        weigh = lambda s, n: n.get(s, 0.0) * catalogue.substances[s].molar_mass
        substances = {catalogue.substances[s].name: [weigh(s, n) for n in amounts] for s in dict.fromkeys([*amounts[0], *amounts[1]])}
        rows.append({"step": step, "name": name, "kind": next(kinds[step, name] for _, kinds in readings if (step, name) in kinds),
                     "grams": sum(nominal for nominal, _ in substances.values()), "substances": substances})
    return rows
