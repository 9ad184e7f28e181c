// SPDX-License-Identifier: MIT
#include "assess/mixture/acute_sum.hpp"

#include "assess/hazard/statement.hpp"

#include <fmt/format.h>

namespace routeweigh {
namespace {

constexpr double litres_per_mole = 24.45; // of a gas at 25 degC and 1 atm

std::string_view route_of(const GhsEntry& entry) {
    switch (statement_number(entry.statement) / 10) {
    case 30:
        return "oral"; // H300 to H303
    case 31:
        return "dermal";
    case 33:
        return "inhalation";
    default:
        return entry.acute_toxicity ? std::string_view(entry.acute_toxicity->route) : "";
    }
}

const AcuteCategory* category_of(const AcuteRoute& route, std::string_view name) {
    for (const AcuteCategory& category : route.categories)
        if (category.category == name) return &category;
    return nullptr;
}

const AcuteCategory* category_of(const AcuteRoute& route, double estimate) {
    for (const AcuteCategory& category : route.categories)
        if (!is_above(estimate, category.upper)) return &category;
    return nullptr;
}

// The estimate in the unit of the route, where it can be turned into it.
std::optional<double> in_unit_of(const AcuteRoute& route, const AcuteToxicityEstimate& estimate,
                                 double molar_mass) {
    if (route.form.empty()) return estimate.value;
    const bool is_ppm = estimate.unit == "ppm" || estimate.unit == "ppmV";
    const bool wants_ppm = route.unit == "ppmV";
    if (is_ppm == wants_ppm) return estimate.value;
    if (!(molar_mass > 0) || route.form == "dusts or mists") return std::nullopt;
    const double ppm_per_mg_per_litre = 1000 * litres_per_mole / molar_mass;
    return wants_ppm ? estimate.value * ppm_per_mg_per_litre : estimate.value / ppm_per_mg_per_litre;
}

// Adds what the ingredient contributes, and returns its category; nothing where it is not toxic by the route
// in this jurisdiction.
const AcuteCategory* add_part(const ResolvedIngredient& ingredient, const AcuteRun& run,
                              const AcuteLimits& limits, std::vector<MixturePart>& parts) {
    const AcuteRoute& route = *run.route;
    const GhsEntry* entry = acute_entry(ingredient, route.route, route.form);
    if (entry == nullptr) return nullptr;
    MixturePart part;
    part.substance = ingredient.substance;
    part.percent = ingredient.percent;
    part.hazard_class = entry->hazard_class;
    part.category = entry->category;
    const AcuteCategory* category = category_of(route, entry->category);
    const auto& known = entry->acute_toxicity;
    if (run.only_unnamed && known && !known->form.empty()) return nullptr;
    const bool same_form = known && (known->form.empty() || known->form == route.form);
    const std::optional<double> own =
        known && same_form ? in_unit_of(route, *known, ingredient.substance->molar_mass) : std::nullopt;
    if (own) {
        part.divisor = *own;
        part.specific = true;
        const AcuteCategory* by_estimate = category_of(route, *own);
        // Estimates of entries may stand on the lower edge of the category that the entry states.
        if (by_estimate == nullptr || category == nullptr || category->upper < by_estimate->upper)
            category = by_estimate;
    } else if (known && category == nullptr && entry->category.empty()) {
        // Data in another form and no category: what it would be in its own form.
        for (const AcuteRoute& other : limits.routes)
            if (other.route == route.route && other.form == known->form)
                if (const AcuteCategory* found = category_of(other, known->value))
                    category = category_of(route, found->category);
    }
    if (category == nullptr) return nullptr; // milder than the last category
    if (!own) {
        part.divisor = category->point;
        if (known) part.remark = "its own estimate is for another form, so the point of its category";
    }
    if (!reaches(ingredient.percent, category->cut_off)) return nullptr;
    part.term = part.percent / part.divisor;
    parts.push_back(part);
    return category;
}

} // namespace

const GhsEntry* acute_entry(const ResolvedIngredient& ingredient, std::string_view route,
                            std::string_view form) {
    const GhsEntry* found = nullptr;
    for (const GhsEntry& entry : ingredient.ghs()) {
        if (entry.hazard_class != "Acute Tox." || route_of(entry) != route) continue;
        if (entry.acute_toxicity && !form.empty() && entry.acute_toxicity->form == form) return &entry;
        if (found == nullptr || entry.category < found->category) found = &entry;
    }
    return found;
}

AcuteSum acute_sum(const ResolvedMixture& mixture, const AcuteRun& run, const AcuteLimits& limits) {
    const AcuteRoute& route = *run.route;
    AcuteSum sum;
    sum.unknown_percent = mixture.unknown_percent(route.endpoint);
    sum.corrected = is_above(sum.unknown_percent, limits.unknown_corrected_above);
    double total = 0;
    const AcuteCategory* worst = nullptr; // of an ingredient
    for (const ResolvedIngredient& ingredient : mixture.ingredients) {
        if (ingredient.unknown_for(route.endpoint)) continue;
        const AcuteCategory* own = add_part(ingredient, run, limits, sum.parts);
        if (own != nullptr && (worst == nullptr || own->upper < worst->upper)) worst = own;
    }
    for (const MixturePart& part : sum.parts)
        total += part.term;
    if (!(total > 0)) return sum;
    sum.estimate = (100 - (sum.corrected ? sum.unknown_percent : 0)) / total;
    sum.category = category_of(route, *sum.estimate);
    // Points stand on the lower edge of their category; a mixture is no worse than its worst ingredient.
    if (sum.category != nullptr && sum.category->upper < worst->upper) sum.category = worst;
    return sum;
}

MixtureResult acute_result(std::string_view title, const std::vector<AcuteRun>& runs,
                           const ResolvedMixture& mixture, const AcuteLimits& limits) {
    MixtureResult result;
    result.endpoint = runs.front().route->endpoint;
    result.title = title;
    const AcuteCategory* worst = nullptr;
    for (const AcuteRun& run : runs) {
        const AcuteRoute* route = run.route;
        AcuteSum sum = acute_sum(mixture, run, limits);
        result.unknown_percent = sum.unknown_percent;
        if (sum.corrected && result.notes.empty())
            result.notes.push_back(fmt::format("more than {:g} % is of unknown toxicity, so that share is "
                                               "taken off the 100 %: {}",
                                               limits.unknown_corrected_above, limits.unknown_source));
        if (!sum.estimate) continue;
        MixtureTest test;
        test.kind = TestKind::estimate;
        test.what = route->form.empty() ? std::string_view(route->route) : route->form;
        test.value = *sum.estimate;
        test.limit = sum.category != nullptr ? sum.category->upper : route->categories.back().upper;
        test.met = sum.category != nullptr;
        test.unit = route->unit;
        test.parts = std::move(sum.parts);
        test.source = route->source;
        if (test.met) test.category = sum.category->category;
        const bool worse =
            sum.category != nullptr && (worst == nullptr || sum.category->category < worst->category);
        if (worse || (worst == nullptr && !result.estimate)) {
            result.estimate = sum.estimate;
            result.estimate_unit = route->unit;
            result.form = route->form;
        }
        if (worse) {
            worst = sum.category;
            result.outcome = MixtureOutcome::classified;
            result.hazard_class = "Acute Tox.";
            result.category = worst->category;
            result.statement = worst->statement;
        }
        result.tests.push_back(std::move(test));
    }
    return result;
}

} // namespace routeweigh
