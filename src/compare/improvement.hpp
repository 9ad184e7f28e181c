// SPDX-License-Identifier: MIT
// Candidate changes of a route, each really applied and evaluated, ranked by their effect on one figure.
//
// Yields are assumed to stay what the file says; how much of the yield would eat the gain stands beside it.
#pragma once

#include "assess/figure_pick.hpp"
#include "compare/candidate.hpp"
#include "compare/trial.hpp"

#include <optional>
#include <string>
#include <vector>

namespace routeweigh {

/// A cell of endpoint by place whose decades grow.
struct AddedHazard {
    std::string endpoint, place;
    double before = 0, after = 0; ///< d = log10(1 + x/x0)
};

/// What is no solvent, and of which the change leaves at least twice as much as the route does as it is.
struct LeftOver {
    std::string substance;
    double before = 0, after = 0; ///< g in all streams, for one run of the last step
};

struct Improvement {
    Candidate candidate;
    double before = 0, after = 0;           ///< the figure
    std::optional<FigurePick::Ratio> ratio; ///< of the changed route, where the figure is a plain ratio
    double gain = 0;                        ///< above 0: better
    std::vector<AddedHazard> added;
    std::vector<LeftOver> left_over; ///< most first
    double yield = 0;                ///< of the step at stake, 0 to 1
    /// Yield of that step that would eat the gain; empty: no loss of yield does.
    std::optional<double> yield_at_par;
};

/// Two changes together against the sum of both alone.
struct Interaction {
    std::size_t first = 0, second = 0; ///< in Improvements::ranked
    double joint = 0;                  ///< change of the figure
    double sum = 0;
    std::string refused; ///< why they do not go together; empty when they do
};

struct Improvements {
    FigurePick figure;
    double value = 0; ///< of the route as it is
    std::optional<FigurePick::Ratio> ratio;
    std::vector<Improvement> ranked;  ///< greatest gain first
    std::vector<Improvement> no_help; ///< tried: the figure does not get better
    struct Refused {
        Candidate candidate;
        std::string why; ///< that of the candidate, or what is wrong with the changed route
    };
    std::vector<Refused> refused;
    std::vector<Interaction> interactions; ///< only pairs whose joint effect is another than the sum
    std::size_t pairs_tried = 0;
};

/// \param pairs_of  how many of the first are tried in pairs; 0: none
/// \pre the figure knows which way is better
Improvements find_improvements(const CandidateSource& source, const FigurePick& figure, std::size_t pairs_of);

} // namespace routeweigh
