// SPDX-License-Identifier: MIT
// Says in plain words what is wrong with a text that is no JSON.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>

namespace routeweigh {

struct SyntaxError {
    std::size_t offset = 0; // of the byte to point at
    std::string message;
};

// `read` is how many bytes the parser had read when it gave up, `complaint` its own message, of which only
// the part about what it expected is used.
SyntaxError explain_syntax_error(std::string_view text, std::size_t read, std::string_view complaint);

} // namespace routeweigh
