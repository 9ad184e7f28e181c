// SPDX-License-Identifier: MIT
#include "documents/talk_card.hpp"
#include "cli/commands/commands.hpp"
#include "cli/commands/paper_options.hpp"

#include <CLI/CLI.hpp>

namespace routeweigh::cli {

std::function<void()> add_talk_card(CLI::App& program, Context& context) {
    const auto options = std::make_shared<PaperOptions>();
    CLI::App* command = program.add_subcommand(
        "talk-card", "One page for the minutes before class: hazards, what to do, streams, what to look for");
    options->add_to(*command);
    command->footer("  routeweigh talk-card routes/4-bromoacetanilide/A3.json --output card.html\n");
    context.add_output_options(*command);
    return [options, &context] { context.write(talk_card(options->lay_out(context)->experiment())); };
}

} // namespace routeweigh::cli
