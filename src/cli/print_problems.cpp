// SPDX-License-Identifier: MIT
#include "cli/print_problems.hpp"

#include <fmt/core.h>

#include <cstdio>

namespace routeweigh::cli {

void print_problems(const std::vector<Problem>& problems) {
    for (const Problem& problem : problems) {
        fmt::print(stderr, "{}: {}\n", problem.severity == Severity::error ? "error" : "warning",
                   format(problem));
        if (const std::string excerpt = format_excerpt(problem.place); !excerpt.empty())
            fmt::print(stderr, "{}\n", excerpt);
    }
}

} // namespace routeweigh::cli
