// SPDX-License-Identifier: MIT
#include "assess/mixture/rules/rules.hpp"

#include <array>

namespace routeweigh {

std::span<const MixtureRule* const> mixture_rule_list() {
    using namespace mixture_rules;
    static const std::array list{
        &flammable_liquid,
        &oxidiser,
        &metal_corrosion,
        &other_physical,
        &acute_toxicity,
        &skin_contact,
        &eye_contact, // a corrosive mixture damages eyes: after skin
        &sensitisation,
        &lasting_harm,
        &target_organs,
        &transient_effects,
        &aspiration,
        &aquatic,
        &listed_environment,
        &supplemental_statements, // looks on the others
    };
    return list;
}

MixtureResult not_covered(std::string_view endpoint, std::string_view title) {
    MixtureResult result;
    result.endpoint = endpoint;
    result.title = title;
    result.outcome = MixtureOutcome::not_covered;
    return result;
}

} // namespace routeweigh
