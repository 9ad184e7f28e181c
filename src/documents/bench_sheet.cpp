// SPDX-License-Identifier: MIT
#include "documents/bench_sheet.hpp"

#include "documents/cautions.hpp"
#include "documents/papers/papers.hpp"
#include "documents/version.hpp"
#include "documents/words.hpp"

#include <fmt/format.h>

namespace routeweigh {
namespace {

using documents::Blocks;
using documents::Edition;
using documents::Paper;

std::string_view words_of(Edition edition) {
    return edition == Edition::key ? "Key edition, for those who teach and mark" : "Student edition";
}

/// For one run of the last step.
double runs_of(const Paper& paper) {
    const auto& steps = paper.experiment.assessment().evaluation().steps;
    return steps[static_cast<std::size_t>(paper.step.index)].scale;
}

void add_step(const Paper& paper, Blocks& blocks) {
    const Step& step = *paper.step.step;
    if (paper.experiment.steps().size() > 1) {
        blocks.push_back(writing::Heading{
            2, fmt::format("Step {}: {}", paper.step.index + 1,
                           step.title.empty() ? "making " + step.product->name : step.title)});
        const double runs = runs_of(paper);
        if (const std::string words = documents::runs_text(runs, paper.edition); !words.empty())
            blocks.push_back(writing::Paragraph{
                {fmt::format("This step is needed {} for one run of the last step: {}. Amounts below are for "
                             "one pot.",
                             words,
                             runs > 1 ? "scale it, or pool what several benches made"
                                      : "one pot makes more than enough")}});
    }
    blocks.push_back(writing::Heading{heading_level(paper), "Bottles"});
    add_bottle_hazards(paper, blocks);
    blocks.push_back(writing::Heading{heading_level(paper), "Reagents"});
    add_reagents(paper, blocks);
    blocks.push_back(writing::Heading{heading_level(paper), "Limiting reagent and theoretical yield"});
    add_theory(paper, blocks);
    add_stages(paper, blocks);
    blocks.push_back(writing::Heading{heading_level(paper), "Streams"});
    add_streams(paper, blocks);
    blocks.push_back(writing::Heading{heading_level(paper), "Results"});
    add_results(paper, blocks);
}

writing::MachineTree step_tree(const Paper& paper) {
    return writing::MachineObject{{"id", paper.step.step->id},
                                  {"equation", paper.step.step->overall.text},
                                  {"product", paper.step.step->product->name},
                                  {"runs_for_one_of_the_last", paper.key()
                                                                   ? writing::MachineTree(runs_of(paper))
                                                                   : writing::MachineTree()},
                                  {"reagents", reagents_tree(paper)},
                                  {"theory", theory_tree(paper)},
                                  {"stages", stages_tree(paper)},
                                  {"streams", streams_tree(paper)}};
}

} // namespace

writing::Document bench_sheet(const bench::Experiment& experiment, Edition edition) {
    const Route& route = experiment.route();
    writing::Document document;
    document.id = "bench_sheet";
    document.title = "Bench sheet: " + route.title;
    document.subtitle =
        fmt::format("{}. Route {}, product {}.", words_of(edition), route.id, route.product->name);
    if (edition == Edition::student)
        document.blocks.push_back(writing::KeyValueList{{{"Name", std::string(documents::blank)},
                                                         {"Bench and section", std::string(documents::blank)},
                                                         {"Date", std::string(documents::blank)}}});
    document.blocks.push_back(documents::usual_cautions());
    if (!route.status.empty())
        document.blocks.push_back(writing::Paragraph{{"Standing of this procedure: ", route.status, "."}});
    writing::MachineList steps;
    for (const bench::BenchStep& step : experiment.steps()) {
        const Paper paper{experiment, step, edition};
        add_step(paper, document.blocks);
        steps.push_back(step_tree(paper));
    }
    document.blocks.push_back(documents::not_judged());
    document.machine = writing::MachineObject{{"document", document.id},
                                              {"edition", edition == Edition::key ? "key" : "student"},
                                              {"route", route.id},
                                              {"title", document.title},
                                              {"product", route.product->name},
                                              {"steps", std::move(steps)}};
    document.colophon =
        fmt::format("Made by routeweigh {} from the route file and its catalogue.", program_version());
    return document;
}

} // namespace routeweigh
