// SPDX-License-Identifier: MIT
// Exact linear algebra on small matrices: null space, and the corners of the cone of non-negative solutions.
#pragma once

// g++ 12 takes the union inside cpp_int for uninitialized when it inlines copies of it.
#if defined(__GNUC__) && !defined(__clang__)
#pragma GCC diagnostic push
#pragma GCC diagnostic ignored "-Wmaybe-uninitialized"
#endif
#include <boost/multiprecision/cpp_int.hpp>
#if defined(__GNUC__) && !defined(__clang__)
#pragma GCC diagnostic pop
#endif

#include <cstddef>
#include <vector>

namespace routeweigh {

using Rational = boost::multiprecision::cpp_rational;
using RationalVector = std::vector<Rational>;
using RationalMatrix = std::vector<RationalVector>; // rows of equal length

// The rows of the reduced echelon form that are not zero: each starts with a 1 in a column where all others
// have 0.
RationalMatrix reduced_rows(RationalMatrix matrix);

// A basis of all x with matrix * x = 0, for matrices of `columns` columns.
RationalMatrix null_space(const RationalMatrix& matrix, std::size_t columns);

// Grows a set of independent vectors.
class EchelonForm {
  public:
    // False, and nothing added, where the vector is a combination of those added before.
    bool add(RationalVector vector);

  private:
    RationalMatrix rows_; // each starts with a 1 where all later rows have 0
};

// The vectors x >= 0 with matrix * x = 0 and components that sum to 1, searched corner by corner (simplex
// method with Bland's rule, which ends although nearly every corner is degenerate here).
class SolutionCone {
  public:
    SolutionCone(const RationalMatrix& matrix, std::size_t columns);

    // False where only x = 0 solves it.
    bool has_solution() const { return has_solution_; }
    // A corner at which the weighted sum of x is largest. Only where there is a solution.
    RationalVector corner(const RationalVector& weights);

  private:
    // Goes from corner to corner while the weighted sum grows, by columns below the limit only.
    void improve(const RationalVector& weights, std::size_t column_limit);
    void pivot(std::size_t row, std::size_t column);

    std::size_t columns_;
    RationalMatrix tableau_;         // columns, one artificial column a row, right-hand side
    std::vector<std::size_t> basis_; // the column that each row gives
    bool has_solution_ = false;
};

} // namespace routeweigh
