// SPDX-License-Identifier: MIT
// A small dense linear programme: maximise c.x with A x <= b and x >= 0, where b >= 0.
//
// Because b is never negative, x = 0 is always allowed and no search for a first solution is needed. There
// may be several objectives; a later one only decides among the optima of those before it (lexicographic
// maximum). Method: primal simplex on a full tableau with Bland's rule, which cannot cycle (R. G. Bland,
// Math. Oper. Res. 1977, 2, 103). Meant for one stage of one pot: a few reactions, a dozen substances.
#pragma once

#include "base/lanes.hpp"

#include <span>
#include <vector>

namespace routeweigh {

struct LinearProgramme {
    int rows = 0;
    int columns = 0;
    std::vector<double> coefficients;            ///< rows x columns, row by row
    std::vector<std::vector<double>> objectives; ///< each `columns` long, the most important first

    LinearProgramme(int row_count, int column_count)
        : rows(row_count), columns(column_count),
          coefficients(static_cast<std::size_t>(row_count) * static_cast<std::size_t>(column_count), 0.0) {}

    double& at(int row, int column) {
        return coefficients[static_cast<std::size_t>(row) * static_cast<std::size_t>(columns) +
                            static_cast<std::size_t>(column)];
    }
    double at(int row, int column) const {
        return coefficients[static_cast<std::size_t>(row) * static_cast<std::size_t>(columns) +
                            static_cast<std::size_t>(column)];
    }
};

/// An optimum, kept as its basis so that other right-hand sides can be tried without a new search.
struct Optimum {
    bool bounded = true;
    std::vector<double> x; ///< one value a column, >= 0
    /// Basic values = inverse . b. Of the inverse only what is not 0, row by row in one piece: many bases are
    /// walked through where a route has many steps.
    struct Part {
        int row;         ///< of b
        int column = -1; ///< that is basic in this row of the inverse; -1: a slack
        double factor;
        bool last = false; ///< of its row
    };
    std::vector<Part> inverse;
};

/// Solves from scratch. \pre every b >= 0 (tiny negative values are taken as 0).
Optimum maximise(const LinearProgramme& programme, std::span<const double> b);

/// Values for another b on the same basis; false when the basis no longer fits (an amount would turn
/// negative), and x means nothing. \param x one value a column, overwritten
template<Number N>
MaskOf<N> apply_basis(const Optimum& optimum, std::span<const N> b, std::span<N> x);

/// The optimum, and those next door: their bases fit where one limit is a few percent off and the first does
/// not. Where two reagents run out at about the same time, either may come first in the next draw.
std::vector<Optimum> optima_near(const LinearProgramme& programme, std::vector<double> b);

} // namespace routeweigh
