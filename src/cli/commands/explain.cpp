// SPDX-License-Identifier: MIT
#include "app/session.hpp"
#include "base/text.hpp"
#include "cli/commands/commands.hpp"
#include "cli/files.hpp"
#include "cli/print_problems.hpp"
#include "documents/explain_figure.hpp"

#include <fmt/core.h>

#include <CLI/CLI.hpp>

#include <algorithm>

namespace routeweigh::cli {
namespace {

void require_figure(const Assessment& assessment, const std::string& id) {
    std::vector<std::string> ids;
    for (const Figure& figure : assessment.figures())
        ids.push_back(figure.id);
    if (std::find(ids.begin(), ids.end(), id) != ids.end()) return;
    const std::string near = nearest(id, ids);
    throw CallError(fmt::format("no figure is called \"{}\"{}; there are: {}", id,
                                near.empty() ? "" : fmt::format("; nearest: \"{}\"", near), join(ids, ", ")));
}

} // namespace

std::function<void()> add_explain(CLI::App& program, Context& context) {
    struct Options {
        std::string route, figure;
    };
    const auto options = std::make_shared<Options>();
    CLI::App* command = program.add_subcommand(
        "explain", "One figure of one route: formula, numbers put in, where each comes from");
    command->add_option("ROUTE", options->route, "A route file, or - for standard input")->required();
    command->add_option("FIGURE", options->figure, "Id of the figure, such as atom_economy")->required();
    context.add_output_options(*command);
    return [options, &context] {
        Problems problems;
        std::vector<Route> routes =
            read_routes(context.sources({options->route}), context.catalogue(), problems);
        if (routes.size() != 1) throw CallError("explain takes one route file");
        print_problems(problems.all);
        const Assessment assessment(std::move(routes.front()), context.rules());
        require_figure(assessment, options->figure);
        context.write(explain_figure(assessment, options->figure));
    };
}

} // namespace routeweigh::cli
