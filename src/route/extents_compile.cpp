// SPDX-License-Identifier: MIT
// Compiles the reactions of a stage: what can start, columns and rows of the programme, who competes for
// what.
#include "route/extents.hpp"

#include "base/index.hpp"

#include <algorithm>
#include <array>
#include <cstddef>
#include <set>
#include <utility>

namespace routeweigh {

Extents::Extents(std::vector<PotReaction> reactions, std::span<const double> amounts,
                 const std::vector<bool>& present, const std::vector<bool>& unlimited, int product)
    : reactions_(std::move(reactions)), unlimited_(unlimited), product_(product) {
    started_ = startable(present);
    build_columns();
    if (columns_.empty()) return;
    find_loops();
    build_programmes(unlimited, product);
    open_optima_ = optima_near(open_, right_hand_side(amounts));
    unbounded_ = !open_optima_.front().bounded;
    find_seeds(amounts);
    if (!unbounded_) find_competition(amounts);
}

/// Forward chaining: a reaction can start once all it uses is there or made.
std::vector<bool> Extents::startable(std::vector<bool> present) const {
    std::vector<bool> started(reactions_.size(), false);
    for (bool again = true; again;) {
        again = false;
        for (std::size_t r = 0; r < reactions_.size(); ++r) {
            const auto& change = reactions_[r].change;
            const bool fed = std::all_of(change.begin(), change.end(), [&](const auto& part) {
                return part.second >= 0.0 || present[at(part.first)];
            });
            if (started[r] || !fed) continue;
            started[r] = again = true;
            for (const auto& [substance, coefficient] : change)
                present[at(substance)] = true;
        }
    }
    return started;
}

/// Takes away, again and again, reactions of which nothing is used by those that are left; what stays feeds a
/// circle.
void Extents::find_loops() {
    std::vector<bool> left = started_;
    const auto feeds_another = [&](std::size_t r) {
        for (std::size_t other = 0; other < reactions_.size(); ++other)
            if (left[other])
                for (const auto& [used, needed] : reactions_[other].change)
                    for (const auto& [made, gained] : reactions_[r].change)
                        if (made == used && needed < 0.0 && gained > 0.0) return true;
        return false;
    };
    for (bool again = true; again;) {
        again = false;
        for (std::size_t r = 0; r < reactions_.size(); ++r)
            if (left[r] && !feeds_another(r)) {
                left[r] = false;
                again = true;
            }
    }
    loops_ = std::any_of(left.begin(), left.end(), [](bool kept) { return kept; });
}

void Extents::find_seeds(std::span<const double> amounts) {
    std::vector<bool> there(amounts.size());
    for (std::size_t s = 0; s < amounts.size(); ++s)
        there[s] = amounts[s] > 0.0 || unlimited_[s];
    if (startable(there) != started_) return;
    for (const Row& row : rows_)
        if (there[at(row.substance)]) seeds_.push_back(row.substance);
}

void Extents::build_columns() {
    for (std::size_t r = 0; r < reactions_.size(); ++r)
        if (started_[r]) columns_.push_back({{{static_cast<int>(r), 1.0}}, reactions_[r].change});

    // One further column runs all split reactions at once in their ratio.
    Column together;
    for (std::size_t r = 0; r < reactions_.size(); ++r) {
        if (!started_[r] || !reactions_[r].split) continue;
        together.reactions.emplace_back(static_cast<int>(r), *reactions_[r].split);
        for (const auto& [substance, coefficient] : reactions_[r].change)
            together.change.emplace_back(substance, coefficient * *reactions_[r].split);
    }
    if (together.reactions.size() > 1) columns_.push_back(std::move(together));

    for (std::size_t c = 0; c < columns_.size(); ++c)
        for (const auto& [substance, coefficient] : columns_[c].change)
            changes_.push_back({static_cast<int>(c), substance, coefficient});
}

void Extents::build_programmes(const std::vector<bool>& unlimited, int product) {
    std::set<int> consumed;
    bool forms_product = false;
    for (const Column& column : columns_)
        for (const auto& [substance, coefficient] : column.change) {
            if (coefficient < 0.0 && !unlimited[at(substance)]) consumed.insert(substance);
            if (coefficient > 0.0 && substance == product) forms_product = true;
        }
    std::vector<int> row_of(unlimited.size(), -1);
    for (const int substance : consumed) {
        row_of[at(substance)] = static_cast<int>(rows_.size());
        rows_.push_back({substance, 1.0});
    }
    std::vector<std::size_t> partial; // reactions that stop short of full conversion
    for (std::size_t r = 0; r < reactions_.size(); ++r)
        if (started_[r] && reactions_[r].conversion < 1.0) {
            partial.push_back(r);
            rows_.push_back({reactions_[r].of, reactions_[r].conversion});
        }

    const int rows = static_cast<int>(rows_.size()), columns = static_cast<int>(columns_.size());
    open_ = LinearProgramme(rows, columns);
    for (int c = 0; c < columns; ++c) {
        for (const auto& [substance, coefficient] : columns_[at(c)].change)
            if (row_of[at(substance)] >= 0) open_.at(row_of[at(substance)], c) -= coefficient;
        // used by this reaction - conversion x (made by the others) <= conversion x (there at the start)
        for (std::size_t k = 0; k < partial.size(); ++k)
            for (const auto& [reaction, weight] : columns_[at(c)].reactions)
                for (const auto& [substance, coefficient] : reactions_[at(reaction)].change) {
                    const PotReaction& limited = reactions_[partial[k]];
                    double& cell = open_.at(static_cast<int>(consumed.size() + k), c);
                    if (substance != limited.of) continue;
                    if (at(reaction) == partial[k])
                        cell -= coefficient * weight;
                    else if (coefficient > 0.0)
                        cell -= limited.conversion * coefficient * weight;
                }
    }
    open_.objectives = objectives();

    if (!forms_product) return;
    capped_ = LinearProgramme(rows + 1, columns);
    std::copy(open_.coefficients.begin(), open_.coefficients.end(), capped_.coefficients.begin());
    for (int c = 0; c < columns; ++c)
        for (const auto& [substance, coefficient] : columns_[at(c)].change)
            if (substance == product) capped_.at(rows, c) += coefficient; // what reacts on is no product
    capped_.objectives = open_.objectives;
}

void Extents::prepare_cap(std::span<const double> amounts, double product_cap) {
    if (columns_.empty()) return;
    std::vector<double> b = right_hand_side(amounts);
    if (!makes_product()) {
        open_optima_.push_back(maximise(open_, b));
        return;
    }
    b.push_back(std::max(0.0, product_cap));
    capped_optima_ = optima_near(capped_, b);
}

bool Extents::greatest_when_done(int substance) const {
    const bool ranked = std::any_of(reactions_.begin(), reactions_.end(), [](const PotReaction& reaction) {
        return reaction.priority.has_value() || reaction.split.has_value();
    });
    return !ranked && std::none_of(columns_.begin(), columns_.end(), [&](const Column& column) {
        return std::any_of(column.change.begin(), column.change.end(),
                           [&](const auto& part) { return part.first == substance && part.second < 0.0; });
    });
}

std::vector<std::vector<double>> Extents::objectives() const {
    std::vector<std::vector<double>> levels;
    const auto level_of = [&](const auto& chosen) {
        std::vector<double> level(columns_.size(), 0.0);
        for (std::size_t c = 0; c < columns_.size(); ++c)
            for (const auto& [reaction, weight] : columns_[c].reactions)
                if (chosen(reaction)) level[c] += weight;
        levels.push_back(std::move(level));
    };
    std::set<int> priorities;
    for (const PotReaction& reaction : reactions_)
        if (reaction.priority) priorities.insert(*reaction.priority);
    for (const int priority : priorities)
        level_of([&](int r) { return reactions_[at(r)].priority == priority; });
    if (columns_.back().reactions.size() > 1) { // the split column
        std::vector<double> level(columns_.size(), 0.0);
        level.back() = 1.0;
        levels.push_back(std::move(level));
    }
    // The rest in the order of the file: with no competition any order gives the same extents.
    for (std::size_t r = 0; r < reactions_.size(); ++r)
        if (started_[r] && !reactions_[r].priority) level_of([&](int other) { return at(other) == r; });
    return levels;
}

/// How many objectives come before the one that a reaction counts in.
std::size_t Extents::rank(std::size_t reaction) const {
    std::set<int> before;
    const std::optional<int> own = reactions_[reaction].priority;
    for (const PotReaction& other : reactions_)
        if (other.priority && (!own || *other.priority < *own)) before.insert(*other.priority);
    const bool split_before = !own && columns_.back().reactions.size() > 1;
    return before.size() + (split_before ? 1 : 0);
}

/// No reaction may have to give way to another of its own rank: then the order in the file would decide.
void Extents::find_competition(std::span<const double> amounts) {
    std::vector<double> extent(reactions_.size(), 0.0);
    std::vector<double> left(amounts.begin(), amounts.end());
    react(left, -1.0, extent);
    double scale = 0.0;
    for (const double amount : amounts)
        scale = std::max(scale, amount);

    const std::vector<double> b = right_hand_side(amounts);
    LinearProgramme alone = open_;
    for (std::size_t r = 0; r < reactions_.size(); ++r) {
        if (!started_[r]) continue;
        std::vector<double> objective(columns_.size(), 0.0);
        for (std::size_t c = 0; c < columns_.size(); ++c)
            for (const auto& [reaction, weight] : columns_[c].reactions)
                if (at(reaction) == r) objective[c] += weight;
        const auto above = static_cast<std::ptrdiff_t>(rank(r));
        alone.objectives.assign(open_.objectives.begin(), open_.objectives.begin() + above);
        alone.objectives.push_back(objective);
        const Optimum best = maximise(alone, b);
        double reach = 0.0;
        for (std::size_t c = 0; c < columns_.size(); ++c)
            reach += objective[c] * best.x[c];
        if (reach <= extent[r] + 1e-9 * scale) continue;
        for (const auto& [substance, coefficient] : reactions_[r].change) {
            if (coefficient >= 0.0 || left[at(substance)] > 1e-9 * scale) continue;
            for (std::size_t other = 0; other < reactions_.size(); ++other)
                if (other != r && extent[other] > 0.0 && rank(other) == rank(r))
                    for (const auto& [used, amount] : reactions_[other].change)
                        if (used == substance && amount < 0.0) {
                            competition_ =
                                Competition{substance, static_cast<int>(other), static_cast<int>(r)};
                            return;
                        }
        }
        // It may only miss what another reaction would have made, had that one not been left short.
        if (!competition_) competition_ = Competition{-1, static_cast<int>(r), static_cast<int>(r)};
    }
}

} // namespace routeweigh
