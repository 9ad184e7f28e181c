// SPDX-License-Identifier: MIT
// Numbers of the command line that have limits.
#pragma once

#include <fmt/core.h>

#include <charconv>
#include <string>

namespace routeweigh::cli {

/// A check for an option: a finite number from `least` to `greatest`. (That of the library lets "nan" pass.)
inline auto within(double least, double greatest) {
    return [=](const std::string& word) {
        double value = 0;
        const char* begin = word.data() + (word.starts_with('+') ? 1 : 0);
        const auto [end, fault] = std::from_chars(begin, word.data() + word.size(), value);
        if (fault == std::errc() && end == word.data() + word.size() && value >= least && value <= greatest)
            return std::string();
        return fmt::format("\"{}\" is no number from {:g} to {:g}", word, least, greatest);
    };
}

} // namespace routeweigh::cli
