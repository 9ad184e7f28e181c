// SPDX-License-Identifier: MIT
// A mass figure as data: which totals stand above and below the line. Number, printed working, table heading
// and sampling all come from this one declaration.
#pragma once

#include "assess/totals.hpp"

#include <span>
#include <string_view>

namespace routeweigh {

/// A total with its sign in a sum.
struct Term {
    std::string_view words;
    double Totals::*total;
    double sign = 1.0;
};

enum class Better { lower, higher, neither };

/// Which question a figure belongs to; the order of the tables.
enum class FigureGroup { yield, equation, reactants, waste, intensity, utilities, bromine, hazard };

std::string_view words(FigureGroup group);

/// value = factor x (sum of terms above) / (sum of terms below), or a function of other figures.
struct Metric {
    std::string_view id, name, unit;
    FigureGroup group;
    Better better;
    std::string_view boundary;  ///< what is counted, which water, recycling or benign rule
    std::string_view reference; ///< where the definition comes from
    std::string_view missing;   ///< why there may be no value
    double factor = 1.0;
    std::span<const Term> above{}, below{};
    /// Derived figures: ids of what goes in, the formula in words, and the function of their values in that
    /// order.
    std::span<const std::string_view> from{};
    std::string_view formula{};
    double (*derive)(std::span<const double>) = nullptr;
    int decimals = 1; ///< in tables
};

/// NaN when a total is unknown or the line below is 0. Derived metrics need the others first.
template<Number N>
N ratio(const Metric& metric, const TotalsOf<N>& totals);

} // namespace routeweigh
