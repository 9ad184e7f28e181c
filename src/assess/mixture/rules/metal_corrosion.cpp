// SPDX-License-Identifier: MIT
// Corrosive to metals: a test on steel and aluminium decides; what speaks for it is named.
#include "assess/mixture/physical_entry.hpp"
#include "assess/mixture/rules/rules.hpp"

#include <fmt/format.h>

namespace routeweigh::mixture_rules {
namespace {

constexpr std::string_view corrosive_to_metals = "Met. Corr.";

void judge_metal(const ResolvedMixture& mixture, const MixtureRules& rules,
                 std::vector<MixtureResult>& results) {
    MixtureResult result;
    result.endpoint = "metal_corrosion";
    result.title = "Corrosive to metals";
    result.unknown_percent = mixture.unknown_percent("metal_corrosion");
    const std::string_view test = test_for(rules.notes, corrosive_to_metals);
    judge_physical(physical_entries(mixture, corrosive_to_metals, rules.notes.physical_percent, true),
                   mixture.neat(), test, result);
    const auto& ph = mixture.facts.ph;
    if (ph && (*ph <= rules.limits.ph.acid || *ph >= rules.limits.ph.base) && !result.classified()) {
        if (result.outcome != MixtureOutcome::test_needed)
            result.notes.push_back(fmt::format("composition does not decide: {}", test));
        result.outcome = MixtureOutcome::test_needed;
        result.notes.push_back(fmt::format("a pH of {:g} speaks for it", *ph));
    }
    if (result.outcome == MixtureOutcome::not_classified && !mixture.neat()) {
        result.outcome = MixtureOutcome::not_judged;
        result.notes.push_back(
            fmt::format("composition does not decide, and nothing in it speaks for it: {}", test));
    }
    results.push_back(std::move(result));
}

} // namespace

const MixtureRule metal_corrosion{"metal_corrosion", "GHS chapter 2.16", judge_metal};

} // namespace routeweigh::mixture_rules
