// SPDX-License-Identifier: MIT
#include "chemistry/rational_matrix.hpp"

#include <algorithm>
#include <optional>
#include <utility>

namespace routeweigh {

namespace {

// Makes column `column` zero in all rows but `row`, and one there.
void eliminate(RationalMatrix& matrix, std::size_t row, std::size_t column) {
    const Rational scale = matrix[row][column];
    for (Rational& value : matrix[row])
        value /= scale;
    for (std::size_t i = 0; i < matrix.size(); ++i) {
        if (i == row || matrix[i][column] == 0) continue;
        const Rational factor = matrix[i][column];
        for (std::size_t j = 0; j < matrix[i].size(); ++j)
            if (matrix[row][j] != 0) matrix[i][j] -= factor * matrix[row][j];
    }
}

std::size_t leading_column(const RationalVector& row) {
    return static_cast<std::size_t>(
        std::find_if(row.begin(), row.end(), [](const Rational& x) { return x != 0; }) - row.begin());
}

} // namespace

RationalMatrix reduced_rows(RationalMatrix matrix) {
    const std::size_t columns = matrix.empty() ? 0 : matrix[0].size();
    std::size_t done = 0;
    for (std::size_t column = 0; column < columns && done < matrix.size(); ++column) {
        std::size_t row = done;
        while (row < matrix.size() && matrix[row][column] == 0)
            ++row;
        if (row == matrix.size()) continue;
        std::swap(matrix[row], matrix[done]);
        eliminate(matrix, done++, column);
    }
    matrix.resize(done);
    return matrix;
}

RationalMatrix null_space(const RationalMatrix& matrix, std::size_t columns) {
    const RationalMatrix rows = reduced_rows(matrix);
    std::vector<bool> bound(columns, false);
    for (const RationalVector& row : rows)
        bound[leading_column(row)] = true;
    RationalMatrix basis;
    for (std::size_t free = 0; free < columns; ++free) {
        if (bound[free]) continue;
        RationalVector solution(columns);
        solution[free] = 1;
        for (const RationalVector& row : rows)
            solution[leading_column(row)] = -row[free];
        basis.push_back(std::move(solution));
    }
    return basis;
}

bool EchelonForm::add(RationalVector vector) {
    for (const RationalVector& row : rows_) {
        const Rational factor = vector[leading_column(row)];
        if (factor == 0) continue;
        for (std::size_t i = 0; i < vector.size(); ++i)
            if (row[i] != 0) vector[i] -= factor * row[i];
    }
    const std::size_t lead = leading_column(vector);
    if (lead == vector.size()) return false;
    const Rational scale = vector[lead];
    for (Rational& value : vector)
        value /= scale;
    rows_.push_back(std::move(vector));
    return true;
}

SolutionCone::SolutionCone(const RationalMatrix& matrix, std::size_t columns)
    : columns_(columns), tableau_(reduced_rows(matrix)) {
    tableau_.emplace_back(columns, Rational(1)); // the sum is 1
    const std::size_t rows = tableau_.size();
    for (std::size_t i = 0; i < rows; ++i) {
        tableau_[i].resize(columns + rows + 1);
        tableau_[i][columns + i] = 1;
        basis_.push_back(columns + i);
    }
    tableau_.back().back() = 1;

    // First find any corner: drive the artificial columns to 0.
    RationalVector weights(columns + rows);
    std::fill(weights.begin() + static_cast<std::ptrdiff_t>(columns), weights.end(), Rational(-1));
    improve(weights, columns + rows);
    has_solution_ = true;
    for (std::size_t i = 0; i < rows; ++i) {
        if (basis_[i] < columns) continue;
        if (tableau_[i].back() != 0) {
            has_solution_ = false;
            return;
        }
        // Zero already; any column of the row may take its place.
        const std::size_t column = leading_column(tableau_[i]);
        if (column < columns) pivot(i, column);
    }
}

RationalVector SolutionCone::corner(const RationalVector& weights) {
    improve(weights, columns_);
    RationalVector x(columns_);
    for (std::size_t i = 0; i < basis_.size(); ++i)
        if (basis_[i] < columns_) x[basis_[i]] = tableau_[i].back();
    return x;
}

void SolutionCone::improve(const RationalVector& weights, std::size_t column_limit) {
    const auto weight = [&](std::size_t column) {
        return column < weights.size() ? weights[column] : Rational(0);
    };
    for (;;) {
        // The first column whose growth pays.
        std::size_t entering = 0;
        for (; entering < column_limit; ++entering) {
            Rational gain = weight(entering);
            for (std::size_t i = 0; i < basis_.size(); ++i)
                if (tableau_[i][entering] != 0) gain -= weight(basis_[i]) * tableau_[i][entering];
            if (gain > 0) break;
        }
        if (entering == column_limit) return;
        // The row that reaches 0 first; of equals the one with the first column.
        std::optional<std::size_t> leaving;
        for (std::size_t i = 0; i < basis_.size(); ++i) {
            if (tableau_[i][entering] <= 0) continue;
            if (!leaving) {
                leaving = i;
                continue;
            }
            const Rational here = tableau_[i].back() / tableau_[i][entering];
            const Rational best = tableau_[*leaving].back() / tableau_[*leaving][entering];
            if (here < best || (here == best && basis_[i] < basis_[*leaving])) leaving = i;
        }
        if (!leaving) return; // cannot be: the sum of x is 1
        pivot(*leaving, entering);
    }
}

void SolutionCone::pivot(std::size_t row, std::size_t column) {
    eliminate(tableau_, row, column);
    basis_[row] = column;
}

} // namespace routeweigh
