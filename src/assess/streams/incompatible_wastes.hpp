// SPDX-License-Identifier: MIT
// The second source of compatibility: groups of potentially incompatible wastes of 40 CFR 265 Appendix V.
#pragma once

#include "assess/streams/substance_set.hpp"

#include <string>
#include <string_view>
#include <vector>

namespace routeweigh::streams {

class IncompatibleWastes {
  public:
    struct Group {
        std::string name, words;
        SubstanceSet set;
        std::vector<std::string> of;           ///< other groups that belong to it
        std::vector<std::string> concentrated; ///< other groups that belong to it when concentrated
        Provenance from;
    };
    struct Pair {
        std::string a, b, consequence;
        std::vector<std::string> codes;
        Provenance from;
    };
    std::vector<Group> groups;
    std::vector<Pair> pairs;
    Sourced<double> concentrated_from; ///< percent by mass of its mixture

    bool belongs(const Participant& participant, std::string_view group) const;
    /// Every pair of groups that these two make, either way round.
    std::vector<const Pair*> meetings(const Participant& one, const Participant& other) const;

  private:
    const Group* find(std::string_view name) const;
};

/// \throws InputError with every problem of the file
IncompatibleWastes read_incompatible_wastes(const Source& source);

} // namespace routeweigh::streams
