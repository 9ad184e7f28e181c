# SPDX-License-Identifier: MIT
"""Draws of every figure of one-step routes, in blocks of NumPy arrays: a second opinion and a yardstick.

    numpy_twin.py DRAWS ROUTE... > numpy.json

Written from the description of the format on top of the plain-Python reading. Each stage keeps the basis that is
optimal at the amounts as written; what is left is products of small matrices with blocks of draws, which NumPy does at
its best. Where two reactants are so close that in some draws the other one limits (A2, A2b, A6, A7a, and rarely A1),
figures that depend on it differ from the program's, which asks anew in every draw: it does more for its time. The other
routes must agree (tests/oracles/check_draws.py). Needs Debian's python3-numpy.
"""
import json
import pathlib
import sys
import time

import numpy as np

ROOT = pathlib.Path(__file__).resolve().parents[2]
sys.path.insert(0, str(ROOT / "tests" / "oracles"))
import twin  # noqa: E402  (found through the path above)
from twin_figures import DROWN_OUT, equation_figures, input_rows  # noqa: E402
from twin_hazard import ENDPOINTS, PLACES, SCALE, per_gram  # noqa: E402
from twin_pot import LIQUID, Run, leaving_shares, pot_rows, simplex, startable  # noqa: E402

BLOCK = 1000  # draws at a time: the arrays of a route then stay in the cache
BROMINE = 2 * 79.904


def tight_basis(rows, limits, x):
    """Which columns are not 0 and which rows hold them: x[columns] = inverse @ limits[chosen]."""
    rows, limits, x = np.array(rows, float), np.array(limits, float), np.array(x)
    columns = np.flatnonzero(x > 1e-14)
    scale = max(limits.max(initial=0.0), 1e-300)
    chosen = []
    for row in np.argsort(limits - rows @ x):
        if limits[row] - rows[row] @ x > 1e-9 * scale or len(chosen) == len(columns):
            break
        if np.linalg.matrix_rank(rows[chosen + [row]][:, columns]) == len(chosen) + 1:
            chosen.append(row)
    assert len(chosen) == len(columns)
    return columns, chosen, np.linalg.inv(rows[chosen][:, columns]) if len(columns) else np.zeros((0, 0))


class StagePlan:
    """A stage as matrices: pot -> extents, for each reading, and pot -> greatest amounts."""

    def __init__(self, route, stage, nominal, capped, order, catalogue):
        self.reactions = startable(stage.reactions, nominal, set())
        self.change = np.array([[r.change.get(s, 0) for r in self.reactions] for s in order], float)
        self.order, self.stage = order, stage
        self.free, self.capped = self.plan(nominal, None, route), self.plan(nominal, capped, route)
        self.gases = [i for i, s in enumerate(order)
                      if catalogue.substances[s].phase == "gas" and s not in route.dissolved]
        self.most = [self.ceiling({s: 1.0}, nominal) for s in order]
        free = {s: catalogue.substances[s].free for s in order if catalogue.substances[s].free}
        self.bromine = self.ceiling(free, nominal) if free else None
        self.most = np.array(self.most)

    def limit_rows(self, nominal):
        """Rows and limits of the pot, and the limits as a matrix of the pot."""
        rows, limits = pot_rows(self.reactions, {s: nominal.get(s, 0.0) for s in self.order}, set(), False)
        touched = [s for s in dict.fromkeys(s for r in self.reactions for s in r.change)
                   if any(r.change.get(s, 0) < 0 for r in self.reactions)]
        of_pot = np.zeros((len(rows), len(self.order)))
        for row, substance in enumerate(touched):
            of_pot[row, self.order.index(substance)] = 1.0
        return rows, limits, of_pot

    def plan(self, nominal, cap, route):
        if not self.reactions:
            return None
        rows, limits, of_pot = self.limit_rows(nominal)
        if cap is not None:
            rows = rows + [[r.change.get(route.product, 0) for r in self.reactions]]
            limits = limits + [cap]
        x = simplex(rows, limits, [[1.0] * len(self.reactions)])
        columns, chosen, inverse = tight_basis(rows, limits, x)
        from_cap = np.zeros(len(self.reactions))
        from_pot = np.zeros((len(self.reactions), len(self.order)))
        for k, row in enumerate(chosen):
            if row < len(of_pot):
                from_pot[columns] += np.outer(inverse[:, k], of_pot[row])
            else:
                from_cap[columns] += inverse[:, k]
        return self.change @ from_pot, self.change @ from_cap

    def ceiling(self, weights, nominal):
        """The most of a weighted sum of substances, as weights of the pot before the stage reacts."""
        start = np.array([weights.get(s, 0.0) for s in self.order])
        gain = start @ self.change if self.reactions else np.zeros(0)
        if not (gain > 0).any():
            return start
        rows, limits, of_pot = self.limit_rows(nominal)
        x = simplex(rows, limits, [list(gain)])
        columns, chosen, inverse = tight_basis(rows, limits, x)
        return start + gain[columns] @ inverse @ of_pot[chosen]

    def react(self, pot, cap):
        if not self.reactions:
            return pot
        if cap is None:
            return pot + self.free[0] @ pot
        return pot + self.capped[0] @ pot + np.outer(self.capped[1], cap)


class RoutePlan:
    """A one-step route as a function of blocks of charged masses, bottle strengths and yields."""

    def __init__(self, path, catalogue, instruments):
        raw = json.loads(pathlib.Path(path).read_text(encoding="utf-8"))
        self.route = route = twin.read_route(raw, catalogue)
        self.record = twin.route_figures(route, catalogue)
        (self.step,) = route.steps
        self.catalogue, self.id = catalogue, route.id
        step = self.step
        self.order = list(dict.fromkeys(
            [step.product] + [s for c in step.charges for s in c.amounts] +
            [s for stage in step.stages for r in stage.reactions for s in r.change]))
        self.mass = np.array([catalogue.substances[s].molar_mass for s in self.order])
        self.theory, self.isolated, self.made = step.theory, step.isolated, step.made
        self.plan_stages()
        self.plan_inputs(raw, instruments)
        self.plan_figures()

    def plan_stages(self):
        """Carries both readings through at the amounts as written, to find the basis of each stage."""
        self.stages = []
        pot, cap = {}, self.isolated
        for stage in self.step.stages:
            for charge in stage.charges:
                for substance, amount in charge.amounts.items():
                    pot[substance] = pot.get(substance, 0.0) + amount
            plan = StagePlan(self.step, stage, pot, cap, self.order, self.catalogue)
            self.stages.append(plan)
            now = np.array([pot.get(s, 0.0) for s in self.order])
            after = plan.react(now, None)
            cap = max(0.0, cap - (after[0] - now[0]))
            for gas in plan.gases:
                after[gas] = min(after[gas], now[gas])
            pot = {s: max(0.0, n) for s, n in zip(self.order, after)}
            for separation in stage.separations:
                shares, held = self.separation(separation, pot)
                after = np.array([pot[s] for s in self.order])
                after -= after * shares * self.leaving(after, shares, held)
                pot = dict(zip(self.order, after))
        for plan in self.stages:
            everything = {s: 0.0 for s in self.order}
            plan.separations = [(s, *self.separation(s, everything)) for s in plan.stage.separations]
        last = [s for plan in self.stages for s in plan.stage.separations if s["by"] in LIQUID]
        self.loss = {id(s): twin.in_unit(s["loss"], "fraction")
                     for plan in self.stages for s in plan.stage.separations if "loss" in s}
        if last:
            self.loss[id(last[-1])] = self.loss.get(id(last[-1]), 0.0) + 1.0 - sum(self.loss.values())
        self.names = list(dict.fromkeys([s["to"] for plan in self.stages for s in plan.stage.separations] +
                                        [self.step.gas, self.step.rest]))
        run = self.step.nominal
        self.kinds = [run.kinds.get(n, "rest") for n in self.names]

    def separation(self, separation, pot):
        shares = leaving_shares(separation, pot, self.step.product, self.catalogue)
        held = twin.in_unit(separation["held"], "ratio") if "held" in separation else 0.0
        return np.array([shares.get(s, 0.0) for s in self.order]), held

    def leaving(self, pot, shares, held):
        if not held:
            return 1.0
        grams = pot * (self.mass if pot.ndim == 1 else self.mass[:, None])
        liquor = shares @ grams
        kept = grams.sum(axis=0) - liquor
        return np.maximum(0.0, 1.0 - held * kept / np.where(liquor > 0, liquor, np.inf))

    def plan_inputs(self, raw, instruments):
        """What varies: a reading for every charge, the instruments' own errors and the strengths of bottles."""
        with_ = raw.get("measured_with", {})
        self.charges = self.step.charges
        self.grams = np.array([c.mass for c in self.charges])
        self.reading, self.own = np.zeros(len(self.charges)), []
        solvents = {"solvent", "reacting solvent", "drown-out", "flask rinse", "wash", "extraction",
                    "recrystallisation solvent", "antisolvent", "rinse", "eluent"}
        for k, charge in enumerate(self.charges):
            poured = charge.role in solvents and charge.material.density and "liquids" in with_
            name = with_.get("liquids" if poured else "masses")
            if name is None:
                continue
            entry = instruments[name]
            density = charge.material.density if poured else 1.0
            fillings = max(1, np.ceil(charge.mass / density / entry["capacity"]))
            rounding = entry.get("division", 0.0) / np.sqrt(12.0)
            repeat = entry.get("repeatability", 0.0)
            one = (np.hypot(entry.get("division", 0.0) / 4, repeat) if poured
                   else np.sqrt(2.0) * np.hypot(rounding, repeat))
            self.reading[k] = np.sqrt(fillings) * one * density
            if "tolerance" in entry:
                self.own.append((name, k, entry["tolerance"] * fillings * density))
            if "relative_tolerance" in entry:
                self.own.append((name + " %", k, entry["relative_tolerance"] * charge.mass))
        self.bottles = []
        for bottle in raw.get("bottles", []):
            material = self.catalogue.material(bottle["material"])
            half = float(bottle["strength"].split("+/-")[1].split("%")[0]) / 100.0
            self.bottles.append((material.name, half))
        self.inflows = [(k, s, w) for k, c in enumerate(self.charges) for s, w in c.material.components]
        self.fractions = np.array([w for _, _, w in self.inflows])
        self.of_charge = np.array([k for k, _, _ in self.inflows])
        self.to_pot = {}
        for plan in self.stages:
            matrix = np.zeros((len(self.order), len(self.inflows)))
            for i, (k, s, _) in enumerate(self.inflows):
                if self.charges[k] in plan.stage.charges:
                    matrix[self.order.index(s.id), i] = 1.0 / s.molar_mass
            plan.charged = matrix
        self.strength = []
        for name, half in self.bottles:
            column = np.zeros(len(self.inflows))
            for i, (k, s, w) in enumerate(self.inflows):
                material = self.charges[k].material
                if material.name == name:
                    active = [f for a, f in material.components if a.id not in material.carriers][0]
                    column[i] = half if s.id not in material.carriers else -half * w / (1.0 - active)
            self.strength.append((name, column))

    def plan_figures(self):
        """Sums over the inflows by figure, and hazard per gram by substance."""
        rows = input_rows(self.route, {})
        assert len(rows) == len(self.inflows)
        def pick(test):
            return np.array([1.0 if test(r) else 0.0 for r in rows])
        atoms = lambda r: r["substance"].atoms.get("C", 0) / r["substance"].molar_mass
        self.sums = np.array([
            pick(lambda r: True), pick(lambda r: r["kind"] == "water"), pick(lambda r: r["kind"] == "reactant"),
            pick(lambda r: r["kind"] == "reactant" or r["kind"] == "auxiliary"), pick(lambda r: r["kind"] == "solvent"),
            pick(lambda r: r["substance"].id not in self.catalogue.benign),
            pick(lambda r: r["kind"] == "reactant" or (r["kind"] == "auxiliary" and r["phase"] == "reaction")),
            pick(lambda r: r["kind"] == "solvent" and r["phase"] == "reaction"),
            pick(lambda r: r["kind"] in ("solvent", "auxiliary") and r["phase"] != "reaction"),
            pick(lambda r: r["phase"] == "reaction"), pick(lambda r: r["phase"] == "workup"),
            pick(lambda r: r["phase"] == "purification"), pick(lambda r: r["role"] in DROWN_OUT),
            np.array([atoms(r) if r["kind"] == "reactant" else 0.0 for r in rows]),
            np.array([BROMINE / r["substance"].molar_mass if r["substance"].id == "bromine" else 0.0 for r in rows]),
            np.array([BROMINE * r["substance"].carried / r["substance"].molar_mass for r in rows])])
        overall = self.step.overall
        self.needed = sum(n * s.molar_mass for n, s in overall[0]) / sum(
            n for n, s in overall[1] if s.id == self.step.product)
        self.fixed = equation_figures(self.route, self.catalogue)
        self.hours = sum(twin.in_unit(s.raw["time"], "time") for s in self.step.stages
                         if s.phase == "reaction" and "time" in s.raw) / 3600.0
        banding = self.catalogue.bandings[0]
        def per(substance, neat, end):
            found = per_gram(substance, neat, banding)
            return [min(found[e][end], 1e300) for e in ENDPOINTS]
        entries = [self.catalogue.substances[s] for s in self.order]
        self.hazard_bottle = np.array([per(s, len(self.charges[k].material.components) == 1, 0)
                                       for k, s, _ in self.inflows]).T
        self.hazard_liquor = np.array([per(s, False, 0) for s in entries]).T
        self.hazard_neat = np.array([per(s, True, 0) for s in entries]).T
        self.high_bottle = np.array([per(s, len(self.charges[k].material.components) == 1, 1)
                                     for k, s, _ in self.inflows]).T
        self.high_liquor = np.array([per(s, False, 1) for s in entries]).T
        self.high_neat = np.array([per(s, True, 1) for s in entries]).T
        self.x0 = np.array([SCALE[e] for e in ENDPOINTS])[:, None]
        self.volumes = np.array([1.0 / c.material.density if c.material.density and (
            len(c.material.components) > 1 or c.material.components[0][0].phase == "liquid") else 0.0
            for c in self.charges])

    def sample(self, rng, shared, size):
        """Blocks of grams by charge and of fractions by inflow; `shared` keeps what routes have in common."""
        grams = self.grams[:, None] + self.reading[:, None] * rng.standard_normal((len(self.grams), size))
        for name, k, half in self.own:
            if name not in shared:
                shared[name] = rng.uniform(-1.0, 1.0, size)
            grams[k] += half * shared[name]
        np.maximum(grams, 0.0, out=grams)
        fractions = self.fractions[:, None]
        for name, column in self.strength:
            if name not in shared:
                shared[name] = rng.uniform(-1.0, 1.0, size)
            fractions = fractions + np.outer(column, shared[name])
        return grams, fractions

    def run(self, inflows, reading, lost, cap):
        """One passage: streams (name, substance, draw) in mol, what formed, the largest amounts."""
        size = inflows.shape[1]
        pot = np.zeros((len(self.order), size))
        kept = reading != "formation"
        streams = np.zeros((len(self.names), len(self.order), size)) if kept else None
        formed, most, bromine = np.zeros(size), np.zeros_like(pot), np.zeros(size)
        gas = self.names.index(self.step.gas)
        for plan in self.stages:
            pot = pot + plan.charged @ inflows
            if reading == "nominal":
                np.maximum(most, plan.most @ pot, out=most)
                if plan.bromine is not None:
                    np.maximum(bromine, plan.bromine @ pot, out=bromine)
            before = pot
            pot = plan.react(pot, None if cap is None else np.maximum(0.0, cap - formed))
            formed = formed + pot[0] - before[0]
            if plan.reactions:
                for g in plan.gases:
                    left = np.maximum(0.0, pot[g] - before[g])
                    pot[g] -= left
                    if kept:
                        streams[gas, g] += left
            for separation, shares, held in plan.separations:
                to = self.names.index(separation["to"])
                share = self.loss.get(id(separation), 0.0)
                if lost is not None and share:
                    pot[0] -= share * lost
                    if kept:
                        streams[to, 0] += share * lost
                gone = pot * shares[:, None] * self.leaving(pot, shares, held)
                pot = pot - gone
                if kept:
                    streams[to] += gone
        if kept:
            streams[self.names.index(self.step.rest), 1:] += pot[1:]
        return streams, formed, most, bromine

    def evaluate(self, grams, fractions):
        """(figure, draw) of everything that the comparison lists."""
        inflows = grams[self.of_charge] * fractions
        _, made, _, _ = self.run(inflows, "formation", None, None)
        isolated = self.isolated / self.theory * made
        streams, _, most, bromine = self.run(inflows, "nominal", made - isolated, None)
        unreacted, _, _, _ = self.run(inflows, "unreacted", None, isolated)
        product = isolated * self.mass[0]
        sums = self.sums @ inflows / product
        (inputs, water, reactants, aids, solvents, harmful, part1, part2, part3, phase1, phase2, phase3, drown,
         carbon, handled, carried) = sums
        factor = reactants * product / (self.needed * made)
        rme = 100.0 / reactants
        masses = streams * self.mass[:, None]
        w = self.order.index("water") if "water" in self.order else None
        waste_water = np.zeros_like(product)
        for n, kind in enumerate(self.kinds):
            if kind in ("liquid", "rest") and w is not None:
                total = masses[n].sum(axis=0)
                waste_water += np.where(masses[n, w] > 0.5 * total, total, 0.0)
        volumes = self.volumes @ grams
        out = [100.0 * isolated / made, made * self.mass[0], product, (inputs - 1.0) * product,
               100.0 * 8 / (carbon * self.mass[0]), factor, rme, self.fixed["atom_economy"] / factor,
               100.0 * rme / self.fixed["atom_economy"], 100.0 / harmful, reactants - 1.0, aids - 1.0,
               inputs - water - 1.0, inputs - 1.0, inputs, inputs, inputs - water, 100.0 / inputs, part1, part2, part3,
               water, phase1, phase2, phase3, inputs - drown, solvents, waste_water / product, handled, carried,
               bromine * BROMINE / product, product / volumes]
        neat = [n for n, kind in enumerate(self.kinds) if kind in ("gas", "vapour")]
        liquid = [n for n in range(len(self.kinds)) if n not in neat]
        values, lows, highs = [], [], []
        flask = most * self.mass[:, None] / product
        for low, high, amount in ((self.hazard_bottle, self.high_bottle, inflows / product),
                                  (self.hazard_liquor, self.high_liquor, flask)):
            values.append(low @ amount)
            lows.append(values[-1])
            highs.append(high @ amount)
        both = []
        for reading in (masses, unreacted * self.mass[:, None]):
            l, v = reading[liquid].sum(axis=0) / product, reading[neat].sum(axis=0) / product
            both.append((self.hazard_liquor @ l + self.hazard_neat @ v, self.high_liquor @ l + self.high_neat @ v))
        values.append(both[0][0])
        lows.append(np.minimum(both[0][0], both[1][0]))
        highs.append(np.maximum(both[0][1], both[1][1]))
        # A little below nothing is where a draw would have needed another basis.
        scores = [np.mean([np.log10(1.0 + np.maximum(v, 0.0) / self.x0).mean(axis=0) for v in group], axis=0)
                  for group in (values, lows, highs)]
        return out + [row for group in values for row in group] + scores[:1]


NAMES = ["yield", "theoretical_yield", "isolated_mass", "waste_per_run", "carbon_efficiency", "stoichiometric_factor",
         "reaction_mass_efficiency", "experimental_atom_economy", "optimum_efficiency", "effective_mass_yield",
         "reactants_e_factor", "simple_e_factor", "e_factor_without_water", "complete_e_factor",
         "process_mass_intensity", "process_mass_intensity_gross", "mass_intensity", "mass_productivity",
         "pmi_reactants_reagents_catalysts", "pmi_reaction_solvent", "pmi_workup_and_purification", "pmi_water",
         "pmi_reaction_stages", "pmi_workup_stages", "pmi_purification_stages", "pmi_without_drown_out_and_rinse",
         "solvent_intensity", "waste_water_intensity", "bromine_handled", "bromine_carried", "bromine_ceiling",
         "of_volume", *(f"{e}_{p}" for p in PLACES for e in ENDPOINTS), "hazard_score"]


def main(draws, paths):
    catalogue = twin.read_catalogue(str(ROOT / "hazard-data"))
    listed = json.loads((ROOT / "hazard-data" / "schemes" / "instruments.json").read_text(encoding="utf-8"))["instruments"]
    instruments = {entry["name"]: entry for entry in listed}
    plans = [RoutePlan(path, catalogue, instruments) for path in twin.files_of(paths)]
    rng = np.random.default_rng(1)
    sampling = evaluation = summing = 0.0
    first = {plan.id: np.zeros((2, len(NAMES))) for plan in plans}
    blocks = max(1, draws // BLOCK)
    numbers = 0
    for _ in range(blocks):
        start = time.perf_counter()
        shared = {}
        inputs = [plan.sample(rng, shared, BLOCK) for plan in plans]
        numbers = sum(len(plan.grams) for plan in plans) + len(shared)
        sampled = time.perf_counter()
        figures = [plan.evaluate(*block) for plan, block in zip(plans, inputs)]
        evaluated = time.perf_counter()
        for plan, rows in zip(plans, figures):
            rows = np.array(rows)
            first[plan.id] += [rows.sum(axis=1), (rows**2).sum(axis=1)]
        summed = time.perf_counter()
        sampling += sampled - start
        evaluation += evaluated - sampled
        summing += summed - evaluated
    count = blocks * BLOCK
    result = {"draws": count, "inputs": numbers, "sampling_seconds": sampling, "evaluation_seconds": evaluation,
              "summing_seconds": summing, "routes": {}}
    for plan in plans:
        mean = first[plan.id][0] / count
        deviation = np.sqrt(np.maximum(0.0, first[plan.id][1] / count - mean**2))
        result["routes"][plan.id] = {name: {"written": plan.record["figures"].get(name), "mean": m, "deviation": d}
                                     for name, m, d in zip(NAMES, mean, deviation)}
    json.dump(result, sys.stdout, indent=1)
    print()


if __name__ == "__main__":
    main(int(sys.argv[1]), sys.argv[2:])
