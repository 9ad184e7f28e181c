// SPDX-License-Identifier: MIT
#include "documents/inputs.hpp"

#include "documents/number.hpp"
#include "documents/words.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <utility>

namespace routeweigh::documents {
namespace {

/// Names of a purpose that stand in a sentence; more than these is "and others".
constexpr std::size_t most_materials = 2;

Purpose purpose_of(const Role& role, Phase phase) {
    if (role.drown_out) return Purpose::drown_out;
    if (role.name == "quench" || role.name == "neutraliser") return Purpose::quench;
    if (role.name == "solvent" || role.name == "reacting solvent")
        return phase == Phase::reaction ? Purpose::reaction_solvent : Purpose::washing;
    if (role.reactant || role.catalyst) return Purpose::reactants;
    if (phase == Phase::purification) return Purpose::purification;
    return role.solvent ? Purpose::washing : Purpose::aids;
}

std::string named(const PurposeInput& input) {
    std::vector<std::string> names;
    for (const PurposeInput::Item& item : input.items) {
        if (names.size() == most_materials || item.grams < 0.1 * input.grams) break;
        names.push_back(item.material);
    }
    return listed(names);
}

} // namespace

std::string_view words(Purpose purpose) {
    switch (purpose) {
    case Purpose::reactants:
        return "reactants and reagents";
    case Purpose::reaction_solvent:
        return "reaction solvent";
    case Purpose::drown_out:
        return "drown-out and flask rinse";
    case Purpose::quench:
        return "quench and neutralisation";
    case Purpose::washing:
        return "washing and extraction";
    case Purpose::purification:
        return "recrystallisation and rinses";
    case Purpose::aids:
        break;
    }
    return "drying agents and other aids";
}

PurposeInputs inputs_by_purpose(const Assessment& route) {
    PurposeInputs result;
    const auto inflows = route.flat().inflows();
    const Evaluation& evaluation = route.evaluation();
    for (std::size_t i = 0; i < inflows.size(); ++i) {
        if (inflows[i].fed_by >= 0) continue;
        const Stage& stage = route.route()
                                 .steps[static_cast<std::size_t>(inflows[i].step)]
                                 .stages[static_cast<std::size_t>(inflows[i].stage)];
        const std::string& material =
            stage.charges[static_cast<std::size_t>(inflows[i].charge)].material->name;
        const double grams = (evaluation.in[i] - evaluation.credit[i]) / evaluation.product;
        PurposeInput& input = result[static_cast<std::size_t>(purpose_of(*inflows[i].role, stage.phase))];
        input.grams += grams;
        const auto found = std::find_if(input.items.begin(), input.items.end(),
                                        [&](const auto& item) { return item.material == material; });
        if (found == input.items.end())
            input.items.push_back({material, grams});
        else
            found->grams += grams;
    }
    for (PurposeInput& input : result)
        std::stable_sort(input.items.begin(), input.items.end(),
                         [](const auto& a, const auto& b) { return a.grams > b.grams; });
    return result;
}

std::vector<PurposeDifference> causes(const Assessment& route, const Assessment& baseline,
                                      bool with_drown_out) {
    const PurposeInputs ours = inputs_by_purpose(route), theirs = inputs_by_purpose(baseline);
    std::vector<PurposeDifference> result;
    double whole = 0.0;
    for (std::size_t p = 0; p < purpose_count; ++p) {
        const Purpose purpose = static_cast<Purpose>(p);
        if (purpose == Purpose::drown_out && !with_drown_out) continue;
        const double difference = ours[p].grams - theirs[p].grams;
        whole += difference;
        result.push_back({purpose, difference, named(difference > 0.0 ? ours[p] : theirs[p])});
    }
    std::erase_if(result, [&](const PurposeDifference& entry) {
        return entry.grams * whole <= 0.0 || std::abs(entry.grams) < 0.1 * std::abs(whole);
    });
    std::stable_sort(result.begin(), result.end(),
                     [](const auto& a, const auto& b) { return std::abs(a.grams) > std::abs(b.grams); });
    return result;
}

std::string causes_text(const Assessment& route, const Assessment& baseline, bool with_drown_out,
                        std::size_t most) {
    std::vector<std::string> parts;
    for (const PurposeDifference& cause : causes(route, baseline, with_drown_out)) {
        if (parts.size() == most) break;
        parts.push_back(fmt::format("{} {} g/g ({})", words(cause.purpose), difference_text(cause.grams, 1),
                                    cause.materials));
    }
    return listed(parts);
}

} // namespace routeweigh::documents
