// SPDX-License-Identifier: MIT
#include "base/text.hpp"
#include "chemistry/element.hpp"
#include "chemistry/equation.hpp"
#include "chemistry/rational_matrix.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cstdint>
#include <map>
#include <numeric>
#include <utility>

namespace routeweigh {

namespace {

using boost::multiprecision::cpp_int;

// One row an element (0 is the charge), one column a term; the right side counts negative.
std::map<int, RationalVector> element_rows(std::span<const Formula> left, std::span<const Formula> right) {
    std::map<int, RationalVector> rows;
    const std::size_t columns = left.size() + right.size();
    const auto cell = [&](int element, std::size_t column) -> Rational& {
        RationalVector& row = rows[element];
        row.resize(columns);
        return row[column];
    };
    for (std::size_t column = 0; column < columns; ++column) {
        const bool on_left = column < left.size();
        const Formula& formula = on_left ? left[column] : right[column - left.size()];
        const int sign = on_left ? 1 : -1;
        for (const auto& [element, count] : formula.atoms)
            cell(element, column) = sign * count;
        if (formula.charge != 0) cell(0, column) = sign * formula.charge;
    }
    return rows;
}

bool all_of_one_sign(const RationalVector& row) {
    const bool positive = std::any_of(row.begin(), row.end(), [](const Rational& x) { return x > 0; });
    const bool negative = std::any_of(row.begin(), row.end(), [](const Rational& x) { return x < 0; });
    return positive != negative;
}

// "N stands on the left only, and O, Cl on the right only"
std::string one_sided_words(const Balance& result) {
    std::string words;
    for (const auto& [elements, side] :
         {std::pair{&result.left_only, "left"}, std::pair{&result.right_only, "right"}}) {
        if (elements->empty()) continue;
        if (words.empty())
            words = fmt::format("{} {} on the {} only", join(*elements, ", "),
                                elements->size() == 1 ? "stands" : "stand", side);
        else
            words += fmt::format(", and {} on the {} only", join(*elements, ", "), side);
    }
    return words;
}

// The vector times the number that makes it whole without a common divisor.
std::vector<std::int64_t> whole(const RationalVector& vector) {
    cpp_int multiple = 1;
    for (const Rational& x : vector)
        multiple = lcm(multiple, denominator(x));
    std::vector<cpp_int> numbers;
    cpp_int divisor = 0;
    for (const Rational& x : vector) {
        numbers.emplace_back(numerator(x) * (multiple / denominator(x)));
        divisor = gcd(divisor, numbers.back());
    }
    std::vector<std::int64_t> result;
    for (const cpp_int& number : numbers) {
        const cpp_int reduced = number / divisor;
        if (abs(reduced) > 999999999) throw EquationError("a coefficient would have more than 9 digits");
        result.push_back(reduced.convert_to<std::int64_t>());
    }
    return result;
}

// Corners of the cone of non-negative solutions, as many independent ones as there are dimensions: each a
// reaction that does without as many of the terms as possible. The cone must have that many dimensions.
std::vector<std::vector<std::int64_t>> independent_solutions(SolutionCone& cone, const RationalMatrix& basis,
                                                             const RationalMatrix& candidates) {
    RationalMatrix chosen;
    EchelonForm span;
    const auto try_corner = [&](const RationalVector& corner) {
        if (span.add(corner)) chosen.push_back(corner);
    };
    for (const RationalVector& corner : candidates)
        if (chosen.size() < basis.size()) try_corner(corner);
    while (chosen.size() < basis.size()) {
        // A direction of the null space at right angles to all that is chosen: the cone sticks out one way or
        // the other.
        RationalMatrix products;
        for (const RationalVector& corner : chosen) {
            RationalVector row;
            for (const RationalVector& direction : basis)
                row.push_back(
                    std::inner_product(corner.begin(), corner.end(), direction.begin(), Rational(0)));
            products.push_back(std::move(row));
        }
        const RationalVector mix = null_space(products, basis.size()).front();
        RationalVector weights(basis[0].size());
        for (std::size_t i = 0; i < basis.size(); ++i)
            for (std::size_t j = 0; j < weights.size(); ++j)
                weights[j] += mix[i] * basis[i][j];
        const std::size_t before = chosen.size();
        try_corner(cone.corner(weights));
        if (chosen.size() > before) continue;
        for (Rational& weight : weights)
            weight = -weight;
        try_corner(cone.corner(weights));
        if (chosen.size() == before) throw EquationError("the independent solutions could not be found");
    }
    std::vector<std::vector<std::int64_t>> result;
    for (const RationalVector& solution : chosen)
        result.push_back(whole(solution));
    return result;
}

// The one solution there is, all positive, or why it is none.
void judge_only_solution(Balance& result, RationalVector solution, const std::vector<std::string>& names) {
    const auto positive =
        std::count_if(solution.begin(), solution.end(), [](const Rational& x) { return x > 0; });
    const auto negative =
        std::count_if(solution.begin(), solution.end(), [](const Rational& x) { return x < 0; });
    if (negative > positive)
        for (Rational& x : solution)
            x = -x;
    std::vector<std::string> wrong;
    std::vector<std::string> without;
    for (std::size_t i = 0; i < solution.size(); ++i) {
        if (solution[i] < 0) wrong.push_back(names[i]);
        if (solution[i] == 0) without.push_back(names[i]);
        if (solution[i] <= 0 || (positive > 0 && negative > 0)) result.never.push_back(i);
    }
    if (!wrong.empty()) {
        result.reason = fmt::format("it balances only with {} on the other side", join(wrong, ", "));
    } else if (!without.empty()) {
        result.reason = fmt::format("it balances only without {}", join(without, ", "));
    } else {
        result.outcome = Balance::Outcome::unique;
        result.solutions.push_back(whole(solution));
    }
}

} // namespace

Balance balance(std::span<const Formula> left, std::span<const Formula> right) {
    if (left.empty() || right.empty()) throw EquationError("each side of an equation needs a term");
    const std::size_t columns = left.size() + right.size();
    if (columns > 100) throw EquationError("an equation of more than 100 terms");

    std::vector<std::string> names;
    for (const std::span<const Formula> side : {left, right})
        for (const Formula& formula : side)
            names.push_back(formula.text);

    Balance result;
    RationalMatrix matrix;
    for (auto& [element, row] : element_rows(left, right)) {
        if (all_of_one_sign(row)) {
            // Left counts positive; for a charge it is the side that it stands on that matters, not its sign.
            const auto first = std::find_if(row.begin(), row.end(), [](const Rational& x) { return x != 0; });
            const bool on_left = first - row.begin() < static_cast<std::ptrdiff_t>(left.size());
            (on_left ? result.left_only : result.right_only)
                .emplace_back(element == 0 ? "charge" : std::string(element_symbol(element)));
        }
        matrix.push_back(std::move(row));
    }
    const RationalMatrix basis = null_space(matrix, columns);
    result.dimension = static_cast<int>(basis.size());
    if (!result.left_only.empty() || !result.right_only.empty()) {
        result.reason = one_sided_words(result);
        return result;
    }
    if (basis.empty()) {
        result.never.resize(columns);
        std::iota(result.never.begin(), result.never.end(), std::size_t{0});
        result.reason = "its elements together allow none but zeros, so a substance is missing or wrong";
        return result;
    }
    if (basis.size() == 1) {
        judge_only_solution(result, basis[0], names);
        return result;
    }

    SolutionCone cone(matrix, columns);
    RationalMatrix corners;
    std::vector<std::string> without;
    for (std::size_t i = 0; i < columns; ++i) {
        RationalVector weights(columns);
        weights[i] = 1;
        if (cone.has_solution()) corners.push_back(cone.corner(weights));
        if (cone.has_solution() && corners.back()[i] > 0) continue;
        result.never.push_back(i);
        without.push_back(names[i]);
    }
    if (!without.empty()) {
        result.reason = without.size() == columns
                            ? "it balances only with terms on the other side"
                            : fmt::format("it balances only without {}", join(without, ", "));
        return result;
    }
    result.outcome = Balance::Outcome::not_unique;
    result.solutions = independent_solutions(cone, basis, corners);
    return result;
}

} // namespace routeweigh
