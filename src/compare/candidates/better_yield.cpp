// SPDX-License-Identifier: MIT
// The isolated yield that the best quarter of a class reaches or passes.
#include "compare/candidate.hpp"
#include "compare/charge_place.hpp"

#include <fmt/format.h>

namespace routeweigh {

void find_better_yield(const CandidateSource& source, std::vector<Candidate>& candidates) {
    const Route& route = source.route();
    for (std::size_t s = 0; s < route.steps.size(); ++s) {
        const Step& step = route.steps[s];
        const auto found = source.limits.upper_quartile.find(step.id);
        if (found == source.limits.upper_quartile.end()) continue;
        const StepResult& result = source.assessment.evaluation().steps[s];
        const double yield = result.isolated / result.theory;
        if (found->second <= yield) continue;
        Candidate candidate;
        candidate.what =
            fmt::format("isolate {:.1f} % in place of {:.1f} %, as the best quarter of the class does{}",
                        100.0 * found->second, 100.0 * yield, route.steps.size() > 1 ? " in " + step.id : "");
        candidate.question = "What if everybody isolated as much as the best quarter of the class?";
        const std::string& at = step.isolated.pointer;
        if (step.isolated.yield)
            candidate.changes = {
                {at + "/yield", json_quoted(fmt::format("{:.12g} %", 100.0 * found->second))}};
        else
            candidate.changes = {
                {at + "/mass", json_quoted(fmt::format(
                                   "{:.12g} g", step.isolated.mass->in(unit::g)*found->second / yield))}};
        candidate.cautions = {
            "purity: a high mass may be a wet or impure product; dry to constant mass and take the "
            "melting range"};
        candidate.step = static_cast<int>(s);
        candidates.push_back(std::move(candidate));
    }
}

} // namespace routeweigh
