// SPDX-License-Identifier: MIT
// CAS Registry Numbers: their form and their check digit.
#pragma once

#include <string_view>

namespace routeweigh {

// True for "7726-95-6": two to seven digits, two digits, and the check digit, which is the sum of all digits
// before it, each times its place counted from the right, modulo 10.
bool is_cas_number(std::string_view text);

} // namespace routeweigh
