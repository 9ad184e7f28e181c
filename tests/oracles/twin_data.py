# SPDX-License-Identifier: MIT
"""Catalogue, formulas, equations and written quantities, as the independent reading of the route files needs them.

Plain Python 3.11, written from the description of the route format and never from the C++ sources.
"""
import functools
import glob
import json
import os
import re
from types import SimpleNamespace

# IUPAC standard atomic weights 2021, abridged to five digits (read in the catalogue's reference; Ce, W, V, Co and the
# other metals from memory of the same table).
WEIGHTS = dict(
    H=1.008, Li=6.94, B=10.81, C=12.011, N=14.007, O=15.999, F=18.998, Na=22.990, Mg=24.305, Al=26.982, Si=28.085,
    P=30.974, S=32.06, Cl=35.45, K=39.098, Ca=40.078, V=50.942, Cr=51.996, Mn=54.938, Fe=55.845, Co=58.933, Ni=58.693,
    Cu=63.546, Zn=65.38, Br=79.904, Pd=106.42, Ag=107.87, Sn=118.71, I=126.90, Ce=140.12, W=183.84, Hg=200.59, Pb=207.2)

TOKEN = re.compile(r"([A-Z][a-z]?)(\d*)|([(\[])|([)\]])(\d*)")


def parse_formula(text):
    """Atoms of a formula: groups, nested brackets, and parts joined by a dot that may open with a number."""
    total = {}
    for part in re.split(r"[.\u00b7]", text):
        lead = re.match(r"\d+", part)
        times, part = (int(lead.group()), part[lead.end():]) if lead else (1, part)
        stack, position = [{}], 0
        while position < len(part):
            token = TOKEN.match(part, position)
            if not token:
                raise ValueError(f"formula {text}")
            position = token.end()
            if token.group(1):
                stack[-1][token.group(1)] = stack[-1].get(token.group(1), 0) + int(token.group(2) or 1)
            elif token.group(3):
                stack.append({})
            else:
                inner = stack.pop()
                for element, count in inner.items():
                    stack[-1][element] = stack[-1].get(element, 0) + count * int(token.group(5) or 1)
        for element, count in stack[0].items():
            total[element] = total.get(element, 0) + times * count
    return total


def fold(name):
    return " ".join(name.lower().split())


class Catalogue:
    """Substances and materials of hazard-data, found by name, synonym, CAS number, identifier or unique formula."""

    def __init__(self, folder):
        raw = {"substances": [], "materials": []}
        for path in sorted(glob.glob(os.path.join(folder, "*.json"))):
            with open(path, encoding="utf-8") as file:
                content = json.load(file)
            for kind in raw:
                raw[kind] += content.get(kind, [])
        self.substances, self.names, self.material_names, formulas = {}, {}, {}, {}
        for entry in raw["substances"]:
            atoms = parse_formula(entry["formula"]) if entry.get("formula") else {}
            mass = sum(WEIGHTS[e] * n for e, n in atoms.items()) if atoms else 1.0
            substance = SimpleNamespace(
                id=entry["id"], name=entry["name"], atoms=atoms, molar_mass=mass, phase=entry["phase_at_25C"],
                density=entry.get("density_g_per_mL"), raw=entry, free=entry.get("free_bromine", 0),
                carried=entry.get("carried_bromine", 0))
            self.substances[substance.id] = substance
            for formula in {entry.get("formula"), entry.get("formula_common")} - {None}:
                formulas.setdefault(formula, []).append(substance)
        for substance in self.substances.values():
            entry = substance.raw
            for name in [entry["id"], entry.get("cas"), *entry["synonyms"], entry["name"]]:
                if name:
                    self.names[fold(name)] = substance
        for formula, owners in formulas.items():
            if len(owners) == 1:
                self.names.setdefault(fold(formula), owners[0])
        for entry in raw["materials"]:
            components = [(self.substances[c["id"]], c["mass_fraction"]) for c in entry["components"]]
            carrier = entry.get("carrier", ["water"] if len(components) > 1 else [])
            carrier = {carrier} if isinstance(carrier, str) else set(carrier)
            material = SimpleNamespace(
                name=entry["name"], components=components, density=entry.get("density_g_per_mL"),
                carriers={s.id for s, _ in components if s.id in carrier and len(components) > 1})
            for name in [entry["id"], *entry.get("synonyms", []), entry["name"]]:
                self.material_names[fold(name)] = material

    def substance(self, name):
        found = self.names.get(fold(name))
        if not found:
            raise KeyError(f"no substance {name!r}")
        return found

    def material(self, name):
        found = self.material_names.get(fold(name))
        if found:
            return found
        substance = self.substance(name)
        return SimpleNamespace(name=substance.name, components=[(substance, 1.0)], density=substance.density, carriers=set())


UNITS = {
    "g": ("mass", 1.0), "mg": ("mass", 1e-3), "kg": ("mass", 1e3), "ug": ("mass", 1e-6),
    "mL": ("volume", 1.0), "L": ("volume", 1e3), "uL": ("volume", 1e-3),
    "mol": ("amount", 1.0), "mmol": ("amount", 1e-3), "umol": ("amount", 1e-6),
    "eq": ("equivalents", 1.0), "mol %": ("equivalents", 1e-2), "%": ("fraction", 1e-2), "g/g": ("ratio", 1.0),
    "s": ("time", 1.0), "min": ("time", 60.0), "h": ("time", 3600.0), "d": ("time", 86400.0),
    "J": ("energy", 1.0), "kJ": ("energy", 1e3), "MJ": ("energy", 1e6), "Wh": ("energy", 3600.0), "kWh": ("energy", 3.6e6)}
WRITTEN = re.compile(r"(?:(\d+)\s*x\s*)?([-+]?[0-9]*\.?[0-9]+(?:[eE][-+]?\d+)?)\s*(?:(?:\+/-|\u00b1)\s*[0-9.eE+-]+\s*)?(.*)")


@functools.lru_cache(maxsize=None)
def quantity(text):
    """(dimension, value in g, mL, mol, s, J or as a plain ratio) of a written quantity."""
    match = WRITTEN.fullmatch(text.strip())
    if not match or match.group(3) not in UNITS:
        raise ValueError(f"quantity {text!r}")
    dimension, factor = UNITS[match.group(3)]
    return dimension, int(match.group(1) or 1) * float(match.group(2)) * factor


def in_unit(text, dimension):
    found, value = quantity(text)
    if found != dimension:
        raise ValueError(f"{text!r} is no {dimension}")
    return value


def parse_equation(text, catalogue):
    """Both sides as lists of (coefficient, substance); refuses what does not balance."""
    sides, balance = [], {}
    for sign, side in zip((-1, 1), text.split(" -> ")):
        terms = []
        for term in side.split(" + "):
            lead = re.match(r"(\d+) (?=\S)", term)
            # A name may open with a number of its own (1-butanol), so the coefficient needs the space behind it.
            count, name = (int(lead.group(1)), term[lead.end():]) if lead else (1, term)
            substance = catalogue.substance(name)
            terms.append((count, substance))
            for element, atoms in substance.atoms.items():
                balance[element] = balance.get(element, 0) + sign * count * atoms
        sides.append(terms)
    if len(sides) != 2 or any(balance.values()):
        raise ValueError(f"equation {text!r}: {balance}")
    return sides
