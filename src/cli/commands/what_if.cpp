// SPDX-License-Identifier: MIT
#include "app/what_if.hpp"
#include "cli/commands/commands.hpp"
#include "cli/files.hpp"
#include "cli/print_problems.hpp"
#include "documents/what_if_document.hpp"

#include <fmt/core.h>

#include <CLI/CLI.hpp>

#include <filesystem>
#include <memory>
#include <string>
#include <utility>
#include <vector>

namespace routeweigh::cli {
namespace {

struct WhatIfOptions {
    std::string route, patch, save, id, baseline;
    std::vector<std::string> places;
};

RouteChange read_change(const WhatIfOptions& options, const Route& parent, const Context& context) {
    RouteChange change;
    change.id = options.id;
    Problems problems;
    for (const std::string& words : options.places)
        change.places.push_back(read_assignment(words, parent, problems));
    print_problems(problems.all);
    if (!options.patch.empty()) change.patch = context.source(options.patch, "--patch");
    return change;
}

/// The schema of the parent as the folder of the changed file finds it; empty where nothing is to be said
/// anew.
std::string schema_seen_from(const std::string& saved, const Route& parent) {
    namespace fs = std::filesystem;
    const fs::path schema(parent.schema);
    if (saved.empty() || saved == "-" || parent.source->name.empty() || schema.empty() ||
        schema.is_absolute() || parent.schema.find("://") != std::string::npos)
        return {};
    const fs::path from = fs::absolute(parent.source->name).parent_path();
    const fs::path to = fs::absolute(saved).lexically_normal().parent_path();
    const fs::path moved = (from / schema).lexically_normal().lexically_relative(to);
    return moved == schema.lexically_normal() ? std::string() : moved.generic_string();
}

/// \param taker  who takes it, for the message
Route read_one(const std::string& path, const char* taker, Context& context) {
    Problems problems;
    std::vector<Route> routes = read_routes(context.sources({path}), context.catalogue(), problems);
    if (routes.size() != 1) throw CallError(fmt::format("{} takes one route file", taker));
    print_problems(problems.all);
    return std::move(routes.front());
}

void run_what_if(const WhatIfOptions& options, Context& context) {
    std::vector<Route> routes;
    routes.push_back(read_one(options.route, "what-if", context));
    if (options.places.empty() && options.patch.empty()) {
        if (!options.save.empty())
            throw CallError("there is nothing to save: say what to change with --set or --patch");
        context.write(inputs_document(routes.front()));
        return;
    }
    RouteChange change = read_change(options, routes.front(), context);
    if (options.route != "-") change.schema = schema_seen_from(options.save, routes.front());
    const SourcePtr source = changed_source(routes.front(), change);
    Problems warnings;
    routes.push_back(read_changed(source, context.catalogue(), warnings));
    print_problems(warnings.all);
    // As they were found, for a folder with one file may have been named.
    std::vector<std::string> taken{context.output, routes.front().source->name};
    if (change.patch != nullptr) taken.push_back(change.patch->name);
    std::string baseline = routes.front().id;
    if (!options.baseline.empty()) {
        routes.push_back(read_one(options.baseline, "--baseline", context));
        baseline = routes.back().id;
        taken.push_back(routes.back().source->name);
    }
    const writing::Document document =
        what_if_document(compare_routes(std::move(routes), baseline, context.rules()));
    std::error_code error; // where one cannot be looked at, writing says why
    const auto saved = std::filesystem::weakly_canonical(options.save, error),
               written = std::filesystem::weakly_canonical(context.output, error);
    if (!options.save.empty() && options.save != "-" && !written.empty() && saved == written)
        throw CallError("--save and --output name the same file");
    for (const std::string& name : taken)
        refuse_overwriting(options.save, name);
    context.write(document);
    // Last, so that no fault before it costs the file that stood here.
    if (!options.save.empty()) write_file(options.save, source->text);
}

} // namespace

std::function<void()> add_what_if(CLI::App& program, Context& context) {
    const auto options = std::make_shared<WhatIfOptions>();
    CLI::App* command = program.add_subcommand(
        "what-if", "One route with something changed: every figure before and after, side by side");
    command->add_option("ROUTE", options->route, "A route file, or - for standard input")->required();
    command
        ->add_option(
            "--set", options->places,
            "Put VALUE in PLACE: a JSON pointer, or the name of an input, such as yield=\"70 %\"; may be "
            "repeated. Without any change the inputs are listed")
        ->type_name("PLACE=VALUE")
        ->expected(1)
        ->take_all();
    command->add_option("--patch", options->patch, "A JSON merge patch (RFC 7396) with many changes")
        ->type_name("FILE");
    command->add_option("--save", options->save, "Write the changed route here, with its parentage recorded")
        ->type_name("FILE");
    command->add_option("--id", options->id, "Id of the changed route; else that of its parent with -changed")
        ->type_name("ID");
    command
        ->add_option("--baseline", options->baseline,
                     "A route file: also shows what is counted against it, with the same auxiliaries")
        ->type_name("FILE");
    command->footer(
        "Examples:\n"
        "  routeweigh what-if A3.json\n"
        "      what can be changed, and where it stands\n"
        "  routeweigh what-if A3.json --set yield=\"65 %\"\n"
        "  routeweigh what-if A3.json --set /steps/0/stages/0/charges/1/amount=\"3.24 g\" --save A3b.json\n"
        "  routeweigh what-if A3.json --patch less-solvent.json --id A3-lean --save A3-lean.json\n");
    context.add_output_options(*command);
    return [options, &context] { run_what_if(*options, context); };
}

} // namespace routeweigh::cli
