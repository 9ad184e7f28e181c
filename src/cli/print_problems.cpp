// SPDX-License-Identifier: MIT
#include "cli/print_problems.hpp"

#include "writing/escape.hpp"

#include <fmt/core.h>

#include <cstdio>

namespace routeweigh::cli {

void print_problems(const std::vector<Problem>& problems) {
    for (const Problem& problem : problems) {
        Problem plain = problem;
        plain.severity = Severity::error; // the word stands in front here
        // A file may hold what would move the cursor of the terminal.
        fmt::print(stderr, "{}: {}\n", problem.severity == Severity::error ? "error" : "warning",
                   writing::clean(format(plain)));
        const std::string excerpt = format_excerpt(problem.place);
        if (excerpt.empty()) continue;
        const std::size_t caret = excerpt.find('\n');
        fmt::print(stderr, "{}\n{}\n", writing::clean(excerpt.substr(0, caret)),
                   writing::clean(excerpt.substr(caret + 1)));
    }
}

} // namespace routeweigh::cli
