// SPDX-License-Identifier: MIT
// How often a random test draws.
#pragma once

namespace routeweigh::test {

/// The count of the plain build; a fifth of it where sanitizers watch, which look for other faults and take
/// ten times as long.
constexpr int rounds(int plain) {
#ifdef __SANITIZE_ADDRESS__
    return plain / 5;
#else
    return plain;
#endif
}

} // namespace routeweigh::test
