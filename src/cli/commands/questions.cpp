// SPDX-License-Identifier: MIT
#include "app/export/question_export.hpp"
#include "app/what_if.hpp"
#include "base/text.hpp"
#include "cli/commands/commands.hpp"
#include "cli/commands/paper_options.hpp"
#include "cli/files.hpp"
#include "documents/question_sheet.hpp"

#include <fmt/core.h>

#include <CLI/CLI.hpp>

#include <filesystem>

namespace routeweigh::cli {
namespace {

struct QuestionOptions : PaperOptions {
    int seed = 1, version = 1;
    bool key = false;
    std::string exported;
};

constexpr const char* question_help =
    R"(Each version asks the same kinds of questions with other numbers; the same seed and
version give the same questions on every machine.

  routeweigh questions routes/4-bromoacetanilide/A3.json --version 2
  routeweigh questions routes/4-bromoacetanilide/A3.json --version 2 --key --output key.html
  routeweigh questions routes/4-bromoacetanilide/A3.json --export qti --output questions
  routeweigh questions routes/4-bromoacetanilide/A3.json --export moodle-xml --output a3.xml

A kind is asked where the route has an answer that is clear. The best single change, for
one, is not asked where fewer than two changes are found that do not name equivalents,
loading or yield, or where none of them lowers the E-factor by 1 % of it more than another.

An export holds the answers, each common mistake with the number it leads to, and
what to say about it. qti writes a folder of items with its manifest.
)";

void write_folder(const std::string& folder, const std::vector<ExportedFile>& files) {
    std::error_code failure;
    std::filesystem::create_directories(folder, failure);
    if (failure) throw FileError(fmt::format("{}: the folder cannot be made: {}", folder, failure.message()));
    for (const ExportedFile& file : files)
        write_file((std::filesystem::path(folder) / file.name).string(), file.text);
}

void write_export(const QuestionOptions& options, const Context& context, const bench::Experiment& experiment,
                  const documents::QuestionSet& set) {
    if (options.exported == "moodle-xml") {
        write_file(context.output, export_moodle_xml(experiment, set));
        return;
    }
    if (context.output == "-")
        throw CallError("--export qti writes several files; name a folder for them with --output");
    write_folder(context.output, export_qti(set));
}

} // namespace

std::function<void()> add_questions(CLI::App& program, Context& context) {
    const auto options = std::make_shared<QuestionOptions>();
    CLI::App* command = program.add_subcommand(
        "questions", "Questions before and after the experiment, in versions, with key and export");
    options->add_to(*command);
    command->add_option("--seed", options->seed, "Start of the draws, such as the year; else 1")
        ->type_name("N");
    command->add_option("--version", options->version, "Which set of numbers; else 1")->type_name("K");
    command->add_flag("--key", options->key, "With answers, workings and common mistakes");
    command
        ->add_option("--export", options->exported,
                     "For a learning platform: qti (a folder, QTI 2.1) or moodle-xml (one file)")
        ->check([](const std::string& name) {
            return name == "qti" || name == "moodle-xml" ? std::string()
                                                         : no_such("export", name, {"qti", "moodle-xml"});
        })
        ->type_name("NAME");
    command->footer(question_help);
    context.add_output_options(*command);
    return [options, &context] {
        if (options->version < 1 || options->version > 1000)
            throw CallError(
                fmt::format("--version counts from 1 to 1000, and {} is none of these", options->version));
        if (options->seed < 0)
            throw CallError(fmt::format("--seed is 0 or more, and {} is not", options->seed));
        const auto laid_out = options->lay_out(context);
        const auto improvements = waste_improvements_of(laid_out->experiment().assessment());
        const documents::QuestionSet set = documents::make_questions(
            laid_out->experiment(), improvements ? &*improvements : nullptr, options->seed, options->version);
        if (!options->exported.empty())
            write_export(*options, context, laid_out->experiment(), set);
        else
            context.write(
                question_sheet(laid_out->experiment(), set,
                               options->key ? documents::Edition::key : documents::Edition::student));
    };
}

} // namespace routeweigh::cli
