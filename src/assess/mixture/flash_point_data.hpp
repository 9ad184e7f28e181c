// SPDX-License-Identifier: MIT
// What the screening of flash points needs of solvents: vapour pressures, and how they behave in water.
#pragma once

#include "input/source.hpp"

#include <map>
#include <optional>
#include <string>
#include <string_view>

namespace routeweigh {

// log10(p / mmHg) = a - b / (T / degC + c)
struct AntoineConstants {
    double a = 0, b = 0, c = 0;

    double pressure(double celsius) const; // mmHg
};

// Van Laar constants: natural logarithm of the activity coefficient of a trace of one in the other.
struct WaterPair {
    double solvent_in_water = 0;
    double water_in_solvent = 0;
};

class FlashPointData {
  public:
    // Throws InputError with every problem of the file.
    static FlashPointData read(const Source& source);

    const AntoineConstants* antoine(std::string_view substance_id) const;
    const WaterPair* with_water(std::string_view substance_id) const;
    const std::string& source() const { return source_; }

  private:
    std::map<std::string, AntoineConstants, std::less<>> antoine_;
    std::map<std::string, WaterPair, std::less<>> with_water_;
    std::string source_;
};

} // namespace routeweigh
