// SPDX-License-Identifier: MIT
// The program: parses the call, runs one command, turns what went wrong into a message and an exit status.
#include "app/session.hpp"
#include "base/problem.hpp"
#include "cli/command.hpp"
#include "cli/files.hpp"
#include "cli/folder.hpp"
#include "cli/print_problems.hpp"
#include "cli/sampling.hpp"
#include "cli/wrong_call.hpp"
#include "writing/escape.hpp"

#include <fmt/core.h>

#include <CLI/CLI.hpp>

#include <exception>

namespace {

enum ExitStatus { done = 0, wrong_contents = 1, wrong_call = 2, internal_fault = 3, out_of_date = 4 };

constexpr const char* examples = R"(Examples:
  routeweigh compare routes/4-bromoacetanilide --baseline A1
      ten ways to one product, in the terminal
  routeweigh compare routes/4-bromoacetanilide --baseline A1 --output report.html
      the same as one page to print or send
  routeweigh check my-route.json
      what is wrong with a file, with line and nearest spelling
  routeweigh explain routes/4-bromoacetanilide/A3.json complete_e_factor
      one figure with its formula and every number that went into it
  routeweigh waste routes/4-bromoacetanilide/A3.json --students 24
      containers, quench and gas for a class; what the handout gets wrong
  routeweigh hazards routes/4-bromoacetanilide/A3.json
      every bottle and stream with its label
  routeweigh classify "ethanol=37 %" water
  routeweigh balance "H2O2 + HBr -> Br2 + H2O"
  routeweigh find "hydrobromic acid"

Figures support a decision and replace no risk assessment: local rules, the
safety office and licensed waste contractors decide.
)";

/// Names of files may hold what would move the cursor of the terminal.
void print_error(const std::string& message) {
    fmt::print(stderr, "error: {}\n", routeweigh::writing::clean(message));
}

int run(int argc, char** argv) {
    using namespace routeweigh;
    CLI::App program(
        "Weighs alternative synthetic routes to one product against each other: mass, waste, hazard.",
        "routeweigh");
    program.set_version_flag("--version", "routeweigh " ROUTEWEIGH_VERSION);
    program.set_help_flag("--help", "Print this help");
    program.require_subcommand(1);
    program.fallthrough();
    cli::Context context;
    program.add_option("--data", context.data_folder, "A folder that replaces the built-in catalogue")
        ->type_name("DIR");

    std::function<void()> chosen;
    for (const cli::Command& command : cli::command_list()) {
        auto runner = command.add(program, context);
        CLI::App* added = program.get_subcommand(command.name);
        added->callback([&chosen, runner = std::move(runner)] { chosen = runner; });
    }
    program.footer(examples); // last: commands take over the examples that are there when they are added
    try {
        program.parse(argc, argv);
    } catch (const CLI::ParseError& error) {
        if (error.get_exit_code() == 0) return program.exit(error); // help or version
        print_error(cli::explain_wrong_call(program, error));
        fmt::print(stderr, "\"routeweigh --help\" and \"routeweigh COMMAND --help\" say more.\n");
        return wrong_call;
    }
    try {
        chosen();
        return cli::draws_were_interrupted() ? cli::interrupted_status : done;
    } catch (const InputError& error) {
        cli::print_problems(error.problems);
        return wrong_contents;
    } catch (const CallError& error) {
        print_error(error.what());
        return wrong_call;
    } catch (const cli::OutOfDate& error) {
        print_error(error.what());
        return out_of_date;
    } catch (const cli::FileError& error) {
        print_error(error.what());
        return wrong_call;
    }
}

} // namespace

int main(int argc, char** argv) {
    try {
        return run(argc, argv);
    } catch (const std::exception& error) {
        fmt::print(stderr, "internal fault: {}\nThis is a mistake of the program, not of your file.\n",
                   error.what());
        return internal_fault;
    }
}
