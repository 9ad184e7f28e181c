// SPDX-License-Identifier: MIT
// Inputs of a route that do not vary independently, as the file states it pair by pair.
#pragma once

#include "input/field.hpp"

#include <optional>
#include <string>
#include <utility>
#include <vector>

namespace routeweigh {

struct Route;

/// The inputs that are correlated, by the JSON pointer of the object that states their spread, and a factor
/// of their correlation matrix: with z independent and of deviation 1, factor . z is correlated as stated.
struct CorrelatedInputs {
    std::vector<std::string> pointers;
    std::vector<std::vector<double>> factor;                ///< rows of a lower triangle
    std::vector<std::pair<std::string, std::string>> pairs; ///< two of the pointers, in the order of the file
};

/// L with L L' = matrix, a lower triangle; empty where the matrix is not positive semidefinite. \pre
/// symmetric, ones on the diagonal
std::optional<std::vector<std::vector<double>>> cholesky(const std::vector<std::vector<double>>& matrix);

/// Reads "correlations". Problems: a pointer that leads to nothing with a normal spread, a pair that stands
/// twice, a coefficient beyond -1 to 1, coefficients that contradict each other. \pre the steps of the route
/// have been read
CorrelatedInputs read_correlations(const Field& field, const Route& route);

} // namespace routeweigh
