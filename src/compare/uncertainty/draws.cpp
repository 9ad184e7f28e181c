// SPDX-License-Identifier: MIT
#include "compare/uncertainty/draws.hpp"

namespace routeweigh {

void draw_chunk(std::span<const UncertainInput> inputs, std::uint64_t seed, std::uint64_t chunk,
                std::vector<double>& column, DrawRows& rows) {
    column.resize(chunk_draws);
    rows.resize(chunk_draws, inputs.size());
    for (std::size_t i = 0; i < inputs.size(); ++i) {
        PhiloxStream stream(seed, static_cast<std::uint32_t>(i), chunk);
        inputs[i].distribution.draw(stream, column);
        for (std::size_t d = 0; d < chunk_draws; ++d)
            rows.values[d * inputs.size() + i] = column[d];
    }
}

} // namespace routeweigh
