// SPDX-License-Identifier: MIT
// How well the reactants that were really charged end up in the product.
#include "assess/metrics/metrics.hpp"

namespace routeweigh::metrics {
namespace {
constexpr Term reactants_charged[] = {{"reactants charged", &Totals::reactants_gross}};
constexpr Term needed[] = {{"reactants that the theoretical yield needs", &Totals::reactants_needed}};
constexpr Term product_carbon[] = {{"carbon in the isolated product", &Totals::product_carbon}};
constexpr Term reactant_carbon[] = {{"carbon in the reactants charged", &Totals::reactant_carbon}};
constexpr Term harmful[] = {{"all inputs", &Totals::inputs}, {"benign inputs", &Totals::benign, -1.0}};
constexpr std::string_view economy_over_excess[] = {"atom_economy", "stoichiometric_factor"};
constexpr std::string_view efficiency_over_economy[] = {"reaction_mass_efficiency", "atom_economy"};

constexpr std::string_view as_charged =
    "reactants of the overall equation as charged, pure, excess included; no solvent, "
    "catalyst or work-up; a solvent that reacts counts in full; nothing credited";
constexpr std::string_view constable =
    "D. J. C. Constable et al., Green Chem. 2002, 4, 521, doi:10.1039/b206169b";
constexpr std::string_view andraos = "J. Andraos, Org. Process Res. Dev. 2005, 9, 149, doi:10.1021/op049803n";
} // namespace

const Metric carbon_efficiency{.id = "carbon_efficiency",
                               .name = "Carbon efficiency",
                               .unit = "%",
                               .group = FigureGroup::reactants,
                               .better = Better::higher,
                               .boundary = as_charged,
                               .reference = curzons,
                               .missing = "no carbon among the reactants",
                               .factor = 100.0,
                               .above = product_carbon,
                               .below = reactant_carbon};
const Metric stoichiometric_factor{.id = "stoichiometric_factor",
                                   .name = "Stoichiometric factor",
                                   .unit = "",
                                   .group = FigureGroup::reactants,
                                   .better = Better::lower,
                                   .boundary =
                                       "mass of reactants charged over mass that the limiting one needs",
                                   .reference = andraos,
                                   .missing = "",
                                   .above = reactants_charged,
                                   .below = needed,
                                   .decimals = 2};
const Metric reaction_mass_efficiency{.id = "reaction_mass_efficiency",
                                      .name = "Reaction mass efficiency",
                                      .unit = "%",
                                      .group = FigureGroup::reactants,
                                      .better = Better::higher,
                                      .boundary = as_charged,
                                      .reference = constable,
                                      .missing = "",
                                      .factor = 100.0,
                                      .above = isolated_product,
                                      .below = reactants_charged};
const Metric experimental_atom_economy{
    .id = "experimental_atom_economy",
    .name = "Experimental atom economy",
    .unit = "%",
    .group = FigureGroup::reactants,
    .better = Better::higher,
    .boundary = as_charged,
    .reference = "M. C. Cann, M. E. Connelly, Real-World Cases in Green Chemistry, ACS, 2000",
    .missing = "",
    .from = economy_over_excess,
    .formula = "atom economy / stoichiometric factor",
    .derive = [](std::span<const double> v) { return v[0] / v[1]; }};
const Metric optimum_efficiency{
    .id = "optimum_efficiency",
    .name = "Optimum efficiency",
    .unit = "%",
    .group = FigureGroup::reactants,
    .better = Better::higher,
    .boundary = "how near the run comes to the ceiling that its own equation sets",
    .reference = "C. R. McElroy et al., Green Chem. 2015, 17, 3111, doi:10.1039/C5GC00340G",
    .missing = "",
    .from = efficiency_over_economy,
    .formula = "100 x reaction mass efficiency / atom economy",
    .derive = [](std::span<const double> v) { return 100.0 * v[0] / v[1]; }};
const Metric effective_mass_yield{
    .id = "effective_mass_yield",
    .name = "Effective mass yield",
    .unit = "%",
    .group = FigureGroup::reactants,
    .better = Better::higher,
    .boundary = "inputs on the benign list of the catalogue are left out; may exceed 100 %; net of reuse",
    .reference = "T. Hudlicky et al., Green Chem. 1999, 1, 57, doi:10.1039/a901397k",
    .missing = "every input is on the benign list",
    .factor = 100.0,
    .above = isolated_product,
    .below = harmful};
} // namespace routeweigh::metrics
