// SPDX-License-Identifier: MIT
#include "app/course_session.hpp"
#include "app/session.hpp"
#include "cli/commands/commands.hpp"
#include "cli/course_files.hpp"
#include "cli/print_problems.hpp"
#include "documents/committee_case.hpp"
#include "documents/term_document.hpp"

#include <CLI/CLI.hpp>

namespace routeweigh::cli {

std::function<void()> add_term(CLI::App& program, Context& context) {
    struct Options {
        std::string course, before, replace;
        bool as_case = false;
    };
    const auto options = std::make_shared<Options>();
    CLI::App* command = program.add_subcommand(
        "term", "What the experiments of a course take and leave in a term; one term against another");
    command->add_option("COURSE", options->course, "A course file, see examples/course.schema.json")
        ->required();
    auto* replace =
        command->add_option("--replace", options->replace,
                            "Put another route into a week, as 5=other.json, and show what changes");
    command
        ->add_option("--before", options->before, "The course file of another term to hold this one against")
        ->type_name("COURSE")
        ->excludes(replace);
    replace->type_name("WEEK=ROUTE");
    command->add_flag("--case", options->as_case,
                      "With --replace: one page for the committee that decides, with what the change loses");
    command->footer("Examples:\n  routeweigh term examples/course.json --output term.html\n"
                    "  routeweigh term examples/course.json --case \\\n"
                    "      --replace 10=routes/adipic-acid/E1.json --output case.html");
    context.add_output_options(*command);
    return [options, &context] {
        if (options->as_case && options->replace.empty())
            throw CallError(
                "--case is a case for a change: say which with --replace WEEK=ROUTE, such as "
                "--replace 10=routes/adipic-acid/E1.json; what the course takes as it stands is printed "
                "without --case");
        Problems problems;
        const auto open = [&](const std::string& path, const std::string& change) {
            return open_course(context, context.source(path, "a course"), change, problems);
        };
        const auto term = open(options->course, options->replace);
        std::unique_ptr<Course> before;
        if (!options->before.empty()) before = open(options->before, {});
        if (!options->replace.empty()) before = open(options->course, {});
        print_problems(problems.all);
        if (options->as_case)
            context.write(committee_case(proposal_of(*before, *term), term->house()));
        else
            context.write(term_document(term->use(), before ? &before->use() : nullptr, term->house()));
    };
}

} // namespace routeweigh::cli
