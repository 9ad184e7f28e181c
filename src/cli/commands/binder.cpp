// SPDX-License-Identifier: MIT
#include "app/binder.hpp"

#include "cli/commands/commands.hpp"
#include "cli/course_files.hpp"
#include "cli/folder.hpp"
#include "cli/print_problems.hpp"
#include "cli/xlsx_file.hpp"
#include "writing/writer_list.hpp"

#include <CLI/CLI.hpp>

namespace routeweigh::cli {
namespace {

std::string text_of(const BinderPage& page) {
    if (const auto* workbook = std::get_if<writing::Workbook>(&page.content)) return xlsx_bytes(*workbook);
    return writing::find_writer("html")->write(std::get<writing::Document>(page.content), {});
}

} // namespace

std::function<void()> add_binder(CLI::App& program, Context& context) {
    struct Options {
        std::string course, folder;
        bool check = false;
    };
    const auto options = std::make_shared<Options>();
    CLI::App* command =
        program.add_subcommand("binder", "All papers of a course in one folder, with a page of contents");
    command->add_option("COURSE", options->course, "A course file, see examples/course.schema.json")
        ->required();
    command->add_option("--into", options->folder, "The folder; only what changed is written anew")
        ->required()
        ->type_name("FOLDER");
    command->add_flag("--check", options->check,
                      "Write nothing; exit status 4 and a list when something in the folder is out of date");
    command->footer("Examples:\n  routeweigh binder examples/course.json --into binder\n"
                    "  routeweigh binder examples/course.json --into binder --check");
    return [options, &context] {
        Problems problems;
        const auto course = open_course(context, options->course, {}, problems);
        print_problems(problems.all);
        Folder folder(options->folder);
        for (const BinderPage& page : make_binder(*course))
            folder.put(page.path, text_of(page));
        folder.finish(options->check);
    };
}

} // namespace routeweigh::cli
