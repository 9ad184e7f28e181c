// SPDX-License-Identifier: MIT
#include "documents/talk_card.hpp"

#include "documents/cautions.hpp"
#include "documents/number.hpp"
#include "documents/papers/papers.hpp"
#include "documents/papers/talk_points.hpp"
#include "documents/version.hpp"
#include "documents/words.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace routeweigh {
namespace {

using documents::Edition;

constexpr std::size_t most_hazards = 3, most_streams = 2, most_signs = 5, most_bottles = 3;

/// Liquids that go into a container, largest first.
std::vector<const streams::StreamAdvice*> main_streams(const bench::Experiment& experiment) {
    std::vector<const streams::StreamAdvice*> found;
    for (const streams::StreamAdvice& advice : experiment.waste().streams) {
        const auto outcome = advice.decision.outcome;
        if (outcome == streams::Decision::Outcome::container ||
            outcome == streams::Decision::Outcome::own_bottle)
            found.push_back(&advice);
    }
    std::stable_sort(found.begin(), found.end(), [](const auto* a, const auto* b) {
        return a->largest_volume() * a->stream.runs > b->largest_volume() * b->stream.runs;
    });
    if (found.size() > most_streams) found.resize(most_streams);
    return found;
}

std::string where_text(const documents::TalkHazard& hazard) {
    std::string text;
    for (std::size_t i = 0; i < hazard.bottles.size() && i < most_bottles; ++i)
        text += (i == 0 ? "" : "; ") +
                fmt::format("{} ({})", hazard.bottles[i].name,
                            hazard.bottles[i].grams > 0
                                ? documents::balance_text(hazard.bottles[i].grams) + "\u00A0g"
                                : std::string("product"));
    if (hazard.bottles.size() > most_bottles)
        text += fmt::format("; and {} more", hazard.bottles.size() - most_bottles);
    return text;
}

/// Pots of the earlier steps that one pot of the last takes; "" where it is one of each.
std::string runs_line(const bench::Experiment& experiment) {
    std::vector<std::string> steps;
    for (const bench::BenchStep& step : experiment.steps()) {
        const double runs =
            experiment.assessment().evaluation().steps[static_cast<std::size_t>(step.index)].scale;
        if (const std::string text = documents::runs_text(runs, Edition::key); !text.empty())
            steps.push_back(fmt::format("step {} {}", step.index + 1, text));
    }
    return steps.empty() ? std::string()
                         : fmt::format("One pot of the last step takes {}: scale them, or pool what several "
                                       "benches made.",
                                       documents::listed(steps));
}

writing::MachineTree hazard_tree(const documents::TalkHazard& hazard) {
    writing::MachineList bottles;
    for (const documents::TalkHazard::Bottle& bottle : hazard.bottles)
        bottles.emplace_back(writing::MachineObject{
            {"name", bottle.name},
            {"grams", bottle.grams > 0 ? writing::MachineTree(bottle.grams) : writing::MachineTree()}});
    return writing::MachineObject{{"kind", std::string(hazard.id)},
                                  {"urgency", hazard.urgency},
                                  {"grams", hazard.grams()},
                                  {"bottles", std::move(bottles)},
                                  {"do", hazard.what_to_do}};
}

} // namespace

writing::Document talk_card(const bench::Experiment& experiment) {
    const Route& route = experiment.route();
    const bool several_steps = experiment.steps().size() > 1;
    writing::Document document;
    document.id = "talk_card";
    document.one_page = true;
    document.title = "Before we start: " + route.title;
    document.subtitle =
        fmt::format("Talk card, route {}, product {}; amounts for one pot{}.", route.id, route.product->name,
                    several_steps ? " of the last step, the earlier steps scaled to it" : "");
    if (const std::string runs = runs_line(experiment); !runs.empty())
        document.blocks.push_back(writing::Paragraph{{runs}});
    std::vector<documents::TalkHazard> hazards = documents::talk_hazards(experiment);
    const std::size_t all = hazards.size();
    if (hazards.size() > most_hazards) hazards.resize(most_hazards);
    writing::MachineList hazard_list, stream_list, sign_list;

    writing::Table table;
    table.caption = "What can hurt here";
    table.columns = {{.heading = "hazard"}, {.heading = "where, how much"}, {.heading = "what to do"}};
    for (const documents::TalkHazard& hazard : hazards) {
        table.rows.push_back({std::string(hazard.title), where_text(hazard), hazard.what_to_do});
        hazard_list.push_back(hazard_tree(hazard));
    }
    if (all > hazards.size())
        table.remarks = {
            fmt::format("A poison first, then by severity and amount; the bench sheet has {} more.",
                        documents::counted(all - hazards.size(), "kind", "kinds"))};
    document.blocks.push_back(std::move(table));

    writing::Table streams_table;
    streams_table.caption = std::string("Where the two main streams go") +
                            (several_steps ? ", each from one pot of its step" : "");
    streams_table.columns = {{.heading = "stream"},
                             {.heading = "about", .align = writing::Align::decimal, .unit = "mL"},
                             {.heading = "goes to"},
                             {.heading = "before that"}};
    for (const streams::StreamAdvice* advice : main_streams(experiment)) {
        const documents::SharedFigure volume = documents::stream_volume(route, *advice);
        std::string first;
        for (const streams::Treatment& treatment : advice->decision.first)
            first += (first.empty() ? "" : "; ") + treatment.words;
        streams_table.rows.push_back(
            {several_steps ? fmt::format("{}, step {}", advice->stream.name, advice->stream.step + 1)
                           : advice->stream.name,
             documents::cell_of(volume, Edition::key), advice->decision.goes_to, first});
        stream_list.emplace_back(
            writing::MachineObject{{"name", advice->stream.name},
                                   {"goes_to", advice->decision.goes_to},
                                   {"volume", documents::machine_of(volume, Edition::key)}});
    }
    document.blocks.push_back(std::move(streams_table));

    writing::BulletList signs;
    for (std::string& sign : documents::talk_signs(experiment)) {
        if (signs.items.size() == most_signs) break;
        sign_list.emplace_back(sign);
        signs.items.emplace_back(std::move(sign));
    }
    document.blocks.push_back(writing::Heading{2, "What to look for"});
    document.blocks.push_back(std::move(signs));
    document.blocks.push_back(documents::usual_cautions_in_small_print());
    document.machine = writing::MachineObject{{"document", document.id},
                                              {"route", route.id},
                                              {"hazards", std::move(hazard_list)},
                                              {"streams", std::move(stream_list)},
                                              {"signs", std::move(sign_list)}};
    document.colophon =
        fmt::format("Made by routeweigh {} from the route file and its catalogue. What to do is common "
                    "practice, no source.",
                    program_version());
    return document;
}

} // namespace routeweigh
