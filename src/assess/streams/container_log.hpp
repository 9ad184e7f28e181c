// SPDX-License-Identifier: MIT
// What a container already holds: a plain file of additions, kept beside the bottle as a running log.
//
// {"container": "flammable non-halogenated", "size": "4 L", "additions": [{"date": "...", "from": "...",
// "material": "ethyl acetate", "amount": "250 mL", "by": "..."}]}. An addition names a material, or gives its
// parts by mass: "parts": {"ethanol": "30 %", "water": "70 %"}.
#pragma once

#include "assess/streams/substance_set.hpp"
#include "chemistry/catalogue.hpp"

#include <string>
#include <vector>

namespace routeweigh::streams {

struct Addition {
    std::string date, from, words, by;
    Composition composition;            ///< what of it the catalogue knows
    std::vector<Participant> strangers; ///< parts that the catalogue does not have
    double millilitres = 0;             ///< 0 for a solid given by mass
    double grams = 0;                   ///< 0 for a stranger given by volume
};

struct ContainerLog {
    std::string container;
    double size = 0; ///< mL; 0 where not said
    std::vector<Addition> additions;

    double millilitres() const;
    /// Every substance once; its share is the largest it had in one addition.
    std::vector<Participant> content(const ReactivityGroups& groups) const;
};

/// A part that nobody knows is no error of the file but a finding of the check. \throws InputError
ContainerLog read_container_log(const Source& source, const Catalogue& catalogue,
                                const ReactivityGroups& groups);

} // namespace routeweigh::streams
