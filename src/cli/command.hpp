// SPDX-License-Identifier: MIT
// A command of the program: one file in commands/ and one line in command_list.cpp.
#pragma once

#include "app/session.hpp"
#include "writing/writer.hpp"

#include <functional>
#include <memory>
#include <optional>
#include <span>
#include <string>
#include <string_view>

namespace CLI {
class App;
}

namespace routeweigh::cli {

/// What all commands share: the catalogue and where the text goes.
class Context {
  public:
    std::string data_folder; ///< replaces the embedded catalogue; empty: embedded
    std::string format;      ///< name of a writer; empty: by the ending of `output`, else terminal
    std::string output = "-";
    bool working = false; ///< print in the terminal what other formats fold away

    /// As read_sources(); none of them may be the file that the output goes to.
    std::vector<SourcePtr> sources(const std::vector<std::string>& paths) const;

    /// The only one. \param taker  what asks for it, such as "--prices" \throws CallError for a folder
    SourcePtr source(const std::string& path, std::string_view taker) const;

    /// A table of any length, read in chunks; not the file that the output goes to.
    ReadBytes bytes(const std::string& path) const;

    const Catalogue& catalogue();
    /// \param classified_by  counts at the first call
    const AssessmentRules& rules(const Jurisdiction& classified_by = {});

    /// Of the chosen format.
    const writing::Writer& writer() const;

    /// Prints the document in the chosen format to the chosen place.
    void write(const writing::Document& document) const;

    /// Adds --format, --output and --working.
    void add_output_options(CLI::App& command);

  private:
    std::optional<Catalogue> own_;
    std::unique_ptr<AssessmentRules> rules_;
};

struct Command {
    /// Adds the command with its options to the program; the returned function runs it after parsing.
    std::function<void()> (*add)(CLI::App& program, Context& context);
    const char* name;
};

std::span<const Command> command_list();

} // namespace routeweigh::cli
