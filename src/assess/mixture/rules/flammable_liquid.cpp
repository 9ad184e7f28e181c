// SPDX-License-Identifier: MIT
// Flammable liquids by flash point: measured where it is stated, else screened.
//
// A screened flash point says which test is worth doing; only a measured one decides near a limit.
#include "assess/mixture/flash_point.hpp"
#include "assess/mixture/physical_entry.hpp"
#include "assess/mixture/rules/rules.hpp"
#include "assess/mixture/specific_limit.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace routeweigh::mixture_rules {
namespace {

// Where boiling starts: stated, or not above that of its lowest boiling flammable ingredient.
std::optional<double> boiling_point_of(const ResolvedMixture& mixture, const FlashPoint& flash) {
    if (mixture.facts.boiling_point) return mixture.facts.boiling_point;
    std::optional<double> lowest;
    for (const FlammablePart& part : flash.flammable) {
        const auto& point = part.ingredient->substance->boiling_point;
        if (point && (!lowest || *point < *lowest)) lowest = point;
    }
    return lowest;
}

bool flashes_within(const FlammableCategory& category, double flash_point) {
    const double slack = limit_tolerance * category.flash_point;
    return category.included ? flash_point <= category.flash_point + slack
                             : flash_point < category.flash_point - slack;
}

bool boils_within(const FlammableCategory& category, const std::optional<double>& boiling) {
    return !category.boiling_point || (boiling && *boiling <= *category.boiling_point);
}

std::string_view method_text(FlashPointMethod method) {
    switch (method) {
    case FlashPointMethod::measured:
        return "stated";
    case FlashPointMethod::neat:
        return "of the neat substance";
    case FlashPointMethod::activity:
        return "screened by Liaw's method: vapour pressures, with activity in water after van Laar";
    case FlashPointMethod::lowest:
        return "bound, no estimate: the lowest flash point among flammable ingredients of 1 % or more; pairs "
               "of "
               "solvents may flash below both";
    case FlashPointMethod::halogenated:
        return "not predictable beside halogenated solvents; more than half is flammable, so it counts as "
               "its "
               "lowest flashing part until a closed-cup test says otherwise";
    default:
        return "";
    }
}

void add_notes(const FlashPoint& flash, const MixtureFacts& facts, const FlammableLimits& limits,
               MixtureResult& result) {
    const std::string& stated_method = facts.flash_point_method;
    const bool given = flash.method == FlashPointMethod::measured && !stated_method.empty();
    result.notes.emplace_back(given ? std::string_view(stated_method) : method_text(flash.method));
    if (!result.screened || facts.flashes_above) return;
    if (flash.method == FlashPointMethod::activity)
        result.notes.emplace_back(
            "salts and acids are left out and solvents taken as ideal among themselves; not "
            "to be used beside halogenated solvents, for two layers, or in place of a "
            "test");
    for (const FlammableCategory& category : limits.categories)
        if (std::abs(*flash.celsius - category.flash_point) < limits.margin &&
            flash.method != FlashPointMethod::lowest && flash.method != FlashPointMethod::halogenated) {
            result.notes.push_back(
                fmt::format("within {:g} K of the limit at {:g} \u00B0C: only a closed-cup "
                            "test decides",
                            limits.margin, category.flash_point));
            break;
        }
    result.notes.emplace_back("above 35 \u00B0C a liquid that does not sustain combustion may be exempt");
}

// Halogenated solvents, and no more than half flammable: nothing can be said of the flash point, but what
// burns is named.
void refuse_halogenated(const FlashPoint& flash, MixtureResult& result) {
    result.outcome = MixtureOutcome::test_needed;
    double percent = 0;
    std::string names;
    for (const FlammablePart& part : flash.flammable) {
        percent += part.ingredient->percent;
        if (!names.empty()) names += ", ";
        names += part.ingredient->substance->name;
    }
    result.notes.push_back(
        fmt::format("the flash point beside halogenated solvents is not predictable; {:.3g} % "
                    "is flammable by itself ({}): closed-cup test",
                    percent, names));
    constexpr double may_become_flammable = 5; // per cent; CLP Annex II, 2.9 (memory)
    if (is_above(percent, may_become_flammable))
        result.notes.emplace_back("where the test finds none up to 60 \u00B0C: can become flammable in use "
                                  "(EUH209 or EUH209A)");
}

// A specific limit of the class (formic acid) decides where nothing was measured.
bool judge_by_specific_limit(const ResolvedMixture& mixture, MixtureResult& result) {
    if (mixture.facts.flash_point) return false;
    for (const ResolvedIngredient& ingredient : mixture.ingredients) {
        const ConcentrationBand* found = nullptr;
        each_band(ingredient, "Flam. Liq.", [&](const ConcentrationBand& band) {
            if (holds(band, ingredient.percent)) found = &band;
        });
        if (found == nullptr) continue;
        MixtureTest test;
        test.what = "specific limit of a flammable liquid";
        test.category = found->category;
        test.limit = 1;
        test.source = "specific limit of the entry";
        MixturePart part;
        part.substance = ingredient.substance;
        part.percent = ingredient.percent;
        part.divisor = found->min_percent;
        part.term = ingredient.percent / found->min_percent;
        part.hazard_class = "Flam. Liq.";
        part.category = found->category;
        part.specific = true;
        test.value = part.term;
        test.met = true;
        test.parts.push_back(part);
        result.tests.push_back(std::move(test));
        result.outcome = MixtureOutcome::classified;
        result.hazard_class = "Flam. Liq.";
        result.category = found->category;
        result.statement = found->statement;
        result.specific = true;
        return true;
    }
    return false;
}

void judge_by_flash_point(const ResolvedMixture& mixture, const FlashPoint& flash,
                          const FlammableLimits& limits, MixtureResult& result) {
    if (!mixture.facts.flashes_above) result.estimate = flash.celsius;
    result.estimate_unit = "\u00B0C";
    result.screened =
        flash.method == FlashPointMethod::activity || flash.method == FlashPointMethod::lowest ||
        flash.method == FlashPointMethod::halogenated ||
        (flash.method == FlashPointMethod::measured && !mixture.facts.flash_point_method.empty());
    const std::optional<double> boiling = boiling_point_of(mixture, flash);
    for (const FlammableCategory& category : limits.categories) {
        MixtureTest test;
        test.kind = TestKind::value;
        test.what = category.included        ? "flash point at most"
                    : category.boiling_point ? "of a low-boiling liquid, flash point below"
                                             : "flash point below";
        test.category = category.category;
        test.value = *flash.celsius;
        test.limit = category.flash_point;
        test.unit = "\u00B0C";
        test.source = limits.source;
        test.met = flashes_within(category, *flash.celsius) && boils_within(category, boiling);
        if (flashes_within(category, *flash.celsius) && !boils_within(category, boiling))
            test.besides = boiling ? "but it boils too high" : "boiling not known";
        const bool met = test.met;
        result.tests.push_back(std::move(test));
        if (!met) continue;
        result.outcome = MixtureOutcome::classified;
        result.hazard_class = "Flam. Liq.";
        result.category = category.category;
        result.statement = category.statement;
        if (category.boiling_point && !mixture.facts.boiling_point)
            result.notes.push_back(fmt::format("boiling is taken to start at {:g} \u00B0C, with the lowest "
                                               "boiling flammable ingredient",
                                               *boiling));
        break;
    }
    add_notes(flash, mixture.facts, limits, result);
}

void judge_flammable(const ResolvedMixture& mixture, const MixtureRules& rules,
                     std::vector<MixtureResult>& results) {
    const FlammableLimits& limits = rules.limits.flammable;
    MixtureResult result;
    result.endpoint = "flammable_liquid";
    result.title = "Flammable liquid";
    if (mixture.neat()) // as its entry has it, also where it melts near room temperature
        judge_physical(physical_entries(mixture, "Flam. Liq.", 0, false), true, {}, result);
    if (result.classified() || mixture.phase != Substance::Phase::liquid) {
        results.push_back(std::move(result)); // solids and gases: see the rule for other physical hazards
        return;
    }
    result.unknown_percent = mixture.unknown_percent("flammable_liquid");
    if (!judge_by_specific_limit(mixture, result)) {
        const FlashPoint flash =
            flash_point_of(mixture, rules.flash_points, limits.categories.back().flash_point);
        if (flash.method == FlashPointMethod::halogenated && !flash.celsius)
            refuse_halogenated(flash, result);
        else if (flash.celsius)
            judge_by_flash_point(mixture, flash, limits, result);
    }
    results.push_back(std::move(result));
}

} // namespace

const MixtureRule flammable_liquid{"flammable_liquid", "GHS chapter 2.6", judge_flammable};

} // namespace routeweigh::mixture_rules
