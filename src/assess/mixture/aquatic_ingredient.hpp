// SPDX-License-Identifier: MIT
// An ingredient by its hazard to water: category and M-factor, from its entry or from measured toxicity.
#pragma once

#include "assess/mixture/resolved_mixture.hpp"

#include <optional>
#include <string_view>

namespace routeweigh {

enum class AquaticKind { acute, chronic };

struct AquaticClass {
    int category = 0; // 1 to 4
    double m_factor = 1;
    bool m_given = false;          // by the entry or by data; else 1 is taken
    std::string_view hazard_class; // of the entry; "" where from data
};

// Category and M-factor of a toxicity in mg/L: LC50 or EC50 for acute, NOEC for chronic. None where it is too
// mild for a category. M rises tenfold with each decade.
std::optional<AquaticClass> aquatic_class(AquaticKind kind, double mg_per_litre, bool rapidly_degradable);

// By its entry; a missing M-factor is taken from measured toxicity, else 1.
std::optional<AquaticClass> aquatic_class(AquaticKind kind, const ResolvedIngredient& ingredient);

// The measured toxicity of this kind.
std::optional<double> aquatic_toxicity(AquaticKind kind, const ResolvedIngredient& ingredient);

} // namespace routeweigh
