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

const HandoutWords* understand(const std::string& said, const LocalRules& local) {
    const std::string text = fold(said);
    for (const HandoutWords& words : local.handout_words)
        if (text.find(words.says) != std::string::npos) return &words;
    return nullptr;
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
    const HandoutWords* words = understand(stream.handout, local);
    if (words == nullptr) {
        finding.verdict = HandoutFinding::Verdict::not_understood;
        finding.words = fmt::format("{}: handout says \"{}\", which the local rules do not know; goes to {}",
                                    stream.name, stream.handout, decision.goes_to);
        return finding;
    }
    finding.understood = words->means;
    const std::string computed = id_of_outcome(decision);
    const bool same = computed.empty() ||
                      std::find(words->means.begin(), words->means.end(), computed) != words->means.end();
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
