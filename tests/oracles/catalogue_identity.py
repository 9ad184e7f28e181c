# SPDX-License-Identifier: MIT
"""What a substance is: names, CAS number, formula, molar mass, structure, phase and physical data."""
import re

from openbabel import openbabel, pybel
from rdkit import Chem
from rdkit.Chem import Descriptors

# IUPAC 2021 abridged standard atomic weights (Prohaska et al., Pure Appl. Chem. 2022, 94, 573), from memory.
# A bracketed interval of that table is represented by its conventional value.
WEIGHTS = {"H": 1.008, "Li": 6.94, "B": 10.81, "C": 12.011, "N": 14.007, "O": 15.999, "F": 18.998, "Na": 22.990,
           "Mg": 24.305, "Al": 26.982, "Si": 28.085, "P": 30.974, "S": 32.06, "Cl": 35.45, "K": 39.098, "Ca": 40.078,
           "V": 50.942, "Cr": 51.996, "Mn": 54.938, "Fe": 55.845, "Co": 58.933, "Ni": 58.693, "Cu": 63.546,
           "Zn": 65.38, "Br": 79.904, "Pd": 106.42, "Sn": 118.71, "I": 126.90, "Ce": 140.12, "W": 183.84}

TOLERANCE = 0.01  # g/mol between our molar mass and that of a toolkit

# The toolkits carry older atomic weights. Where that alone lifts the molar mass past the tolerance, the substance
# stands here with the elements to blame; only their difference is then forgiven, and an entry that is not needed fails.
OLDER_WEIGHTS = {
    "carbon-tetrachloride": ["Cl"], "thionyl-chloride": ["S", "Cl"], "iron-chloride-hexahydrate": ["Cl"],
    "p-toluenesulfonyl-chloride": ["S", "Cl"], "thiamine-hydrochloride": ["S", "Cl"], "thiamine": ["S", "Cl"],
    "sodium-thiosulfate": ["S"], "sodium-thiosulfate-pentahydrate": ["S"], "sodium-metabisulfite": ["S"],
    "sodium-tetrathionate": ["S"], "potassium-peroxymonosulfate-triple-salt": ["S"], "zinc": ["Zn"],
}

NO_FORMULA = {"petroleum-ether": "a distillation cut of alkanes has no single formula"}
NO_SMILES = {"petroleum-ether": "a distillation cut of alkanes has no structure",
             "xylene": "a mixture of three isomers of one formula"}
# Melting and boiling points that seem to contradict the phase at 25 C.
ODD_PHASE = {}

TOKEN = re.compile(r"([A-Z][a-z]?)(\d*)|(\()|(\))(\d*)")


def atoms_of(formula):
    """Atom counts; a dot parts the pieces of a hydrate, a leading integer multiplies its piece."""
    total = {}
    for part in formula.split("."):
        lead = re.match(r"\d+", part)
        times = int(lead.group()) if lead else 1
        stack, at = [{}], lead.end() if lead else 0
        if at == len(part):
            raise ValueError("empty part in " + formula)
        while at < len(part):
            token = TOKEN.match(part, at)
            if token is None:
                raise ValueError("cannot read %s at %d" % (formula, at))
            at = token.end()
            if token.group(1):
                stack[-1][token.group(1)] = stack[-1].get(token.group(1), 0) + int(token.group(2) or 1)
            elif token.group(3):
                stack.append({})
            else:
                inner = stack.pop()
                for element, count in inner.items():
                    stack[-1][element] = stack[-1].get(element, 0) + count * int(token.group(5) or 1)
        if len(stack) != 1:
            raise ValueError("unbalanced bracket in " + formula)
        for element, count in stack[0].items():
            total[element] = total.get(element, 0) + times * count
    return total


def hill_form(atoms):
    order = sorted(atoms)
    if "C" in atoms:
        order = ["C"] + ["H"] * ("H" in atoms) + [element for element in order if element not in ("C", "H")]
    return "".join(element + (str(atoms[element]) if atoms[element] > 1 else "") for element in order)


def cas_is_valid(cas):
    """CAS registry check digit: the last digit is the weighted sum of the others, right to left, modulo 10."""
    digits = cas.replace("-", "")
    return sum(place * int(digit) for place, digit in enumerate(reversed(digits[:-1]), 1)) % 10 == int(digits[-1])


def rdkit_reading(smiles):
    molecule = Chem.MolFromSmiles(smiles)
    if molecule is None:
        return None, None, {}, 0
    table = Chem.GetPeriodicTable()
    atoms = {}
    for atom in Chem.AddHs(molecule).GetAtoms():
        atoms[atom.GetSymbol()] = atoms.get(atom.GetSymbol(), 0) + 1
    weights = {element: table.GetAtomicWeight(element) for element in atoms}
    return atoms, Descriptors.MolWt(molecule), weights, Chem.GetFormalCharge(molecule)


def open_babel_reading(smiles):
    try:
        molecule = pybel.readstring("smi", smiles)
    except OSError:
        return None, None, {}, 0
    mass, charge = molecule.molwt, molecule.charge
    molecule.OBMol.AddHydrogens()
    atoms = {}
    for atom in molecule.atoms:
        symbol = openbabel.GetSymbol(atom.atomicnum)
        atoms[symbol] = atoms.get(symbol, 0) + 1
    weights = {element: openbabel.GetMass(openbabel.GetAtomicNum(element)) for element in atoms}
    return atoms, mass, weights, charge


def check_structure(report, substance):
    name, mass = substance["id"], substance["molar_mass_g_per_mol"]
    try:
        atoms = atoms_of(substance["formula"])
    except ValueError as error:
        report.check(False, "%s: %s" % (name, error))
        return
    unknown = sorted(set(atoms) - set(WEIGHTS))
    if not report.check(not unknown, "%s: no atomic weight for %s" % (name, ", ".join(unknown))):
        return
    own = sum(WEIGHTS[element] * count for element, count in atoms.items())
    report.check(abs(own - mass) <= 0.0006, "%s: molar mass %s, formula gives %.3f" % (name, mass, own))
    if "." not in substance["formula"]:
        report.check(substance["formula"] == hill_form(atoms), "%s: %s is not in Hill order" % (name, substance["formula"]))
    if "formula_common" in substance:
        common = substance["formula_common"]
        report.check(atoms_of(common) == atoms, "%s: %s is not %s" % (name, common, substance["formula"]))
    if "smiles" not in substance:
        report.check(name in NO_SMILES, "%s: no SMILES and no reason why" % name)
        return
    forgiven_was_needed = name not in OLDER_WEIGHTS
    for toolkit, reading in (("RDKit", rdkit_reading), ("Open Babel", open_babel_reading)):
        seen, seen_mass, weights, charge = reading(substance["smiles"])
        if not report.check(seen is not None, "%s: %s cannot read %s" % (name, toolkit, substance["smiles"])):
            continue
        report.check(seen == atoms, "%s: %s counts %s, formula is %s" % (name, toolkit, hill_form(seen), substance["formula"]))
        report.check(charge == 0, "%s: %s sees charge %+d" % (name, toolkit, charge))
        difference = abs(seen_mass - mass)
        if name in OLDER_WEIGHTS:
            forgiven_was_needed |= difference > TOLERANCE
            difference = abs(seen_mass - mass - sum((weights[element] - WEIGHTS[element]) * atoms[element]
                                                    for element in OLDER_WEIGHTS[name]))
        report.check(difference <= TOLERANCE, "%s: %s gives %.4f g/mol, catalogue %s" % (name, toolkit, seen_mass, mass))
    report.check(forgiven_was_needed, "%s: OLDER_WEIGHTS names it without need" % name)


def check_physical(report, substance):
    name, phase = substance["id"], substance["phase_at_25C"]
    melting, boiling = substance.get("melting_point_C"), substance.get("boiling_point_C")
    if melting is not None and boiling is not None:
        report.check(melting < boiling, "%s: melts at %s and boils at %s" % (name, melting, boiling))
    if "decomposes_C" in substance:
        report.check(melting is None and boiling is None, "%s: falls apart, and melts or boils" % name)
        report.check(phase == "solid" and substance["decomposes_C"] > 25, "%s: falls apart before it is weighed" % name)
    if "flash_point_C" in substance and boiling is not None:
        report.check(substance["flash_point_C"] < boiling, "%s: flash point above boiling point" % name)
    if name not in ODD_PHASE:
        if melting is not None and phase != "gas":
            report.check((melting > 25) == (phase == "solid"), "%s: %s, but melts at %s" % (name, phase, melting))
        if boiling is not None:
            report.check((boiling < 25) == (phase == "gas"), "%s: %s, but boils at %s" % (name, phase, boiling))
    report.check(not (phase == "gas" and "density_g_per_mL" in substance), "%s: a gas with a liquid's density" % name)
    for field in ("free_bromine", "carried_bromine"):
        if field in substance:
            bromine = atoms_of(substance["formula"]).get("Br", 0)
            # N-bromosuccinimide carries Br(+1), worth one Br2 against bromide; the others hold the molecule itself.
            report.check(bromine >= (2 if field == "free_bromine" else 1) * substance[field], "%s: too little bromine for %s" % (name, field))


def check(report, substances):
    ids, words, numbers = {}, {}, {}
    for substance in substances:
        name = substance["id"]
        report.check(name not in ids, "%s: id given twice" % name)
        ids[name] = substance
        for word in [substance["name"]] + substance["synonyms"]:
            folded = " ".join(word.lower().split())
            report.check(folded not in words, "%s: \"%s\" also names %s" % (name, word, words.get(folded)))
            words[folded] = name
        if "cas" in substance:
            report.check(cas_is_valid(substance["cas"]), "%s: CAS %s fails its check digit" % (name, substance["cas"]))
            report.check(substance["cas"] not in numbers, "%s: CAS %s is also %s" % (name, substance["cas"], numbers.get(substance["cas"])))
            numbers[substance["cas"]] = name
        if "formula" in substance:
            check_structure(report, substance)
        else:
            report.check(name in NO_FORMULA and substance.get("is_mixture"), "%s: no formula and no reason why" % name)
        check_physical(report, substance)
    for table in (OLDER_WEIGHTS, NO_FORMULA, NO_SMILES, ODD_PHASE):
        for name in table:
            report.check(name in ids, "exception for %s, which is not in the catalogue" % name)
