// SPDX-License-Identifier: MIT
#include "app/waste.hpp"
#include "cli/commands/commands.hpp"
#include "cli/local_rules.hpp"
#include "cli/print_problems.hpp"
#include "documents/waste/waste_document.hpp"

#include <fmt/core.h>

#include <CLI/CLI.hpp>

#include <charconv>
#include <cmath>

namespace routeweigh::cli {
namespace {

struct WasteOptions {
    std::vector<std::string> routes, logs;
    std::string rules = usual_local_rules;
    int students = 1, team = 1;
};

constexpr const char* waste_help =
    R"(The handout is what the route file says under "container" of a stream. Streams
go by their composition at both readings of the yield: lost after it was made, or
never formed. A rules file of your own may be short: "based_on": "US" and what
differs. examples/marrow-point-college shows a rules file and a log;
hazard-data/local_rules.schema.json and container_log.schema.json describe them.

  routeweigh waste routes/4-bromoacetanilide/A3.json --students 24
  routeweigh waste routes/4-bromoacetanilide/A3.json --students 24 --team 2 \
      --rules examples/marrow-point-college/rules.json \
      --log examples/marrow-point-college/halogenated-log.json --output waste.html

A suggestion for planning: local rules and licensed waste contractors decide.
)";

/// A reason where the text is no number of people; "" where it is.
std::string is_count(const std::string& text) {
    constexpr int most = 100000;
    int count = 0;
    const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), count);
    const bool good = error == std::errc() && end == text.data() + text.size() && count >= 1 && count <= most;
    return good ? std::string() : fmt::format("\"{}\" is no whole number from 1 to {}", text, most);
}

} // namespace

std::function<void()> add_waste(CLI::App& program, Context& context) {
    const auto options = std::make_shared<WasteOptions>();
    CLI::App* command = program.add_subcommand(
        "waste", "Where each stream goes, what must not meet it there, quench, and whether it fits");
    command->add_option("ROUTE", options->routes, "Route files, folders of them, or - for standard input")
        ->required();
    command->add_option("--students", options->students, "Students in the room")
        ->check(is_count)
        ->type_name("N");
    command->add_option("--team", options->team, "Students at one pot")->check(is_count)->type_name("N");
    add_rules_option(*command, options->rules);
    command->add_option("--log", options->logs, "Log of a container that holds something; may be repeated")
        ->type_name("FILE");
    command->footer(waste_help);
    context.add_output_options(*command);
    return [options, &context] {
        Problems problems;
        const std::vector<Route> routes =
            read_routes(context.sources(options->routes), context.catalogue(), problems);
        const streams::StreamRules rules(context.catalogue(), local_rules_of(options->rules, context));
        const std::vector<streams::ContainerLog> logs =
            read_container_logs(context.sources(options->logs), rules, problems);
        print_problems(problems.all);
        const double pots = std::ceil(static_cast<double>(options->students) / options->team);
        std::vector<streams::ClassWaste> wastes;
        for (const Route& route : routes)
            wastes.push_back(assess_class(route, pots, rules, logs));
        context.write(waste_document({&rules, &logs, wastes, static_cast<double>(options->students),
                                      static_cast<double>(options->team)}));
    };
}

} // namespace routeweigh::cli
