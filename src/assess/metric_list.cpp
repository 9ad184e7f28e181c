// SPDX-License-Identifier: MIT
#include "assess/metric_list.hpp"

#include "assess/metrics/metrics.hpp"

#include <algorithm>
#include <array>
#include <cstddef>
#include <unordered_map>

namespace routeweigh {
namespace {

using namespace metrics;

const std::array list{
    &yield,
    &theoretical_yield,
    &isolated_mass,
    &waste_per_run,
    &atom_economy,
    &atom_economy_gross,
    &atom_economy_with_coproduct,
    &stoichiometric_e_factor,
    &carbon_economy,
    &bromine_economy,
    &nitrogen_economy,
    &chlorine_economy,
    &carbon_efficiency,
    &stoichiometric_factor,
    &reaction_mass_efficiency,
    &experimental_atom_economy,
    &optimum_efficiency,
    &effective_mass_yield,
    &reactants_e_factor,
    &simple_e_factor,
    &e_factor_without_water,
    &complete_e_factor,
    &process_mass_intensity,
    &process_mass_intensity_gross,
    &mass_intensity,
    &mass_productivity,
    &pmi_reactants_reagents_catalysts,
    &pmi_reaction_solvent,
    &pmi_workup_and_purification,
    &pmi_water,
    &pmi_reaction_stages,
    &pmi_workup_stages,
    &pmi_purification_stages,
    &pmi_without_drown_out_and_rinse,
    &solvent_intensity,
    &water_intensity,
    &waste_water_intensity,
    &energy_intensity,
    &cooling_water_intensity,
    &time_intensity,
    &space_time_yield,
    &volume_productivity,
    &turnover_number,
    &turnover_frequency,
    &bromine_handled,
    &bromine_carried,
    &bromine_ceiling,
};

/// For every metric the positions of the figures it is derived from.
const std::array<std::vector<std::size_t>, list.size()>& sources() {
    static const auto table = [] {
        std::array<std::vector<std::size_t>, list.size()> result;
        for (std::size_t m = 0; m < list.size(); ++m)
            for (const std::string_view id : list[m]->from)
                result[m].push_back(static_cast<std::size_t>(metric_index(id)));
        return result;
    }();
    return table;
}

} // namespace

std::span<const Metric* const> all_metrics() {
    return list;
}

int metric_index(std::string_view id) {
    const auto found =
        std::find_if(list.begin(), list.end(), [&](const Metric* metric) { return metric->id == id; });
    return found == list.end() ? -1 : static_cast<int>(found - list.begin());
}

void evaluate_metrics(const Totals& totals, std::span<double> values) {
    std::array<double, 4> inputs{};
    for (std::size_t m = 0; m < list.size(); ++m) {
        if (list[m]->derive == nullptr) {
            values[m] = ratio(*list[m], totals);
            continue;
        }
        const std::vector<std::size_t>& from = sources()[m];
        for (std::size_t k = 0; k < from.size(); ++k)
            inputs[k] = values[from[k]];
        values[m] = list[m]->derive(std::span(inputs).first(from.size()));
    }
}

} // namespace routeweigh
