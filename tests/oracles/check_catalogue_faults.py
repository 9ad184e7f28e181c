#!/usr/bin/env python3
# SPDX-License-Identifier: MIT
"""Plant faults in a copy of hazard-data/ and make sure that check_catalogue.py finds each of them."""
import json
import shutil
import subprocess
import sys
import tempfile
from pathlib import Path

HERE = Path(__file__).resolve().parent
DATA = HERE.parents[1] / "hazard-data"


def substance(document, name):
    return next(entry for entry in document["substances"] if entry["id"] == name)


def material(document, name):
    return next(entry for entry in document["materials"] if entry["id"] == name)


def spoil_structure(document):
    substance(document, "acetanilide")["smiles"] = "CC(=O)Nc1ccc(C)cc1"


# (what, file, how to break it, words the report must hold)
FAULTS = [
    ("a wrong CAS digit", "substances.json", lambda d: substance(d, "bromine").update(cas="7726-95-5"), "check digit"),
    ("a wrong formula", "substances.json", lambda d: substance(d, "4-bromoacetanilide").update(formula="C8H9BrNO"), "RDKit counts"),
    ("a wrong structure", "substances.json", spoil_structure, "Open Babel counts"),
    ("a wrong molar mass", "substances.json", lambda d: substance(d, "urea").update(molar_mass_g_per_mol=60.1), "molar mass"),
    ("a statement of another class", "substances.json", lambda d: substance(d, "ethanol")["ghs"][0].update(h="H226"), "Flam. Liq."),
    ("a missing source", "substances.json", lambda d: substance(d, "water")["sources"].pop("density_g_per_mL"), "has no source"),
    ("a wrong phase", "substances.json", lambda d: substance(d, "benzil").update(phase_at_25C="liquid"), "benzil: liquid"),
    ("a name used twice", "substances.json", lambda d: substance(d, "urea")["synonyms"].append("Bromine"), "also names bromine"),
    ("an unknown field", "substances.json", lambda d: substance(d, "urea").update(densty=1.3), "densty"),
    ("classes with no-data", "substances.json", lambda d: substance(d, "urea").update(ghs_status="no-data"), "/substances/"),
    ("a wrong index number", "substances.json", lambda d: substance(d, "benzene")["annex_vi"].update(index_no="601-020-00-7"), "index number"),
    ("fractions above 1", "materials.json", lambda d: material(d, "hydrobromic-acid-48")["components"][0].update(mass_fraction=0.84), "sum to 1.36"),
    ("an unknown component", "materials.json", lambda d: material(d, "acetic-acid-50")["components"][0].update(id="acetic"), "no substance acetic"),
    ("a wrong molarity", "materials.json", lambda d: material(d, "sodium-hydroxide-2m").update(molarity_mol_per_L=3), "works out at"),
    ("a slipped density", "materials.json", lambda d: material(d, "hydrochloric-acid-37").update(density_g_per_mL=1.815) or
     material(d, "hydrogen-peroxide-30").update(density_g_per_mL=1.911), "density far"),
    ("a band without a row", "schemes/niosh_2019_132.json", lambda d: d["rows"].pop(4), "H315"),
    ("a statement in two endpoints", "schemes/hazard_score.json", lambda d: d["endpoints"][5]["lower"].append("H315"), "stands under"),
    ("a classified benign input", "schemes/benign.json", lambda d: d["substances"].append("ethanol"), "is classified"),
]


def run(folder):
    result = subprocess.run([sys.executable, str(HERE / "check_catalogue.py"), "--data", str(folder)], capture_output=True, text=True)
    return result.returncode, result.stdout + result.stderr


def main():
    failures = 0
    for what, name, break_it, words in FAULTS:
        with tempfile.TemporaryDirectory() as temporary:
            folder = Path(temporary) / "hazard-data"
            shutil.copytree(DATA, folder)
            document = json.loads((folder / name).read_text(encoding="utf-8"))
            break_it(document)
            (folder / name).write_text(json.dumps(document), encoding="utf-8")
            status, output = run(folder)
        if status != 1 or words not in output or "Traceback" in output:
            failures += 1
            print("FAIL %s was not reported (status %d): %s" % (what, status, output.strip()[-300:]))
    status, output = run(DATA)
    if status != 0:
        failures += 1
        print("FAIL the catalogue as it stands: " + output.strip()[-300:])
    if failures:
        return 1
    print("%d checks passed" % (len(FAULTS) + 1))
    return 0


if __name__ == "__main__":
    sys.exit(main())
