// SPDX-License-Identifier: MIT
// A rule judges one hazard class, or one tight family, of a mixture.
//
// A rule is one file in rules/ and one line in rule_list.cpp.
#pragma once

#include "assess/mixture/mixture_rules.hpp"
#include "assess/mixture/resolved_mixture.hpp"
#include "assess/mixture/result.hpp"

#include <span>
#include <string_view>
#include <vector>

namespace routeweigh {

struct MixtureRule {
    std::string_view id;
    std::string_view refers_to; // the rule of the regulation, for readers
    // Adds its results to those of the rules before it, on which it may look.
    void (*judge)(const ResolvedMixture& mixture, const MixtureRules& rules,
                  std::vector<MixtureResult>& results);
};

// In the order in which they are applied and read.
std::span<const MixtureRule* const> mixture_rule_list();

// A result that says that the jurisdiction has no such class.
MixtureResult not_covered(std::string_view endpoint, std::string_view title);

} // namespace routeweigh
