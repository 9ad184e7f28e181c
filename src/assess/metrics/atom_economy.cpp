// SPDX-License-Identifier: MIT
// Atom economy of the overall equations, in its three readings, and the waste it implies.
#include "assess/metrics/metrics.hpp"

namespace routeweigh::metrics {
namespace {
constexpr Term molar_mass_of_product[] = {{"molar mass of the product", &Totals::formula_product}};
constexpr Term with_coproduct[] = {{"molar mass of the product", &Totals::formula_product},
                                   {"co-products recovered and used", &Totals::formula_coproducts}};
constexpr Term net[] = {{"reactants of the net equation", &Totals::formula_inputs}};
constexpr Term gross_reactants[] = {{"reactants of all equations", &Totals::formula_inputs_gross}};
constexpr Term by_products[] = {{"reactants of the net equation", &Totals::formula_inputs},
                                {"molar mass of the product", &Totals::formula_product, -1.0}};
constexpr std::string_view trost = "B. M. Trost, Science 1991, 254, 1471, doi:10.1126/science.1962206";
} // namespace

const Metric atom_economy{
    .id = "atom_economy",
    .name = "Atom economy",
    .unit = "%",
    .group = FigureGroup::equation,
    .better = Better::higher,
    .boundary = "net overall equation: intermediates cancel, and by-products that the file feeds to "
                "another step; no excess, solvent or quench",
    .reference = trost,
    .missing = "",
    .factor = 100.0,
    .above = molar_mass_of_product,
    .below = net};
const Metric atom_economy_gross{.id = "atom_economy_gross",
                                .name = "Atom economy, gross",
                                .unit = "%",
                                .group = FigureGroup::equation,
                                .better = Better::higher,
                                .boundary =
                                    "as atom economy, but every reactant of every step counts in full",
                                .reference = trost,
                                .missing = "",
                                .factor = 100.0,
                                .above = molar_mass_of_product,
                                .below = gross_reactants};
const Metric atom_economy_with_coproduct{.id = "atom_economy_with_coproduct",
                                         .name = "Atom economy with co-product",
                                         .unit = "%",
                                         .group = FigureGroup::equation,
                                         .better = Better::higher,
                                         .boundary = "the numerator gains the co-products that the file "
                                                     "declares; beside plain atom economy, never instead",
                                         .reference = trost,
                                         .missing = "the route declares no co-product",
                                         .factor = 100.0,
                                         .above = with_coproduct,
                                         .below = net};
const Metric stoichiometric_e_factor{
    .id = "stoichiometric_e_factor",
    .name = "Stoichiometric E-factor",
    .unit = "g/g",
    .group = FigureGroup::equation,
    .better = Better::lower,
    .boundary = "by-products of the net equation, water among them, at 100 % yield",
    .reference = "R. A. Sheldon, Green Chem. 2007, 9, 1273, doi:10.1039/b713736m",
    .missing = "",
    .above = by_products,
    .below = molar_mass_of_product,
    .decimals = 2};
} // namespace routeweigh::metrics
