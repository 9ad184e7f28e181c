// SPDX-License-Identifier: MIT
#include "documents/number.hpp"
#include "documents/papers/papers.hpp"
#include "documents/words.hpp"

#include <fmt/format.h>

namespace routeweigh::documents {
namespace {

/// A liquid to pour, and more than a trace.
bool has_volume(const streams::StreamAdvice& advice) {
    return !advice.stream.is_gas() && advice.largest_volume() >= 0.1; // mL
}

/// A student works out amounts, so the words of what comes first must not give them away.
const std::string& words_for(const streams::Treatment& treatment, Edition edition) {
    return edition == Edition::student ? treatment.without_amounts : treatment.words;
}

} // namespace

void add_streams(const Paper& paper, Blocks& blocks) {
    writing::Table table;
    table.caption = "Where each stream goes";
    table.columns = {{.heading = "stream"},
                     {.heading = "about", .align = writing::Align::decimal, .unit = "mL"},
                     {.heading = "goes to"},
                     {.heading = "before that"}};
    for (const streams::StreamAdvice* advice : paper.step.streams) {
        std::string first;
        for (const streams::Treatment& treatment : advice->decision.first)
            first += (first.empty() ? "" : "; ") + words_for(treatment, paper.edition);
        for (const std::string& vent : advice->decision.vent)
            first += (first.empty() ? "" : "; ") + ("no tight cap: " + vent);
        table.rows.push_back({advice->stream.name,
                              has_volume(*advice)
                                  ? cell_of(stream_volume(paper.route(), *advice), paper.edition)
                                  : writing::Cell(""),
                              advice->decision.goes_to, first});
    }
    table.remarks = {fmt::format(
        "Containers by {}; ask {} where anything differs from what you see. No conflict "
        "found by this method is no permission.",
        paper.experiment.rules().streams.local.title, paper.experiment.rules().streams.local.contact)};
    blocks.push_back(std::move(table));
}

writing::MachineTree streams_tree(const Paper& paper) {
    writing::MachineList list;
    for (const streams::StreamAdvice* advice : paper.step.streams) {
        writing::MachineObject object{{"name", advice->stream.name}, {"goes_to", advice->decision.goes_to}};
        if (has_volume(*advice))
            object.push_back({"volume", machine_of(stream_volume(paper.route(), *advice), paper.edition)});
        writing::MachineList first;
        for (const streams::Treatment& treatment : advice->decision.first)
            first.emplace_back(words_for(treatment, paper.edition));
        object.push_back({"first", std::move(first)});
        list.emplace_back(std::move(object));
    }
    return list;
}

int heading_level(const Paper& paper) {
    return paper.experiment.steps().size() == 1 ? 2 : 3;
}

} // namespace routeweigh::documents
