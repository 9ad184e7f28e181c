// SPDX-License-Identifier: MIT
// A published banding: which range of air concentration stands for a hazard statement where no exposure limit
// exists.
//
// A band is an interval, not a value: its upper edge gives the least, its lower edge the greatest demand for
// air.
#pragma once

#include "chemistry/classification.hpp"

#include <optional>
#include <span>
#include <string>
#include <vector>

namespace routeweigh {

struct BandEdges {
    std::optional<double> lower; // outside the band; none: reaches down to nothing
    std::optional<double> upper; // inside the band; none: open upwards
};

struct Band {
    std::string letter;
    BandEdges particle; // mg/m3, for solids
    BandEdges gas;      // ppm, for gases and vapours
};

struct BandRow {
    std::string endpoint;
    std::vector<int> statements;         // numbers, see statement_number()
    std::vector<std::string> categories; // empty: any
    int band = 0;                        // index in Banding::bands
    std::optional<int> alternative;      // where the table may have been remembered wrongly
    std::string confidence;
    std::string provenance;
};

struct Banding {
    std::string id;
    std::string title;
    std::string source;
    std::vector<Band> bands; // mildest first
    std::vector<BandRow> rows;

    struct Match {
        const BandRow* row = nullptr; // nullptr: no statement leads to a band
        const GhsEntry* entry = nullptr;
    };
    // The most severe band that one entry leads to. A category that no row of the statement names takes the
    // worst of its rows.
    const BandRow* row_for(const GhsEntry& entry) const;
    // The most severe over all entries.
    Match worst(std::span<const GhsEntry> entries) const;
    // The band that holds this concentration; the mildest band also what lies above it.
    int band_holding(double concentration, bool particle) const;
};

} // namespace routeweigh
