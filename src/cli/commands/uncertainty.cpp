// SPDX-License-Identifier: MIT
#include "app/session.hpp"
#include "base/text.hpp"
#include "cli/commands/commands.hpp"
#include "cli/sampling.hpp"
#include "documents/uncertainty_document.hpp"

#include <CLI/CLI.hpp>

#include <algorithm>
#include <memory>

namespace routeweigh::cli {
namespace {

void require_figures(const Comparison& comparison, const std::vector<std::string>& ids) {
    std::vector<std::string> known;
    for (const Figure& figure : comparison.baseline().figures())
        known.push_back(figure.id);
    known.emplace_back(same_auxiliaries_id);
    for (const std::string& id : ids)
        if (std::find(known.begin(), known.end(), id) == known.end())
            throw CallError(no_such("figure", id, known));
}

} // namespace

std::function<void()> add_uncertainty(CLI::App& program, Context& context) {
    struct Options {
        std::vector<std::string> routes, figures;
        std::string baseline;
        SamplingOptions sampling;
    };
    const auto options = std::make_shared<Options>();
    CLI::App* command = program.add_subcommand(
        "uncertainty",
        "How exactly the figures of routes are known: mean, standard uncertainty, interval, contributions");
    command->add_option("ROUTE", options->routes, "Route files, folders of them, or - for standard input")
        ->required();
    command
        ->add_option("--figure", options->figures,
                     "Id of a figure: its uncertainty budget, and which measurement matters; may be repeated")
        ->type_name("ID");
    command->add_option("--baseline", options->baseline, "Id of the route whose auxiliaries the others take")
        ->type_name("ID");
    command->footer("Examples:\n"
                    "  routeweigh uncertainty A3.json\n"
                    "      every figure that varies, with its interval and what contributes most\n"
                    "  routeweigh uncertainty A1.json A3.json --figure process_mass_intensity\n"
                    "      the budget of one figure, and how often each route is ahead\n"
                    "  routeweigh uncertainty A3.json --results class.csv --digits 2\n"
                    "      with the yields that a class found, drawn until two digits are stable\n");
    options->sampling.add_to(*command, 1);
    context.add_output_options(*command);
    return [options, &context] {
        std::vector<SourcePtr> sources = context.sources(options->routes);
        std::vector<Route> routes = options->sampling.read(sources, context.catalogue(), context.rules());
        const Comparison comparison = compare_routes(std::move(routes), options->baseline, context.rules());
        require_figures(comparison, options->figures);
        const auto certainty =
            options->sampling.run(comparison, sources, context.catalogue(), options->figures);
        context.write(uncertainty_document(comparison, *certainty, options->figures));
    };
}

} // namespace routeweigh::cli
