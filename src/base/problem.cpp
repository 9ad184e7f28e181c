// SPDX-License-Identifier: MIT
#include "base/problem.hpp"

#include <fmt/format.h>

#include <utility>

namespace routeweigh {

namespace {

std::string where(const Place& place) {
    std::string result = place.source;
    if (place.line > 0) result += fmt::format(":{}", place.line);
    if (!place.pointer.empty()) {
        if (!result.empty()) result += ' ';
        result += place.pointer;
    }
    return result;
}

std::string one_a_line(const std::vector<Problem>& problems) {
    std::string result;
    for (const Problem& problem : problems) {
        if (!result.empty()) result += '\n';
        result += format(problem);
    }
    return result;
}

} // namespace

std::string format(const Problem& problem) {
    std::string result = where(problem.place);
    if (!result.empty()) result += ": ";
    if (problem.severity == Severity::warning) result += "warning: ";
    result += problem.message;
    if (!problem.nearest.empty()) result += fmt::format("; nearest: \"{}\"", problem.nearest);
    if (problem.second) result += fmt::format("; the other place: {}", where(*problem.second));
    return result;
}

std::string format_excerpt(const Place& place) {
    if (place.excerpt_column <= 0) return {};
    std::string caret;
    for (int i = 0; i + 1 < place.excerpt_column && i < static_cast<int>(place.excerpt.size()); ++i) {
        const auto byte = static_cast<unsigned char>(place.excerpt[static_cast<std::size_t>(i)]);
        // Bytes that only continue a UTF-8 character take no room on the screen.
        if ((byte & 0xC0U) == 0x80U) continue;
        caret += byte == '\t' ? '\t' : ' ';
    }
    return place.excerpt + '\n' + caret + '^';
}

InputError::InputError(std::vector<Problem> found)
    : problems(std::move(found)), text_(one_a_line(problems)) {}

InputError::InputError(Problem found) : InputError(std::vector<Problem>{std::move(found)}) {}

} // namespace routeweigh
