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

double derived(const Metric& metric, const std::vector<std::size_t>& from, std::span<const double> values) {
    std::array<double, 4> inputs{};
    for (std::size_t k = 0; k < from.size(); ++k)
        inputs[k] = values[from[k]];
    return metric.derive(std::span(inputs).first(from.size()));
}

Lanes derived(const Metric& metric, const std::vector<std::size_t>& from, std::span<const Lanes> values) {
    std::array<double, 4> inputs{};
    Lanes result;
    for (std::size_t lane = 0; lane < lane_count; ++lane) {
        for (std::size_t k = 0; k < from.size(); ++k)
            inputs[k] = values[from[k]][lane];
        result.set(lane, metric.derive(std::span(inputs).first(from.size())));
    }
    return result;
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

template<Number N>
void evaluate_metrics(const TotalsOf<N>& totals, std::span<N> values) {
    for (std::size_t m = 0; m < list.size(); ++m)
        values[m] = list[m]->derive == nullptr ? ratio(*list[m], totals)
                                               : derived(*list[m], sources()[m], std::span<const N>(values));
}

template void evaluate_metrics(const TotalsOf<double>&, std::span<double>);
template void evaluate_metrics(const TotalsOf<Lanes>&, std::span<Lanes>);

} // namespace routeweigh
