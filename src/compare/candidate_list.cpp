// SPDX-License-Identifier: MIT
#include "compare/candidate.hpp"

#include <array>

namespace routeweigh {
namespace {

struct CandidateKind {
    std::string_view id;
    void (*find)(const CandidateSource& source, std::vector<Candidate>& candidates);
};

constexpr std::array kinds{
    CandidateKind{"halved", find_halved},
    CandidateKind{"excess", find_excess},
    CandidateKind{"recovery", find_recovery},
    CandidateKind{"better_yield", find_better_yield},
    CandidateKind{"water_drown_out", find_water_drown_out},
    CandidateKind{"catalyst", find_catalyst},
    CandidateKind{"telescoping", find_telescoping},
    CandidateKind{"other_solvent", find_other_solvent},
};

} // namespace

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
