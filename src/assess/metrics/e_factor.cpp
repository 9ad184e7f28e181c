// SPDX-License-Identifier: MIT
// E-factors: waste per gram of product, with four answers to the question which inputs count.
#include "assess/metrics/metrics.hpp"

namespace routeweigh::metrics {
namespace {
constexpr Term reactants_less_product[] = {{"reactants charged", &Totals::reactants_gross},
                                           {"isolated product", &Totals::product, -1.0}};
constexpr Term aids_less_product[] = {
    {"reactants, reagents, catalysts and aids", &Totals::reactants_and_aids},
    {"isolated product", &Totals::product, -1.0}};
constexpr Term dry_less_product[] = {{"all inputs", &Totals::inputs},
                                     {"water", &Totals::water, -1.0},
                                     {"isolated product", &Totals::product, -1.0}};
constexpr Term all_less_product[] = {{"all inputs", &Totals::inputs},
                                     {"isolated product", &Totals::product, -1.0}};
constexpr std::string_view sheldon = "R. A. Sheldon, Green Chem. 2017, 19, 18, doi:10.1039/C6GC02157C";
constexpr std::string_view roschangar =
    "F. Roschangar et al., Green Chem. 2015, 17, 752, doi:10.1039/C4GC01563K";
} // namespace

const Metric reactants_e_factor{
    .id = "reactants_e_factor",
    .name = "E-factor, reactants only",
    .unit = "g/g",
    .group = FigureGroup::waste,
    .better = Better::lower,
    .boundary = "reactants of the overall equation as charged; nothing else; nothing credited",
    .reference = sheldon,
    .missing = "",
    .above = reactants_less_product,
    .below = isolated_product,
    .decimals = 2};
const Metric simple_e_factor{
    .id = "simple_e_factor",
    .name = "Simple E-factor",
    .unit = "g/g",
    .group = FigureGroup::waste,
    .better = Better::lower,
    .boundary = "reactants, reagents, catalysts and aids; no solvent, no water; net of reuse",
    .reference = roschangar,
    .missing = "",
    .above = aids_less_product,
    .below = isolated_product,
    .decimals = 2};
const Metric e_factor_without_water{
    .id = "e_factor_without_water",
    .name = "E-factor without water",
    .unit = "g/g",
    .group = FigureGroup::waste,
    .better = Better::lower,
    .boundary = "everything charged but water; water that is a reactant counts; net of reuse",
    .reference = sheldon,
    .missing = "",
    .above = dry_less_product,
    .below = isolated_product};
const Metric complete_e_factor{.id = "complete_e_factor",
                               .name = "Complete E-factor",
                               .unit = "g/g",
                               .group = FigureGroup::waste,
                               .better = Better::lower,
                               .boundary = "everything charged, water included; net of reuse",
                               .reference = roschangar,
                               .missing = "",
                               .above = all_less_product,
                               .below = isolated_product};
} // namespace routeweigh::metrics
