// SPDX-License-Identifier: MIT
// Standard sizes of glassware and the smallest that fits a volume.
#pragma once

#include "input/source.hpp"

#include <string>
#include <vector>

namespace routeweigh::bench {

enum class VesselKind { round_flask, conical_flask, beaker, separating_funnel, cylinder };

struct Vessel {
    VesselKind kind = VesselKind::conical_flask;
    std::string name; ///< "round-bottomed flask"
    double size = 0;  ///< mL; 0 where none of the sizes is large enough
    double holds = 0; ///< mL at most, in this stage
};

/// "100 mL beaker"; "beaker for 5200 mL, larger than the sizes listed".
std::string name_of(const Vessel& vessel);

class Glassware {
  public:
    /// \throws InputError with every problem of the file
    static Glassware read(const Source& source);

    /// The smallest that is not filled above the limit. \param holds  mL
    /// \param foams  gas is set free in it: it is several times as large
    Vessel fit(VesselKind kind, double holds, bool foams = false) const;

    double most_full = 0;     ///< share of the nominal size
    double when_foams = 0;    ///< nominal size over contents, at least
    double pipette_below = 0; ///< mL; less is measured with a graduated pipette or a syringe

  private:
    struct Sizes {
        std::string name;
        std::vector<double> millilitres; ///< ascending
    };
    std::vector<Sizes> kinds_; ///< in the order of VesselKind
};

} // namespace routeweigh::bench
