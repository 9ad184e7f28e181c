// SPDX-License-Identifier: MIT
// Element utilisation: atoms of one element in the product over those in the reactants of the net equation.
#include "assess/metrics/metrics.hpp"

namespace routeweigh::metrics {
namespace {
constexpr std::string_view source =
    "A. D. Curzons et al., Green Chem. 2001, 3, 1, doi:10.1039/b007871i, for carbon; other elements likewise";
constexpr std::string_view equation_only = "net overall equation, no excess, no auxiliaries";

constexpr Term carbon_above[] = {{"C atoms in the product", &Totals::carbon_product}};
constexpr Term carbon_below[] = {{"C atoms in the reactants", &Totals::carbon_inputs}};
constexpr Term bromine_above[] = {{"Br atoms in the product", &Totals::bromine_product}};
constexpr Term bromine_below[] = {{"Br atoms in the reactants", &Totals::bromine_inputs}};
constexpr Term nitrogen_above[] = {{"N atoms in the product", &Totals::nitrogen_product}};
constexpr Term nitrogen_below[] = {{"N atoms in the reactants", &Totals::nitrogen_inputs}};
constexpr Term chlorine_above[] = {{"Cl atoms in the product", &Totals::chlorine_product}};
constexpr Term chlorine_below[] = {{"Cl atoms in the reactants", &Totals::chlorine_inputs}};
} // namespace

const Metric carbon_economy{.id = "carbon_economy",
                            .name = "Carbon economy",
                            .unit = "%",
                            .group = FigureGroup::equation,
                            .better = Better::higher,
                            .boundary = equation_only,
                            .reference = source,
                            .missing = "the product holds no carbon",
                            .factor = 100.0,
                            .above = carbon_above,
                            .below = carbon_below};
const Metric bromine_economy{.id = "bromine_economy",
                             .name = "Bromine economy",
                             .unit = "%",
                             .group = FigureGroup::equation,
                             .better = Better::higher,
                             .boundary = equation_only,
                             .reference = source,
                             .missing = "the product holds no bromine",
                             .factor = 100.0,
                             .above = bromine_above,
                             .below = bromine_below};
const Metric nitrogen_economy{.id = "nitrogen_economy",
                              .name = "Nitrogen economy",
                              .unit = "%",
                              .group = FigureGroup::equation,
                              .better = Better::higher,
                              .boundary = equation_only,
                              .reference = source,
                              .missing = "the product holds no nitrogen",
                              .factor = 100.0,
                              .above = nitrogen_above,
                              .below = nitrogen_below};
const Metric chlorine_economy{.id = "chlorine_economy",
                              .name = "Chlorine economy",
                              .unit = "%",
                              .group = FigureGroup::equation,
                              .better = Better::higher,
                              .boundary = equation_only,
                              .reference = source,
                              .missing = "the product holds no chlorine",
                              .factor = 100.0,
                              .above = chlorine_above,
                              .below = chlorine_below};
} // namespace routeweigh::metrics
