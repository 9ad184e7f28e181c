// SPDX-License-Identifier: MIT
// Acute toxicity by mouth, by skin and by breathing.
//
// A gas is breathed as such. Anything else is judged in the forms that the entries of its ingredients name;
// for those that name none, as vapour (liquids and gases) and as dust or mist (liquids and solids), for a wet
// solid gives off vapour too. The worst counts.
#include "assess/mixture/acute_sum.hpp"
#include "assess/mixture/rules/rules.hpp"

namespace routeweigh::mixture_rules {
namespace {

using Phase = Substance::Phase;

constexpr double least_percent = 0.1;      // of an ingredient that has a say in the form
constexpr double highest_of_vapours = 100; // degC, where boiling starts; our line

struct Forms {
    bool vapours = false, mists = false;
};

// By the entries that name a form, or by the phases of the ingredients whose entry names none.
Forms forms_of(const ResolvedMixture& mixture, bool named) {
    Forms forms;
    for (const ResolvedIngredient& ingredient : mixture.ingredients) {
        const GhsEntry* entry = acute_entry(ingredient, "inhalation");
        if (entry == nullptr || !reaches(ingredient.percent, least_percent)) continue;
        const std::string_view form =
            entry->acute_toxicity ? entry->acute_toxicity->form : std::string_view();
        if (named != !form.empty()) continue;
        const Phase own = ingredient.substance->phase;
        const bool early =
            ingredient.substance->boiling_point.value_or(highest_of_vapours) < highest_of_vapours;
        forms.vapours = forms.vapours || (named ? form != "dusts or mists" : own != Phase::solid || early);
        // A dissolved gas with an entry for its solution is judged as the solution is; what boils early is a
        // vapour before it is a mist.
        const bool mist = own == Phase::gas ? ingredient.solution : !early;
        forms.mists = forms.mists || (named ? form == "dusts or mists" : mist);
    }
    return forms;
}

std::vector<AcuteRun> inhaled_runs(const ResolvedMixture& mixture, const AcuteLimits& limits) {
    std::vector<AcuteRun> runs;
    const auto add = [&](std::string_view form, bool only_unnamed = false) {
        for (const AcuteRoute& route : limits.routes)
            if (route.route == "inhalation" && route.form == form) runs.push_back({&route, only_unnamed});
    };
    if (mixture.facts.inhaled_form) {
        add(*mixture.facts.inhaled_form);
    } else if (mixture.phase == Phase::gas) {
        add("gases");
    } else {
        const Forms named = forms_of(mixture, true), unnamed = forms_of(mixture, false);
        if (named.vapours || unnamed.vapours) add("vapours", !named.vapours);
        if (named.mists || unnamed.mists) add("dusts or mists", !named.mists);
    }
    return runs;
}

void judge_acute(const ResolvedMixture& mixture, const MixtureRules& rules,
                 std::vector<MixtureResult>& results) {
    const AcuteLimits& limits = rules.limits.acute;
    std::vector<AcuteRun> oral, dermal;
    for (const AcuteRoute& route : limits.routes) {
        if (route.route == "oral") oral.push_back({&route});
        if (route.route == "dermal") dermal.push_back({&route});
    }
    results.push_back(acute_result("Acute toxicity, swallowed", oral, mixture, limits));
    results.push_back(acute_result("Acute toxicity, on the skin", dermal, mixture, limits));
    const std::vector<AcuteRun> inhaled = inhaled_runs(mixture, limits);
    if (inhaled.empty()) { // a liquid of which nothing is toxic to breathe
        MixtureResult none;
        none.endpoint = "acute_inhalation";
        none.title = "Acute toxicity, inhaled";
        none.unknown_percent = mixture.unknown_percent("acute_inhalation");
        results.push_back(std::move(none));
        return;
    }
    MixtureResult result = acute_result("Acute toxicity, inhaled", inhaled, mixture, limits);
    if (result.tests.size() > 1)
        result.notes.push_back(
            "not every entry says in which form it was judged; vapour and dust or mist are "
            "both worked out, and the worse counts");
    results.push_back(std::move(result));
}

} // namespace

const MixtureRule acute_toxicity{"acute_toxicity", "GHS chapter 3.1", judge_acute};

} // namespace routeweigh::mixture_rules
