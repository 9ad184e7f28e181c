// SPDX-License-Identifier: MIT
#include "cli/wrong_call.hpp"

#include "base/text.hpp"
#include "cli/command.hpp"

#include <fmt/core.h>

#include <CLI/CLI.hpp>

#include <algorithm>
#include <string_view>

namespace routeweigh::cli {
namespace {

std::vector<std::string> commands() {
    std::vector<std::string> names;
    for (const Command& command : command_list())
        names.emplace_back(command.name);
    return names;
}

void add_option_names(const CLI::App& app, std::vector<std::string>& names) {
    for (const CLI::Option* option : app.get_options())
        for (const std::string& name : option->get_lnames())
            if (std::find(names.begin(), names.end(), "--" + name) == names.end())
                names.push_back("--" + name);
}

/// "--target takes a number, not "abc"": every value that is converted is a number.
std::string no_number(const std::string& message) {
    const std::string_view before = "Could not convert: ", between = " = ";
    const std::size_t end = message.find(between);
    if (!message.starts_with(before) || end == std::string::npos) return message;
    return fmt::format("{} takes a number, not \"{}\"", message.substr(before.size(), end - before.size()),
                       message.substr(end + between.size()));
}

/// The line below the message names the help that lists them all.
std::string no_such_command(const std::string& name) {
    const std::string near = nearest(name, commands());
    return fmt::format("no command is called \"{}\"{}", name,
                       near.empty() ? "" : fmt::format("; nearest: \"{}\"", near));
}

} // namespace

std::string explain_wrong_call(const CLI::App& program, const CLI::ParseError& error) {
    const std::vector<CLI::App*> chosen = program.get_subcommands();
    const std::vector<std::string> unknown = program.remaining(true);
    const auto option = std::find_if(unknown.begin(), unknown.end(), [](const std::string& word) {
        return word.size() > 1 && word.front() == '-';
    });
    if (chosen.empty() && option != unknown.begin() && !unknown.empty())
        return no_such_command(unknown.front());
    if (option != unknown.end()) {
        std::vector<std::string> names;
        add_option_names(program, names);
        for (const CLI::App* command : chosen)
            add_option_names(*command, names);
        return no_such("option", option->substr(0, option->find('=')), names);
    }
    if (chosen.empty()) return "say what to do: the call names no command";
    if (!unknown.empty()) return fmt::format("\"{}\" is one argument too many", unknown.front());
    if (error.get_name() == "ConversionError") return no_number(error.what());
    const bool lacks = error.get_name() == "RequiredError" || error.get_name() == "ArgumentMismatch";
    return lacks ? fmt::format("the call is not complete: {}", error.what()) : error.what();
}

} // namespace routeweigh::cli
