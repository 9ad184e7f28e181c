// SPDX-License-Identifier: MIT
// A result in words: what was found, then each test with its ingredients, limits and sum.
#pragma once

#include "assess/mixture/result.hpp"

#include <string>
#include <vector>

namespace routeweigh {

// "Skin Corr. 1B (H314)", "not classified", "a test decides", ...
std::string outcome_text(const MixtureResult& result);

// "corrosive ingredients, 1A and 1B: 3 % A / 5 % + 3 % B / 5 % = 1.2, at least 1".
std::string test_text(const MixtureTest& test);

// The outcome, each test, each note, and the share of unknown hazard; one line each.
std::vector<std::string> explain(const MixtureResult& result);

} // namespace routeweigh
