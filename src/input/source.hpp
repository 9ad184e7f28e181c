// SPDX-License-Identifier: MIT
// The name and the text of one input, held as long as anything refers to it.
#pragma once

#include "base/problem.hpp"

#include <cstddef>
#include <memory>
#include <string>
#include <string_view>

namespace routeweigh {

struct Source {
    std::string name; // as the user gave it; stands at the head of every message
    std::string text;
};

using SourcePtr = std::shared_ptr<const Source>;

SourcePtr make_source(std::string name, std::string text);

inline constexpr std::size_t largest_source = std::size_t{16} * 1024 * 1024; // bytes
inline constexpr int deepest_nesting = 64;                                   // brackets open at one time

// Throws InputError where the text is larger than 16 MB, nested deeper than 64, or not UTF-8. Parses nothing.
void check_source(const Source& source);

// The place of a byte of the text: line, column and an excerpt of at most 160 bytes. The pointer is put in as
// given.
Place place_at(const Source& source, std::size_t offset, std::string pointer = {});

} // namespace routeweigh
