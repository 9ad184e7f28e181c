// SPDX-License-Identifier: MIT
// What is right for one step of a route: limiting reagent, theoretical yield, and the numbers that the usual
// mistakes give in their place.
#pragma once

#include "assess/assessment.hpp"

#include <string>
#include <vector>

namespace routeweigh::results {

/// A number that a mistake gives. It is `fixed` plus `scaled` times the share of the nominal substrate that
/// was weighed.
struct WrongNumber {
    double fixed = 0, scaled = 0;
    std::string mistake; ///< "the solution is taken as pure hydrogen bromide"
};

struct Theory {
    const Substance* product = nullptr;
    const Substance* limiting = nullptr;
    const Substance* reference = nullptr; ///< the starting material that is weighed in
    double grams = 0;                     ///< of product at the amounts as written
    double limiting_mmol = 0;             ///< charged
    double limiting_grams = 0;            ///< of the substance itself
    double product_per_limiting = 0;      ///< mol/mol by the overall equation
    double substrate_grams = 0;           ///< of the material that brings the reference, as written
    std::string substrate;                ///< its name
    bool substrate_limits = false;
    double next_limit =
        0; ///< theoretical yield that the other reactants allow, over `grams`; infinite for none
    double substrate_limit = 0;              ///< that the reference allows, over `grams`
    std::vector<WrongNumber> wrong_amounts;  ///< mmol
    std::vector<WrongNumber> wrong_theories; ///< g

    /// Theoretical yield in g when this share of the substrate was weighed in.
    double grams_at(double share) const;
};

/// \param step  index of a step of the route
Theory theory_of(const Assessment& route, std::size_t step);

} // namespace routeweigh::results
