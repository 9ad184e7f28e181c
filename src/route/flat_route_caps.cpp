// SPDX-License-Identifier: MIT
// The bases of reactions that end because no more product may form.
#include "base/index.hpp"
#include "route/flat_route.hpp"

#include <algorithm>

namespace routeweigh {

void FlatSeparation::take_out(std::vector<double>& amounts, std::span<const double> molar_mass) const {
    const double share = share_leaving<double>(amounts, molar_mass);
    for (std::size_t s = 0; s < amounts.size(); ++s)
        amounts[s] -= amounts[s] * leaves[s] * share;
}

void FlatRoute::prepare_caps(int index) {
    FlatStep& step = steps_[at(index)];
    std::vector<double> amounts(step.substances.size(), 0.0);
    const double given = nominal_.isolated[at(index)];
    double cap = given / step.molar_mass[at(step.product)];
    bool alike = true;
    if (!step.isolated_is_mass)
        cap = given * run_pot<double>(index, nominal_, Reading::theory, {}, nullptr, alike);
    for (FlatStage& stage : step.stages) {
        for (int i = stage.first_inflow; i < stage.last_inflow; ++i) {
            const Inflow& inflow = inflows_[at(i)];
            amounts[at(inflow.local)] +=
                nominal_.charged[at(inflow.slot)] * inflow.fraction / step.molar_mass[at(inflow.local)];
        }
        stage.extents.prepare_cap(amounts, cap);
        const double before = amounts[at(step.product)];
        stage.extents.react(amounts, cap);
        cap = std::max(0.0, cap - (amounts[at(step.product)] - before));
        for (const FlatSeparation& separation : stage.separations)
            separation.take_out(amounts, step.molar_mass);
    }
}

} // namespace routeweigh
