# SPDX-License-Identifier: MIT
"""Hazard figures by endpoint and place, and the hazard score, from masses by substance."""
import json
import math

MOLAR_VOLUME = 24.45  # L/mol at 25 degC and 1 atm

ORAL = {"1": 0.5, "2": 5.0, "3": 100.0, "4": 500.0}
DERMAL = {"1": 5.0, "2": 50.0, "3": 300.0, "4": 1100.0}
SERIOUS = {
    "fire": ("H220", "H222", "H224", "H225", "H226"), "contact": ("H314", "H318"), "sensitisation": ("H317", "H334"),
    "long_term": ("H340", "H350", "H360", "H370", "H372")}
ENDPOINTS = ["inhalation", "aquatic_acute", "aquatic_chronic", "oral", "dermal", *SERIOUS]
SCALE = {"inhalation": 1.0, "aquatic_acute": 1e-3, "aquatic_chronic": 1e-3, "oral": 1.0, "dermal": 1.0,
         **{endpoint: 0.01 for endpoint in SERIOUS}}
PLACES = ["bottle", "flask", "waste"]
INFINITE = math.inf


def entries(substance, neat):
    """The classification that counts: that of the aqueous solution where one exists, unless the substance stands without water."""
    raw = substance.raw
    if not neat and "ghs_solution" in raw:
        return raw["ghs_solution"]["ghs"]
    return raw.get("ghs")


def limit_in_mg(substance, limit):
    value = limit["value"]
    return value * substance.molar_mass / MOLAR_VOLUME if limit["unit"] == "ppm" else value


class Banding:
    """A published way from health statements to a band of air concentrations."""

    def __init__(self, path):
        with open(path, encoding="utf-8") as file:
            scheme = json.load(file)
        self.rows = [(set(row["statements"]), set(row.get("categories", [])), row["band"]) for row in scheme["rows"]]
        self.edges = {band["band"]: band for band in scheme["bands"]}

    def band(self, ghs):
        found = []
        for entry in ghs:
            rows = [(categories, band) for statements, categories, band in self.rows if entry["h"] in statements]
            fits = [band for categories, band in rows if not categories or entry["category"] in categories]
            found += fits or [max(band for _, band in rows)] if rows else []
        return max(found, default=None)

    def demand(self, substance, ghs):
        """m3 of air per gram, from the upper edge of the band and from the lower one."""
        band = self.band(ghs)
        if band is None:
            return 0.0, 0.0
        solid = substance.phase == "solid"
        edge = self.edges[band]["particle_mg_m3" if solid else "gas_vapour_ppm"]
        unit = 1.0 if solid else substance.molar_mass / MOLAR_VOLUME
        return 1000.0 / (edge["upper"] * unit), INFINITE if edge["lower"] is None else 1000.0 / (edge["lower"] * unit)


def inhalation(substance, ghs, banding):
    """m3 of air per gram: (low, high)."""
    limit = substance.raw.get("oel")
    if limit:
        if limit["type"].startswith("8 h"):
            return (1000.0 / limit_in_mg(substance, limit),) * 2
        return 0.0, 0.0
    return (0.0, INFINITE) if ghs is None else banding.demand(substance, ghs)


def short_term(substance):
    """m3 of air per gram to a ceiling or short-term limit; labelled, and in no sum."""
    limit = substance.raw.get("oel")
    return 1000.0 / limit_in_mg(substance, limit) if limit and not limit["type"].startswith("8 h") else 0.0


def aquatic(ghs, limits, divided, worst):
    """m3 of water per gram: (low, high); `divided` is the code whose limit an M-factor divides."""
    if ghs is None:
        return 0.0, 1.0 / worst
    demands = [0.0]
    for entry in ghs:
        if entry["h"] == "H413" and divided == "H410":
            return 0.0, 1.0 / worst
        if entry["h"] in limits:
            factor = entry.get("m_factor", 1) if entry["h"] == divided else 1
            demands.append(factor / limits[entry["h"]])
    return (max(demands),) * 2


def acute(ghs, route, codes, points, worst):
    """kg of body mass per gram: (low, high)."""
    if ghs is None:
        return 0.0, 1000.0 / worst
    demands = [0.0]
    for entry in ghs:
        if entry["h"] in codes:
            ate = entry.get("ate", {})
            demands.append(1000.0 / (ate["value"] if ate.get("route") == route else points[entry["category"]]))
    return (max(demands),) * 2


def per_gram(substance, neat, banding):
    """Every endpoint of one gram: (low, high)."""
    ghs = entries(substance, neat)
    found = {
        "inhalation": inhalation(substance, ghs, banding),
        "aquatic_acute": aquatic(ghs, {"H400": 1.0, "H401": 10.0, "H402": 100.0}, "H400", 1.0),
        "aquatic_chronic": aquatic(ghs, {"H410": 0.1, "H411": 1.0, "H412": 1.0}, "H410", 0.1),
        "oral": acute(ghs, "oral", ("H300", "H301", "H302"), ORAL, 0.5),
        "dermal": acute(ghs, "dermal", ("H310", "H311", "H312"), DERMAL, 5.0)}
    for endpoint, codes in SERIOUS.items():
        if ghs is None:
            found[endpoint] = (0.0, 1.0)
        else:
            found[endpoint] = (float(any(entry["h"].startswith(codes) for entry in ghs)),) * 2
    return found


def demand(masses, banding):
    """Endpoint -> (low, high) of [(substance, neat, grams)]."""
    total = {endpoint: [0.0, 0.0] for endpoint in ENDPOINTS}
    for substance, neat, grams in masses:
        if grams > 0:
            for endpoint, (low, high) in per_gram(substance, neat, banding).items():
                total[endpoint][0] += low * grams
                total[endpoint][1] += high * grams
    return total


def score(values, stretch=1.0):
    """Mean of log10(1 + x/x0) over endpoints and places."""
    terms = [math.log10(1.0 + values[endpoint, place] / (SCALE[endpoint] * stretch))
             for endpoint in ENDPOINTS for place in PLACES]
    return sum(terms) / len(terms)


def grid(masses, banding):
    """(endpoint, place) -> (value, low, high); the waste has two readings, the first one is the value."""
    cells = {}
    for place, readings in masses.items():
        demands = [demand(reading, banding) for reading in readings]
        for endpoint in ENDPOINTS:
            cell = [d[endpoint] for d in demands]
            cells[endpoint, place] = cell[0][0], min(c[0] for c in cell), max(c[1] for c in cell)
    return cells


def hazard_figures(bottle, flask, waste, waste_unreacted, bandings):
    """Figures by id: (value, low, high), all per gram of product; high is infinite where nothing bounds it."""
    masses = {"bottle": [bottle], "flask": [flask], "waste": [waste, waste_unreacted]}
    cells = grid(masses, bandings[0])
    figures = {f"{endpoint}_{place}": cell for (endpoint, place), cell in cells.items()}
    value, low, high = ({key: cell[i] for key, cell in cells.items()} for i in range(3))
    figures["hazard_score"] = score(value), score(low), score(high)
    second = {key: cell[0] for key, cell in grid(masses, bandings[1]).items()}
    extras = {"x0_tenfold": score(value, 10.0), "x0_tenth": score(value, 0.1), "second_banding": score(second),
              "short_term_air": {place: sum(short_term(s) * g for s, _, g in readings[0]) for place, readings in masses.items()},
              "air_from_limits": {place: sum(1000.0 / limit_in_mg(s, s.raw["oel"]) * g for s, _, g in readings[0]
                                             if s.raw.get("oel", {}).get("type", "").startswith("8 h"))
                                  for place, readings in masses.items()}}
    return figures, extras
