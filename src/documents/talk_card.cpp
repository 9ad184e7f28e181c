// SPDX-License-Identifier: MIT
#include "documents/talk_card.hpp"

#include "base/text.hpp"
#include "documents/cautions.hpp"
#include "documents/destination.hpp"
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

bool is_stop(const streams::StreamAdvice& advice) {
    return advice.decision.outcome == streams::Decision::Outcome::own_bottle;
}

/// What is collected: every stream to stop and ask at, then the largest of the others, as many as there is
/// room for.
std::vector<const streams::StreamAdvice*> main_streams(const bench::Experiment& experiment) {
    std::vector<const streams::StreamAdvice*> found;
    for (const streams::StreamAdvice& advice : experiment.waste().streams)
        if (is_stop(advice) || advice.decision.outcome == streams::Decision::Outcome::container)
            found.push_back(&advice);
    std::stable_sort(found.begin(), found.end(), [](const auto* a, const auto* b) {
        if (is_stop(*a) != is_stop(*b)) return is_stop(*a);
        return a->largest_volume() > b->largest_volume();
    });
    return found;
}

/// "sodium cyanide (50.00 g, step 1)"; the step only where there are several.
std::string bottle_text(const documents::TalkHazard::Bottle& bottle, bool several_steps) {
    std::vector<std::string> amounts;
    for (const documents::TalkHazard::Amount& amount : bottle.amounts)
        amounts.push_back(documents::balance_text(amount.grams) + "\u00A0g" +
                          (several_steps ? fmt::format(" in step {}", amount.step + 1) : ""));
    return fmt::format("{} ({})", bottle.name, amounts.empty() ? "product" : join(amounts, ", "));
}

std::string where_text(const documents::TalkHazard& hazard, bool several_steps) {
    std::vector<std::string> bottles;
    for (const documents::TalkHazard::Bottle& bottle : hazard.bottles)
        if (bottles.size() < most_bottles) bottles.push_back(bottle_text(bottle, several_steps));
    if (hazard.bottles.size() > most_bottles)
        bottles.push_back(fmt::format("and {} more", hazard.bottles.size() - most_bottles));
    return join(bottles, "; ");
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
                                       listed(steps));
}

writing::MachineTree hazard_tree(const documents::TalkHazard& hazard) {
    writing::MachineList bottles;
    for (const documents::TalkHazard::Bottle& bottle : hazard.bottles) {
        writing::MachineList amounts;
        for (const documents::TalkHazard::Amount& amount : bottle.amounts)
            amounts.emplace_back(
                writing::MachineObject{{"step", amount.step + 1}, {"grams_in_one_pot", amount.grams}});
        bottles.emplace_back(writing::MachineObject{{"name", bottle.name}, {"amounts", std::move(amounts)}});
    }
    return writing::MachineObject{{"kind", std::string(hazard.id)},
                                  {"urgency", hazard.urgency},
                                  {"bottles", std::move(bottles)},
                                  {"do", hazard.what_to_do}};
}

/// What there was no room for, and why this was taken first; "" where all is there.
std::string left_out(const std::vector<documents::TalkHazard>& hazards) {
    if (hazards.size() <= most_hazards) return {};
    std::vector<std::string> titles;
    for (std::size_t i = most_hazards; i < hazards.size(); ++i)
        titles.emplace_back(hazards[i].title);
    return fmt::format("{} Not shown here: {}. See the bottles on the bench sheet.",
                       hazards.front().id == "poison" ? "A poison first, then by severity and amount."
                                                      : "By severity and amount.",
                       listed(titles));
}

writing::Row card_row(const Route& route, const streams::StreamAdvice& advice, bool several_steps) {
    return {several_steps ? fmt::format("{}, step {}", advice.stream.name, advice.stream.step + 1)
                          : advice.stream.name,
            documents::cell_of(documents::stream_volume(route, advice), Edition::key),
            documents::destination(advice.decision), documents::first_words(advice.decision)};
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
                    several_steps ? " of each step, as on the bench sheet" : "");
    if (const std::string runs = runs_line(experiment); !runs.empty())
        document.blocks.push_back(writing::Paragraph{{runs}});
    const std::vector<documents::TalkHazard> hazards = documents::talk_hazards(experiment);
    writing::MachineList hazard_list, stream_list, sign_list;

    writing::Table table;
    table.caption = "What can hurt here";
    table.columns = {{.heading = "hazard"}, {.heading = "where, how much"}, {.heading = "what to do"}};
    for (std::size_t i = 0; i < hazards.size() && i < most_hazards; ++i) {
        table.rows.push_back(
            {std::string(hazards[i].title), where_text(hazards[i], several_steps), hazards[i].what_to_do});
        hazard_list.push_back(hazard_tree(hazards[i]));
    }
    if (std::string words = left_out(hazards); !words.empty()) table.remarks = {std::move(words)};
    document.blocks.push_back(std::move(table));

    writing::Table streams_table;
    streams_table.caption =
        std::string("Where the main streams go") + (several_steps ? ", each from one pot of its step" : "");
    streams_table.columns = {{.heading = "stream"},
                             {.heading = "about", .align = writing::Align::decimal, .unit = "mL"},
                             {.heading = "goes to"},
                             {.heading = "before that"}};
    const std::vector<const streams::StreamAdvice*> streams = main_streams(experiment);
    for (std::size_t i = 0; i < streams.size(); ++i) {
        if (i >= most_streams && !is_stop(*streams[i])) break;
        streams_table.rows.push_back(card_row(route, *streams[i], several_steps));
        stream_list.emplace_back(writing::MachineObject{
            {"name", streams[i]->stream.name},
            {"goes_to", streams[i]->decision.goes_to},
            {"stop", is_stop(*streams[i])},
            {"volume", documents::machine_of(documents::stream_volume(route, *streams[i]), Edition::key)}});
    }
    if (const std::size_t more = streams.size() - stream_list.size(); more > 0)
        streams_table.remarks = {
            fmt::format("The bench sheet has {} more.", documents::counted(more, "stream", "streams"))};
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
