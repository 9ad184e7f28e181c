// SPDX-License-Identifier: MIT
// What a route file says of how exactly one of its numbers is known: the meaning of "+/-", a range with its
// shape, or a list of results.
#pragma once

#include "base/distribution.hpp"
#include "input/field.hpp"

#include <limits>
#include <optional>
#include <string_view>

namespace routeweigh {

/// The range in which a number can lie at all, in the unit in which it is written.
struct PhysicalRange {
    double least, greatest;
    std::string_view words;
};
inline constexpr PhysicalRange not_below_zero{0.0, std::numeric_limits<double>::infinity(),
                                              "an amount cannot be negative"};
inline constexpr PhysicalRange share_in_percent{0.0, 100.0, "a share lies between 0 and 100 %"};

/// The distribution of the true value over the number at `value`, so that 1 means as written; empty where the
/// file states no spread. Problems: a "+/-" whose meaning is not said, a meaning without "+/-", a range in
/// the wrong order or beyond what is possible, no results. \param parent  the object that holds the number
/// and, in "spread", what is known of it \param written  the number, as read from `value`
std::optional<Distribution> read_spread(const Field& parent, const Field& value,
                                        const WrittenQuantity& written, const PhysicalRange& range);

} // namespace routeweigh
