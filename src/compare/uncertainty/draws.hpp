// SPDX-License-Identifier: MIT
// Draws of all inputs of a model, chunk by chunk.
//
// Each input has a stream of random numbers of its own, so that a chunk is the same whoever draws it, and an
// input more changes nothing in the others.
#pragma once

#include "compare/uncertainty/model.hpp"

#include <cstdint>

namespace routeweigh {

/// Draws that one thread works through in one go; small enough to stay in the cache.
inline constexpr std::size_t chunk_draws = 250;

/// Fills `rows` with chunk number `chunk`. \param column  scratch, reused
void draw_chunk(std::span<const UncertainInput> inputs, std::uint64_t seed, std::uint64_t chunk,
                std::vector<double>& column, DrawRows& rows);

} // namespace routeweigh
