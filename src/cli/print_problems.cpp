// SPDX-License-Identifier: MIT
#include "cli/print_problems.hpp"

#include "writing/escape.hpp"

#include <fmt/core.h>

#include <cstdio>

namespace routeweigh::cli {

namespace {

/// Most messages have a line or two; a name of a thousand letters is not printed in full.
std::string shortened(const std::string& text) {
    constexpr std::size_t most = 2000;
    if (text.size() <= most) return text;
    std::size_t head = most / 2, tail = text.size() - most / 2;
    const auto inside = [&](std::size_t at) {
        return (static_cast<unsigned char>(text[at]) & 0xC0U) == 0x80U;
    };
    while (inside(head))
        --head;
    while (tail < text.size() && inside(tail))
        ++tail;
    return text.substr(0, head) + " ... " + text.substr(tail);
}

} // namespace

void print_problems(const std::vector<Problem>& problems) {
    for (const Problem& problem : problems) {
        Problem plain = problem;
        plain.severity = Severity::error; // the word stands in front here
        // A file may hold what would move the cursor of the terminal.
        fmt::print(stderr, "{}: {}\n", problem.severity == Severity::error ? "error" : "warning",
                   shortened(writing::clean(format(plain))));
        const std::string excerpt = format_excerpt(problem.place);
        if (excerpt.empty()) continue;
        const std::size_t caret = excerpt.find('\n');
        fmt::print(stderr, "{}\n{}\n", writing::clean(excerpt.substr(0, caret)),
                   writing::clean(excerpt.substr(caret + 1)));
    }
}

} // namespace routeweigh::cli
