// SPDX-License-Identifier: MIT
#include "documents/bench_sheet.hpp"
#include "base/text.hpp"
#include "cli/commands/commands.hpp"
#include "cli/commands/paper_options.hpp"

#include <CLI/CLI.hpp>

namespace routeweigh::cli {
namespace {

constexpr const char* edition_help =
    R"(The student edition leaves blank what the student is to work out: amounts in mmol,
equivalents, limiting reagent, theoretical yield. Both editions come from one file,
so that they cannot drift apart:

  routeweigh bench-sheet routes/4-bromoacetanilide/A3.json --output sheet.html
  routeweigh bench-sheet routes/4-bromoacetanilide/A3.json --edition key --output key.html
)";

} // namespace

std::function<void()> add_bench_sheet(CLI::App& program, Context& context) {
    struct Options : PaperOptions {
        std::string edition = "student";
    };
    const auto options = std::make_shared<Options>();
    CLI::App* command = program.add_subcommand(
        "bench-sheet", "Reagent table, theoretical yield, stages to tick, streams, results; one route");
    options->add_to(*command);
    command->add_option("--edition", options->edition, "student (default) or key")
        ->check([](const std::string& name) {
            return name == "student" || name == "key" ? std::string()
                                                      : no_such("edition", name, {"student", "key"});
        })
        ->type_name("EDITION");
    command->footer(edition_help);
    context.add_output_options(*command);
    return [options, &context] {
        const auto laid_out = options->lay_out(context);
        context.write(bench_sheet(laid_out->experiment(), options->edition == "key"
                                                              ? documents::Edition::key
                                                              : documents::Edition::student));
    };
}

} // namespace routeweigh::cli
