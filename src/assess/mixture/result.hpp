// SPDX-License-Identifier: MIT
// What was found for one hazard of a mixture, and how: which ingredient, which limit, which sum.
//
// Results hold pointers to substances and texts of the rules; both must outlive them. The wording of an
// explanation is made on demand, see explain().
#pragma once

#include "chemistry/substance.hpp"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace routeweigh {

enum class MixtureOutcome {
    classified,
    not_classified,
    test_needed, // something in it speaks for the hazard; only a test decides
    not_judged,  // composition says nothing about it
    not_covered  // the jurisdiction has no such class
};

// What one ingredient adds to a test.
struct MixturePart {
    const Substance* substance = nullptr; // nullptr: several with toxicity data only, taken as one
    double percent = 0;
    double divisor = 0; // limit in per cent, or estimate of acute toxicity
    double factor = 0;  // weight times M
    double term = 0;    // that enters the sum: percent / divisor, or percent x factor
    std::string_view hazard_class, category;
    bool specific = false;        // a limit, estimate or factor of the substance itself
    std::string_view remark = {}; // "no M-factor in its entry, 1 taken"
};

enum class TestKind {
    sum_of_ratios, // sum of C/L against 1
    each,          // one ingredient alone: greatest C/L against 1
    estimate,      // estimate of acute toxicity against the highest of the category
    weighted_sum,  // sum of weight x C against a limit in per cent
    value          // pH, flash point, viscosity against a limit
};

struct MixtureTest {
    TestKind kind = TestKind::each;
    std::string_view what; // is judged: "corrosive ingredients of category 1A"
    std::string category;  // that it gives where met
    double value = 0;
    double limit = 0;
    bool met = false;
    std::string_view unit;    // of value and limit
    std::string_view besides; // why a value that keeps the limit does not count
    std::vector<MixturePart> parts;
    std::string_view source;
};

struct MixtureResult {
    std::string_view endpoint; // "skin"
    std::string_view title;
    MixtureOutcome outcome = MixtureOutcome::not_classified;
    std::string hazard_class;       // "Skin Corr."; "" where not classified
    std::string category;           // "1B"; "" where the class has none
    std::string statement;          // "H314"
    std::string target;             // organ of H370 to H373, where it is one
    std::vector<MixtureTest> tests; // in the order tried; the met one with the category above decides
    std::vector<std::string> notes;
    std::vector<std::string> supplemental; // EUH statements that it brings
    std::optional<double> estimate;        // acute toxicity or flash point of the mixture
    std::string_view estimate_unit;
    std::string_view form;      // in which it is inhaled
    double unknown_percent = 0; // share of which nobody knows what it does here
    bool specific = false;      // a specific limit took part in the decision
    bool screened = false;      // not measured: estimated, or a bound

    bool classified() const { return outcome == MixtureOutcome::classified; }
    // "Skin Corr. 1B".
    std::string class_and_category() const;
};

// The result of this endpoint, or nullptr.
const MixtureResult* find_result(const std::vector<MixtureResult>& results, std::string_view endpoint);

} // namespace routeweigh
