// SPDX-License-Identifier: MIT
#include "assess/streams/handout.hpp"

#include "base/text.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace routeweigh::streams {
namespace {

std::string id_of_outcome(const Decision& decision) {
    switch (decision.outcome) {
    case Decision::Outcome::container:
        return std::string(id_of(*decision.kind));
    case Decision::Outcome::own_bottle:
        return "own_bottle";
    case Decision::Outcome::air:
        return "air";
    case Decision::Outcome::trap:
        return "trap";
    case Decision::Outcome::recovered:
        return "recovery";
    case Decision::Outcome::on_product:
    case Decision::Outcome::nothing:
        return "";
    }
    return "";
}

/// What the words may mean: a container called by its name, else the first words of the local rules that
/// occur. Empty where neither is known.
std::vector<std::string> understand(const std::string& said, const LocalRules& local) {
    const std::string text = fold(said);
    for (const Container& container : local.containers)
        if (fold(container.name) == text) return {std::string(id_of(container.kind))};
    for (const HandoutWords& words : local.handout_words)
        if (text.find(words.says) != std::string::npos) return words.means;
    return {};
}

std::string first_words(const Decision& decision) {
    std::vector<std::string> list;
    for (const Treatment& treatment : decision.first)
        list.push_back(treatment.words);
    return join(list, "; ");
}

} // namespace

HandoutFinding compare_with_handout(const RouteStream& stream, const Decision& decision,
                                    const LocalRules& local) {
    HandoutFinding finding;
    finding.said = stream.handout;
    if (stream.handout.empty()) {
        const bool goes = decision.outcome == Decision::Outcome::container ||
                          decision.outcome == Decision::Outcome::own_bottle;
        finding.words = fmt::format("{}: the handout names no container; {}{}", stream.name,
                                    goes ? "goes to " : "", decision.goes_to);
        return finding;
    }
    finding.understood = understand(stream.handout, local);
    if (finding.understood.empty()) {
        finding.verdict = HandoutFinding::Verdict::not_understood;
        finding.words = fmt::format("{}: handout says \"{}\", which the local rules do not know; goes to {}",
                                    stream.name, stream.handout, decision.goes_to);
        return finding;
    }
    const std::string computed = id_of_outcome(decision);
    const bool same = computed.empty() || std::find(finding.understood.begin(), finding.understood.end(),
                                                    computed) != finding.understood.end();
    if (same) {
        finding.verdict = decision.first.empty() ? HandoutFinding::Verdict::agrees
                                                 : HandoutFinding::Verdict::agrees_after_treatment;
        finding.words = decision.first.empty()
                            ? fmt::format("{}: handout says \"{}\", computed the same: {}", stream.name,
                                          stream.handout, decision.goes_to)
                            : fmt::format("{}: handout says \"{}\", right once this is done: {}", stream.name,
                                          stream.handout, first_words(decision));
        return finding;
    }
    finding.verdict = HandoutFinding::Verdict::differs;
    finding.words = fmt::format("{}: {}; handout says \"{}\", should go to {}", stream.name, decision.summary,
                                stream.handout, decision.goes_to);
    if (!decision.first.empty()) finding.words += fmt::format("; {}", first_words(decision));
    return finding;
}

} // namespace routeweigh::streams
