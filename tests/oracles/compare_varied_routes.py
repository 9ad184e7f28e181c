# SPDX-License-Identifier: MIT
"""Program and twin on shipped routes varied at random: amounts, units, yields, conversions, separations, gases, reuse.

    compare_varied_routes.py PROGRAM [COUNT [FIRST SEED]]

A varied route is chemistry nobody would do, but its ledger closes all the same and both readings must give the same
figures, or both must refuse it. Routes where reactions compete without a priority are drawn again.
"""
import copy
import json
import os
import random
import subprocess
import sys
import tempfile

import twin
from compare_with_twin import compare_route
from twin_pot import Unbounded

SOLVENT_ROLES = ["solvent", "wash", "extraction", "rinse", "antisolvent", "drown-out", "flask rinse", "recrystallisation solvent"]
OTHER_ROLES = ["quench", "neutraliser", "drying agent", "adsorbent", "catalyst", "reagent", "trace"]


TRACES = 1e-9  # per gram of product: where a trace is left over, either side may round it to nothing


# Two steps that feed each other: the ester is made from the acid and extracts the acid. Invented.
LOOP = {
    "id": "loop", "title": "Ester that extracts its acid", "product": "ethyl acetate", "source": "invented",
    "status": "designed from the equations, never run",
    "steps": [
        {"id": "acid", "title": "acid", "product": "acetic acid", "reference": "ethanol",
         "overall": "ethanol + oxygen -> acetic acid + water", "isolated": {"yield": "60 %"},
         "stages": [
             {"title": "oxidation", "phase": "reaction",
              "charges": [{"material": "ethanol 95 % by volume", "amount": "50 g", "role": "substrate"},
                          {"material": "oxygen from the air", "amount": "as used", "role": "oxidant"}],
              "reactions": [{"equation": "ethanol + oxygen -> acetic acid + water"}]},
             {"title": "extraction", "phase": "workup",
              "charges": [{"material": "ethyl acetate", "amount": "20 mL", "role": "extraction"}],
              "separations": [{"by": "extraction", "to": "water layer", "leaves": {"water": "80 %", "ethanol": "40 %"}},
                              {"by": "distillation", "to": "distillate", "leaves": ["ethyl acetate"]}]}]},
        {"id": "ester", "title": "ester", "product": "ethyl acetate", "reference": "acetic acid",
         "overall": "ethanol + acetic acid -> ethyl acetate + water", "isolated": {"yield": "60 %"},
         "stages": [
             {"title": "esterification", "phase": "reaction",
              "charges": [{"material": "ethanol", "amount": "46 g", "role": "substrate"},
                          {"material": "acetic acid", "amount": "60 g", "role": "reagent"}],
              "reactions": [{"equation": "ethanol + acetic acid -> ethyl acetate + water"}]},
             {"title": "washing", "phase": "workup",
              "charges": [{"material": "sodium chloride, saturated (brine)", "amount": "20 g", "role": "wash"}],
              "separations": [{"by": "extraction", "to": "brine", "keeps": {"acetic acid": "10 %"}, "held": "0.1 g/g"}]}]}]}


def percent(draw, low, high):
    return f"{draw.uniform(low, high):.3f} %"


def vary_charge(draw, charge, catalogue, reference_mass_only):
    text = charge["amount"]
    if text == "as used":
        return
    value, unit = text.split(" ", 1)
    value = float(value) * draw.choice([1.0, draw.uniform(0.6, 1.7)])
    charge["amount"] = f"{value:.6g} {unit}"
    material = twin.read_charge(charge, catalogue)
    single = len(material.material.components) == 1
    if not reference_mass_only and unit == "g" and single and draw.random() < 0.2:
        charge["amount"] = f"{1000 * value / material.of.molar_mass:.6g} mmol"
    elif not reference_mass_only and unit == "g" and single and draw.random() < 0.15:
        charge["amount"] = f"{draw.uniform(0.8, 2.0):.4g} eq"
    elif unit == "g" and draw.random() < 0.1:
        charge["amount"] = f"3 x {value / 3:.6g} g"
    elif unit == "g" and material.material.density and draw.random() < 0.2:
        charge["amount"] = f"{value / material.material.density:.6g} mL"
    if charge["role"] in SOLVENT_ROLES and draw.random() < 0.3:
        charge["role"] = draw.choice(SOLVENT_ROLES)
    elif charge["role"] in OTHER_ROLES[:4] and draw.random() < 0.3:
        charge["role"] = draw.choice(OTHER_ROLES)


def vary_separation(draw, separation, product):
    if "held" in separation or draw.random() < 0.3:
        separation["held"] = f"{draw.uniform(0.0, 1.5):.4g} g/g"
    if isinstance(separation.get("keeps"), list) and draw.random() < 0.4:
        separation["keeps"] = {**{name: percent(draw, 50, 100) for name in separation["keeps"] if name != product},
                               "water": percent(draw, 0, 30)}
    if separation["by"] == "filtration" and draw.random() < 0.2:
        separation["by"] = draw.choice(["decantation", "extraction"])
    separation.pop("loss", None)


def vary(raw, draw, catalogue):
    route = copy.deepcopy(raw)
    for step in route["steps"]:
        separations = []
        for stage in step["stages"]:
            for charge in stage.get("charges", []):
                vary_charge(draw, charge, catalogue, charge["material"] == step["reference"])
            for separation in stage.get("separations", []):
                vary_separation(draw, separation, step["product"])
                separations.append(separation)
            if draw.random() < 0.5:
                stage["time"] = f"{draw.uniform(5, 90):.3g} min"
            if draw.random() < 0.7:
                stage["energy"] = f"{draw.uniform(0.01, 0.5):.3g} kWh"
            if draw.random() < 0.7:
                stage["cooling_water"] = f"{draw.uniform(1, 20):.3g} L"
        step["isolated"] = {"yield": percent(draw, 20, 80)}
        if draw.random() < 0.5:
            reaction = draw.choice([r for stage in step["stages"] if stage["phase"] == "reaction" for r in stage["reactions"]])
            name = reaction["equation"].split(" -> ")[0].split(" + ")[0]
            reaction["of"] = name.split(" ", 1)[1] if name.split(" ", 1)[0].isdigit() else name
            reaction["conversion"] = percent(draw, 75, 100)
        if len(separations) > 1 and draw.random() < 0.5:
            share = draw.randint(0, 100)
            first, second = draw.sample(separations, 2)
            first["loss"], second["loss"] = f"{share} %", f"{100 - share} %"
        if step.get("dissolved") and draw.random() < 0.4:
            step["dissolved"] = []
    for link in route.get("reuse", []):
        link["fraction"] = percent(draw, 0, 100)
    return route


def main(arguments):
    program = arguments[0]
    count = int(arguments[1]) if len(arguments) > 1 else 300
    seed = int(arguments[2]) if len(arguments) > 2 else 1
    catalogue = twin.read_catalogue(os.path.join(twin.ROOT, "hazard-data"))
    shipped = [LOOP]
    for path in twin.files_of([os.path.join(twin.ROOT, "routes")]):
        with open(path, encoding="utf-8") as file:
            shipped.append(json.load(file))
    agreed, refused, again, values, faults = 0, 0, 0, 0, 0
    with tempfile.TemporaryDirectory() as folder:
        path = os.path.join(folder, "varied.json")
        while agreed + refused < count and faults < 10:
            draw = random.Random(seed)
            seed += 1
            raw = vary(draw.choice(shipped), draw, catalogue)
            try:
                expected = twin.route_figures(twin.read_route(raw, catalogue), catalogue)
            except (ValueError, ZeroDivisionError, Unbounded) as problem:
                expected = problem
            if isinstance(expected, dict) and expected["conflicts"]:
                again += 1
                continue
            with open(path, "w", encoding="utf-8") as file:
                json.dump(raw, file, indent=1)
            run = subprocess.run([program, "compare", path, "--format", "json"], capture_output=True, text=True)
            if isinstance(expected, dict) and run.returncode == 0:
                twin.add_comparison([expected], expected["id"])
                found, compared = compare_route(json.loads(run.stdout)["routes"][0], expected, TRACES)
                agreed, values = agreed + 1, values + compared
            elif not isinstance(expected, dict) and run.returncode == 1:
                found, refused = [], refused + 1
            else:
                found = [f"the twin says {expected if not isinstance(expected, dict) else 'yes'}, exit status {run.returncode}: {run.stderr[:500]}"]
            faults += bool(found)
            for fault in found:
                print(f"{raw['id']}, seed {seed - 1}: {fault}")
    print(f"{agreed} varied routes agree on {values} values, {refused} refused by both, {again} drawn again, {faults} differ")
    return 1 if faults or agreed < count / 2 else 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
