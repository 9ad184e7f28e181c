# SPDX-License-Identifier: MIT
"""One step worked through in its pot: joint extents by a small dense simplex, separations, streams."""
from types import SimpleNamespace

from twin_data import in_unit, parse_equation

EPSILON = 1e-11


class Conflict(Exception):
    """Reactions compete for a substance that runs out, and nothing says which goes first."""


class Unbounded(Exception):
    """Reactions undo each other, so no greatest extent exists."""


def simplex(rows, limits, objectives):
    """x >= 0 with rows x <= limits (limits >= 0), the objectives maximised one after the other (Bland's rule)."""
    count, size = len(objectives[0]), len(rows)
    scale = max(limits, default=0.0) or 1.0
    table = [list(map(float, row)) + [float(i == j) for j in range(size)] + [limit / scale]
             for i, (row, limit) in enumerate(zip(rows, limits))]
    costs = [[-float(c) for c in objective] + [0.0] * (size + 1) for objective in objectives]
    basis = [count + i for i in range(size)]
    closed = [False] * (count + size)
    for cost in costs:
        while True:
            enter = next((j for j in range(count + size) if not closed[j] and cost[j] < -EPSILON), None)
            if enter is None:
                break
            leave, best = None, None
            for i, row in enumerate(table):
                if row[enter] > EPSILON:
                    ratio = row[-1] / row[enter]
                    if best is None or ratio < best - 1e-15 or (ratio <= best and basis[i] < basis[leave]):
                        leave, best = i, ratio
            if leave is None:
                raise Unbounded
            pivot = table[leave]
            factor = pivot[enter]
            pivot[:] = [value / factor for value in pivot]
            for row in [*table, *costs]:
                if row is not pivot and row[enter]:
                    times = row[enter]
                    row[:] = [a - times * b for a, b in zip(row, pivot)]
                    row[enter] = 0.0
            for i in range(size):
                table[i][-1] = max(table[i][-1], 0.0)
            basis[leave] = enter
        # What would lower this objective may not enter for the sake of a later one.
        closed = [c or value > EPSILON for c, value in zip(closed, cost)]
    x = [0.0] * (count + size)
    for i, column in enumerate(basis):
        x[column] = table[i][-1] * scale
    return x[:count]


def startable(reactions, pot, endless):
    """Reactions that what stands in the pot can start, by forward reachability."""
    there = {s for s, n in pot.items() if n > 0} | endless
    going, grew = [], True
    while grew:
        grew = False
        for reaction in reactions:
            if reaction not in going and all(s in there for s in reaction.uses):
                going.append(reaction)
                there |= set(reaction.change)
                grew = True
    return [r for r in reactions if r in going]


def pot_rows(going, pot, endless, full):
    """No substance below nothing, and no reaction beyond its conversion."""
    rows, limits = [], []
    for substance in dict.fromkeys(s for r in going for s in r.change):
        if substance in endless:
            continue
        row = [-r.change.get(substance, 0) for r in going]
        if any(value > 0 for value in row):
            rows.append(row)
            limits.append(pot.get(substance, 0.0))
    for reaction in going:
        if reaction.conversion < 1 and not full:
            of, share = reaction.of, reaction.conversion
            row = [-share * r.makes.get(of, 0) for r in going]
            row[going.index(reaction)] += reaction.uses[of]
            rows.append(row)
            limits.append(share * pot.get(of, 0.0))
    return rows, limits


def joint_extents(going, rows, limits):
    """The greatest point, lexicographic where priorities say so; sharing reactions first run in their ratio."""
    count, shared = len(going), [i for i, r in enumerate(going) if r.split]
    # The last column is t: a sharing reaction runs split * t plus whatever the others leave it afterwards.
    wide = [row + [sum(row[i] * going[i].split for i in shared)] for row in rows]
    levels = sorted({r.priority for r in going if r.priority is not None})
    objectives = [[0.0] * count + [1.0]] if shared else []
    objectives += [[float(r.priority == level) for r in going] + [0.0] for level in levels]
    everything = [1.0] * count + [float(sum(going[i].split for i in shared))]
    found = simplex(wide, limits, objectives + [everything])
    extents = [found[i] + (going[i].split * found[-1] if going[i].split else 0.0) for i in range(count)]
    for i, reaction in enumerate(going):
        if reaction.split or reaction.priority is not None:
            continue
        alone = simplex(wide, limits, objectives + [[float(j == i) for j in range(count)] + [0.0]])[i]
        if alone > extents[i] + 1e-9 * max(extents):
            raise Conflict(reaction.text)
    return extents


def read_reaction(raw, catalogue):
    left, right = parse_equation(raw["equation"], catalogue)
    uses, makes = {}, {}
    for side, terms in ((uses, left), (makes, right)):
        for count, substance in terms:
            side[substance.id] = side.get(substance.id, 0) + count
    change = {s: makes.get(s, 0) - uses.get(s, 0) for s in {**uses, **makes}}
    return SimpleNamespace(
        text=raw["equation"], uses=uses, makes=makes, change=change, priority=raw.get("priority"), split=raw.get("split"),
        conversion=in_unit(raw["conversion"], "fraction") if "conversion" in raw else 1.0,
        of=catalogue.substance(raw["of"]).id if "of" in raw else None)


LIQUID = {"filtration", "decantation", "extraction", "distillation"}
KIND = {**{by: "liquid" for by in LIQUID}, "drying": "vapour", "evaporation": "vapour", "sublimation": "vapour"}


def leaving_shares(separation, pot, product, catalogue):
    """Fraction of every substance of the pot that the separation takes out; the product stays."""
    def listed(value):
        if isinstance(value, dict):
            return {catalogue.substance(name).id: in_unit(share, "fraction") for name, share in value.items()}
        return {catalogue.substance(name).id: 1.0 for name in value}
    if "keeps" in separation:
        kept = listed(separation["keeps"])
        shares = {s: 1.0 - kept.get(s, 0.0) for s in pot}
    elif "leaves" in separation:
        gone = listed(separation["leaves"])
        shares = {s: gone.get(s, 0.0) for s in pot}
    else:
        shares = {s: float(catalogue.substances[s].phase in ("liquid", "gas")) for s in pot}
    shares[product] = 0.0
    return shares


class Run:
    """One passage through the step: what left, what formed, the largest amounts on the way."""

    def __init__(self, step, catalogue, reading, isolated=None, made=None):
        self.streams, self.kinds, self.formed, self.used_from_air = {}, {}, 0.0, {}
        self.maxima, self.ceiling, self.conflicts, self.all_extents = {}, 0.0, [], []
        self.step, self.catalogue, self.reading = step, catalogue, reading
        self.mass = lambda s: catalogue.substances[s].molar_mass
        self.pot = {}
        lost = made - isolated if reading == "nominal" and made is not None else 0.0
        last = [s for stage in step.stages for s in stage.separations if s["by"] in LIQUID]
        shares = {id(s): in_unit(s["loss"], "fraction") for stage in step.stages for s in stage.separations if "loss" in s}
        remainder = 1.0 - sum(shares.values())
        if last:
            shares[id(last[-1])] = shares.get(id(last[-1]), 0.0) + remainder
            remainder = 0.0
        for stage in step.stages:
            self.work(stage, isolated if reading == "unreacted" else None)
            for separation in stage.separations:
                self.separate(separation, lost * shares.get(id(separation), 0.0))
        left = dict(self.pot)
        spare = left.pop(step.product, 0.0) - (isolated or self.formed)
        if isolated and spare > 1e-12 * isolated:
            left[step.product] = spare
        self.add(step.rest, "rest", {s: n for s, n in left.items() if n > 0})

    def add(self, name, kind, amounts):
        amounts = {s: n for s, n in amounts.items() if n}
        if amounts:
            stream = self.streams.setdefault(name, {})
            self.kinds.setdefault(name, kind)
            for substance, amount in amounts.items():
                stream[substance] = stream.get(substance, 0.0) + amount

    def work(self, stage, cap):
        step, pot = self.step, self.pot
        endless = set()
        for charge in stage.charges:
            for substance, amount in charge.amounts.items():
                if amount is None:
                    endless.add(substance)
                else:
                    pot[substance] = pot.get(substance, 0.0) + amount
        going = startable(stage.reactions, pot, endless)
        before = dict(pot)
        if going:
            rows, limits = pot_rows(going, pot, endless, self.reading == "theory")
            if cap is not None:
                rows.append([r.change.get(step.product, 0) for r in going])
                limits.append(max(0.0, cap - self.formed))
            try:
                extents = joint_extents(going, rows, limits)
            except Conflict as conflict:
                self.conflicts.append((stage.title, str(conflict)))
                extents = simplex(rows, limits, [[float(i == j) for j in range(len(going))] for i in range(len(going))])
            self.all_extents.append((stage.title, [(r.text, x) for r, x in zip(going, extents)]))
            for substance in endless:
                used = -sum(r.change.get(substance, 0) * x for r, x in zip(going, extents))
                before[substance] = pot[substance] = pot.get(substance, 0.0) + used
                self.used_from_air[substance] = self.used_from_air.get(substance, 0.0) + used
            turned_over = {}
            for reaction, extent in zip(going, extents):
                for substance, change in reaction.change.items():
                    pot[substance] = pot.get(substance, 0.0) + change * extent
                    turned_over[substance] = turned_over.get(substance, 0.0) + abs(change) * extent
            for substance, amount in turned_over.items():
                if abs(pot[substance]) < 1e-12 * amount:
                    pot[substance] = 0.0  # used up, but for rounding
        if self.reading == "nominal":
            self.find_maxima(going, before)
        self.formed += pot.get(step.product, 0.0) - before.get(step.product, 0.0)
        gone = {s: n - before.get(s, 0.0) for s, n in pot.items()
                if self.catalogue.substances[s].phase == "gas" and s not in step.dissolved and n > before.get(s, 0.0)}
        for substance, amount in gone.items():
            pot[substance] -= amount
        self.add(step.gas, "gas", gone)

    def find_maxima(self, going, before):
        """The most of each substance, and of oxidising bromine, that can be there at once in this stage."""
        rows, limits = pot_rows(going, before, set(), False)
        free = {s: self.catalogue.substances[s].free for s in {*before, *(s for r in going for s in r.change)}}

        def most(weights):
            start = sum(weights.get(s, 0) * n for s, n in before.items())
            gain = [sum(weights.get(s, 0) * c for s, c in r.change.items()) for r in going]
            if not any(g > 0 for g in gain):
                return start
            return start + sum(g * x for g, x in zip(gain, simplex(rows, limits, [gain])))

        for substance in free:
            self.maxima[substance] = max(self.maxima.get(substance, 0.0), most({substance: 1}))
        self.ceiling = max(self.ceiling, most({s: f for s, f in free.items() if f}))

    def separate(self, separation, loss):
        step, pot, mass = self.step, self.pot, self.mass
        kind = KIND[separation["by"]]
        if loss > 0:
            pot[step.product] -= loss
            self.add(separation["to"], kind, {step.product: loss})
        shares = leaving_shares(separation, pot, step.product, self.catalogue)
        out = {s: shares[s] * n for s, n in pot.items() if shares[s] > 0 and n > 0}
        if "held" in separation:
            liquor = sum(n * mass(s) for s, n in out.items())
            kept = sum((n - out.get(s, 0.0)) * mass(s) for s, n in pot.items())
            held = min(in_unit(separation["held"], "ratio") * kept, liquor)
            if liquor > 0:
                out = {s: n * (1.0 - held / liquor) for s, n in out.items()}
        for substance, amount in out.items():
            pot[substance] -= amount
        self.add(separation["to"], kind, out)
