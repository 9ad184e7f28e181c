// SPDX-License-Identifier: MIT
// Where the oxidising bromine sits: in a bottle, inside a reagent, free in the flask. All as Br2.
#include "assess/metrics/metrics.hpp"

namespace routeweigh::metrics {
namespace {
constexpr Term handled[] = {{"elemental bromine charged", &Totals::bromine_handled}};
constexpr Term carried[] = {{"bromine inside brominating reagents, as Br2", &Totals::bromine_carried}};
constexpr Term ceiling[] = {{"most bromine that can be free at one time, as Br2", &Totals::bromine_ceiling}};
constexpr std::string_view ours = "defined by this project";
} // namespace

const Metric bromine_handled{.id = "bromine_handled",
                             .name = "Bromine handled",
                             .unit = "g/g",
                             .group = FigureGroup::bromine,
                             .better = Better::lower,
                             .boundary = "elemental bromine poured from a bottle",
                             .reference = ours,
                             .missing = "",
                             .above = handled,
                             .below = isolated_product,
                             .decimals = 3};
const Metric bromine_carried{
    .id = "bromine_carried",
    .name = "Bromine inside a reagent",
    .unit = "g/g",
    .group = FigureGroup::bromine,
    .better = Better::lower,
    .boundary = "oxidising bromine in N-bromo compounds and tribromides; bromide does not count",
    .reference = ours,
    .missing = "",
    .above = carried,
    .below = isolated_product,
    .decimals = 3};
const Metric bromine_ceiling{.id = "bromine_ceiling",
                             .name = "Bromine free in the flask, ceiling",
                             .unit = "g/g",
                             .group = FigureGroup::bromine,
                             .better = Better::lower,
                             .boundary =
                                 "the most that the charges could set free at one time, tribromide included; "
                                 "adding in portions does not lower it",
                             .reference = ours,
                             .missing = "",
                             .above = ceiling,
                             .below = isolated_product,
                             .decimals = 3};
} // namespace routeweigh::metrics
