// SPDX-License-Identifier: MIT
#include "app/session.hpp"
#include "app/what_if.hpp"
#include "cli/commands/commands.hpp"
#include "cli/files.hpp"
#include "cli/local_rules.hpp"
#include "cli/sampling.hpp"
#include "documents/comparison_report.hpp"

#include <CLI/CLI.hpp>

namespace routeweigh::cli {

std::function<void()> add_compare(CLI::App& program, Context& context) {
    struct Options {
        std::vector<std::string> routes;
        std::string baseline;
        SamplingOptions sampling;
    };
    const auto options = std::make_shared<Options>();
    CLI::App* command = program.add_subcommand("compare", "Weigh routes to one product against each other");
    command->add_option("ROUTE", options->routes, "Route files, folders of them, or - for standard input")
        ->required();
    command
        ->add_option("--baseline", options->baseline,
                     "Id of the route that the others are compared with; else the first")
        ->type_name("ID");
    const auto limits = add_limits_options(*command);
    options->sampling.add_to(*command, 0);
    context.add_output_options(*command);
    command->footer("Examples:\n"
                    "  routeweigh compare routes/4-bromoacetanilide --baseline A1\n"
                    "      ten ways to one product, in the terminal\n"
                    "  routeweigh compare routes/4-bromoacetanilide --baseline A1 --output report.html\n"
                    "      the same as one page to print or send\n");
    return [options, limits, &context] {
        std::vector<SourcePtr> sources = context.sources(options->routes);
        const AssessmentRules& rules = context.rules(jurisdiction_of(*limits, context));
        std::vector<Route> routes = options->sampling.read(sources, context.catalogue(), rules);
        const Comparison comparison = compare_routes(std::move(routes), options->baseline, rules);
        const writing::Reader reader = context.writer().reader;
        const bool people = reader == writing::Reader::people;
        // Programs get what costs time only when they ask for it, and improvements by a command of their own.
        std::unique_ptr<Certainty> certainty;
        if (options->sampling.asked() || people)
            certainty = options->sampling.run(comparison, sources, context.catalogue());
        std::vector<Improvements> improvements;
        if (people) improvements = improvements_of(comparison, context.catalogue(), rules);
        context.write(
            comparison_report(comparison, reader, {certainty.get(), people ? &improvements : nullptr}));
    };
}

} // namespace routeweigh::cli
