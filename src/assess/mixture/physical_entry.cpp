// SPDX-License-Identifier: MIT
#include "assess/mixture/physical_entry.hpp"

#include <fmt/format.h>

namespace routeweigh {

std::vector<PhysicalEntry> physical_entries(const ResolvedMixture& mixture, std::string_view hazard_class,
                                            double least_percent, bool with_suppliers) {
    std::vector<PhysicalEntry> found;
    for (const ResolvedIngredient& ingredient : mixture.ingredients) {
        if (!mixture.neat() && !reaches(ingredient.percent, least_percent)) continue;
        const std::size_t before = found.size();
        for (const GhsEntry& entry : ingredient.ghs())
            if (entry.hazard_class == hazard_class) found.push_back({&ingredient, &entry, false});
        if (found.size() > before || !with_suppliers) continue;
        for (const GhsEntry& entry : ingredient.substance->supplier_additions)
            if (entry.hazard_class == hazard_class) found.push_back({&ingredient, &entry, true});
    }
    return found;
}

void judge_physical(const std::vector<PhysicalEntry>& entries, bool neat, std::string_view test,
                    MixtureResult& result) {
    if (entries.empty()) return;
    for (const PhysicalEntry& found : entries)
        result.notes.push_back(fmt::format(
            "{:.3g} % {} carries {}{}{} ({}{})", found.ingredient->percent, found.ingredient->substance->name,
            found.entry->hazard_class, found.entry->category.empty() ? "" : " ", found.entry->category,
            found.entry->statement, found.by_suppliers ? ", added by suppliers" : ""));
    // A gas needs no test to tell whether it burns or feeds a fire, whoever wrote that down.
    const std::string& of = entries.front().entry->hazard_class;
    if (neat && (!entries.front().by_suppliers || of == "Ox. Gas" || of == "Flam. Gas")) {
        result.outcome = MixtureOutcome::classified;
        result.hazard_class = entries.front().entry->hazard_class;
        result.category = entries.front().entry->category;
        result.statement = entries.front().entry->statement;
        return;
    }
    result.outcome = MixtureOutcome::test_needed;
    if (!test.empty()) result.notes.push_back(fmt::format("composition does not decide: {}", test));
}

std::string_view test_for(const SubstanceNotes& notes, std::string_view hazard_class) {
    for (const PhysicalTest& test : notes.physical_tests)
        if (test.hazard_class == hazard_class) return test.test;
    return {};
}

} // namespace routeweigh
