// SPDX-License-Identifier: MIT
// The table of acids and bases: which species gives its proton to which, and which substance is made of which
// species.
#pragma once

#include "assess/streams/composition.hpp"
#include "base/provenance.hpp"
#include "input/source.hpp"

#include <map>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace routeweigh::streams {

/// Species by name with a count; the count may be a half where a formula unit is split.
using SpeciesCount = std::vector<std::pair<std::string, double>>;

/// Acid = base + proton.
struct Couple {
    std::string acid, base;
    double pKa = 0;
    Provenance from;
};

/// A substance as a sum of species.
struct AcidBaseSubstance {
    std::string id;
    SpeciesCount species;
    double acid = 0; ///< mol of base that brings one mol of it near neutral
    double base = 0; ///< mol of acid
};

/// A species that is bookkept as other substances; one of them leaves as gas: carbonic acid.
struct DecayingSpecies {
    std::string species;
    std::vector<std::pair<std::string, double>> substances;
    std::string gas;
};

/// Acid that comes of water: acid chlorides, anhydrides, aluminium chloride.
struct HydrolysingAcid {
    std::string id;
    double acid = 0;
    bool strong = false;
    std::string note;
};

struct AcidBaseTable {
    Sourced<double> least_gap;           ///< units of pKa between two acids for the proton to pass over
    Sourced<double> strong_acid_at_most; ///< pKa
    Sourced<double> no_base_at_most;     ///< pKa of the acid whose base takes no proton in water
    Sourced<double> strong_base_from;    ///< pKa of the acid of a strong base
    std::map<std::string, int> charges;  ///< of the ions; what is not listed is neutral
    std::vector<Couple> couples;
    std::vector<DecayingSpecies> decaying;
    std::vector<AcidBaseSubstance> substances;
    std::vector<HydrolysingAcid> hydrolysing;

    const AcidBaseSubstance* substance(std::string_view id) const;
    const HydrolysingAcid* hydrolysing_acid(std::string_view id) const;
    const Couple* as_acid(std::string_view species) const;
    const Couple* as_base(std::string_view species) const;
    int charge(const std::string& species) const;
};

/// \throws InputError with every problem of the file
AcidBaseTable read_acid_base_table(const Source& source);

/// Acid and base that are left, in mol that neutralise; no pH is predicted.
struct AcidBaseLeft {
    struct Part {
        const Substance* substance;
        double moles; ///< of base or acid that it takes up
        double pKa;   ///< NaN for what becomes an acid with water
        bool acid, strong;
    };
    double strong_acid = 0, weak_acid = 0, strong_base = 0, weak_base = 0;
    std::vector<Part> parts;
};

AcidBaseLeft count_acid_and_base(const Composition& composition, const AcidBaseTable& table);

} // namespace routeweigh::streams
