// SPDX-License-Identifier: MIT
// Small grammar for sentences made from figures.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace routeweigh::documents {

/// "A1", "A1 and A3", "A1, A2 and A3".
std::string listed(const std::vector<std::string>& names);

/// "one route", "ten routes", "14 routes".
std::string counted(std::size_t count, std::string_view singular, std::string_view plural);

/// With a capital first letter (ASCII).
std::string capitalised(std::string text);

/// "Mass intensity" within a sentence; "E-factor" keeps its capital.
std::string in_sentence(std::string name);

/// "lies" for one subject, "lie" for more: the form of the verb that goes with so many.
std::string_view verb(std::size_t subjects, std::string_view singular, std::string_view plural);

} // namespace routeweigh::documents
