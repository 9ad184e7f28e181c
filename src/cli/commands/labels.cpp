// SPDX-License-Identifier: MIT
#include "app/labels_session.hpp"
#include "app/laid_out.hpp"
#include "cli/commands/class_options.hpp"
#include "cli/commands/commands.hpp"
#include "cli/local_rules.hpp"
#include "cli/print_problems.hpp"

#include <CLI/CLI.hpp>

namespace routeweigh::cli {

std::function<void()> add_labels(CLI::App& program, Context& context) {
    struct Options {
        std::string route, sheets, only, rules = usual_local_rules;
        LabelRequest request;
    };
    const auto options = std::make_shared<Options>();
    LabelRequest& request = options->request;
    CLI::App* command =
        program.add_subcommand("labels", "Labels for the bottles and waste containers of a route");
    command->add_option("ROUTE", options->route, "A route file, or - for standard input")->required();
    command
        ->add_option(
            "--sheet", request.sheet,
            "Size of the labels: a4-21, a4-14, a4-8, a4-4, a4-2, letter-30, letter-10, letter-6, letter-4; "
            "else a4-8")
        ->type_name("NAME");
    command->add_option("--sheets", options->sheets, "A file with sheets of your own, sizes in mm")
        ->type_name("FILE");
    command->add_option("--only", options->only, "Only these labels: bottles or waste")->type_name("KIND");
    add_class_options(*command, request.size);
    command->add_option("--course", request.course, "Course and room, as the label prints it")
        ->type_name("TEXT");
    command->add_option("--contact", request.contact, "Whom to ask, as the label prints it")
        ->type_name("TEXT");
    command->add_option("--date", request.date, "Day of filling, such as 2026-09-14; else a line to write on")
        ->type_name("DAY");
    add_rules_option(*command, options->rules);
    command->add_option("--first", request.first, "First label of the sheet that is still free; else 1")
        ->type_name("N");
    command->add_option("--copies", request.copies, "Labels for each bottle; else 1")->type_name("N");
    command->footer(
        "Example:\n  routeweigh labels routes/4-bromoacetanilide/A3.json --sheet a4-8 --students 24 "
        "--sections 3 \\\n"
        "      --course \"CHEM 231, room 12\" --contact \"stockroom, ext. 204\" --output labels.html");
    context.add_output_options(*command);
    return [options, &context] {
        LabelRequest& wanted = options->request;
        if (!options->only.empty() && options->only != "bottles" && options->only != "waste")
            throw CallError("--only \"" + options->only + "\": there are bottles and waste");
        wanted.bottles = options->only != "waste";
        wanted.waste = options->only != "bottles";
        Problems problems;
        Route route = read_one_route(context.sources({options->route}), context.catalogue(), problems);
        print_problems(problems.all);
        if (!options->sheets.empty()) wanted.sheets = context.source(options->sheets, "--sheets");
        wanted.local = local_rules_of(options->rules, context);
        const Assessment assessment(std::move(route), context.rules());
        context.write(labels_document(assessment, wanted, context.catalogue()));
    };
}

} // namespace routeweigh::cli
