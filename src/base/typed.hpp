// SPDX-License-Identifier: MIT
// Characters that word processors and web pages put in, as a keyboard types them.
#pragma once

#include <string>
#include <string_view>

namespace routeweigh {

// Spaces that do not break or are thin become spaces, the minus sign becomes "-": "2.50(U+00A0)g" is "2.50
// g".
std::string typed_quantity(std::string_view text);

// Subscript digits become digits and a raised charge is written behind "^": H(U+2082)O is "H2O",
// Ba(U+00B2)(U+207A) is "Ba^2+".
std::string typed_formula(std::string_view text);

} // namespace routeweigh
