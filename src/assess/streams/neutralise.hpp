// SPDX-License-Identifier: MIT
// How much base takes up so much acid, what gas that frees, which vessel it asks for, how warm it gets.
#pragma once

#include "assess/streams/quench_table.hpp"

#include <optional>
#include <string>
#include <vector>

namespace routeweigh::streams {

struct BaseNeeded {
    const Neutraliser* base = nullptr;
    double grams = 0;
    double gas_litres = 0;      ///< at 25 degC and 1 atm
    std::optional<double> heat; ///< kJ set free (below 0: taken up); empty where not known
};

struct Neutralisation {
    double acid = 0;               ///< mol
    double vessel = 0;             ///< mL at least, where carbonate goes in
    std::vector<BaseNeeded> bases; ///< by every base of the table
    const BaseNeeded* with(std::string_view formula) const;
};

/// \param acid  mol of protons, not below 0  \param liquid  mL that are there
Neutralisation neutralise(double acid, double liquid, const QuenchTable& table);

/// K by which so much heat (kJ) would warm so much liquid (g) if none left it; water's heat capacity.
double warming(double heat, double grams);

} // namespace routeweigh::streams
