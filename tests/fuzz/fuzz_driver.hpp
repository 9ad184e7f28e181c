// SPDX-License-Identifier: MIT
// What a fuzz target provides and may use. The driver has main() and the mutations.
#pragma once

#include <string_view>

namespace fuzz {

/// Tries one input: whether it was accepted. Whatever the reader under test is allowed to throw is caught
/// here; anything that escapes is a failure.
bool try_input(std::string_view input);

/// Ends the run with the message when the condition does not hold; the input is kept for a repeat.
void require(bool condition, const char* message);

} // namespace fuzz
