// SPDX-License-Identifier: MIT
// Process mass intensity, its parts by role and by stage, and its relatives.
#include "assess/metrics/metrics.hpp"

namespace routeweigh::metrics {
namespace {
constexpr Term inputs[] = {{"all inputs", &Totals::inputs}};
constexpr Term gross[] = {{"all inputs, reused material included", &Totals::inputs_gross}};
constexpr Term dry[] = {{"all inputs", &Totals::inputs}, {"water", &Totals::water, -1.0}};
constexpr Term reactants[] = {{"reactants, reagents, catalysts", &Totals::part_reactants}};
constexpr Term reaction_solvent[] = {{"reaction solvent", &Totals::part_reaction_solvent}};
constexpr Term workup[] = {{"work-up and purification", &Totals::part_workup}};
constexpr Term water[] = {{"water", &Totals::water}};
constexpr Term reaction_stages[] = {{"charged in reaction stages", &Totals::reaction_stages}};
constexpr Term workup_stages[] = {{"charged in work-up stages", &Totals::workup_stages}};
constexpr Term purification_stages[] = {{"charged in purification stages", &Totals::purification_stages}};
constexpr Term without_class[] = {{"all inputs", &Totals::inputs},
                                  {"drown-out and flask rinse", &Totals::drown_out, -1.0}};
constexpr Term solvent[] = {{"solvents", &Totals::solvents}};
constexpr Term effluent[] = {{"liquid streams that are mostly water", &Totals::aqueous_effluent}};
constexpr std::string_view inverse[] = {"process_mass_intensity"};

constexpr std::string_view everything = "everything charged, water included; net of reuse";
constexpr std::string_view one_part =
    "each input in exactly one part; the four parts add up to the mass intensity";
constexpr std::string_view by_stage = "by the stage of the charge, water included; net of reuse";
constexpr std::string_view pmi =
    "C. Jimenez-Gonzalez et al., Org. Process Res. Dev. 2011, 15, 912, doi:10.1021/op200097d";

constexpr Metric intensity(std::string_view id, std::string_view name, std::string_view boundary,
                           std::string_view reference, std::span<const Term> above, int decimals = 1) {
    return {.id = id,
            .name = name,
            .unit = "g/g",
            .group = FigureGroup::intensity,
            .better = Better::lower,
            .boundary = boundary,
            .reference = reference,
            .missing = "",
            .above = above,
            .below = isolated_product,
            .decimals = decimals};
}
} // namespace

const Metric process_mass_intensity =
    intensity("process_mass_intensity", "Process mass intensity", everything, pmi, inputs);
const Metric process_mass_intensity_gross =
    intensity("process_mass_intensity_gross", "Process mass intensity, gross",
              "everything charged, reused material too: 1 + E + recovered per product", pmi, gross);
const Metric mass_intensity =
    intensity("mass_intensity", "Mass intensity without water",
              "everything charged but water, reacting water too; net of reuse", curzons, dry);
const Metric mass_productivity{.id = "mass_productivity",
                               .name = "Mass productivity",
                               .unit = "%",
                               .group = FigureGroup::intensity,
                               .better = Better::higher,
                               .boundary = "of the process mass intensity, water included",
                               .reference = curzons,
                               .missing = "",
                               .from = inverse,
                               .formula = "100 / process mass intensity",
                               .derive = [](std::span<const double> v) { return 100.0 / v[0]; },
                               .decimals = 2};
const Metric pmi_reactants_reagents_catalysts =
    intensity("pmi_reactants_reagents_catalysts", "of which reactants, reagents, catalysts", one_part, pmi,
              reactants, 2);
const Metric pmi_reaction_solvent =
    intensity("pmi_reaction_solvent", "of which reaction solvent", one_part, pmi, reaction_solvent, 2);
const Metric pmi_workup_and_purification =
    intensity("pmi_workup_and_purification", "of which work-up and purification", one_part, pmi, workup, 2);
const Metric pmi_water = intensity("pmi_water", "of which water", one_part, pmi, water, 2);
const Metric pmi_reaction_stages =
    intensity("pmi_reaction_stages", "charged in reaction stages", by_stage, pmi, reaction_stages);
const Metric pmi_workup_stages =
    intensity("pmi_workup_stages", "charged in work-up stages", by_stage, pmi, workup_stages);
const Metric pmi_purification_stages = intensity("pmi_purification_stages", "charged in purification stages",
                                                 by_stage, pmi, purification_stages);
const Metric pmi_without_drown_out_and_rinse =
    intensity("pmi_without_drown_out_and_rinse", "Mass intensity without drown-out and rinse",
              "everything charged but drown-out and flask rinse; net of reuse", pmi, without_class);
const Metric solvent_intensity = intensity("solvent_intensity", "Solvent intensity",
                                           "all solvents, no water; net of reuse", curzons, solvent);
const Metric water_intensity =
    intensity("water_intensity", "Water intensity",
              "process water with that of solutions; no cooling water; net of reuse", curzons, water);
const Metric waste_water_intensity =
    intensity("waste_water_intensity", "Waste water intensity",
              "liquid streams of which more than half is water, with all they carry",
              "common practice, no source", effluent);
} // namespace routeweigh::metrics
