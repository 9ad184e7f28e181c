// SPDX-License-Identifier: MIT
// What a liquid, a wet solid or a gas is made of: grams by substance, and what follows from them alone.
#pragma once

#include "chemistry/substance.hpp"

#include <string_view>
#include <vector>

namespace routeweigh::streams {

struct Portion {
    const Substance* substance = nullptr;
    double grams = 0;
    bool trace = false; ///< put in as a stated trace and no more than that is there

    double moles() const { return grams / substance->molar_mass; }
};

/// Volumes added up from densities. Liquids that mix shrink by a few per cent, so the sum errs to the large
/// side.
struct VolumeSum {
    double millilitres = 0;
    double assumed = 0; ///< mL of it taken at 1 g/mL, for want of a density
};

class Composition {
  public:
    /// Adds to the portion of this substance; nothing or less is left out.
    void add(const Substance& substance, double grams, bool trace = false);

    const std::vector<Portion>& portions() const { return portions_; }
    bool empty() const { return portions_.empty(); }
    double total() const; ///< g
    double grams(const Substance& substance) const;
    double grams(std::string_view id) const;
    /// By mass, 0 to 1; 0 in an empty composition.
    double share(double grams_of_it) const;

    VolumeSum volume() const;
    /// The same composition, each portion times the factor.
    Composition times(double factor) const;

  private:
    std::vector<Portion> portions_;
};

/// mL of one portion: by its density, else at 1 g/mL.
double millilitres(const Portion& portion);

/// Carbon, and hydrogen or a halogen bound to it: neither a carbonate nor an oxide nor a cyanide.
bool is_organic(const Substance& substance);

/// A halogen atom stands in the same uncharged part of the molecule as a carbon atom: dichloromethane, not
/// pyridinium bromide.
bool is_halogenated_organic(const Substance& substance);

} // namespace routeweigh::streams
