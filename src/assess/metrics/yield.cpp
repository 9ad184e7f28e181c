// SPDX-License-Identifier: MIT
// How much product: expected, isolated, and what a run leaves behind.
#include "assess/metrics/metrics.hpp"

namespace routeweigh::metrics {
namespace {
constexpr Term theoretical[] = {{"theoretical yield over all steps", &Totals::theoretical_product}};
constexpr Term waste[] = {{"everything that leaves and is not reused", &Totals::waste}};
constexpr std::string_view trade_definition = "definition of the trade";
} // namespace

const Metric yield{
    .id = "yield",
    .name = "Yield",
    .unit = "%",
    .group = FigureGroup::yield,
    .better = Better::higher,
    .boundary = "isolated over theoretical; of several steps, the product over the longest linear sequence",
    .reference = "J. B. Hendrickson, J. Am. Chem. Soc. 1977, 99, 5439, for convergent plans",
    .missing = "steps feed each other in a loop",
    .factor = 100.0,
    .above = isolated_product,
    .below = theoretical};
const Metric theoretical_yield{
    .id = "theoretical_yield",
    .name = "Theoretical yield over all steps",
    .unit = "g",
    .group = FigureGroup::yield,
    .better = Better::neither,
    .boundary =
        "product that one run of the last step would give if no step of the longest linear sequence lost "
        "anything: isolated product over yield. Of one step it is the theoretical yield",
    .reference = trade_definition,
    .missing = "steps feed each other in a loop",
    .above = theoretical,
    .decimals = 3};
const Metric isolated_mass{.id = "isolated_mass",
                           .name = "Isolated product",
                           .unit = "g",
                           .group = FigureGroup::yield,
                           .better = Better::neither,
                           .boundary = "one run of the last step",
                           .reference = trade_definition,
                           .missing = "",
                           .above = isolated_product,
                           .decimals = 3};
const Metric waste_per_run{.id = "waste_per_run",
                           .name = "Waste per student run",
                           .unit = "g",
                           .group = FigureGroup::yield,
                           .better = Better::lower,
                           .boundary =
                               "all streams of one run of the last step and what its intermediates need; "
                               "water counted, reused material not",
                           .reference = trade_definition,
                           .missing = "",
                           .above = waste,
                           .decimals = 1};
} // namespace routeweigh::metrics
