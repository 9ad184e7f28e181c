// SPDX-License-Identifier: MIT
// Everything that a house brings to its experiments, read once: rules for waste, stockroom, prices,
// utilities.
#pragma once

#include "assess/course/class_use.hpp"
#include "input/source.hpp"

namespace routeweigh {

/// Stays where it was made, for its parts are handed on by reference. The catalogue must outlive it.
class HouseRecords {
  public:
    /// \param prices  nullptr where there are none
    /// \throws InputError with every problem of the first faulty table
    HouseRecords(const Catalogue& catalogue, streams::LocalRules local, const SourcePtr& prices);
    HouseRecords(const HouseRecords&) = delete;
    HouseRecords& operator=(const HouseRecords&) = delete;

    const course::House& house() const { return house_; }

  private:
    streams::StreamRules waste_;
    stock::Stockroom stockroom_;
    utilities::UtilityData utilities_;
    stock::PriceList prices_;
    course::House house_;
};

} // namespace routeweigh
