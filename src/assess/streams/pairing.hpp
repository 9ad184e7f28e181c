// SPDX-License-Identifier: MIT
// Pairs off the acids and bases of a composition: hydrogen bromide beside acetate is acetic acid and bromide.
//
// The strongest acid gives its proton to the strongest base, and so on, as the table of acids and bases says;
// every step is a balanced equation between substances of the catalogue. What forms as a gas (carbon dioxide,
// sulfur dioxide) is listed apart, as the most that can leave. Mass is kept: composition + gas = what went
// in.
#pragma once

#include "assess/streams/acid_base.hpp"
#include "assess/streams/composition.hpp"

#include <string>
#include <vector>

namespace routeweigh {
class Catalogue;
}

namespace routeweigh::streams {

struct PairingStep {
    std::string equation; ///< in names
    std::string words;    ///< "hydrogen bromide gives its proton to acetate"
    double moles = 0;     ///< of protons that pass over
    double pKa_from = 0, pKa_to = 0;
};

struct PairedComposition {
    Composition composition;
    Composition gas; ///< at most
    std::vector<PairingStep> steps;
    std::vector<std::string> left_unpaired; ///< pairs that would react, but whose salt has no entry
};

PairedComposition pair_acids_and_bases(const Composition& composition, const AcidBaseTable& table,
                                       const Catalogue& catalogue);

} // namespace routeweigh::streams
