// SPDX-License-Identifier: MIT
// Checks for figures that somebody else published: each within a stated tolerance of what was printed.
#pragma once

#include "assess/figures_of.hpp"
#include "route/limiting_reagent.hpp"
#include "support/route_builder.hpp"

#include <doctest/doctest.h>

#include <cmath>
#include <string>
#include <string_view>

namespace routeweigh::test {

inline void equals_published(std::string_view what, double value, double published, double tolerance) {
    CAPTURE(std::string(what));
    CAPTURE(value);
    CAPTURE(published);
    CHECK(std::abs(value - published) <= tolerance);
}

/// A route built from text, with all its mass figures and the table of its reactants.
struct Worked {
    explicit Worked(std::string text, const Catalogue& catalogue = Catalogue::embedded())
        : built(std::move(text), catalogue), figures(built.route) {}

    double operator[](std::string_view id) const { return figures[id]; }
    std::vector<ReactantSupply> supplies(int step = 0) const {
        return reactant_supplies(built.flat, step, built.flat.nominal());
    }
    std::string limiting(int step = 0) const { return supplies(step).front().substance->name; }
    double moles(std::string_view substance, int step = 0) const {
        for (const ReactantSupply& supply : supplies(step))
            if (supply.substance->name == substance) return supply.moles;
        return -1.0;
    }

    Built built;
    MassFigures figures;
};

inline double molar_mass_of(const Catalogue& catalogue, std::string_view substance) {
    return catalogue.find_substance(substance)->molar_mass;
}

} // namespace routeweigh::test
