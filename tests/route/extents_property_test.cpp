// SPDX-License-Identifier: MIT
// On pots in which no two reactions want the same substance, the linear programme must say what patience
// says: let the reactions fire, one after the other in any order, until nothing changes.
#include "route/extents.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <limits>
#include <numeric>
#include <random>
#include <vector>

using namespace routeweigh;

namespace {

struct RandomPot {
    std::vector<PotReaction> reactions;
    std::vector<double> amounts;
    std::vector<bool> present, unlimited;
};

/// Every substance is used by at most one reaction. Each has a weight and every reaction loses some of it to
/// waste, so that no circle of reactions can run for ever.
RandomPot random_pot(std::mt19937& draw) {
    std::uniform_int_distribution<int> substances(3, 14), used(1, 3), made(1, 3), coefficient(1, 3);
    std::uniform_real_distribution<double> weight(1.0, 9.0), amount(0.05, 10.0), share(0.1, 1.0);
    std::bernoulli_distribution absent(0.35), partial(0.2), loose_trace(0.1);
    RandomPot pot;
    const int count = substances(draw);
    std::vector<double> weights(static_cast<std::size_t>(count));
    for (double& value : weights)
        value = weight(draw);
    for (int s = 0; s < count; ++s)
        pot.amounts.push_back(absent(draw) ? 0.0 : loose_trace(draw) ? 0.01 * amount(draw) : amount(draw));

    std::vector<int> order(static_cast<std::size_t>(count));
    std::iota(order.begin(), order.end(), 0);
    std::shuffle(order.begin(), order.end(), draw);
    std::uniform_int_distribution<int> any(0, count - 1);
    for (std::size_t next = 0; next + 1 < order.size() && pot.reactions.size() < 7;) {
        PotReaction reaction;
        double left = 0.0;
        const auto take = std::min(static_cast<std::size_t>(used(draw)), order.size() - next);
        for (std::size_t i = 0; i < take; ++i) {
            const int substance = order[next++];
            const int n = coefficient(draw);
            reaction.change.emplace_back(substance, -n);
            left += n * weights[static_cast<std::size_t>(substance)];
        }
        for (int tries = made(draw); tries > 0; --tries) {
            const int substance = any(draw);
            const bool there = std::any_of(reaction.change.begin(), reaction.change.end(),
                                           [&](const auto& part) { return part.first == substance; });
            const double most = std::floor(0.97 * left / weights[static_cast<std::size_t>(substance)]);
            if (there || most < 1.0) continue;
            const double n = std::min(most, static_cast<double>(coefficient(draw)));
            reaction.change.emplace_back(substance, n);
            left -= n * weights[static_cast<std::size_t>(substance)];
        }
        if (partial(draw)) {
            reaction.conversion = share(draw);
            reaction.of = reaction.change.front().first;
        }
        pot.reactions.push_back(std::move(reaction));
    }
    for (const double n : pot.amounts)
        pot.present.push_back(n > 0.0);
    pot.unlimited.assign(pot.amounts.size(), false);
    return pot;
}

struct Fired {
    std::vector<double> amounts, extents;
    bool settled = false;
};

Fired fire(const RandomPot& pot, std::mt19937& draw) {
    Fired state{pot.amounts, std::vector<double>(pot.reactions.size(), 0.0), false};
    std::vector<double> ever = pot.amounts; // there at the start and made since
    std::vector<std::size_t> order(pot.reactions.size());
    std::iota(order.begin(), order.end(), 0U);
    for (int round = 0; round < 20000 && !state.settled; ++round) {
        std::shuffle(order.begin(), order.end(), draw);
        state.settled = true;
        for (const std::size_t r : order) {
            const PotReaction& reaction = pot.reactions[r];
            double most = std::numeric_limits<double>::infinity();
            for (const auto& [substance, n] : reaction.change) {
                if (n >= 0.0) continue;
                const auto s = static_cast<std::size_t>(substance);
                most = std::min(most, state.amounts[s] / -n);
                if (reaction.conversion < 1.0 && substance == reaction.of)
                    most = std::min(most, reaction.conversion * ever[s] / -n - state.extents[r]);
            }
            if (most <= 1e-14) continue;
            state.settled = false;
            state.extents[r] += most;
            for (const auto& [substance, n] : reaction.change) {
                const auto s = static_cast<std::size_t>(substance);
                state.amounts[s] = std::max(0.0, state.amounts[s] + n * most);
                if (n > 0.0) ever[s] += n * most;
            }
        }
    }
    return state;
}

} // namespace

TEST_CASE("10,000 random pots without competition: the programme equals firing in random order") {
    std::mt19937 draw(21);
    int circular = 0, idle = 0, moved = 0;
    for (int round = 0; round < 10000; ++round) {
        CAPTURE(round);
        const RandomPot pot = random_pot(draw);
        const Extents compiled(pot.reactions, pot.amounts, pot.present, pot.unlimited, -1);
        REQUIRE_FALSE(compiled.unbounded());
        REQUIRE_FALSE(compiled.competition());
        std::vector<double> amounts = pot.amounts, extents(pot.reactions.size());
        compiled.react(amounts, -1.0, extents);

        const Fired fired = fire(pot, draw);
        REQUIRE(fired.settled);
        for (std::size_t r = 0; r < extents.size(); ++r) {
            CAPTURE(r);
            REQUIRE(std::abs(extents[r] - fired.extents[r]) < 1e-9);
            if (!compiled.started(static_cast<int>(r))) {
                ++idle;
                REQUIRE(extents[r] == 0.0);
            } else if (extents[r] > 0.0) {
                ++moved;
            }
        }
        for (std::size_t s = 0; s < amounts.size(); ++s)
            REQUIRE(std::abs(amounts[s] - fired.amounts[s]) < 1e-9);

        // Some substance was used beyond what was put in: it came back.
        for (std::size_t s = 0; s < amounts.size(); ++s) {
            double used = 0.0;
            for (std::size_t r = 0; r < extents.size(); ++r)
                for (const auto& [substance, n] : pot.reactions[r].change)
                    if (substance == static_cast<int>(s) && n < 0.0) used -= n * extents[r];
            if (used > pot.amounts[s] + 1e-6 && pot.amounts[s] > 0.0) {
                ++circular;
                break;
            }
        }
    }
    // The pots are worth the trouble: reactions run, some cannot start, and substances come back.
    CHECK(moved > 10000);
    CHECK(idle > 3000);
    CHECK(circular > 1000);
}

TEST_CASE("other amounts in the same pot: the kept basis equals firing too") {
    std::mt19937 draw(22);
    std::uniform_real_distribution<double> factor(0.7, 1.4);
    std::bernoulli_distribution empty(0.1);
    for (int round = 0; round < 2000; ++round) {
        CAPTURE(round);
        RandomPot pot = random_pot(draw);
        const Extents compiled(pot.reactions, pot.amounts, pot.present, pot.unlimited, -1);
        for (double& amount : pot.amounts)
            amount = empty(draw) ? 0.0 : amount * factor(draw);
        std::vector<double> amounts = pot.amounts, extents(pot.reactions.size());
        compiled.react(amounts, -1.0, extents);
        const Fired fired = fire(pot, draw);
        REQUIRE(fired.settled);
        for (std::size_t r = 0; r < extents.size(); ++r)
            REQUIRE(std::abs(extents[r] - fired.extents[r]) < 1e-9);
    }
}

TEST_CASE("the order in which reactions are listed changes nothing where none compete") {
    std::mt19937 draw(23);
    for (int round = 0; round < 2000; ++round) {
        CAPTURE(round);
        const RandomPot pot = random_pot(draw);
        std::vector<std::size_t> order(pot.reactions.size());
        std::iota(order.begin(), order.end(), 0U);
        std::shuffle(order.begin(), order.end(), draw);
        std::vector<PotReaction> shuffled;
        for (const std::size_t r : order)
            shuffled.push_back(pot.reactions[r]);
        const Extents listed(pot.reactions, pot.amounts, pot.present, pot.unlimited, -1);
        const Extents mixed(shuffled, pot.amounts, pot.present, pot.unlimited, -1);
        std::vector<double> a = pot.amounts, b = pot.amounts;
        listed.react(a);
        mixed.react(b);
        for (std::size_t s = 0; s < a.size(); ++s)
            REQUIRE(std::abs(a[s] - b[s]) < 1e-10);
    }
}

TEST_CASE("with competition, the programme never takes more than there is") {
    std::mt19937 draw(24);
    int competing = 0;
    for (int round = 0; round < 5000; ++round) {
        CAPTURE(round);
        RandomPot pot = random_pot(draw);
        RandomPot other = random_pot(draw);
        if (other.amounts.size() > pot.amounts.size()) std::swap(pot, other);
        // Reactions of two pots on the substances of one: many substances are wanted twice. Weights differ,
        // so such a pot may run in circles; those are called unbounded and left out.
        pot.reactions.insert(pot.reactions.end(), other.reactions.begin(), other.reactions.end());
        const Extents compiled(pot.reactions, pot.amounts, pot.present, pot.unlimited, -1);
        if (compiled.unbounded()) continue;
        if (compiled.competition()) {
            ++competing;
            const auto [substance, first, second] = *compiled.competition();
            REQUIRE(first != second);
            REQUIRE(substance >= 0);
        }
        std::vector<double> amounts = pot.amounts, extents(pot.reactions.size());
        compiled.react(amounts, -1.0, extents);
        for (const double amount : amounts)
            REQUIRE(amount >= -1e-12);
        for (const double extent : extents)
            REQUIRE(extent >= 0.0);
    }
    CHECK(competing > 1000);
}
