// SPDX-License-Identifier: MIT
#include "app/session.hpp"
#include "base/text.hpp"
#include "cli/commands/commands.hpp"
#include "cli/files.hpp"
#include "cli/print_problems.hpp"
#include "documents/explain_figure.hpp"
#include "documents/report_view.hpp"

#include <fmt/core.h>

#include <CLI/CLI.hpp>

#include <algorithm>

namespace routeweigh::cli {
namespace {

void require_figure(const std::vector<Figure>& figures, const std::string& id, bool against) {
    std::vector<std::string> ids;
    for (const Figure& figure : figures)
        ids.push_back(figure.id);
    if (std::find(ids.begin(), ids.end(), id) != ids.end()) return;
    if (!against && (id == same_auxiliaries_id || id == "break_even_yield"))
        throw CallError(
            fmt::format("\"{}\" is counted against another route: name its file with --baseline", id));
    throw CallError(no_such("figure", id, ids));
}

} // namespace

std::function<void()> add_explain(CLI::App& program, Context& context) {
    struct Options {
        std::string route, figure, baseline;
    };
    const auto options = std::make_shared<Options>();
    CLI::App* command = program.add_subcommand(
        "explain", "One figure of one route: formula, numbers put in, where each comes from");
    command->add_option("ROUTE", options->route, "A route file, or - for standard input")->required();
    command->add_option("FIGURE", options->figure, "Id of the figure, such as atom_economy")->required();
    command
        ->add_option(
            "--baseline", options->baseline,
            fmt::format("A route file: also explains what is counted against it, {} and break_even_yield",
                        same_auxiliaries_id))
        ->type_name("FILE");
    context.add_output_options(*command);
    command->footer("Examples:\n"
                    "  routeweigh explain routes/4-bromoacetanilide/A3.json complete_e_factor\n"
                    "  routeweigh explain routes/4-bromoacetanilide/A3.json break_even_yield "
                    "--baseline routes/4-bromoacetanilide/A1.json\n");
    return [options, &context] {
        Problems problems;
        std::vector<Route> routes =
            read_routes(context.sources({options->route}), context.catalogue(), problems);
        if (routes.size() != 1) throw CallError("explain takes one route file");
        const bool against = !options->baseline.empty();
        if (against) {
            std::vector<Route> other =
                read_routes(context.sources({options->baseline}), context.catalogue(), problems);
            if (other.size() != 1) throw CallError("--baseline takes one route file");
            routes.push_back(std::move(other.front()));
        }
        print_problems(problems.all);
        const std::string baseline = routes.back().id;
        const Comparison comparison = compare_routes(std::move(routes), baseline, context.rules());
        require_figure(against ? documents::figures_of(comparison, 0) : comparison.route(0).figures(),
                       options->figure, against);
        context.write(explain_figure(comparison, 0, options->figure));
    };
}

} // namespace routeweigh::cli
