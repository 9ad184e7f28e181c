# SPDX-License-Identifier: MIT
"""The figures of a class as a careful colleague would get them with Python's csv module and NumPy.

    read_class.py TABLE THEORY   prints the figures as JSON; masses in g, THEORY in g, MELTING in degC is 168
"""

import csv
import json
import sys

import numpy

MELTING = 168.0


def figures(path, theory):
    sections, names, gross, boat, low, high = [], {}, [], [], [], []
    with open(path, newline="", encoding="utf-8-sig") as table:
        rows = csv.reader(table, delimiter=";")
        next(rows)
        for _, section, with_boat, empty, melts_from, melts_to in rows:
            sections.append(names.setdefault(section, len(names)))
            gross.append(float(with_boat.replace(",", ".")))
            boat.append(float(empty.replace(",", ".")))
            low.append(float(melts_from.replace(",", ".")))
            high.append(float(melts_to.replace(",", ".")))
    sections = numpy.array(sections)
    mass = numpy.round(numpy.array(gross) - numpy.array(boat), 3)  # as they are written
    low, high = numpy.array(low), numpy.array(high)
    share = mass / theory
    impossible = (mass <= 0) | (mass > theory + 0.002) | (low > high)
    check = ~impossible & ((share < 0.05) | (mass > theory) | (high - low > 3) | (high < MELTING - 3) | (high > MELTING + 3))
    yields = 100 * share[~impossible]
    groups = sections[~impossible]

    def spread(values):
        first, middle, third = numpy.percentile(values, [25, 50, 75])
        return {"count": len(values), "mean": values.mean(), "standard_deviation": values.std(ddof=1),
                "quartile_1": first, "median": middle, "quartile_3": third}

    # Kruskal and Wallis' H by mid-ranks.
    values, inverse, counts = numpy.unique(yields, return_inverse=True, return_counts=True)
    ranks = (numpy.cumsum(counts) - (counts - 1) / 2)[inverse]
    n = len(yields)
    h = 12 / (n * (n + 1)) * sum(ranks[groups == g].sum() ** 2 / (groups == g).sum() for g in range(len(names))) - 3 * (n + 1)
    h /= 1 - (counts.astype(float) ** 3 - counts).sum() / (float(n) ** 3 - n)
    return {"rows": len(mass), "not_possible": int(impossible.sum()), "check": int(check.sum()),
            "percent_yield": spread(yields), "sections": [dict(spread(yields[groups == g]), section=name) for name, g in names.items()],
            "h": h, "median_absolute_deviation": float(numpy.median(numpy.abs(yields - numpy.median(yields))))}


if __name__ == "__main__":
    json.dump(figures(sys.argv[1], float(sys.argv[2])), sys.stdout)
