// SPDX-License-Identifier: MIT
// Physical classes that ingredients carry: a neat substance keeps them, a mixture must be tested.
#pragma once

#include "assess/mixture/mixture_rules.hpp"
#include "assess/mixture/resolved_mixture.hpp"
#include "assess/mixture/result.hpp"

#include <string_view>
#include <vector>

namespace routeweigh {

struct PhysicalEntry {
    const ResolvedIngredient* ingredient = nullptr;
    const GhsEntry* entry = nullptr;
    bool by_suppliers = false; // from what suppliers add to the harmonised entry
};

// Entries of the class in enough of an ingredient to be named; all of a neat substance.
std::vector<PhysicalEntry> physical_entries(const ResolvedMixture& mixture, std::string_view hazard_class,
                                            double least_percent, bool with_suppliers);

// The neat substance's class as it stands, or a mixture that only the test decides, naming each ingredient.
// Nothing where there are no entries.
void judge_physical(const std::vector<PhysicalEntry>& entries, bool neat, std::string_view test,
                    MixtureResult& result);

// The test that decides a physical class; "" where the notes name none.
std::string_view test_for(const SubstanceNotes& notes, std::string_view hazard_class);

} // namespace routeweigh
