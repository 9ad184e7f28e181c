// SPDX-License-Identifier: MIT
// Declarations of the metrics, one family a file.
#pragma once

#include "assess/metric.hpp"

namespace routeweigh::metrics {

/// What several families share.
inline constexpr Term isolated_product[] = {{"isolated product", &Totals::product}};
inline constexpr std::string_view curzons =
    "A. D. Curzons et al., Green Chem. 2001, 3, 1, doi:10.1039/b007871i";

extern const Metric yield, theoretical_yield, isolated_mass, waste_per_run;
extern const Metric atom_economy, atom_economy_gross, atom_economy_with_coproduct, stoichiometric_e_factor;
extern const Metric carbon_economy, bromine_economy, nitrogen_economy, chlorine_economy;
extern const Metric carbon_efficiency, stoichiometric_factor, reaction_mass_efficiency,
    experimental_atom_economy, optimum_efficiency, effective_mass_yield;
extern const Metric reactants_e_factor, simple_e_factor, e_factor_without_water, complete_e_factor;
extern const Metric process_mass_intensity, process_mass_intensity_gross, mass_intensity, mass_productivity;
extern const Metric pmi_reactants_reagents_catalysts, pmi_reaction_solvent, pmi_workup_and_purification,
    pmi_water;
extern const Metric pmi_reaction_stages, pmi_workup_stages, pmi_purification_stages,
    pmi_without_drown_out_and_rinse;
extern const Metric solvent_intensity, water_intensity, waste_water_intensity;
extern const Metric energy_intensity, cooling_water_intensity, time_intensity, space_time_yield,
    volume_productivity, turnover_number, turnover_frequency;
extern const Metric bromine_handled, bromine_carried, bromine_ceiling;

} // namespace routeweigh::metrics
