// SPDX-License-Identifier: MIT
#include "cli/manual.hpp"

#include "cli/commands/commands.hpp"
#include "cli/files.hpp"

#include <CLI/CLI.hpp>

namespace routeweigh::cli {

std::function<void()> add_manual(CLI::App& program, Context& context) {
    const auto completion = std::make_shared<bool>(false);
    CLI::App* command = program.add_subcommand("manual", "Print the manual page, to be read by man -l");
    command->add_flag("--completion", *completion, "Print the completion for bash instead");
    command->add_option("--output", context.output, "Write to this file instead of the terminal")
        ->type_name("FILE");
    command->footer("Examples:\n  routeweigh manual --output routeweigh.1 && man -l routeweigh.1\n"
                    "  routeweigh manual --completion --output routeweigh.bash");
    return [completion, &program, &context] {
        write_file(context.output,
                   *completion ? bash_completion(program) : manual_page(program, ROUTEWEIGH_VERSION));
    };
}

} // namespace routeweigh::cli
