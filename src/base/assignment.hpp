// SPDX-License-Identifier: MIT
// A value to be put in one place of a JSON text.
#pragma once

#include <string>

namespace routeweigh {

struct Assignment {
    std::string pointer; // JSON Pointer, RFC 6901; "-" as last step appends to a list
    std::string value;   // JSON text; "": the place is taken out
};

} // namespace routeweigh
