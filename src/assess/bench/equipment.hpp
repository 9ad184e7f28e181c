// SPDX-License-Identifier: MIT
// What stands on one bench for a step: vessels that fit, what heats, cools, filters and measures, and what
// the streams need before they leave it.
//
// Only what stages, decisions and volumes of the route ask for; clamps, stirrers and balances are not listed.
#pragma once

#include <string>
#include <vector>

namespace routeweigh::bench {

struct BenchStep;
struct BenchRules;
class Experiment;

struct Equipment {
    std::string name;              ///< "250 mL round-bottomed flask"
    std::vector<std::string> uses; ///< titles of stages, or what it is for
    double holds = 0;              ///< mL at most in it; 0: no vessel
    double runs = 1; ///< of the step that uses it, for one run of the route; of several steps the most

    /// One run of the step serves several students.
    bool is_pooled() const { return runs < 1; }
    /// So many of it stand ready for a section.
    int pieces(int students) const;
};

/// Each once, though several stages use it.
std::vector<Equipment> equipment_of(const BenchStep& step, const BenchRules& rules);

/// Of all steps, each once, for one follows the other: uses of all, after the id of their step where there
/// are several, and the most that any step puts in it.
std::vector<Equipment> equipment_of(const Experiment& experiment);

} // namespace routeweigh::bench
