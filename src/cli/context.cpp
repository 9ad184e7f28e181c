// SPDX-License-Identifier: MIT
#include "cli/command.hpp"

#include "app/session.hpp"
#include "base/text.hpp"
#include "cli/files.hpp"
#include "writing/writer_list.hpp"

#include <fmt/core.h>

#include <CLI/CLI.hpp>

#include <cstdlib>
#include <filesystem>
#include <system_error>

#include <sys/ioctl.h>
#include <unistd.h>

namespace routeweigh::cli {
namespace {

std::vector<std::string> format_names() {
    std::vector<std::string> names;
    for (const writing::Writer& writer : writing::writer_list())
        names.emplace_back(writer.name);
    return names;
}

/// "report.html" asks for HTML without --format.
std::string format_by_ending(const std::string& path) {
    const std::string ending = fold(std::filesystem::path(path).extension().string());
    if (ending == ".html" || ending == ".htm") return "html";
    if (ending == ".md") return "markdown";
    if (ending == ".csv") return "csv";
    if (ending == ".json") return "json";
    if (ending.empty() || ending == ".txt") return "terminal";
    if (ending == ".xlsx")
        throw CallError(
            "this is no spreadsheet; `routeweigh workbook` makes one of a route and its class, and "
            "`routeweigh results` of the results of a class");
    throw CallError(
        fmt::format("no format is known by the ending \"{}\" of --output; end it in .html, .md, .csv, "
                    ".json or .txt, or say --format",
                    ending));
}

/// Columns of the terminal, 80 where the text goes elsewhere. Wider lines than 100 read badly.
int terminal_width() {
    winsize size{};
    if (::isatty(STDOUT_FILENO) == 0 || ::ioctl(STDOUT_FILENO, TIOCGWINSZ, &size) != 0 || size.ws_col == 0)
        return 80;
    return std::clamp<int>(size.ws_col, 40, 100);
}

} // namespace

const Catalogue& Context::catalogue() {
    if (data_folder.empty()) return Catalogue::embedded();
    if (!own_) {
        std::vector<Source> sources = read_catalogue_folder(data_folder);
        for (const Source& source : sources)
            refuse_overwriting(output, source.name);
        own_ = Catalogue::from_sources(std::move(sources));
    }
    return *own_;
}

std::vector<SourcePtr> Context::sources(const std::vector<std::string>& paths) const {
    std::vector<SourcePtr> found = read_sources(paths);
    for (const SourcePtr& source : found)
        refuse_overwriting(output, source->name);
    return found;
}

SourcePtr Context::source(const std::string& path, std::string_view taker) const {
    std::error_code error; // a path that cannot be looked at is no folder, and reading it says why
    if (std::filesystem::is_directory(path, error))
        throw CallError(fmt::format("{} takes one file, and {} is a folder", taker, path));
    return sources({path}).front();
}

ReadBytes Context::bytes(const std::string& path) const {
    refuse_overwriting(output, path);
    return read_in_chunks(path);
}

const AssessmentRules& Context::rules(const Jurisdiction& classified_by) {
    if (!rules_) {
        rules_ = std::make_unique<AssessmentRules>(read_assessment_rules(catalogue()));
        rules_->classified_by = classified_by;
    }
    return *rules_;
}

const writing::Writer& Context::writer() const {
    return *writing::find_writer(format.empty() ? format_by_ending(output) : format);
}

void Context::write(const writing::Document& document) const {
    writing::WriteOptions options;
    options.unfold = working;
    options.unfold_by = "--working";
    if (output == "-") {
        options.colour = ::isatty(STDOUT_FILENO) != 0 && std::getenv("NO_COLOR") == nullptr;
        options.width = terminal_width();
    }
    write_file(output, writer().write(document, options));
}

void Context::add_output_options(CLI::App& command) {
    const auto known = [](const std::string& name) {
        return writing::find_writer(name) == nullptr ? no_such("format", name, format_names())
                                                     : std::string();
    };
    command
        .add_option("--format", format,
                    fmt::format("How to write it: {}; by the ending of --output when not said. CSV holds "
                                "rows only, without cautions",
                                join(format_names(), ", ")))
        ->check(known)
        ->type_name("FORMAT");
    command.add_option("--output", output, "Write to this file instead of the terminal")->type_name("FILE");
    command.add_flag("--working", working, "In the terminal, print the workings and ledgers too");
}

} // namespace routeweigh::cli
