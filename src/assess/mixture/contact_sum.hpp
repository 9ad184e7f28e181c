// SPDX-License-Identifier: MIT
// Skin and eyes: shares over their limits, summed over the ingredients for which limits add up.
//
//   sum of C_i / L_i >= 1      L specific where the entry has one, else general
//
// An ingredient counts from 1 % on, or from its lowest specific limit where that is less.
#pragma once

#include "assess/mixture/limits.hpp"
#include "assess/mixture/resolved_mixture.hpp"
#include "assess/mixture/result.hpp"

#include <optional>
#include <string_view>

namespace routeweigh {

// The limit of an ingredient in a sum; general where not specific.
struct ContactLimit {
    double percent = 0;
    bool specific = false;
    std::string_view hazard_class, category; // by which the ingredient counts
};

// Does the ingredient count at all, by the classes of the endpoint?
bool counts(const ResolvedIngredient& ingredient, double cut_off, std::string_view severe_class,
            std::string_view mild_class);

// True where limits add up, or a specific limit of these classes makes them do.
bool adds_up(const ResolvedIngredient& ingredient, std::string_view severe_class,
             std::string_view mild_class);

// Sums C/L over the ingredients for which `limit_of` gives a limit.
template<typename LimitOf>
MixtureTest ratio_test(const ResolvedMixture& mixture, std::string_view what, std::string_view category,
                       std::string_view source, LimitOf&& limit_of) {
    MixtureTest test;
    test.kind = TestKind::sum_of_ratios;
    test.what = what;
    test.category = category;
    test.limit = 1;
    test.source = source;
    for (const ResolvedIngredient& ingredient : mixture.ingredients) {
        const std::optional<ContactLimit> limit = limit_of(ingredient);
        if (!limit) continue;
        MixturePart part;
        part.substance = ingredient.substance;
        part.percent = ingredient.percent;
        part.divisor = limit->percent;
        part.term = limit->percent > 0 ? ingredient.percent / limit->percent : 1.0;
        part.hazard_class = limit->hazard_class;
        part.category = limit->category;
        part.specific = limit->specific;
        test.value += part.term;
        test.parts.push_back(part);
    }
    test.met = !test.parts.empty() && reaches(test.value, test.limit);
    return test;
}

// One ingredient alone decides: the greatest C/L.
template<typename LimitOf>
MixtureTest single_test(const ResolvedMixture& mixture, std::string_view what, std::string_view category,
                        std::string_view source, LimitOf&& limit_of) {
    MixtureTest test = ratio_test(mixture, what, category, source, limit_of);
    test.kind = TestKind::each;
    test.value = 0;
    for (const MixturePart& part : test.parts)
        test.value = part.term > test.value ? part.term : test.value;
    test.met = !test.parts.empty() && reaches(test.value, test.limit);
    return test;
}

// Is the pH extreme, and no specific limit of an acid (of a base) accounts for it? The value is the pH; no
// parts. None where the pH is not stated.
std::optional<MixtureTest> ph_test(const ResolvedMixture& mixture, const PhLimits& limits,
                                   std::string_view severe_class, std::string_view mild_class);

// Takes the test over into the result; the first test that is met decides.
void add_test(MixtureResult& result, MixtureTest test, std::string_view hazard_class,
              std::string_view statement);

} // namespace routeweigh
