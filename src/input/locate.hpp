// SPDX-License-Identifier: MIT
// Finds where in a JSON text the value of a JSON pointer (RFC 6901) begins.
//
// Used only when a problem is shown, so that reading keeps no positions.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>

namespace routeweigh {

// Byte offset of the value; of the last of them where a key stands twice in one object. Empty where the
// pointer leads nowhere.
std::optional<std::size_t> locate(std::string_view text, std::string_view pointer);

// Byte offset of the n-th key (counted from 0) of this name in the object at the pointer.
std::optional<std::size_t> locate_key(std::string_view text, std::string_view object_pointer,
                                      std::string_view key, int n = 0);

// One step of a pointer, escaped: "a/b" becomes "a~1b".
std::string pointer_token(std::string_view key);

} // namespace routeweigh
