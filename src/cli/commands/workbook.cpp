// SPDX-License-Identifier: MIT
#include "app/costs_session.hpp"
#include "app/laid_out.hpp"
#include "cli/commands/commands.hpp"
#include "cli/files.hpp"
#include "cli/local_rules.hpp"
#include "cli/print_problems.hpp"
#include "cli/xlsx_file.hpp"

#include <CLI/CLI.hpp>

namespace routeweigh::cli {

std::function<void()> add_workbook(CLI::App& program, Context& context) {
    struct Options {
        std::string route, prices, rules = usual_local_rules;
        CostsRequest request;
    };
    const auto options = std::make_shared<Options>();
    options->request.size = {24, 1, "10 %", {}}; // a start: all three are changed in the workbook
    CLI::App* command =
        program.add_subcommand("workbook", "One route as a spreadsheet (.xlsx) in which yields, solvents, "
                                           "class, packs and prices may be changed");
    command->add_option("ROUTE", options->route, "A route file, or - for standard input")->required();
    command->add_option("--output", context.output, "The .xlsx file to write")->required()->type_name("FILE");
    command
        ->add_option("--students", options->request.size.students,
                     "Students in each section that the workbook starts from; else 24")
        ->type_name("N");
    command->add_option("--sections", options->request.size.sections, "Sections it starts from; else 1")
        ->type_name("N");
    command->add_option("--extra", options->request.size.extra, "Spare stock it starts from; else 10 %")
        ->type_name("PERCENT");
    command
        ->add_option("--prices", options->prices,
                     "Packs, disposal, power and water with their prices, see examples/prices.schema.json")
        ->type_name("FILE");
    add_rules_option(*command, options->rules);
    command->footer(
        "Example:\n  routeweigh workbook routes/4-bromoacetanilide/A3.json --students 24 --sections 3 "
        "\\\n      --prices examples/prices.json --output A3.xlsx");
    return [options, &context] {
        Problems problems;
        Route route = read_one_route(context.sources({options->route}), context.catalogue(), problems);
        print_problems(problems.all);
        const Assessment assessment(std::move(route), context.rules());
        if (!options->prices.empty()) options->request.prices = context.source(options->prices, "--prices");
        options->request.local = local_rules_of(options->rules, context);
        write_file(context.output,
                   xlsx_bytes(class_workbook(assessment, options->request, context.catalogue())));
    };
}

} // namespace routeweigh::cli
