// SPDX-License-Identifier: MIT
#include "assess/streams/compatibility.hpp"

#include "base/list.hpp"
#include "base/text.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace routeweigh::streams {
namespace {

bool same(const Participant& a, const Participant& b) {
    if (a.substance != nullptr && b.substance != nullptr) return a.substance == b.substance;
    return a.member != nullptr && a.member == b.member;
}

bool has_consequence(const Meeting& meeting) {
    return !meeting.codes.empty();
}

void sort_worst_first(std::vector<Meeting>& meetings, const ReactivityChart& chart) {
    const auto rank = [&](const Meeting& meeting) {
        for (std::size_t i = 0; i < chart.codes.size(); ++i)
            if (!meeting.codes.empty() && chart.codes[i].code == meeting.codes.front()) return i;
        return chart.codes.size();
    };
    std::stable_sort(meetings.begin(), meetings.end(), [&](const Meeting& a, const Meeting& b) {
        if (a.weight != b.weight) return a.weight < b.weight;
        if (a.named() != b.named()) return a.named(); // surer than a group
        if (a.of_little() != b.of_little()) return b.of_little();
        if (rank(a) != rank(b)) return rank(a) < rank(b);
        return a.codes.size() > b.codes.size();
    });
}

void note_unassigned(const std::vector<Participant>& side, CompatibilityReport& report) {
    for (const Participant& part : side) {
        if (part.member == nullptr)
            add_once(report.not_assigned, part.name);
        else if (part.member->groups.empty())
            add_once(report.outside_chart, part.name);
    }
}

bool gas(const Meeting& meeting) {
    return std::any_of(meeting.codes.begin(), meeting.codes.end(),
                       [](const std::string& code) { return code == "G" || code == "GT" || code == "GF"; });
}

void collect_vents(CompatibilityReport& report, const ReactivityChart& chart) {
    for (const std::vector<Meeting>* list : {&report.meetings, &report.within})
        for (const Meeting& meeting : *list)
            if (gas(meeting) && !meeting.trace)
                for (const std::string& code : meeting.codes)
                    if (code.front() == 'G')
                        report.vent.push_back(fmt::format("{} with {} {}", meeting.one.name,
                                                          meeting.other.name, chart.meaning(code)));
    for (const ConditionFound& found : report.conditions)
        if (found.condition->condition == "a tight cap")
            report.vent.push_back(fmt::format("{}: {}", found.one.name, found.condition->detail));
    std::sort(report.vent.begin(), report.vent.end());
    report.vent.erase(std::unique(report.vent.begin(), report.vent.end()), report.vent.end());
}

/// "ethanol meets nitric acid, which can catch fire".
std::string words_of(const Meeting& meeting, const ReactivityChart& chart) {
    return fmt::format(
        "{} meets {}, which {}{}", meeting.one.name, meeting.other.name, consequences(meeting, chart),
        meeting.of_little() ? " (though there is less than 0.1 % by mass of one of them)" : "");
}

void judge(CompatibilityReport& report, const ReactivityChart& chart, bool new_container) {
    using Verdict = CompatibilityReport::Verdict;
    // Worst first: the first decides.
    const Meeting* worst = report.meetings.empty() || report.meetings.front().weight == Meeting::Weight::noted
                               ? nullptr
                               : &report.meetings.front();
    if (worst != nullptr && worst->weight == Meeting::Weight::stops) {
        report.verdict = Verdict::conflict;
        report.words = "do not add: " + words_of(*worst, chart);
        if (!report.not_assigned.empty())
            report.words += fmt::format("; not assessed: {}", join(report.not_assigned, ", "));
    } else if (!report.not_assigned.empty()) {
        report.verdict = Verdict::not_assessed;
        report.words = fmt::format("not assessed: nobody assigned a reactivity group to {}; own bottle, ask",
                                   join(report.not_assigned, ", "));
    } else if (worst != nullptr) {
        report.verdict = Verdict::ask;
        report.words = fmt::format("ask first: {}{}", words_of(*worst, chart),
                                   worst->disagreement.empty()
                                       ? ""
                                       : "; one source says so of whole groups, the other names nothing");
    } else {
        report.verdict = Verdict::nothing_found;
        report.words = new_container ? "nothing in the container yet; no conflict found by this method"
                                     : "no conflict found by this method";
        if (!report.outside_chart.empty())
            report.words += fmt::format("; outside the chart: {}", join(report.outside_chart, ", "));
    }
}

} // namespace

std::string consequences(const Meeting& meeting, const ReactivityChart& chart) {
    std::vector<std::string> meanings;
    for (const std::string& code : meeting.codes)
        if (code != "P" || meeting.can_polymerise() || meeting.codes.size() == 1)
            meanings.emplace_back(chart.meaning(code));
    return join(meanings, ", ");
}

CompatibilityReport check_compatibility(const std::vector<Participant>& stream,
                                        const std::vector<Participant>& content,
                                        const CompatibilityRules& rules) {
    CompatibilityReport report;
    std::vector<Participant> everything = stream;
    everything.insert(everything.end(), content.begin(), content.end());
    const auto look = [&](const Participant& one, const Participant& other, bool within) {
        if (same(one, other)) return;
        Meeting meeting = meet(one, other, rules, everything);
        meeting.within = within;
        if (has_consequence(meeting))
            (within ? report.within : report.meetings).push_back(std::move(meeting));
    };
    for (const Participant& part : stream)
        for (const Participant& held : content)
            look(part, held, false);
    for (std::size_t a = 0; a < stream.size(); ++a)
        for (std::size_t b = a + 1; b < stream.size(); ++b)
            look(stream[a], stream[b], true);
    for (const Participant& part : everything)
        for (const HazardousCondition& condition : rules.special.conditions)
            if (condition.one->holds(part)) report.conditions.push_back({part, &condition});
    note_unassigned(everything, report);
    sort_worst_first(report.meetings, rules.chart);
    sort_worst_first(report.within, rules.chart);
    collect_vents(report, rules.chart);
    judge(report, rules.chart, content.empty());
    return report;
}

} // namespace routeweigh::streams
