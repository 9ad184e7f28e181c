// SPDX-License-Identifier: MIT
// The estimate of acute toxicity of a mixture by one route and in one form.
//
//   (100 - U) / ATE_mixture = sum of C_i / ATE_i      C and U in per cent
//
// over the ingredients that are toxic by that route. U is the share of ingredients of unknown toxicity where
// it is above 10 %, else 0. An estimate of its own comes before the point that stands for a category.
#pragma once

#include "assess/mixture/limits.hpp"
#include "assess/mixture/resolved_mixture.hpp"
#include "assess/mixture/result.hpp"

#include <optional>
#include <string_view>

namespace routeweigh {

struct AcuteSum {
    std::vector<MixturePart> parts;
    double unknown_percent = 0;
    bool corrected = false;         // for the unknown share
    std::optional<double> estimate; // of the mixture; none where nothing toxic is in it
    const AcuteCategory* category = nullptr;
};

// One reckoning: a route, and in it a form.
struct AcuteRun {
    const AcuteRoute* route = nullptr;
    // True where no ingredient names this form: only those that name none count, for the others have been
    // judged in theirs.
    bool only_unnamed = false;
};

AcuteSum acute_sum(const ResolvedMixture& mixture, const AcuteRun& run, const AcuteLimits& limits);

// The entry of the ingredient for a route, the one in this form where there are several; or nullptr.
const GhsEntry* acute_entry(const ResolvedIngredient& ingredient, std::string_view route,
                            std::string_view form = {});

// The result of a route: the worst of its runs, of which there is at least one.
MixtureResult acute_result(std::string_view title, const std::vector<AcuteRun>& runs,
                           const ResolvedMixture& mixture, const AcuteLimits& limits);

} // namespace routeweigh
