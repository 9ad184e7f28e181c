// SPDX-License-Identifier: MIT
#include "writing/writer_list.hpp"

#include "writing/csv_writer.hpp"
#include "writing/html_writer.hpp"
#include "writing/json_writer.hpp"
#include "writing/markdown_writer.hpp"
#include "writing/terminal_writer.hpp"

#include <algorithm>

namespace routeweigh::writing {
namespace {

constexpr Writer writers[] = {
    {"terminal", "text for a terminal, 80 columns", Reader::people, write_terminal},
    {"html", "one page with pictures, to read or print", Reader::people, write_html},
    {"markdown", "text with pipe tables", Reader::people, write_markdown},
    {"csv", "the figures in long form, for spreadsheets", Reader::spreadsheets, write_csv},
    {"json", "the figures unrounded, for programs", Reader::programs, write_json},
};

} // namespace

std::span<const Writer> writer_list() {
    return writers;
}

const Writer* find_writer(std::string_view name) {
    const auto* found = std::find_if(std::begin(writers), std::end(writers),
                                     [&](const Writer& writer) { return writer.name == name; });
    return found == std::end(writers) ? nullptr : found;
}

} // namespace routeweigh::writing
