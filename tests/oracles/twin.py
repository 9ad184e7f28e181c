# SPDX-License-Identifier: MIT
"""Independent reading of route files: every figure of `routeweigh compare`, as JSON.

    twin.py ROUTE... > figures.json

The first route is the baseline. An oracle for the tests, written from the description of the route format and never from the C++ sources. A ROUTE is a
file or a folder of files; hazard-data/ is looked for beside tests/.
"""
import json
import os
import sys
from types import SimpleNamespace

from twin_data import Catalogue, in_unit, parse_equation, quantity
from twin_figures import add_comparison, route_figures
from twin_hazard import Banding
from twin_pot import Run, read_reaction

ROOT = os.path.dirname(os.path.dirname(os.path.dirname(os.path.abspath(__file__))))


def read_charge(raw, catalogue):
    material = catalogue.material(raw["material"])
    solutes = [s for s, _ in material.components if s.id not in material.carriers]
    of = catalogue.substance(raw["of"]) if "of" in raw else (solutes[0] if len(solutes) == 1 else None)
    return SimpleNamespace(raw=raw, material=material, role=raw["role"], of=of, feeds=None, amounts={}, mass=None)


def weigh(charge, reference_moles):
    """Grams of the material, and moles of every substance in it."""
    text = charge.raw["amount"]
    if text == "as used":
        charge.amounts = {s.id: None for s, _ in charge.material.components}
        return
    dimension, value = quantity(text)
    share = next((w for s, w in charge.material.components if s is charge.of), None)
    if dimension == "mass":
        charge.mass = value
    elif dimension == "volume":
        charge.mass = value * charge.material.density
    else:
        moles = value if dimension == "amount" else value * reference_moles
        charge.mass = moles * charge.of.molar_mass / share
    for substance, fraction in charge.material.components:
        charge.amounts[substance.id] = charge.amounts.get(substance.id, 0.0) + charge.mass * fraction / substance.molar_mass


def read_step(raw, catalogue):
    step = SimpleNamespace(
        id=raw["id"], raw=raw, product=catalogue.substance(raw["product"]).id, rest=raw.get("rest", "residue"),
        gas=raw.get("gas", "gas"), dissolved={catalogue.substance(n).id for n in raw.get("dissolved", [])}, stages=[],
        overall=parse_equation(raw["overall"], catalogue))
    for stage in raw["stages"]:
        step.stages.append(SimpleNamespace(
            title=stage["title"], phase=stage["phase"], raw=stage, separations=stage.get("separations", []),
            charges=[read_charge(c, catalogue) for c in stage.get("charges", [])],
            reactions=[read_reaction(r, catalogue) for r in stage.get("reactions", [])]))
    charges = [c for stage in step.stages for c in stage.charges]
    relative = [c for c in charges if c.raw["amount"] != "as used" and quantity(c.raw["amount"])[0] == "equivalents"]
    for charge in charges:
        if charge not in relative:
            weigh(charge, None)
    reference = catalogue.substance(raw["reference"]).id
    moles = sum(c.amounts.get(reference) or 0.0 for c in charges if c not in relative and c.of and c.of.id == reference)
    for charge in relative:
        weigh(charge, moles)
    step.charges = charges
    return step


def work_step(step, catalogue):
    """Theory, both readings of the isolated yield, and the amounts that follow."""
    molar_mass = catalogue.substances[step.product].molar_mass
    step.theory = Run(step, catalogue, "theory").formed
    isolated = step.raw["isolated"]
    step.isolated = (in_unit(isolated["yield"], "fraction") * step.theory if "yield" in isolated
                     else in_unit(isolated["mass"], "mass") / molar_mass)
    step.made = Run(step, catalogue, "nominal").formed
    if step.isolated > step.made * (1 + 1e-9):
        raise ValueError(f"step {step.id}: more isolated than forms")
    step.nominal = Run(step, catalogue, "nominal", step.isolated, step.made)
    step.unreacted = Run(step, catalogue, "unreacted", step.isolated, step.made)
    for charge in step.charges:
        if charge.mass is None:
            charge.amounts = {s: step.nominal.used_from_air.get(s, 0.0) for s in charge.amounts}
            charge.mass = sum(n * catalogue.substances[s].molar_mass for s, n in charge.amounts.items())


def read_route(raw, catalogue):
    route = SimpleNamespace(raw=raw, id=raw["id"], steps=[read_step(s, catalogue) for s in raw["steps"]])
    makers = {step.product: step for step in route.steps}
    for step in route.steps:
        for charge in step.charges:
            components = charge.material.components
            if len(components) == 1 and not charge.raw.get("bought"):
                maker = makers.get(components[0][0].id)
                charge.feeds = maker if maker is not step else None
        work_step(step, catalogue)
    product = catalogue.substance(raw["product"]).id
    route.final = makers[product]
    return route


def read_catalogue(folder):
    catalogue = Catalogue(folder)
    scheme = lambda name: os.path.join(folder, "schemes", name + ".json")
    catalogue.bandings = [Banding(scheme("niosh_2019_132")), Banding(scheme("hse_ilo"))]
    with open(scheme("benign"), encoding="utf-8") as file:
        catalogue.benign = set(json.load(file)["substances"])
    return catalogue


def files_of(arguments):
    for argument in arguments:
        if os.path.isdir(argument):
            yield from sorted(os.path.join(folder, name) for folder, _, names in os.walk(argument) for name in names
                              if name.endswith(".json") and not name.endswith(".schema.json"))
        else:
            yield argument


def main(arguments):
    catalogue = read_catalogue(os.path.join(ROOT, "hazard-data"))
    routes = []
    for path in files_of(arguments):
        with open(path, encoding="utf-8") as file:
            routes.append(route_figures(read_route(json.load(file), catalogue), catalogue))
    add_comparison(routes, routes[0]["id"])
    json.dump({"routes": routes}, sys.stdout, indent=1)
    print()


if __name__ == "__main__":
    main(sys.argv[1:])
