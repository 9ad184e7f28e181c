// SPDX-License-Identifier: MIT
#include "app/binder.hpp"

#include "app/laid_out.hpp"
#include "cli/commands/commands.hpp"
#include "cli/commands/costs_options.hpp"
#include "cli/course_files.hpp"
#include "cli/folder.hpp"
#include "cli/print_problems.hpp"
#include "cli/xlsx_file.hpp"
#include "writing/writer_list.hpp"

#include <CLI/CLI.hpp>

#include <fmt/format.h>

namespace routeweigh::cli {
namespace {

struct BinderOptions : CostsOptions {
    std::string file, folder;
    bool check = false;
};

std::string text_of(const BinderPage& page) {
    if (const auto* workbook = std::get_if<writing::Workbook>(&page.content)) return xlsx_bytes(*workbook);
    return writing::find_writer("html")->write(std::get<writing::Document>(page.content), {});
}

/// A course file says of its class what these options say of that of a route.
void refuse_class_options(const CLI::App& command) {
    for (const char* name :
         {"--students", "--sections", "--extra", "--day", "--session", "--prices", "--rules"})
        if (command.count(name) > 0)
            throw CallError(
                fmt::format("{} is for the binder of a route; a course file says it itself", name));
}

std::unique_ptr<Course> open_bound(const BinderOptions& options, Context& context, const CLI::App& command,
                                   Problems& problems) {
    const SourcePtr source = context.source(options.file, "a binder");
    if (!is_route_file(source)) {
        refuse_class_options(command);
        return open_course(context, source, {}, problems);
    }
    Route route = read_one_route({source}, context.catalogue(), problems);
    return std::make_unique<Course>(std::move(route), options.request(context), context.catalogue(),
                                    context.rules());
}

} // namespace

std::function<void()> add_binder(CLI::App& program, Context& context) {
    const auto options = std::make_shared<BinderOptions>();
    CLI::App* command = program.add_subcommand(
        "binder", "All papers of a course, or of one experiment, in a folder with a page of contents");
    command
        ->add_option(
            "FILE", options->file,
            "A course file, see examples/course.schema.json, or a route file with the class in options")
        ->required();
    command->add_option("--into", options->folder, "The folder; only what changed is written anew")
        ->required()
        ->type_name("FOLDER");
    command->add_flag("--check", options->check,
                      "Write nothing; exit status 4 and a list when something in the folder is out of date");
    options->add_to(*command);
    command->footer(
        "Examples:\n  routeweigh binder examples/course.json --into binder\n"
        "  routeweigh binder examples/course.json --into binder --check\n"
        "  routeweigh binder routes/4-bromoacetanilide/A3.json --into A3 --students 24 --sections 2 "
        "\\\n      --extra 10% --prices examples/prices.json");
    return [options, command, &context] {
        Problems problems;
        const auto course = open_bound(*options, context, *command, problems);
        print_problems(problems.all);
        Folder folder(options->folder);
        for (const BinderPage& page : make_binder(*course))
            folder.put(page.path, text_of(page));
        folder.finish(options->check);
    };
}

} // namespace routeweigh::cli
