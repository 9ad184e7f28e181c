// SPDX-License-Identifier: MIT
#include "cli/commands/commands.hpp"
#include "documents/catalogue_document.hpp"

#include <CLI/CLI.hpp>

namespace routeweigh::cli {

std::function<void()> add_find(CLI::App& program, Context& context) {
    const auto text = std::make_shared<std::string>();
    CLI::App* command =
        program.add_subcommand("find", "Substances and materials of the catalogue, with sources");
    command->add_option("TEXT", *text, "Part of a name, a formula or a CAS number")->required();
    context.add_output_options(*command);
    command->footer("Example:\n"
                    "  routeweigh find \"hydrobromic acid\"\n");
    return [text, &context] { context.write(catalogue_document(context.catalogue(), *text)); };
}

} // namespace routeweigh::cli
