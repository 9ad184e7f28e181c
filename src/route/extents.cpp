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
template<Number N>
class Workspace {
  public:
    explicit Workspace(std::size_t size) {
        if (size > small_.size()) large_.resize(size);
        numbers_ = size > small_.size() ? std::span<N>(large_) : std::span<N>(small_).first(size);
    }
    Workspace(const Workspace&) = delete;
    Workspace& operator=(const Workspace&) = delete;
    std::span<N> numbers() const { return numbers_; }

  private:
    std::array<N, 48> small_;
    std::vector<N> large_;
    std::span<N> numbers_;
};

} // namespace

std::vector<double> Extents::right_hand_side(std::span<const double> amounts) const {
    std::vector<double> b;
    for (const Row& row : rows_)
        b.push_back(std::max(0.0, row.factor * amounts[at(row.substance)]));
    return b;
}

template<Number N>
void Extents::limits(std::span<const N> amounts, const N& product_cap, std::span<N> b) const {
    for (std::size_t row = 0; row < rows_.size(); ++row)
        b[row] = greater(N(0.0), rows_[row].factor * amounts[at(rows_[row].substance)]);
    if (b.size() > rows_.size()) b.back() = product_cap;
}

void Extents::solve(const LinearProgramme& programme, std::span<const Optimum> bases,
                    std::span<const double> amounts, double product_cap, std::span<double> x) const {
    const Workspace<double> workspace(at(programme.rows));
    const std::span<double> b = workspace.numbers();
    limits(amounts, product_cap, b);
    if (std::none_of(bases.begin(), bases.end(),
                     [&](const Optimum& basis) { return apply_basis<double>(basis, b, x); })) {
        const Optimum found = maximise(programme, b);
        std::copy(found.x.begin(), found.x.end(), x.begin());
    }
    if (loops_) forbid_unstarted(programme, amounts, product_cap, x);
}

/// Every draw takes the first basis that fits it, as it would alone. Where one needs a search, or a loop may
/// wait for its start, all are solved one by one.
void Extents::solve(const LinearProgramme& programme, std::span<const Optimum> bases,
                    std::span<const Lanes> amounts, const Lanes& product_cap, std::span<Lanes> x) const {
    const Workspace<Lanes> workspace(at(programme.rows)), other(x.size());
    const std::span<Lanes> b = workspace.numbers();
    limits(amounts, product_cap, b);
    LaneMask solved = apply_basis<Lanes>(bases.front(), b, x);
    for (std::size_t next = 1; next < bases.size() && !all(solved); ++next) {
        const LaneMask fits = apply_basis<Lanes>(bases[next], b, other.numbers());
        for (std::size_t c = 0; c < x.size(); ++c)
            x[c] = choose(solved, x[c], other.numbers()[c]);
        solved = solved | fits;
    }
    bool alike = true;
    if (all(solved) && (!loops_ || (seeded(amounts, alike) && alike))) return;

    const Workspace<double> amounts_of_one(amounts.size()), x_of_one(x.size());
    for (std::size_t lane = 0; lane < lane_count; ++lane) {
        for (std::size_t s = 0; s < amounts.size(); ++s)
            amounts_of_one.numbers()[s] = amounts[s][lane];
        solve(programme, bases, amounts_of_one.numbers(), product_cap[lane], x_of_one.numbers());
        for (std::size_t c = 0; c < x.size(); ++c)
            x[c].set(lane, x_of_one.numbers()[c]);
    }
}

/// What starts the circles is there.
template<Number N>
bool Extents::seeded(std::span<const N> amounts, bool& alike) const {
    return !seeds_.empty() && std::all_of(seeds_.begin(), seeds_.end(),
                                          [&](int seed) { return agree(amounts[at(seed)] > N(0.0), alike); });
}

/// A circle of reactions balances for any extent, also when nothing of it is there to begin with: then it may
/// not run.
void Extents::forbid_unstarted(const LinearProgramme& programme, std::span<const double> amounts,
                               double product_cap, std::span<double> x) const {
    bool alike = true;
    if (seeded(amounts, alike)) return;
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

template<Number N>
N Extents::react(std::span<N> amounts, const N& product_cap, std::span<N> extents, bool& alike) const {
    std::fill(extents.begin(), extents.end(), N(0.0));
    if (columns_.empty()) return 0.0;
    const Workspace<N> workspace(columns_.size());
    const std::span<N> x = workspace.numbers();
    if (makes_product() && agree(product_cap >= N(0.0), alike))
        solve(capped_, capped_optima_, amounts, product_cap, x);
    else
        solve(open_, open_optima_, amounts, 0.0, x);

    N scale = 0.0, formed = 0.0;
    for (const Row& row : rows_)
        scale = greater(scale, amounts[at(row.substance)]);
    for (const Change& change : changes_) {
        const N moles = change.coefficient * x[at(change.column)];
        amounts[at(change.substance)] += moles;
        if (change.substance == product_ && change.coefficient > 0.0) formed += moles;
    }
    if (!extents.empty())
        for (std::size_t c = 0; c < columns_.size(); ++c)
            for (const auto& [reaction, weight] : columns_[c].reactions)
                extents[at(reaction)] += weight * x[c];
    // What is used up must read as none: the rest of a subtraction would start reactions in later stages.
    for (const Row& row : rows_) {
        N& amount = amounts[at(row.substance)];
        amount = choose(amount < 1e-13 * scale, N(0.0), amount);
    }
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
    result.optima = optima_near(result.programme, right_hand_side(amounts));
    return result;
}

template<Number N>
N Extents::evaluate(const Ceiling& ceiling, std::span<const N> amounts) const {
    N value = 0.0;
    for (const auto& [substance, weight] : ceiling.weights)
        value += weight * amounts[at(substance)];
    if (columns_.empty()) return value;
    const Workspace<N> workspace(columns_.size());
    const std::span<N> x = workspace.numbers();
    solve(ceiling.programme, ceiling.optima, amounts, 0.0, x);
    for (std::size_t c = 0; c < columns_.size(); ++c)
        value += ceiling.gains[c] * x[c];
    return value;
}

template double Extents::react(std::span<double>, const double&, std::span<double>, bool&) const;
template Lanes Extents::react(std::span<Lanes>, const Lanes&, std::span<Lanes>, bool&) const;
template double Extents::evaluate(const Ceiling&, std::span<const double>) const;
template Lanes Extents::evaluate(const Ceiling&, std::span<const Lanes>) const;

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
