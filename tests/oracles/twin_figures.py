# SPDX-License-Identifier: MIT
"""Every mass figure of one route."""
import math

from twin_data import in_unit
from twin_hazard import hazard_figures
from twin_scale import closure, feed_back, scaled_streams, set_scales, stream_rows

REACTANT = {"substrate", "reagent", "oxidant", "reductant", "acid", "base", "reacting solvent"}
SOLVENT = {"solvent", "reacting solvent", "drown-out", "flask rinse", "wash", "extraction", "recrystallisation solvent",
           "antisolvent", "rinse", "eluent"}
DROWN_OUT = {"drown-out", "flask rinse"}
BROMINE = 2 * 79.904


def input_rows(route, credits):
    """Every component of every bought charge: gross and net grams per run of the final step, with its class."""
    rows = []
    for step in route.steps:
        left = {s.id for _, s in step.overall[0]}
        charged = {}
        for charge in step.charges:
            if not charge.feeds:
                for substance, amount in charge.amounts.items():
                    charged[substance] = charged.get(substance, 0.0) + amount
        for stage in step.stages:
            for charge in stage.charges:
                if charge.feeds:
                    continue
                single = len(charge.material.components) == 1
                for substance, _ in charge.material.components:
                    amount = charge.amounts[substance.id]
                    if charge.role in REACTANT and substance.id in left:
                        kind = "reactant"
                    elif substance.id == "water":
                        kind = "water"
                    elif substance.id in charge.material.carriers or (
                            charge.role in SOLVENT and (single or substance.phase != "solid")):
                        kind = "solvent"
                    else:
                        kind = "auxiliary"
                    gross = amount * substance.molar_mass * step.runs
                    whole = charged[substance.id] * step.runs
                    credit = credits.get((step.id, substance.id), 0.0) / whole if whole else 0.0
                    rows.append(dict(step=step, phase=stage.phase, role=charge.role, substance=substance, kind=kind,
                                     neat=all(part.id != "water" for part, _ in charge.material.components), gross=gross, net=gross * (1.0 - credit)))
    return rows


def net_equation(route, catalogue):
    """Atom counts of the whole route: inputs gross, inputs net, by-products left, in mol per mol of product."""
    gross, net, right = {}, {}, {}
    for step in route.steps:
        fed = {c.feeds.product for c in step.charges if c.feeds}
        for count, substance in step.overall[0]:
            if substance.id not in fed:
                gross[step.id, substance.id] = gross.get((step.id, substance.id), 0.0) + count * step.turns
        for count, substance in step.overall[1]:
            if substance.id != step.product:
                right[step.id, substance.id] = right.get((step.id, substance.id), 0.0) + count * step.turns
    net = dict(gross)
    for link in route.raw.get("reuse", []):
        substance = catalogue.substance(link["substance"]).id
        source, to = (link["from"]["step"], substance), (link["to"], substance)
        both = min(right.get(source, 0.0), net.get(to, 0.0))
        if both > 0:
            right[source] -= both
            net[to] -= both
    return gross, net, right


def overall_yield(route):
    """Product of the step yields along the longest chain of steps; None where steps feed each other in a loop."""
    known = {}

    def chain(step, above):
        if step.id in above:
            return None
        if step.id not in known:
            before = [chain(c.feeds, above | {step.id}) for c in step.charges if c.feeds]
            if None in before:
                return None
            length, best = max(before, key=lambda pair: (pair[0], -pair[1]), default=(0, 1.0))
            known[step.id] = length + 1, best * step.isolated / step.theory
        return known[step.id]
    found = chain(route.final, frozenset())
    return 100.0 * found[1] if found else None


def bench_figures(route, product_mass):
    """Energy, water, time, volumes and turnovers: only where the file states what they need."""
    figures = {}
    for figure, key, dimension, unit in (("energy_intensity", "energy", "energy", 1e3),
                                         ("cooling_water_intensity", "cooling_water", "volume", 1.0),
                                         ("time_intensity", "time", "time", 3600.0)):
        stated = [[in_unit(stage.raw[key], dimension) for stage in step.stages if key in stage.raw] for step in route.steps]
        # A smaller batch uses less heat and water and takes as long.
        figures[figure] = (sum((1.0 if key == "time" else step.runs) * sum(values) for step, values in zip(route.steps, stated))
                           / unit / product_mass if all(stated) else None)
    for figure in ("space_time_yield", "volume_productivity", "turnover_number", "turnover_frequency"):
        figures[figure] = None
    if len(route.steps) > 1:
        return figures
    step = route.final

    def volume(charges):
        liquids = [c for c in charges if len(c.material.components) > 1 or c.material.components[0][0].phase == "liquid"]
        return sum(c.mass / c.material.density for c in liquids) if all(c.material.density for c in liquids) else None
    reacting = [stage for stage in step.stages if stage.phase == "reaction"]
    times = [in_unit(stage.raw["time"], "time") for stage in reacting if "time" in stage.raw]
    hours = sum(times) / 3600.0 if times else None
    mixture = volume([c for stage in reacting for c in stage.charges])
    if hours and mixture:
        figures["space_time_yield"] = product_mass / (mixture / 1000.0 * hours)
    running, largest = [], 0.0
    for stage in step.stages:
        running += stage.charges
        here = volume(running)
        largest = None if here is None or largest is None else max(largest, here)
        if any(s["by"] in ("filtration", "decantation", "extraction", "distillation") for s in stage.separations):
            running = []
    if largest:
        figures["volume_productivity"] = product_mass / (largest / 1000.0)
    catalyst = sum(c.amounts[c.of.id] for c in step.charges if c.role == "catalyst")
    if catalyst:
        figures["turnover_number"] = step.isolated / catalyst
        if hours:
            figures["turnover_frequency"] = figures["turnover_number"] / hours
    return figures


def equation_figures(route, catalogue):
    """What stands on the overall equations alone."""
    entry = catalogue.substances[route.final.product]
    gross, net, by_products = net_equation(route, catalogue)

    def weight(amounts):
        return sum(n * catalogue.substances[s].molar_mass for (_, s), n in amounts.items())
    ae = 100.0 * entry.molar_mass / weight(net)
    figures = {"atom_economy": ae, "atom_economy_gross": 100.0 * entry.molar_mass / weight(gross),
               "atom_economy_with_coproduct": None, "stoichiometric_e_factor": 100.0 / ae - 1.0}
    coproducts = {catalogue.substance(c["substance"]).id for c in route.raw.get("coproducts", [])}
    if coproducts:
        kept = weight({key: n for key, n in by_products.items() if key[1] in coproducts})
        figures["atom_economy_with_coproduct"] = 100.0 * (entry.molar_mass + kept) / weight(net)
    for name, element in (("carbon", "C"), ("bromine", "Br"), ("nitrogen", "N"), ("chlorine", "Cl")):
        taken = sum(n * catalogue.substances[s].atoms.get(element, 0) for (_, s), n in net.items())
        held = entry.atoms.get(element, 0)
        figures[name + "_economy"] = 100.0 * held / taken if held and taken else None
    return figures


def reactant_figures(route, catalogue, rows, product, ae):
    """What counts reactants only, as charged."""
    atoms = catalogue.substances[route.final.product].atoms
    reacting = [r for r in rows if r["kind"] == "reactant"]
    reactants = sum(r["gross"] for r in reacting)
    carbon = sum(r["gross"] / r["substance"].molar_mass * r["substance"].atoms.get("C", 0) for r in reacting)
    needed = 0.0
    for step in route.steps:
        fed = {c.feeds.product for c in step.charges if c.feeds}
        made = sum(n for n, s in step.overall[1] if s.id == step.product)
        needed += step.runs * step.theory / made * sum(n * s.molar_mass for n, s in step.overall[0] if s.id not in fed)
    factor, rme = reactants / needed, 100.0 * product / reactants
    return {"carbon_efficiency": 100.0 * route.final.isolated * atoms["C"] / carbon if atoms.get("C") and carbon else None,
            "stoichiometric_factor": factor, "reaction_mass_efficiency": rme, "experimental_atom_economy": ae / factor,
            "optimum_efficiency": 100.0 * rme / ae, "reactants_e_factor": reactants / product - 1.0}


def input_figures(catalogue, rows, product):
    """Waste and mass intensity, from what enters, net of what is fed back."""
    def share(which="net", **wanted):
        return sum(r[which] for r in rows if all(r[key] in values for key, values in wanted.items())) / product
    inputs, water = share(), share(kind=["water"])
    harmful = sum(r["net"] for r in rows if r["substance"].id not in catalogue.benign) / product
    figures = {
        "waste_per_run": (inputs - 1.0) * product,
        "effective_mass_yield": 100.0 / harmful if harmful else None,
        "simple_e_factor": share(kind=["reactant", "auxiliary"]) - 1.0,
        "e_factor_without_water": inputs - water - 1.0, "complete_e_factor": inputs - 1.0,
        "process_mass_intensity": inputs, "process_mass_intensity_gross": share("gross"), "mass_intensity": inputs - water,
        "pmi_reactants_reagents_catalysts": share(kind=["reactant"]) + share(kind=["auxiliary"], phase=["reaction"]),
        "pmi_reaction_solvent": share(kind=["solvent"], phase=["reaction"]),
        "pmi_workup_and_purification": share(kind=["solvent", "auxiliary"], phase=["workup", "purification"]),
        "pmi_water": water, "pmi_without_drown_out_and_rinse": inputs - share(role=DROWN_OUT),
        "mass_productivity": 100.0 / inputs, "solvent_intensity": share(kind=["solvent"]), "water_intensity": water}
    for phase in ("reaction", "workup", "purification"):
        figures[f"pmi_{phase}_stages"] = share(phase=[phase])
    return figures


def bromine_figures(route, rows, product):
    """Bromine poured from a bottle, carried inside a reagent, and free in the flask at most; as Br2."""
    moles = [(row["substance"], row["gross"] / row["substance"].molar_mass) for row in rows]
    found = {"bromine_handled": sum(n for s, n in moles if s.id == "bromine"),
             "bromine_carried": sum(n * s.carried for s, n in moles),
             "bromine_ceiling": max(step.runs * step.nominal.ceiling for step in route.steps)}
    return {name: n * BROMINE / product for name, n in found.items()}


def add_comparison(records, baseline):
    """What needs the other route: the mass intensity with the baseline's auxiliaries, and the yield that evens it out."""
    if len(records) == 1:
        records[0]["figures"].update(same_auxiliaries_process_mass_intensity=None, break_even_yield=None)
        return
    base = next(r for r in records if r["id"] == baseline)
    added = base["figures"]["process_mass_intensity"] - base["figures"]["pmi_without_drown_out_and_rinse"]
    for record in records:
        figures = record["figures"]
        # The baseline's auxiliaries per mole of theoretical product, for this route's theoretical product.
        same = (figures["pmi_without_drown_out_and_rinse"]
                + added * base["product_per_theory"] / record["product_per_theory"])
        figures["same_auxiliaries_process_mass_intensity"] = same
        even = record is not base and figures["yield"] is not None
        figures["break_even_yield"] = figures["yield"] * same / base["figures"]["process_mass_intensity"] if even else None


def route_figures(route, catalogue):
    """The record of one route: figures by id, streams, closure, hazard intervals."""
    set_scales(route, catalogue)
    final = route.final
    molar_mass = catalogue.substances[final.product].molar_mass
    product = final.isolated * molar_mass
    streams, kinds = scaled_streams(route, "nominal")
    unreacted, unreacted_kinds = scaled_streams(route, "unreacted")
    credits = feed_back(route, catalogue, streams, unreacted)
    rows = input_rows(route, credits)
    grams = {key: {s: n * catalogue.substances[s].molar_mass for s, n in amounts.items()} for key, amounts in streams.items()}

    overall = overall_yield(route)
    figures = {"yield": overall, "theoretical_yield": 100.0 * product / overall if overall else None, "isolated_mass": product}
    figures.update(equation_figures(route, catalogue))
    figures.update(reactant_figures(route, catalogue, rows, product, figures["atom_economy"]))
    figures.update(input_figures(catalogue, rows, product))
    figures["waste_water_intensity"] = sum(
        sum(masses.values()) for key, masses in grams.items()
        if kinds[key] in ("liquid", "rest") and masses.get("water", 0.0) > 0.5 * sum(masses.values())) / product
    figures.update(bench_figures(route, product))
    figures.update(bromine_figures(route, rows, product))

    largest = {}
    for step in route.steps:
        for substance, amount in step.nominal.maxima.items():
            largest[substance] = max(largest.get(substance, 0.0), amount * step.runs)

    # Entries of solutions are those of aqueous ones.
    wet = {step.id for step in route.steps if "water" in step.nominal.maxima}
    in_water = {s for step in route.steps if step.id in wet for s in step.nominal.maxima}

    def per_gram(amounts, neat):
        return [(catalogue.substances[s], neat(s), n * catalogue.substances[s].molar_mass / product) for s, n in amounts.items()]

    def waste(all_streams, all_kinds):
        return [item for key, amounts in all_streams.items()
                for item in per_gram(amounts, lambda _: all_kinds[key] in ("gas", "vapour") or key[0] not in wet)]
    hazard, extras = hazard_figures([(r["substance"], r["neat"], r["gross"] / product) for r in rows], per_gram(largest, lambda s: s not in in_water),
                                    waste(streams, kinds), waste(unreacted, unreacted_kinds), catalogue.bandings)
    figures.update({name: value for name, (value, _, _) in hazard.items()})
    both = [(step, reading, getattr(step, reading)) for step in route.steps for reading in ("nominal", "unreacted")]
    return {
        "id": route.id, "figures": figures,
        "intervals": {name: [low, high if math.isfinite(high) else None] for name, (_, low, high) in hazard.items()},
        "robustness": extras,
        "product_per_theory": final.isolated / final.theory,
        "streams": stream_rows(catalogue, (streams, kinds), (unreacted, unreacted_kinds)),
        "closure": closure(route, catalogue),
        "complete_e_from_outputs": sum(m for masses in grams.values() for m in masses.values()) / product,
        "extents": [{"step": step.id, "reading": reading, "stage": stage, "reactions": reactions}
                    for step, reading, run in both for stage, reactions in run.all_extents],
        "conflicts": [{"step": step.id, "reading": reading, "stage": stage, "reaction": reaction}
                      for step, reading, run in both for stage, reaction in run.conflicts]}
