// SPDX-License-Identifier: MIT
// Changes that might improve a route, found in the route itself. A new kind is a file in candidates/ and a
// line in candidate_list.cpp.
#pragma once

#include "assess/assessment.hpp"
#include "assess/solvent_families.hpp"
#include "base/assignment.hpp"
#include "compare/trial.hpp"

#include <map>
#include <string>
#include <string_view>
#include <vector>

namespace routeweigh {

/// What is not above its floor by this ratio is at the floor: a smaller cut would not show in the amounts.
inline constexpr double least_cut = 1.005;

/// How far the candidates go. Common practice, no source: each is a starting point to be tested.
struct ImprovementLimits {
    double excess_floor = 1.05;    ///< equivalents of the need that a reactant keeps
    double recovery = 0.80;        ///< share of a solvent that a distillation gives back
    double catalyst_floor = 0.01;  ///< mol per mol of the reference below which no loading is cut
    double worth_recovering = 0.2; ///< g per g of product; less is not worth a distillation
    std::map<std::string, double> upper_quartile; ///< by step: yield of the best quarter of a class, 0 to 1
};

struct Candidate {
    std::string_view kind; ///< id of the kind
    std::string what;      ///< "halve the ethanol of the reaction, 6.48 g to 3.24 g"
    std::string question;  ///< the same as a question to a student, without numbers
    std::vector<Assignment> changes;
    std::vector<std::string> dangers;  ///< what would meet in the pot; not to be tried out
    std::vector<std::string> cautions; ///< what it might break, each as something to test
    int step = 0;                      ///< whose yield is at stake
    /// Candidates that share this are alternatives of which only the one with the lowest hazard score is
    /// kept, and only when it is lower than that of the route as it is. Empty: stands alone.
    std::string alternatives;
    /// Why nobody should try it: "the stream holds sodium cyanide (H300)". Empty: it may be tried.
    std::string against{};
};

/// What candidates are found from.
struct CandidateSource {
    const Assessment& assessment;
    const SolventRules& solvents;
    const ImprovementLimits& limits;
    Apply apply;

    const Route& route() const { return assessment.route(); }
};

/// All candidates of a route, kind by kind.
std::vector<Candidate> find_candidates(const CandidateSource& source);

// The kinds there are, one file each.
void find_halved(const CandidateSource& source, std::vector<Candidate>& candidates);
void find_excess(const CandidateSource& source, std::vector<Candidate>& candidates);
void find_recovery(const CandidateSource& source, std::vector<Candidate>& candidates);
void find_better_yield(const CandidateSource& source, std::vector<Candidate>& candidates);
void find_water_drown_out(const CandidateSource& source, std::vector<Candidate>& candidates);
void find_catalyst(const CandidateSource& source, std::vector<Candidate>& candidates);
void find_telescoping(const CandidateSource& source, std::vector<Candidate>& candidates);
void find_other_solvent(const CandidateSource& source, std::vector<Candidate>& candidates);

} // namespace routeweigh
