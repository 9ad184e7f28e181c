// SPDX-License-Identifier: MIT
#include "assess/hazard/banding.hpp"

#include "assess/hazard/statement.hpp"

#include <algorithm>
#include <cstddef>

namespace routeweigh {

const BandRow* Banding::row_for(const GhsEntry& entry) const {
    const int number = statement_number(entry.statement);
    const BandRow* fitting = nullptr;
    const BandRow* any = nullptr;
    const auto keep_worse = [](const BandRow*& kept, const BandRow& row) {
        if (kept == nullptr || row.band > kept->band) kept = &row;
    };
    for (const BandRow& row : rows) {
        if (std::find(row.statements.begin(), row.statements.end(), number) == row.statements.end()) continue;
        keep_worse(any, row);
        if (row.categories.empty() ||
            std::find(row.categories.begin(), row.categories.end(), entry.category) != row.categories.end())
            keep_worse(fitting, row);
    }
    return fitting != nullptr ? fitting : any;
}

Banding::Match Banding::worst(std::span<const GhsEntry> entries) const {
    Match match;
    for (const GhsEntry& entry : entries) {
        const BandRow* row = row_for(entry);
        if (row != nullptr && (match.row == nullptr || row->band > match.row->band)) match = {row, &entry};
    }
    return match;
}

int Banding::band_holding(double concentration, bool particle) const {
    // Two bands may share a range (a group without one of its own takes its neighbour's): the milder one
    // holds.
    for (std::size_t i = 0; i < bands.size(); ++i) {
        const BandEdges& edges = particle ? bands[i].particle : bands[i].gas;
        if (!edges.lower || concentration > *edges.lower) return static_cast<int>(i);
    }
    return static_cast<int>(bands.size()) - 1;
}

} // namespace routeweigh
