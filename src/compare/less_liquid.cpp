// SPDX-License-Identifier: MIT
#include "compare/less_liquid.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace routeweigh {
namespace {

/// Neat or as a solution.
bool is_poured(const Charge& charge) {
    return std::any_of(charge.material->components.begin(), charge.material->components.end(),
                       [](const Component& part) {
                           return part.carrier || part.substance->phase == Substance::Phase::liquid;
                       });
}

} // namespace

std::string at_temperature(const Stage& stage) {
    return stage.temperature ? fmt::format(" at {:.0f} degC", stage.temperature->celsius()) : std::string();
}

bool is_largest_liquid(const ChargePlace& place, const std::vector<ChargePlace>& all) {
    return is_poured(*place.charge) && std::none_of(all.begin(), all.end(), [&](const ChargePlace& other) {
               return other.stage == place.stage && is_poured(*other.charge) && other.grams > place.grams;
           });
}

std::vector<std::string> cautions_for_less_liquid(const ChargePlace& place,
                                                  const std::vector<ChargePlace>& all, double kept) {
    double liquid = 0.0, dissolved = 0.0;
    for (const ChargePlace& other : all)
        if (other.stage == place.stage)
            (other.charge->role->solvent || other.charge == place.charge ? liquid : dissolved) += other.grams;
    return {
        fmt::format("solubility: {} of {} would hold what {} holds now, {} of reactants and reagents; see "
                    "whether all is dissolved{}, at the start and as product forms",
                    grams_text(liquid - (1.0 - kept) * place.grams),
                    place.charge->role->solvent ? "solvent" : "liquid", grams_text(liquid),
                    grams_text(dissolved), at_temperature(*place.stage)),
        "heat: less liquid takes up the heat of reaction; run it small and watch the thermometer",
        "stirring: a thick slurry may stop the bar"};
}

} // namespace routeweigh
