// SPDX-License-Identifier: MIT
#include "app/laid_out.hpp"
#include "app/results_session.hpp"
#include "base/text.hpp"
#include "cli/commands/commands.hpp"
#include "cli/files.hpp"
#include "cli/print_problems.hpp"
#include "cli/xlsx_file.hpp"

#include <CLI/CLI.hpp>

#include <fmt/format.h>

#include <filesystem>

namespace routeweigh::cli {
namespace {

constexpr const char* columns_help = R"(Columns of CLASS.csv, in any order, with the unit in the heading:
  bench               code of the bench, such as A07; never a name
  section             of the class, if there are several
  product (g)         mass of the product, or
  boat and product (g), boat (g)
  dried once (g), dried again (g)   product after the first and second drying
  substrate (g)       what was really weighed in of the reference material
  melting range       such as 166-168, or the columns: melts from, melts to
  limiting reagent (mmol), theoretical yield (g), yield (%)   the student's own
Comma, semicolon or tab between columns; decimal point or comma; mg and mol work too.

With --output class.xlsx the masses become a spreadsheet from which yields and their spread follow.

Example:
  routeweigh results routes/4-bromoacetanilide/A3.json examples/class-results.csv --output class.html)";

bool is_spreadsheet(const std::string& path) {
    return fold(std::filesystem::path(path).extension().string()) == ".xlsx";
}

} // namespace

std::function<void()> add_results(CLI::App& program, Context& context) {
    struct Options {
        std::string route, table, step;
    };
    const auto options = std::make_shared<Options>();
    CLI::App* command = program.add_subcommand(
        "results", "Yields of a class: what is plausible, what to check, and how they spread");
    command->add_option("ROUTE", options->route, "A route file")->required();
    command->add_option("CLASS", options->table, "The table of the class, CSV, or - for standard input")
        ->required();
    command->add_option("--step", options->step, "Id of the step whose product was weighed; else the last")
        ->type_name("ID");
    command->footer(columns_help);
    context.add_output_options(*command);
    return [options, &context] {
        const bool spreadsheet = is_spreadsheet(context.output);
        if (spreadsheet && !context.format.empty())
            throw CallError(fmt::format("--format {} makes no spreadsheet: leave it out, or end {} otherwise",
                                        context.format, context.output));
        Problems problems;
        Route route = read_one_route(context.sources({options->route}), context.catalogue(), problems);
        const Assessment assessment(std::move(route), context.rules());
        const auto results =
            read_results(assessment, options->step, options->table, context.bytes(options->table), problems);
        // A table with faulty rows gives no figures, for nobody would see that rows are missing.
        problems.throw_if_error();
        print_problems(problems.all);
        if (spreadsheet)
            write_file(context.output, xlsx_bytes(results_workbook(assessment, results)));
        else
            context.write(results_document(assessment, results));
    };
}

} // namespace routeweigh::cli
