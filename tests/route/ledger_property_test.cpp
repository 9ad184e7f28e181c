// SPDX-License-Identifier: MIT
// The ledger of 10,000 random routes closes by mass and by every element, and a planted fault opens it.
#include "input/field.hpp"
#include "route/ledger.hpp"
#include "route/route_checks.hpp"
#include "support/random_route.hpp"
#include "support/rounds.hpp"

#include <doctest/doctest.h>

#include <cmath>
#include <cstddef>
#include <map>
#include <string>
#include <utility>

using namespace routeweigh;
using namespace routeweigh::test;

namespace {

using LedgerRows = std::map<std::string, double>;

/// Everything in the ledger by side, step, place and substance; for one run of the last step.
LedgerRows rows_of(const Route& route, const Ledger& ledger) {
    LedgerRows rows;
    for (const LedgerRow& row : ledger.rows)
        rows[std::to_string(static_cast<int>(row.side)) + " " +
             route.steps[static_cast<std::size_t>(row.step)].id + " " + row.place + " " +
             row.substance->id] += row.grams;
    return rows;
}

double largest_difference(const LedgerRows& a, const LedgerRows& b, double scale) {
    double worst = 0.0;
    const auto compare = [&](const LedgerRows& one, const LedgerRows& other) {
        for (const auto& [key, grams] : one) {
            const auto found = other.find(key);
            worst = std::max(worst, std::abs(grams - (found == other.end() ? 0.0 : found->second)));
        }
    };
    compare(a, b);
    compare(b, a);
    return worst / scale;
}

std::string first_error(const Route& route) {
    Problems problems;
    check_route(route, problems);
    for (const Problem& problem : problems.all)
        if (problem.severity == Severity::error) return format(problem);
    return {};
}

} // namespace

TEST_CASE("10,000 random routes pass the checks, and their ledgers close to 1e-9 in both readings") {
    std::mt19937 draw(41);
    int several = 0, loops = 0, recycled = 0, lost = 0, gases = 0;
    double worst = 0.0;
    for (int round = 0; round < rounds(10000); ++round) {
        CAPTURE(round);
        const auto random = random_route(draw);
        REQUIRE(first_error(random->route) == "");
        const FlatRoute flat(random->route);
        const Evaluation evaluation = flat.evaluate(flat.nominal());
        for (const bool unreacted : {false, true}) {
            CAPTURE(unreacted);
            const Ledger ledger = make_ledger(flat, evaluation, unreacted);
            const double error = ledger.closure_error();
            worst = std::max(worst, error);
            REQUIRE(error < 1e-9);
            REQUIRE(ledger.product > 0.0);
            REQUIRE(ledger.elements.size() >= 2);
            for (const LedgerRow& row : ledger.rows)
                REQUIRE(row.grams > -1e-9 * ledger.in);
        }
        several += flat.steps().size() > 1 ? 1 : 0;
        loops += flat.scale_plan().has_loop() ? 1 : 0;
        for (const double grams : evaluation.recovered)
            if (grams > 0.0) ++recycled;
        for (const StepResult& step : evaluation.steps)
            if (step.isolated < 0.999 * step.made) ++lost;
        for (const FlatStream& stream : flat.streams()) {
            double grams = 0.0;
            for (std::size_t s = 0; s < flat.steps()[static_cast<std::size_t>(stream.step)].substances.size();
                 ++s)
                grams += evaluation.out[static_cast<std::size_t>(stream.first_outflow) + s];
            if (stream.kind == StreamKind::gas && grams > 0.0) ++gases;
        }
    }
    MESSAGE("worst closure " << worst);
    CHECK(several > rounds(5000));
    CHECK(loops > rounds(1000));
    CHECK(recycled > rounds(1000));
    CHECK(lost > rounds(10000));
    CHECK(gases > rounds(3000));
}

TEST_CASE("the order of listing changes nothing") {
    std::mt19937 draw(42);
    for (int round = 0; round < rounds(3000); ++round) {
        CAPTURE(round);
        const auto random = random_route(draw);
        const FlatRoute flat(random->route);
        const Evaluation evaluation = flat.evaluate(flat.nominal());
        Route other = random->route;
        shuffle_listing(other, draw);
        const FlatRoute shuffled(other);
        const Evaluation again = shuffled.evaluate(shuffled.nominal());
        for (const bool unreacted : {false, true}) {
            const Ledger a = make_ledger(flat, evaluation, unreacted),
                         b = make_ledger(shuffled, again, unreacted);
            REQUIRE(largest_difference(rows_of(random->route, a), rows_of(other, b), a.in) < 1e-9);
        }
    }
}

TEST_CASE("a wrong coefficient or a wrong molar mass opens the ledger") {
    std::mt19937 draw(43);
    int coefficients = 0, masses = 0;
    for (int round = 0; round < 1000; ++round) {
        CAPTURE(round);
        const auto random = random_route(draw, {.most_steps = 3, .reuse = false, .seeds = false});
        Route& route = random->route;
        // The first reaction of the last step runs, so what is wrong in it must show.
        Reaction& reaction = route.steps.back().stages.front().reactions.front();
        REQUIRE(reaction.equation.parts.size() >= 2);

        double& coefficient = reaction.equation.parts.front().coefficient;
        const double right = coefficient;
        coefficient *= 1.001;
        {
            const FlatRoute flat(route);
            const Evaluation evaluation = flat.evaluate(flat.nominal());
            const Ledger ledger = make_ledger(flat, evaluation);
            if (flat.extents(static_cast<int>(route.steps.size()) - 1, flat.nominal())[0][0] > 0.0) {
                ++coefficients;
                REQUIRE(ledger.closure_error() > 1e-9);
                REQUIRE(make_ledger(flat, evaluation, true).closure_error() > 1e-9);
            }
        }
        coefficient = right;

        for (Substance& substance : random->substances)
            if (&substance == route.product) substance.molar_mass *= 1.001;
        {
            const FlatRoute flat(route);
            const Ledger ledger = make_ledger(flat, flat.evaluate(flat.nominal()));
            if (flat.extents(static_cast<int>(route.steps.size()) - 1, flat.nominal())[0][0] > 0.0) {
                ++masses;
                REQUIRE(ledger.closure_error() > 1e-9);
            }
        }
    }
    CHECK(coefficients > 900);
    CHECK(masses > 900);
}

TEST_CASE("a fault of one part in a million is found") {
    std::mt19937 draw(44);
    const auto random = random_route(draw, {.most_steps = 1, .reuse = false, .seeds = false});
    random->route.steps[0].stages[0].reactions[0].equation.parts[0].coefficient *= 1.000001;
    const FlatRoute flat(random->route);
    CHECK(make_ledger(flat, flat.evaluate(flat.nominal())).closure_error() > 1e-9);
}

TEST_CASE("a mass that is no number leaves the ledger open") {
    Ledger ledger;
    ledger.in = ledger.streams = std::nan("");
    CHECK(std::isinf(ledger.closure_error()));
    ledger.in = ledger.streams = 1.0;
    CHECK(ledger.closure_error() == 0.0);
    ledger.elements.push_back({6, 1.0, std::nan("")});
    ledger.elements.push_back({8, 1.0, 1.0});
    CHECK(std::isinf(ledger.closure_error()));
}
