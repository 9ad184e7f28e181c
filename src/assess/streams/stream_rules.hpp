// SPDX-License-Identifier: MIT
// Every table of this folder, read once.
#pragma once

#include "assess/streams/compatibility.hpp"
#include "assess/streams/stream_description.hpp"

namespace routeweigh::streams {

/// Stays where it was made, for its parts are handed on by reference. The catalogue must outlive it.
class StreamRules {
  public:
    /// \throws InputError with every problem of the first faulty table
    StreamRules(const Catalogue& catalogue, LocalRules local);
    StreamRules(const StreamRules&) = delete;
    StreamRules& operator=(const StreamRules&) = delete;

    const Catalogue& catalogue;
    LocalRules local;
    AcidBaseTable acid_base;
    MixedLiquids liquids;
    QuenchTable quench;
    CompatibilityRules compatibility;

    DescriptionRules description() const {
        return {acid_base, liquids, compatibility.groups, quench, local, catalogue};
    }
};

} // namespace routeweigh::streams
