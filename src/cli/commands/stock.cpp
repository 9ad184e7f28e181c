// SPDX-License-Identifier: MIT
#include "app/stock_session.hpp"
#include "cli/commands/class_options.hpp"
#include "cli/commands/commands.hpp"
#include "cli/commands/paper_options.hpp"
#include "cli/files.hpp"
#include "cli/print_problems.hpp"

#include <CLI/CLI.hpp>

namespace routeweigh::cli {

std::function<void()> add_stock(CLI::App& program, Context& context) {
    struct Options : PaperOptions {
        std::string shelf, prices;
        ClassRequest size;
    };
    const auto options = std::make_shared<Options>();
    CLI::App* command =
        program.add_subcommand("stock", "What a class needs: to get, to make and on which day, and its cost");
    options->add_to(*command);
    add_class_options(*command, options->size);
    command
        ->add_option("--shelf", options->shelf,
                     "What the shelf holds: CSV with the columns material, amount, unit, best before")
        ->type_name("FILE");
    command
        ->add_option("--prices", options->prices, "Packs and their prices, see examples/prices.schema.json")
        ->type_name("FILE");
    command->footer("Example:\n  routeweigh stock routes/4-bromoacetanilide/A3.json --students 24 --sections "
                    "3 --extra 10% \\\n"
                    "      --shelf examples/shelf.csv --prices examples/prices.json --output stock.html");
    context.add_output_options(*command);
    return [options, &context] {
        const auto laid_out = options->lay_out(context);
        Problems problems;
        StockRequest request;
        request.size = options->size;
        if (!options->shelf.empty()) {
            request.shelf_name = options->shelf;
            request.shelf = context.bytes(options->shelf);
        }
        if (!options->prices.empty()) request.prices = context.source(options->prices, "--prices");
        const auto document = stock_document(laid_out->experiment(), request, context.catalogue(), problems);
        print_problems(problems.all);
        context.write(document);
    };
}

} // namespace routeweigh::cli
