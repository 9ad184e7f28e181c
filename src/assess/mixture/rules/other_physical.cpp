// SPDX-License-Identifier: MIT
// Physical hazards that composition does not decide: explosives, gases, flammable solids, pyrophoric,
// self-heating and water-reactive substances. What an ingredient carries is named with the test for it.
#include "assess/mixture/physical_entry.hpp"
#include "assess/mixture/rules/rules.hpp"

#include <array>

namespace routeweigh::mixture_rules {
namespace {

struct PhysicalClass {
    std::string_view hazard_class, endpoint, title;
    bool of_gases = false; // means nothing once the gas is dissolved
};

constexpr std::array classes{
    PhysicalClass{"Unst. Expl.", "explosive", "Explosive"},
    PhysicalClass{"Expl.", "explosive", "Explosive"},
    PhysicalClass{"Self-react.", "self_reactive", "Self-reactive"},
    PhysicalClass{"Org. Perox.", "organic_peroxide", "Organic peroxide"},
    PhysicalClass{"Flam. Gas", "flammable_gas", "Flammable gas", true},
    PhysicalClass{"Press. Gas", "gas_under_pressure", "Gas under pressure", true},
    PhysicalClass{"Flam. Sol.", "flammable_solid", "Flammable solid"},
    PhysicalClass{"Pyr. Liq.", "pyrophoric", "Catches fire in air"},
    PhysicalClass{"Pyr. Sol.", "pyrophoric", "Catches fire in air"},
    PhysicalClass{"Self-heat.", "self_heating", "Self-heating"},
    PhysicalClass{"Water-react.", "water_reactive", "Flammable gas with water"},
};

// A flammable solid that is dissolved is no solid any more.
bool can_apply(const PhysicalClass& physical, Substance::Phase phase) {
    if (physical.of_gases) return phase == Substance::Phase::gas;
    return physical.hazard_class != "Flam. Sol." || phase == Substance::Phase::solid;
}

void judge_other_physical(const ResolvedMixture& mixture, const MixtureRules& rules,
                          std::vector<MixtureResult>& results) {
    const std::size_t before = results.size();
    for (const PhysicalClass& physical : classes) {
        if (!can_apply(physical, mixture.phase)) continue;
        const std::vector<PhysicalEntry> entries =
            physical_entries(mixture, physical.hazard_class, rules.notes.physical_percent, true);
        if (entries.empty()) continue;
        MixtureResult result;
        result.endpoint = physical.endpoint;
        result.title = physical.title;
        judge_physical(entries, mixture.neat(), test_for(rules.notes, physical.hazard_class), result);
        results.push_back(std::move(result));
    }
    if (results.size() > before) return;
    MixtureResult none;
    none.endpoint = "other_physical";
    none.title = "Other physical hazards";
    none.unknown_percent = mixture.unknown_percent("other_physical");
    if (!mixture.neat()) {
        none.outcome = MixtureOutcome::not_judged;
        none.notes.emplace_back(
            "explosive, self-reactive, pyrophoric, self-heating, water-reactive: composition "
            "does not decide, and no ingredient carries such a class");
    }
    results.push_back(std::move(none));
}

} // namespace

const MixtureRule other_physical{"other_physical", "GHS part 2", judge_other_physical};

} // namespace routeweigh::mixture_rules
