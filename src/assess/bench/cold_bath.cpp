// SPDX-License-Identifier: MIT
#include "assess/bench/cold_bath.hpp"

#include <algorithm>

namespace routeweigh::bench {
namespace {

// degC; common practice, no source
constexpr double cold_until = 10;     // warmer than that, water of the tap will do
constexpr double salt_until = -5;     // ice alone stays at 0 degC
constexpr double dry_ice_below = -20; // about what ice with salt reaches
constexpr double warm_from = 40;

} // namespace

ColdBath cold_bath(const Step& step, const Stage& stage) {
    if (!is_held_cold(stage)) return cools_before_filtering(step, stage) ? ColdBath::ice : ColdBath::none;
    const double celsius = stage.temperature->celsius();
    if (celsius < dry_ice_below) return ColdBath::dry_ice;
    return celsius <= salt_until ? ColdBath::salt : ColdBath::ice;
}

bool is_held_cold(const Stage& stage) {
    return stage.temperature && stage.temperature->celsius() <= cold_until && !washes_on_filter(stage) &&
           !only_dries(stage);
}

bool is_warm(const Stage& stage) {
    return stage.temperature && stage.temperature->celsius() >= warm_from;
}

bool cools_before_filtering(const Step& step, const Stage& stage) {
    if (!is_warm(stage) || stage.phase != Phase::purification) return false;
    return std::any_of(stage.separations.begin(), stage.separations.end(), [&](const Separation& separation) {
        const bool listed = std::any_of(separation.shares.begin(), separation.shares.end(),
                                        [&](const auto& share) { return share.substance == step.product; });
        return separation.by == SeparationMethod::filtration && listed == separation.lists_what_stays;
    });
}

bool separates(const Stage& stage, SeparationMethod method) {
    return std::any_of(stage.separations.begin(), stage.separations.end(),
                       [method](const Separation& separation) { return separation.by == method; });
}

bool washes_on_filter(const Stage& stage) {
    const bool rinses = std::any_of(stage.charges.begin(), stage.charges.end(), [](const Charge& charge) {
        return charge.role->name == "wash" || charge.role->name == "rinse";
    });
    return rinses && stage.reactions.empty() && separates(stage, SeparationMethod::filtration);
}

bool only_dries(const Stage& stage) {
    const bool charged = std::any_of(stage.charges.begin(), stage.charges.end(), [](const Charge& charge) {
        return !charge.as_used && !charge.role->is_trace(); // air and traces, nobody weighs in
    });
    return !charged && separates(stage, SeparationMethod::drying);
}

} // namespace routeweigh::bench
