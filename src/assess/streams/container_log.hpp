// SPDX-License-Identifier: MIT
// What a container already holds: a plain file of additions, kept beside the bottle as a running log.
//
// {"container": "flammable non-halogenated", "size": "4 L", "additions": [{"date": "2026-02-02", "from":
// "...", "material": "ethyl acetate", "amount": "250 mL", "by": "..."}]}. An addition names a material, or
// gives its parts by mass: "parts": {"ethanol": "30 %", "water": "70 %"}. container_log.schema.json describes
// it.
#pragma once

#include "assess/streams/local_rules.hpp"
#include "assess/streams/substance_set.hpp"
#include "base/problem.hpp"
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

    std::vector<Participant> participants(const ReactivityGroups& groups) const;
};

struct ContainerLog {
    ContainerKind container;
    std::string name; ///< as the local rules call it
    std::string file; ///< where it was read from
    double size = 0;  ///< mL; 0 where neither the log nor the local rules say
    std::vector<Addition> additions;
    std::vector<Problem> warnings; ///< names that nobody knows

    double millilitres() const;
    /// Every substance once; its share is the largest it had in one addition.
    std::vector<Participant> content(const ReactivityGroups& groups) const;
};

/// A part that nobody knows is a warning, and what would be poured upon it gets a bottle of its own; a
/// container that the local rules do not have, or one that holds more than its size, is an error. \throws
/// InputError
ContainerLog read_container_log(const Source& source, const Catalogue& catalogue,
                                const ReactivityGroups& groups, const LocalRules& local);

} // namespace routeweigh::streams
