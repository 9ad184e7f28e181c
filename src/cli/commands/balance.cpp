// SPDX-License-Identifier: MIT
#include "cli/commands/commands.hpp"
#include "documents/balance_document.hpp"

#include <CLI/CLI.hpp>

namespace routeweigh::cli {

std::function<void()> add_balance(CLI::App& program, Context& context) {
    const auto equation = std::make_shared<std::string>();
    CLI::App* command =
        program.add_subcommand("balance", "Coefficients of an equation, or why there are none");
    command
        ->add_option("EQUATION", *equation,
                     "Such as \"KMnO4 + HCl -> KCl + MnCl2 + H2O + Cl2\"; names of the catalogue work too")
        ->required();
    context.add_output_options(*command);
    command->footer("Example:\n"
                    "  routeweigh balance \"H2O2 + HBr -> Br2 + H2O\"\n");
    return [equation, &context] { context.write(balance_document(*equation, context.catalogue())); };
}

} // namespace routeweigh::cli
