// SPDX-License-Identifier: MIT
#include "route/extents.hpp"

#include "base/index.hpp"

#include <algorithm>
#include <array>
#include <cstddef>
#include <set>
#include <utility>

namespace routeweigh {
namespace {

/// Numbers of one solution, on the stack while a stage is of ordinary size: evaluation should not allocate.
class Workspace {
  public:
    explicit Workspace(std::size_t size) {
        if (size > small_.size()) large_.resize(size);
        numbers_ = size > small_.size() ? std::span<double>(large_) : std::span<double>(small_).first(size);
    }
    Workspace(const Workspace&) = delete;
    Workspace& operator=(const Workspace&) = delete;
    std::span<double> numbers() const { return numbers_; }

  private:
    std::array<double, 48> small_;
    std::vector<double> large_;
    std::span<double> numbers_;
};

} // namespace

std::vector<double> Extents::right_hand_side(std::span<const double> amounts) const {
    std::vector<double> b;
    for (const Row& row : rows_)
        b.push_back(std::max(0.0, row.factor * amounts[at(row.substance)]));
    return b;
}

void Extents::solve(const LinearProgramme& programme, std::span<const Optimum> bases,
                    std::span<const double> amounts, double product_cap, std::span<double> x) const {
    const Workspace workspace(at(programme.rows));
    const std::span<double> b = workspace.numbers();
    for (std::size_t row = 0; row < rows_.size(); ++row)
        b[row] = std::max(0.0, rows_[row].factor * amounts[at(rows_[row].substance)]);
    if (b.size() > rows_.size()) b.back() = product_cap;
    const bool fits = std::any_of(bases.begin(), bases.end(),
                                  [&](const Optimum& basis) { return apply_basis(programme, basis, b, x); });
    if (!fits) {
        const Optimum found = maximise(programme, b);
        std::copy(found.x.begin(), found.x.end(), x.begin());
    }
    if (loops_) forbid_unstarted(programme, amounts, product_cap, x);
}

/// A circle of reactions balances for any extent, also when nothing of it is there to begin with: then it may
/// not run.
void Extents::forbid_unstarted(const LinearProgramme& programme, std::span<const double> amounts,
                               double product_cap, std::span<double> x) const {
    const bool seeded = !seeds_.empty() && std::all_of(seeds_.begin(), seeds_.end(),
                                                       [&](int seed) { return amounts[at(seed)] > 0.0; });
    if (seeded) return;
    std::vector<bool> present(amounts.size());
    for (std::size_t s = 0; s < amounts.size(); ++s)
        present[s] = amounts[s] > 0.0 || unlimited_[s];
    const std::vector<bool> started = startable(std::move(present));
    LinearProgramme restricted = programme;
    bool wrong = false;
    for (std::size_t c = 0; c < columns_.size(); ++c)
        for (const auto& [reaction, weight] : columns_[c].reactions) {
            if (started[at(reaction)]) continue;
            wrong = wrong || x[c] > 0.0;
            for (int row = 0; row < restricted.rows; ++row)
                restricted.at(row, static_cast<int>(c)) = 0.0;
            for (auto& level : restricted.objectives)
                level[c] = 0.0;
        }
    if (!wrong) return;
    std::vector<double> b = right_hand_side(amounts);
    if (programme.rows > open_.rows) b.push_back(product_cap);
    const Optimum found = maximise(restricted, b);
    std::copy(found.x.begin(), found.x.end(), x.begin());
}

double Extents::react(std::span<double> amounts, double product_cap, std::span<double> extents) const {
    std::fill(extents.begin(), extents.end(), 0.0);
    if (columns_.empty()) return 0.0;
    const Workspace workspace(columns_.size());
    const std::span<double> x = workspace.numbers();
    if (product_cap >= 0.0 && makes_product())
        solve(capped_, capped_optima_, amounts, product_cap, x);
    else
        solve(open_, open_optima_, amounts, 0.0, x);

    double scale = 0.0, formed = 0.0;
    for (const Row& row : rows_)
        scale = std::max(scale, amounts[at(row.substance)]);
    for (std::size_t c = 0; c < columns_.size(); ++c) {
        if (x[c] == 0.0) continue;
        for (const auto& [substance, coefficient] : columns_[c].change) {
            amounts[at(substance)] += coefficient * x[c];
            if (substance == product_ && coefficient > 0.0) formed += coefficient * x[c];
        }
        if (!extents.empty())
            for (const auto& [reaction, weight] : columns_[c].reactions)
                extents[at(reaction)] += weight * x[c];
    }
    // What is used up must read as none: the rest of a subtraction would start reactions in later stages.
    for (const Row& row : rows_)
        if (amounts[at(row.substance)] < 1e-13 * scale) amounts[at(row.substance)] = 0.0;
    return formed;
}

Extents::Ceiling Extents::ceiling(std::vector<std::pair<int, double>> weights,
                                  std::span<const double> amounts) const {
    Ceiling result;
    result.weights = std::move(weights);
    result.gains.assign(columns_.size(), 0.0);
    for (std::size_t c = 0; c < columns_.size(); ++c)
        for (const auto& [substance, coefficient] : columns_[c].change)
            for (const auto& [counted, weight] : result.weights)
                if (substance == counted) result.gains[c] += weight * coefficient;
    if (columns_.empty()) return result;
    result.programme = open_;
    result.programme.objectives = {result.gains};
    result.nominal = maximise(result.programme, right_hand_side(amounts));
    return result;
}

double Extents::evaluate(const Ceiling& ceiling, std::span<const double> amounts) const {
    double value = 0.0;
    for (const auto& [substance, weight] : ceiling.weights)
        value += weight * amounts[at(substance)];
    if (columns_.empty()) return value;
    const Workspace workspace(columns_.size());
    const std::span<double> x = workspace.numbers();
    solve(ceiling.programme, std::span(&ceiling.nominal, 1), amounts, 0.0, x);
    for (std::size_t c = 0; c < columns_.size(); ++c)
        value += ceiling.gains[c] * x[c];
    return value;
}

bool Extents::changes(int substance) const {
    return std::any_of(columns_.begin(), columns_.end(), [&](const Column& column) {
        return std::any_of(column.change.begin(), column.change.end(),
                           [&](const auto& part) { return part.first == substance; });
    });
}

std::vector<int> Extents::made() const {
    std::set<int> result;
    for (const Column& column : columns_)
        for (const auto& [substance, coefficient] : column.change)
            if (coefficient > 0.0) result.insert(substance);
    return {result.begin(), result.end()};
}

} // namespace routeweigh
