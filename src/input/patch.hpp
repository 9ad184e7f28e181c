// SPDX-License-Identifier: MIT
// Changes a JSON text: one value at a time by JSON Pointer (RFC 6901), or many by JSON Merge Patch (RFC
// 7396).
//
// Text in, text out; keys keep their order. What comes out is laid out anew: what fits on a line stands on
// one.
#pragma once

#include "base/assignment.hpp"

#include <stdexcept>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace routeweigh {

// The pointer leads nowhere.
class PointerError : public std::runtime_error {
  public:
    explicit PointerError(const std::string& message, std::string nearest_ = {})
        : std::runtime_error(message), nearest(std::move(nearest_)) {}

    std::string nearest; // the pointer that may have been meant; "" for none
};

// What differs at one place; "" where nothing stands there before or after. As JSON text.
struct Difference {
    std::string pointer;
    std::string before;
    std::string after;
};

// All throw nothing else than said here for texts that Document::parse took.

// Replaces values, adds a member to an object, appends to a list, or takes a value out, one assignment after
// the other. Throws PointerError where all but the last step of a pointer do not lead to an
// object or list of the text, or the last leads to no element of a list.
std::string assign(std::string_view text, const std::vector<Assignment>& assignments);

// RFC 7396.
std::string merge_patch(std::string_view text, std::string_view patch);

// Where two texts differ, without the top members named.
std::vector<Difference> differences(std::string_view before, std::string_view after,
                                    const std::vector<std::string>& without);

// A word of the command line as JSON: itself where it is JSON (5, true, null, {"a": 1}, "3 g"), else a text.
std::string json_value(std::string_view word);
std::string json_text(std::string_view text);

// A JSON text without its quotes; other values as they are.
std::string plain_value(const std::string& value);

} // namespace routeweigh
