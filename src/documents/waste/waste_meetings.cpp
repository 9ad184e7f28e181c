// SPDX-License-Identifier: MIT
// What meets in a container: within a stream, with the route's other streams, with what the log holds.
#include "base/text.hpp"
#include "documents/waste/waste_parts.hpp"

#include <fmt/format.h>

namespace routeweigh::documents {
namespace {

using streams::CompatibilityReport;
using streams::Decision;
using streams::Meeting;
using streams::MeetingBasis;
using streams::StreamAdvice;

std::string_view words_of(MeetingBasis::Kind kind) {
    switch (kind) {
    case MeetingBasis::Kind::chart:
        return "chart of reactivity groups";
    case MeetingBasis::Kind::special:
        return "named meeting";
    case MeetingBasis::Kind::rule:
        return "rule";
    case MeetingBasis::Kind::fuel:
        return "every organic liquid is a fuel";
    case MeetingBasis::Kind::appendix:
        break;
    }
    return "40 CFR 265 Appendix V";
}

/// "releases heat, gives off toxic gas".
std::string consequence(const Meeting& meeting, const streams::StreamRules& rules) {
    std::string words = consequences(meeting, rules.compatibility.chart);
    if (meeting.of_little()) words += " (less than 0.1 % by mass of one of them)";
    return words;
}

/// Standings of all bases, each once: "remembered", "read, remembered".
std::string standings(const Meeting& meeting) {
    std::string words;
    for (const MeetingBasis& basis : meeting.bases) {
        const std::string standing{routeweigh::words_of(basis.from.standing)};
        if (words.find(standing) == std::string::npos) words += (words.empty() ? "" : ", ") + standing;
    }
    return words;
}

writing::BulletList sources_of(const std::vector<const Meeting*>& meetings) {
    writing::BulletList list;
    for (const Meeting* meeting : meetings) {
        std::vector<std::string> bases;
        for (const MeetingBasis& basis : meeting->bases)
            bases.push_back(fmt::format("{}: {}{} [{}{}]", words_of(basis.kind), basis.words,
                                        basis.codes.empty() ? "" : " (" + join(basis.codes, " ") + ")",
                                        describe(basis.from),
                                        basis.confidence.empty() ? "" : ", confidence " + basis.confidence));
        writing::Text text{writing::strong(fmt::format("{} with {}", meeting->one.name, meeting->other.name)),
                           writing::Run(": " + join(bases, "; "))};
        if (!meeting->disagreement.empty())
            text.runs.emplace_back(". The sources disagree: " + meeting->disagreement);
        list.items.push_back(std::move(text));
    }
    return list;
}

class MeetingsPart {
  public:
    MeetingsPart(const streams::StreamRules& rules, WasteBlocks& blocks) : rules_(rules), blocks_(blocks) {}

    void add(const streams::ClassWaste& one) {
        table_.caption = fmt::format("Substances of {} that react when they meet", one.route->id);
        table_.columns = {{.heading = "these two"}, {.heading = "then"}, {.heading = "standing"}};
        for (const StreamAdvice& advice : one.waste.streams)
            if (advice.decision.outcome == Decision::Outcome::container ||
                advice.decision.outcome == Decision::Outcome::own_bottle)
                look_at(advice);
        if (!verdicts_.items.empty()) blocks_.emplace_back(std::move(verdicts_));
        if (!table_.rows.empty()) {
            table_.remarks = {
                "Both readings of the yield are looked at; neither source knows amount, concentration or "
                "time. "
                "By itself a stream counts as it leaves the pot: its parts have met already, and a row says "
                "what may still go on in a closed bottle. With others and with a log it counts once what has "
                "to be destroyed or neutralised first is gone. What only releases heat within a stream, and "
                "what is there "
                "by less than 0.1 % by mass, stands in the list below only."};
            blocks_.emplace_back(std::move(table_));
        }
        writing::Folded sources{writing::Text("The sources of each, and where they disagree"), {}};
        if (!listed_.empty()) sources.blocks.emplace_back(sources_of(listed_));
        if (!conditions_.items.empty()) sources.blocks.emplace_back(std::move(conditions_));
        if (!sources.blocks.empty()) blocks_.emplace_back(std::move(sources));
    }

  private:
    void look_at(const StreamAdvice& advice) {
        const std::string& name = advice.stream.title;
        const bool shown = rows_of(fmt::format("within {}", name), advice.inside.within, true);
        say(advice.inside, name,
            shown ? "what its own parts may still do stands below"
                  : "no conflict found by this method among its own parts");
        if (advice.with_others) {
            rows_of(fmt::format("{} with the other streams of this route that go there", name),
                    advice.with_others->meetings, false);
            say(*advice.with_others, name + " with the other streams that go there",
                advice.with_others->words);
        }
        if (advice.with_log) {
            rows_of(fmt::format("{} with what the container holds by its log", name),
                    advice.with_log->meetings, false);
            say(*advice.with_log, name + " with what the container holds by its log", advice.with_log->words);
        }
        for (const streams::ConditionFound& found :
             (advice.with_log ? *advice.with_log : advice.inside).conditions)
            conditions_.items.emplace_back(fmt::format("{}: {} and {}: {} [{}]", name, found.one.name,
                                                       found.condition->condition, found.condition->detail,
                                                       describe(found.condition->from)));
    }

    /// A conflict, or something that nobody assessed, is printed strongly.
    void say(const CompatibilityReport& report, const std::string& what, const std::string& words) {
        const bool stops = report.verdict != CompatibilityReport::Verdict::nothing_found;
        const bool unassessed = report.verdict == CompatibilityReport::Verdict::not_assessed;
        const std::string line = fmt::format("{}: {}", what, unassessed ? report.words : words);
        verdicts_.items.emplace_back(stops ? writing::strong(line) : writing::Run(line));
    }

    /// \return true where a row was added
    bool rows_of(const std::string& heading, const std::vector<Meeting>& meetings, bool within) {
        bool any = false;
        for (const Meeting& meeting : meetings) {
            listed_.push_back(&meeting);
            const bool heat_only = meeting.codes == std::vector<std::string>{"H"};
            if (within ? heat_only || meeting.of_little() : meeting.weight == Meeting::Weight::noted)
                continue;
            if (!any) table_.rows.push_back(writing::group(heading));
            any = true;
            table_.rows.push_back(
                {fmt::format("{} with {}", meeting.one.name, meeting.other.name),
                 consequence(meeting, rules_),
                 standings(meeting) + (meeting.disagreement.empty() ? "" : "; sources disagree")});
        }
        return any;
    }

    const streams::StreamRules& rules_;
    WasteBlocks& blocks_;
    writing::BulletList verdicts_, conditions_;
    writing::Table table_;
    std::vector<const Meeting*> listed_;
};

} // namespace

void add_meetings(const streams::ClassWaste& one, const streams::StreamRules& rules, WasteBlocks& blocks) {
    MeetingsPart(rules, blocks).add(one);
}

} // namespace routeweigh::documents
