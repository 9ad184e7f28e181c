// SPDX-License-Identifier: MIT
// Small grammar for sentences made from figures; what other layers need of it too is in base/text.
#pragma once

#include "base/text.hpp"

#include <cstddef>
#include <string>
#include <string_view>

namespace routeweigh::documents {

/// "one route", "ten routes", "14 routes".
std::string counted(std::size_t count, std::string_view singular, std::string_view plural);

/// "Mass intensity" within a sentence; "E-factor" keeps its capital.
std::string in_sentence(std::string name);

/// "lies" for one subject, "lie" for more: the form of the verb that goes with so many.
std::string_view verb(std::size_t subjects, std::string_view singular, std::string_view plural);

} // namespace routeweigh::documents
