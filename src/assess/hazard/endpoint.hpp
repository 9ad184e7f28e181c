// SPDX-License-Identifier: MIT
// What one gram of a substance adds to the figure of an endpoint, and on what this rests.
//
// A family of endpoints is one file in endpoints/ and one line in endpoint_list.cpp; a further endpoint of a
// known family is one entry in the scheme file.
#pragma once

#include "assess/hazard/scheme.hpp"
#include "chemistry/substance.hpp"

#include <span>
#include <string>
#include <string_view>

namespace routeweigh {

class Field;

// A substance by the entry that holds where it is met: that of its solution, or that of the pure substance.
struct HazardEntry {
    const Substance* substance = nullptr;
    bool solution = false; // only true where the substance has an entry for solutions

    std::span<const GhsEntry> ghs() const;
    bool assessed() const { return solution || substance->assessed; }
    // Where the classification comes from, and whether it was recalled rather than read.
    const std::string& source() const;
    bool from_memory() const;
};

// The entry that holds beside water, and the one of the pure substance: in a gas, in a bottle that holds
// nothing else, and in a pot that never holds water. Entries of solutions are those of aqueous ones.
HazardEntry entry_in_water(const Substance& substance);
HazardEntry entry_neat(const Substance& substance);

enum class HazardBasis {
    not_classified,   // assessed, and no class that counts here
    limit,            // time-weighted exposure limit
    short_term_limit, // ceiling or 15 minutes only: labelled, never in the figure
    band,             // edges of a published band
    category,         // class limit, dose or level that follows from the classification
    unassessed        // nobody knows: from nothing to the worst of the endpoint
};

struct HazardContribution {
    double low = 0;           // figure per g, at least
    double high = 0;          // figure per g, at most; may be infinite
    double short_term = 0;    // figure per g against a ceiling or short-term limit; in no sum
    bool lower_level = false; // counted in grams at a lower level, which is shown and not scored
    bool unassessed = false;
    int level = -1; // severity, 0 is the worst; -1: none
    HazardBasis basis = HazardBasis::not_classified;
    const GhsEntry* entry = nullptr; // that decides, where one does
    const BandRow* row = nullptr;    // of the banding, on basis of a band
    bool m_factor_assumed = false;   // the entry has no M-factor and 1 was taken

    bool counts() const { return high > 0 || short_term > 0 || lower_level || unassessed || level >= 0; }
    bool exact() const { return low == high; }
};

HazardContribution unassessed_contribution(const EndpointRule& rule);

struct EndpointFamily {
    std::string_view kind; // as the scheme file names it
    // Reads what the scheme file says of an endpoint beyond what every endpoint has.
    void (*read)(const Field& field, EndpointRule& rule);
    HazardContribution (*contribution)(const EndpointRule& rule, const HazardEntry& entry,
                                       const HazardScheme& scheme, const Banding& banding);
};

std::span<const EndpointFamily> endpoint_families();

// Names of the levels of an endpoint, worst first: those of its rule, else the letters of the bands.
std::vector<std::string> level_names(const EndpointRule& rule, const Banding& banding);

// On what a contribution rests, in words: "0.1 ppm, 8 h time-weighted average", "H330 category 2, band D",
// and where that comes from.
struct HazardProvenance {
    std::string datum;
    std::string source;
    bool from_memory = false;
};
HazardProvenance provenance(const HazardContribution& contribution, const HazardEntry& entry,
                            const Banding& banding);

} // namespace routeweigh
