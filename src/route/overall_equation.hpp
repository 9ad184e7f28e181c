// SPDX-License-Identifier: MIT
// Proves that the overall equation of a step follows from its reactions, and looks for a better one.
#pragma once

#include "route/route.hpp"

#include <vector>

namespace routeweigh {

/// Some number of runs of each reaction of the step, in the order of the file over all stages.
using Combination = std::vector<double>;

struct OverallProof {
    bool proved = false; ///< the overall equation is a non-negative combination of the reactions
    Combination
        combination; ///< runs of each reaction for one overall equation as written; empty if not proved
    double atom_economy = 0.0; ///< of the overall equation as written, 0 to 1
    double best_atom_economy =
        0.0; ///< highest of any combination of the same reactions from the same bottles, 0 to 1
    std::vector<SubstanceEquation::Part> best; ///< that combination, per mol product; negative is used up
};

/// Both questions are linear programmes over the runs of the reactions.
OverallProof prove_overall(const Step& step);

/// Product mass over the mass of everything on the left, 0 to 1.
double atom_economy_of(const SubstanceEquation& equation, const Substance* product);

} // namespace routeweigh
