// SPDX-License-Identifier: MIT
// Which input makes the variance of an output: variance-based sensitivity indices by sampling.
//
// First order: the share of the variance that would go if the input alone were known (I. M. Sobol', Math.
// Modelling Comput. Exp. 1993, 1, 407). Total: the share that would stay if everything else were known. Where
// the total is above the first order, the input works together with others. Both, and the variance, are taken
// from differences of the same pairs of draws (M. J. W. Jansen, Comput. Phys. Commun. 1999, 117, 35), so that
// an input which alone varies has shares of 1 at any number of draws.
#pragma once

#include "compare/uncertainty/model.hpp"

#include <cstdint>

namespace routeweigh {

struct VarianceShares {
    double variance = 0;       ///< of the output
    std::vector<double> first; ///< by input; sampling may put a share a little below 0
    std::vector<double> total; ///< by input, not negative
};

struct VarianceSharesOptions {
    std::uint64_t seed = 1;
    int threads = 1;
    std::size_t draws = 10'000; ///< rounded up to whole chunks; each costs (inputs + 2) evaluations
};

/// By output. An output whose variance is 0 has shares of 0; one with a draw without value has NaN.
std::vector<VarianceShares> variance_shares(const Model& model, const VarianceSharesOptions& options = {});

} // namespace routeweigh
