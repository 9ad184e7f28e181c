// SPDX-License-Identifier: MIT
#include "cli/commands/class_options.hpp"

#include <CLI/CLI.hpp>

namespace routeweigh::cli {

void add_class_options(CLI::App& command, ClassRequest& size) {
    command
        .add_option("--students", size.students,
                    "Students in each section, each with a run of their own; else 1")
        ->type_name("N");
    command.add_option("--sections", size.sections, "Sections of that many students; else 1")->type_name("N");
    command
        .add_option(
            "--extra", size.extra,
            "Spare stock made ready for spills and repeats, such as 10%; no runs, no waste; else none")
        ->type_name("PERCENT");
    command
        .add_option("--day", size.days,
                    "Day on which a section meets, such as 2026-09-14; once for each section, in order")
        ->type_name("DAY")
        ->expected(1)
        ->take_all();
}

} // namespace routeweigh::cli
