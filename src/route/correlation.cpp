// SPDX-License-Identifier: MIT
#include "route/correlation.hpp"

#include "base/text.hpp"
#include "route/route.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <string_view>

namespace routeweigh {
namespace {

/// Pointers of all objects that state a normal spread.
std::vector<std::string> normal_inputs(const Route& route) {
    std::vector<std::string> pointers;
    const auto offer = [&](const std::optional<Distribution>& spread, const std::string& pointer) {
        if (spread && spread->name() == std::string_view("normal")) pointers.push_back(pointer);
    };
    for (const Step& step : route.steps) {
        offer(step.isolated.spread, step.isolated.pointer);
        for (const Stage& stage : step.stages)
            for (const Charge& charge : stage.charges)
                offer(charge.spread, charge.pointer);
    }
    return pointers;
}

/// Index of the pointer that the text of the field is, among those in use; it is added where it is new.
std::optional<std::size_t> member(const Field& field, const std::vector<std::string>& allowed,
                                  CorrelatedInputs& result) {
    const std::string pointer = field.text();
    if (!field.is_text()) return std::nullopt;
    if (std::find(allowed.begin(), allowed.end(), pointer) == allowed.end()) {
        field.problem(
            fmt::format("\"{}\" does not lead to a charge or an isolated product with a \"spread\" that is "
                        "\"standard\" or \"expanded k=2\"",
                        pointer),
            nearest(pointer, allowed));
        return std::nullopt;
    }
    const auto found = std::find(result.pointers.begin(), result.pointers.end(), pointer);
    if (found == result.pointers.end()) {
        result.pointers.push_back(pointer);
        return result.pointers.size() - 1;
    }
    return static_cast<std::size_t>(found - result.pointers.begin());
}

struct Pair {
    std::size_t a, b;
    double coefficient;
};

} // namespace

std::optional<std::vector<std::vector<double>>> cholesky(const std::vector<std::vector<double>>& matrix) {
    constexpr double rounding = 1e-9;
    const std::size_t size = matrix.size();
    std::vector<std::vector<double>> factor(size, std::vector<double>(size, 0.0));
    for (std::size_t j = 0; j < size; ++j) {
        const auto rest = [&](std::size_t i) {
            double left = matrix[i][j];
            for (std::size_t k = 0; k < j; ++k)
                left -= factor[i][k] * factor[j][k];
            return left;
        };
        const double diagonal = rest(j);
        if (diagonal < -rounding) return std::nullopt;
        factor[j][j] = diagonal > rounding ? std::sqrt(diagonal) : 0.0;
        for (std::size_t i = j + 1; i < size; ++i) {
            // A row that the earlier ones already fix must agree with them.
            if (factor[j][j] == 0.0 && std::abs(rest(i)) > rounding) return std::nullopt;
            factor[i][j] = factor[j][j] == 0.0 ? 0.0 : rest(i) / factor[j][j];
        }
    }
    return factor;
}

CorrelatedInputs read_correlations(const Field& field, const Route& route) {
    CorrelatedInputs result;
    const std::vector<std::string> allowed = normal_inputs(route);
    std::vector<Pair> pairs;
    for (const Field& item : field.items()) {
        const std::vector<Field> between = item["between"].items();
        const Field number = item["coefficient"];
        const double coefficient = number.number();
        (void)item.maybe("note");
        item.close();
        if (std::abs(coefficient) > 1.0) {
            number.problem("a correlation coefficient lies between -1 and 1");
            continue;
        }
        if (between.size() != 2) {
            item["between"].problem("name the two inputs between which it holds");
            continue;
        }
        const auto a = member(between[0], allowed, result), b = member(between[1], allowed, result);
        if (!a || !b) continue;
        if (*a == *b)
            between[1].problem("an input has no correlation with itself");
        else if (std::any_of(pairs.begin(), pairs.end(), [&](const Pair& pair) {
                     return (pair.a == *a && pair.b == *b) || (pair.a == *b && pair.b == *a);
                 }))
            item.problem("the correlation of these two is stated already");
        else
            pairs.push_back({*a, *b, coefficient});
        result.pairs.emplace_back(result.pointers[*a], result.pointers[*b]);
    }
    const std::size_t size = result.pointers.size();
    std::vector<std::vector<double>> matrix(size, std::vector<double>(size, 0.0));
    for (std::size_t i = 0; i < size; ++i)
        matrix[i][i] = 1.0;
    for (const Pair& pair : pairs)
        matrix[pair.a][pair.b] = matrix[pair.b][pair.a] = pair.coefficient;
    if (auto factor = cholesky(matrix))
        result.factor = std::move(*factor);
    else
        field.problem("these correlations contradict each other: their matrix is not positive semidefinite");
    return result;
}

} // namespace routeweigh
