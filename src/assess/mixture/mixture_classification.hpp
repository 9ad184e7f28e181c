// SPDX-License-Identifier: MIT
// The classification of a mixture from its composition: every hazard with its reasons, and the label.
//
// A classification from composition is an estimate for planning; data of the mixture itself come first, and
// rules for mixtures are no rules for waste. The substances and the rules must outlive it.
#pragma once

#include "assess/mixture/label.hpp"
#include "assess/mixture/mixture_rules.hpp"
#include "assess/mixture/resolved_mixture.hpp"
#include "assess/mixture/result.hpp"

#include <string>
#include <string_view>
#include <vector>

namespace routeweigh {

struct MixtureClassification {
    std::string_view regime;         // "EU CLP"
    std::vector<std::string> blocks; // of the UN that are on, by title
    ResolvedMixture mixture;
    std::vector<MixtureResult> results; // in reading order
    MixtureLabel label;
    double unassessed_percent = 0; // ingredients without any classification, and what is not stated

    const MixtureResult* result(std::string_view endpoint) const { return find_result(results, endpoint); }
    // Titles of what composition cannot decide.
    std::vector<std::string_view> undecided() const;
    // Remarks on the mixture: assumed phase, entries of solutions taken, what nobody has assessed.
    std::vector<std::string> notes() const;
};

// Throws InputError where the mixture cannot be classified, see problems_of().
MixtureClassification classify(const Mixture& mixture, const MixtureRules& rules);

// "EU CLP", "UN GHS, with acute toxicity, category 5, ...".
std::string regime_text(const MixtureClassification& classification);

} // namespace routeweigh
