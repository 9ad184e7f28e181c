// SPDX-License-Identifier: MIT
#include "compare/candidate.hpp"

#include <array>

namespace routeweigh {
namespace {

constexpr std::array kinds{
    CandidateKind{"halved", "half of a solvent or wash", find_halved},
    CandidateKind{"excess", "less excess", find_excess},
    CandidateKind{"recovery", "solvent recovered", find_recovery},
    CandidateKind{"better_yield", "the yield of a good quarter of the class", find_better_yield},
    CandidateKind{"water_drown_out", "drowned out with water", find_water_drown_out},
    CandidateKind{"catalyst", "less catalyst", find_catalyst},
    CandidateKind{"telescoping", "an intermediate carried on crude", find_telescoping},
    CandidateKind{"other_solvent", "another solvent of the same kind", find_other_solvent},
};

} // namespace

std::span<const CandidateKind> candidate_kinds() {
    return kinds;
}

std::vector<Candidate> find_candidates(const CandidateSource& source) {
    std::vector<Candidate> candidates;
    for (const CandidateKind& kind : kinds) {
        const std::size_t first = candidates.size();
        kind.find(source, candidates);
        for (std::size_t i = first; i < candidates.size(); ++i)
            candidates[i].kind = kind.id;
    }
    return candidates;
}

} // namespace routeweigh
