// SPDX-License-Identifier: MIT
// Work that falls into numbered pieces, on several threads.
#pragma once

#include <cstddef>
#include <functional>

namespace routeweigh {

/// Calls `piece(worker, index)` once for every index below `count`, with workers numbered from 0 to below
/// `threads`; a worker does one piece at a time. Which worker gets which piece is left to chance, so a result
/// must not depend on it. The first exception is thrown again when all have stopped.
void for_each_piece(int threads, std::size_t count,
                    const std::function<void(std::size_t worker, std::size_t index)>& piece);

} // namespace routeweigh
