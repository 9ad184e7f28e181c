// SPDX-License-Identifier: MIT
#include "route/linear_programme.hpp"

#include "base/index.hpp"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <limits>

namespace routeweigh {
namespace {

constexpr double pivot_tolerance = 1e-11;

/// Constraint rows, then objective rows; columns: structural, slack, right-hand side.
class Tableau {
  public:
    Tableau(const LinearProgramme& programme, std::span<const double> b)
        : rows_(programme.rows), columns_(programme.columns), width_(columns_ + rows_ + 1),
          objectives_(static_cast<int>(programme.objectives.size())),
          cells_(static_cast<std::size_t>((rows_ + objectives_) * width_), 0.0),
          basis_(static_cast<std::size_t>(rows_)) {
        for (int row = 0; row < rows_; ++row) {
            for (int column = 0; column < columns_; ++column)
                cell(row, column) = programme.at(row, column);
            cell(row, columns_ + row) = 1.0;
            cell(row, width_ - 1) = std::max(0.0, b[static_cast<std::size_t>(row)]);
            basis_[static_cast<std::size_t>(row)] = columns_ + row;
        }
        for (int level = 0; level < objectives_; ++level)
            for (int column = 0; column < columns_; ++column)
                cell(rows_ + level, column) =
                    programme.objectives[static_cast<std::size_t>(level)][static_cast<std::size_t>(column)];
    }

    /// \return false when the programme is unbounded
    bool run() {
        for (int entering = entering_column(); entering >= 0; entering = entering_column()) {
            const int leaving = leaving_row(entering);
            if (leaving < 0) return false;
            pivot(leaving, entering);
        }
        return true;
    }

    Optimum optimum() const {
        Optimum result;
        result.x.assign(static_cast<std::size_t>(columns_), 0.0);
        for (int row = 0; row < rows_; ++row) {
            const int basic = basis_[static_cast<std::size_t>(row)];
            const int column = basic < columns_ ? basic : -1;
            if (column >= 0) result.x[static_cast<std::size_t>(column)] = cell(row, width_ - 1);
            for (int slack = 0; slack < rows_; ++slack)
                if (const double factor = cell(row, columns_ + slack); factor != 0.0)
                    result.inverse.push_back({slack, column, factor, false});
            result.inverse.back().last = true; // no row of an inverse is empty
        }
        return result;
    }

  private:
    double& cell(int row, int column) { return cells_[at(row) * at(width_) + at(column)]; }
    double cell(int row, int column) const { return cells_[at(row) * at(width_) + at(column)]; }

    /// The first column that raises some objective without lowering a more important one.
    int entering_column() const {
        for (int column = 0; column < width_ - 1; ++column)
            for (int level = 0; level < objectives_; ++level) {
                const double gain = cell(rows_ + level, column);
                if (gain > pivot_tolerance) return column;
                if (gain < -pivot_tolerance) break;
            }
        return -1;
    }

    int leaving_row(int entering) const {
        int best = -1;
        double smallest = std::numeric_limits<double>::infinity();
        for (int row = 0; row < rows_; ++row) {
            const double slope = cell(row, entering);
            if (slope <= pivot_tolerance) continue;
            const double ratio = cell(row, width_ - 1) / slope;
            const bool tie = best >= 0 && ratio == smallest;
            if (ratio < smallest ||
                (tie && basis_[static_cast<std::size_t>(row)] < basis_[static_cast<std::size_t>(best)])) {
                best = row;
                smallest = ratio;
            }
        }
        return best;
    }

    void pivot(int row, int column) {
        const double divisor = cell(row, column);
        for (int k = 0; k < width_; ++k)
            cell(row, k) /= divisor;
        cell(row, column) = 1.0;
        for (int other = 0; other < rows_ + objectives_; ++other) {
            const double factor = cell(other, column);
            if (other == row || factor == 0.0) continue;
            for (int k = 0; k < width_; ++k)
                cell(other, k) -= factor * cell(row, k);
            cell(other, column) = 0.0;
        }
        for (int other = 0; other < rows_; ++other) // rounding must not leave a basic value below zero
            if (cell(other, width_ - 1) < 0.0) cell(other, width_ - 1) = 0.0;
        basis_[static_cast<std::size_t>(row)] = column;
    }

    int rows_, columns_, width_, objectives_;
    std::vector<double> cells_;
    std::vector<int> basis_;
};

} // namespace

Optimum maximise(const LinearProgramme& programme, std::span<const double> b) {
    // Amounts in one pot differ by orders of magnitude between routes; dividing by the largest keeps the
    // tolerance relative.
    double scale = 0.0;
    for (const double value : b)
        scale = std::max(scale, value);
    if (scale == 0.0) scale = 1.0;
    std::vector<double> scaled(b.begin(), b.end());
    for (double& value : scaled)
        value /= scale;

    Tableau tableau(programme, scaled);
    const bool bounded = tableau.run();
    Optimum result = tableau.optimum();
    result.bounded = bounded;
    for (double& value : result.x)
        value *= scale;
    return result;
}

template<Number N>
MaskOf<N> apply_basis(const Optimum& optimum, std::span<const N> b, std::span<N> x) {
    std::fill(x.begin(), x.end(), N(0.0));
    N largest = 0.0;
    for (const N& value : b)
        largest = greater(largest, value);
    const N allowed = -1e-12 * largest;
    MaskOf<N> fits = allowed <= N(0.0);
    N value = 0.0;
    for (const Optimum::Part& part : optimum.inverse) {
        value += part.factor * b[at(part.row)];
        if (!part.last) continue;
        fits = fits & (value >= allowed);
        if (std::same_as<N, double> && !all(fits)) break;
        if (part.column >= 0) x[at(part.column)] = greater(N(0.0), value);
        value = 0.0;
    }
    return fits;
}

template bool apply_basis(const Optimum&, std::span<const double>, std::span<double>);
template LaneMask apply_basis(const Optimum&, std::span<const Lanes>, std::span<Lanes>);

std::vector<Optimum> optima_near(const LinearProgramme& programme, std::vector<double> b) {
    constexpr double off = 0.05;
    std::vector<Optimum> optima{maximise(programme, b)};
    if (!optima.front().bounded) return optima;
    std::vector<double> x(at(programme.columns));
    for (double& limit : b) {
        const double there = limit;
        for (const double factor : {1.0 - off, 1.0 + off}) {
            limit = factor * there;
            if (std::none_of(optima.begin(), optima.end(),
                             [&](const Optimum& optimum) { return apply_basis<double>(optimum, b, x); }))
                optima.push_back(maximise(programme, b));
        }
        limit = there;
    }
    return optima;
}

} // namespace routeweigh
