// SPDX-License-Identifier: MIT
#include "cli/manual.hpp"

#include "base/text.hpp"
#include "writing/writer_list.hpp"

#include <fmt/format.h>

#include <CLI/CLI.hpp>

#include <string_view>
#include <vector>

namespace routeweigh::cli {
namespace {

/// Text that roff prints as it stands.
std::string roff(std::string_view text) {
    std::string safe;
    for (const char letter : text) {
        const bool line_start = safe.empty() || safe.back() == '\n';
        if (line_start && (letter == '.' || letter == '\'')) safe += "\\&";
        if (letter == '\\')
            safe += "\\e";
        else if (letter == '-')
            safe += "\\-";
        else
            safe += letter;
    }
    return safe;
}

std::vector<const CLI::App*> commands_of(const CLI::App& program) {
    return program.get_subcommands([](const CLI::App*) { return true; });
}

std::vector<const CLI::Option*> options_of(const CLI::App& app) {
    return app.get_options([](const CLI::Option*) { return true; });
}

bool takes_value(const CLI::Option& option) {
    return option.get_items_expected_max() > 0;
}

void print_options(const CLI::App& app, std::string& page) {
    for (const CLI::Option* option : options_of(app)) {
        const bool positional = option->get_positional();
        std::string head = positional ? option->get_name(true) : option->get_name(false, true);
        if (!positional && takes_value(*option) && !option->get_type_name().empty())
            head += " " + option->get_type_name();
        page += fmt::format(".TP\n.B {}\n{}\n", roff(head), roff(option->get_description()));
    }
}

std::string command_words(const std::vector<const CLI::App*>& commands) {
    std::vector<std::string> names;
    for (const CLI::App* command : commands)
        names.push_back(command->get_name());
    return join(names, " ");
}

std::string option_words(const CLI::App& app) {
    std::vector<std::string> names;
    for (const CLI::Option* option : options_of(app))
        for (const std::string& name : option->get_lnames())
            names.push_back("--" + name);
    return join(names, " ");
}

} // namespace

std::string manual_page(const CLI::App& program, const std::string& version) {
    std::string page = fmt::format(".TH ROUTEWEIGH 1 \"\" \"routeweigh {}\" \"User commands\"\n", version);
    page += fmt::format(".SH NAME\nrouteweigh \\- {}\n", roff(program.get_description()));
    page += ".SH SYNOPSIS\n.B routeweigh\n.I COMMAND\n[\\fIoptions\\fR]\n";
    page += ".SH OPTIONS\n";
    print_options(program, page);
    page += ".SH COMMANDS\n";
    for (const CLI::App* command : commands_of(program)) {
        page += fmt::format(".SS {}\n{}\n", roff(command->get_name()), roff(command->get_description()));
        print_options(*command, page);
    }
    page +=
        ".SH EXIT STATUS\n"
        "0 done, 1 the contents of an input are wrong, 2 the call is wrong or a path cannot be read or "
        "written, "
        "3 an internal fault, 4 something is out of date, 130 an interrupt ended the draws, and what there "
        "was is written\n";
    page += fmt::format(".SH EXAMPLES\n.nf\n{}\n.fi\n", roff(program.get_footer()));
    return page;
}

std::string bash_completion(const CLI::App& program) {
    const std::vector<const CLI::App*> commands = commands_of(program);
    std::vector<std::string> formats;
    for (const writing::Writer& writer : writing::writer_list())
        formats.emplace_back(writer.name);
    std::string cases;
    for (const CLI::App* command : commands)
        cases += fmt::format("        {}) words=\"{}\" ;;\n", command->get_name(), option_words(*command));
    return fmt::format(R"(# Completion of routeweigh for bash, made by "routeweigh manual --completion".
_routeweigh() {{
    local current=${{COMP_WORDS[COMP_CWORD]}} previous=${{COMP_WORDS[COMP_CWORD-1]}} words="{}" word
    COMPREPLY=()
    if [[ $previous == --format ]]; then
        COMPREPLY=($(compgen -W "{}" -- "$current"))
        return
    fi
    for word in "${{COMP_WORDS[@]:1:COMP_CWORD-1}}"; do
        case $word in
{}        *) continue ;;
        esac
        break
    done
    if [[ $current == -* || $COMP_CWORD -eq 1 ]]; then
        COMPREPLY=($(compgen -W "$words {}" -- "$current"))
    else
        COMPREPLY=($(compgen -f -- "$current"))
    fi
}}
complete -o filenames -F _routeweigh routeweigh
)",
                       command_words(commands), join(formats, " "), cases, option_words(program));
}

} // namespace routeweigh::cli
