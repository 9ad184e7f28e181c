// SPDX-License-Identifier: MIT
// The handout held against what was computed: mismatches first.
#include "documents/waste/waste_parts.hpp"
#include "documents/words.hpp"

#include <fmt/format.h>

namespace routeweigh::documents {
namespace {

using streams::HandoutFinding;

/// The steps are named only where a route has several, the route only where there are several.
std::string place_of(const streams::StreamAdvice& advice, const streams::ClassWaste& one, bool several) {
    std::string place;
    if (several) place += one.route->id + ": ";
    if (one.route->steps.size() > 1) place += advice.stream.step_id + ": ";
    return place;
}

bool goes_somewhere(const streams::StreamAdvice& advice) {
    return advice.decision.outcome != streams::Decision::Outcome::on_product &&
           advice.decision.outcome != streams::Decision::Outcome::nothing;
}

writing::BulletList handout_findings(const WasteSubject& subject, HandoutFinding::Verdict verdict,
                                     bool important) {
    writing::BulletList list;
    for (const streams::ClassWaste& one : subject.routes)
        for (const streams::StreamAdvice& advice : one.waste.streams) {
            if (advice.handout.verdict != verdict) continue;
            // What stays on the product, or is nothing, needs no container in a handout.
            if (verdict == HandoutFinding::Verdict::none_named && !goes_somewhere(advice)) continue;
            const std::string place = place_of(advice, one, subject.routes.size() > 1);
            const std::string words = place + advice.handout.words + ".";
            list.items.emplace_back(important ? writing::strong(words) : writing::Run(words));
        }
    return list;
}

/// A log is held against the streams that go into its container; one that none goes to must not pass for
/// looked at.
bool is_used(const streams::ContainerLog& log, const WasteSubject& subject) {
    for (const streams::ClassWaste& one : subject.routes)
        for (const streams::StreamAdvice& advice : one.waste.streams)
            if (advice.log == log.name) return true;
    return false;
}

void add_unused_logs(const WasteSubject& subject, WasteBlocks& blocks) {
    for (const streams::ContainerLog& log : *subject.logs)
        if (!is_used(log, subject))
            blocks.emplace_back(writing::Paragraph{writing::strong(fmt::format(
                "{}: no stream goes to {}, so nothing was held against this log.", log.file, log.name))});
}

} // namespace

void add_handout(const WasteSubject& subject, WasteBlocks& blocks) {
    writing::BulletList differs = handout_findings(subject, HandoutFinding::Verdict::differs, true);
    const std::size_t count = differs.items.size();
    if (count == 0) {
        blocks.emplace_back(writing::Paragraph{
            "In no stream does the handout name another container than the one computed here."});
    } else {
        blocks.emplace_back(writing::Paragraph{
            fmt::format("{} the handout names another container than the one computed here:",
                        capitalised("in " + counted(count, "stream", "streams")))});
        blocks.emplace_back(std::move(differs));
    }
    for (const auto& [verdict, words] :
         {std::pair{HandoutFinding::Verdict::not_understood, "Words that the local rules do not know:"},
          {HandoutFinding::Verdict::agrees_after_treatment, "Right, once something is done first:"},
          {HandoutFinding::Verdict::none_named, "No container is named:"}}) {
        writing::BulletList list = handout_findings(subject, verdict, false);
        if (list.items.empty()) continue;
        blocks.emplace_back(writing::Paragraph{words});
        blocks.emplace_back(std::move(list));
    }
    add_unused_logs(subject, blocks);
}

} // namespace routeweigh::documents
