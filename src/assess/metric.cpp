// SPDX-License-Identifier: MIT
#include "assess/metric.hpp"

#include <limits>

namespace routeweigh {

std::string_view words(FigureGroup group) {
    switch (group) {
    case FigureGroup::yield:
        return "Yield";
    case FigureGroup::equation:
        return "Equation only: no yield, no excess, no auxiliaries";
    case FigureGroup::reactants:
        return "Reactants as charged";
    case FigureGroup::waste:
        return "Waste per gram of product";
    case FigureGroup::intensity:
        return "Mass put in per gram of product";
    case FigureGroup::utilities:
        return "Time, energy, water, vessel";
    case FigureGroup::bromine:
        return "Bromine";
    case FigureGroup::hazard:
        return "Hazard";
    }
    return "";
}

template<Number N>
N ratio(const Metric& metric, const TotalsOf<N>& totals) {
    N above = 0.0, below = 0.0;
    for (const Term& term : metric.above)
        above += term.sign * total(totals, term.total);
    if (metric.below.empty()) return metric.factor * above;
    for (const Term& term : metric.below)
        below += term.sign * total(totals, term.total);
    return choose(below == N(0.0), N(std::numeric_limits<double>::quiet_NaN()),
                  metric.factor * above / below);
}

template double ratio(const Metric&, const TotalsOf<double>&);
template Lanes ratio(const Metric&, const TotalsOf<Lanes>&);

} // namespace routeweigh
