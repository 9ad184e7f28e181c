// SPDX-License-Identifier: MIT
// The classification of each bottle that a route takes from, worked out once.
#pragma once

#include "assess/mixture/mixture_classification.hpp"

#include <initializer_list>
#include <map>
#include <memory>
#include <string>
#include <string_view>
#include <vector>

namespace routeweigh::bench {

class Bottles {
  public:
    /// The rules must outlive it.
    explicit Bottles(const MixtureRules& rules) : rules_(&rules) {}

    const MixtureClassification& of(const Material& material);

  private:
    const MixtureRules* rules_;
    std::map<const Material*, std::unique_ptr<const MixtureClassification>> known_;
};

/// Its label has one of these statements, by number: {225, 226}.
bool carries(const MixtureClassification& bottle, std::initializer_list<int> statements);

/// Some substance in the bottle carries this supplemental statement ("EUH032"); not all jurisdictions print
/// them, and what they say holds everywhere.
bool brings(const Material& material, std::string_view supplemental);

/// What is said first at a bench: 5 kills or burns at once, 4 is toxic or blinds, 3 catches fire easily or
/// harms for good, 2 harms when swallowed or burns less easily, 1 irritates or harms water life, 0 unknown.
/// An order of our own for papers, and no assessment.
int urgency(std::string_view statement);

/// The statements of a label that matter most at a bench, most urgent first, at most so many.
std::vector<std::string> main_statements(const MixtureLabel& label, std::size_t most);

} // namespace routeweigh::bench
