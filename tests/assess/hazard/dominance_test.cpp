// SPDX-License-Identifier: MIT
#include "assess/hazard/dominance.hpp"
#include "hazard_case.hpp"

#include <doctest/doctest.h>

#include <cmath>
#include <random>

using namespace routeweigh;
using namespace routeweigh::test;
using doctest::Approx;

namespace {

using Changes = std::vector<std::pair<std::string, std::string>>;

const HazardPairCell& cell(const HazardComparison& comparison, std::string_view id, HazardPlace place) {
    for (const HazardPairCell& found : comparison.cells)
        if (found.endpoint == endpoint(id) && found.place == place) return found;
    throw std::runtime_error("no such cell");
}

HazardComparison compare(const WeighedRoute& first, const WeighedRoute& second) {
    return compare_hazards({first.map(), first.values()}, {second.map(), second.values()});
}

HazardOrder mirrored(HazardOrder order) {
    switch (order) {
    case HazardOrder::less:
        return HazardOrder::more;
    case HazardOrder::no_more:
        return HazardOrder::no_less;
    case HazardOrder::no_less:
        return HazardOrder::no_more;
    case HazardOrder::more:
        return HazardOrder::less;
    default:
        return order;
    }
}

} // namespace

TEST_CASE("a route is equal to itself, whatever is unknown in it") {
    for (const char* name : {"bromine_poured", "bromine_made"}) {
        const HazardComparison same = compare(small_route(name), small_route(name));
        CHECK(same.cells.size() == 27); // the product is not compared
        CHECK(same.by_value == HazardOrder::equal);
        for (const HazardPairCell& found : same.cells) {
            CHECK(found.by_value == HazardOrder::equal);
            CHECK(found.severity.order == HazardOrder::equal);
            // Only which reading of the yield holds may differ between two runs of one route.
            if (found.place != HazardPlace::waste) {
                CHECK(found.by_interval == HazardOrder::equal);
                CHECK(found.severity.firm);
            }
        }
    }
}

TEST_CASE("more of one solvent is more under any weights") {
    const HazardComparison found =
        compare(small_route("bromine_poured"),
                small_route("bromine_poured", {{"\"amount\": \"10 g\"", "\"amount\": \"20 g\""}}));
    CHECK(found.by_value == HazardOrder::less);
    const HazardPairCell& air = cell(found, "inhalation", HazardPlace::bottle);
    // 10 g of acetic acid over 1.712496 g of product at 40.7147139 m3/g; the limit is the same in both routes
    CHECK(air.least == Approx(-237.750709576));
    CHECK(air.greatest == Approx(-237.750709576));
    CHECK(air.by_interval == HazardOrder::less);
    CHECK(cell(found, "fire", HazardPlace::flask).by_interval == HazardOrder::less);
    CHECK(cell(found, "fire", HazardPlace::flask).severity.firm);
    CHECK(cell(found, "oral", HazardPlace::flask).by_interval == HazardOrder::equal);
}

TEST_CASE("where a point within the bands decides, the order depends on it") {
    // Twice the acetanilide (excess, band C) against five times the promoter (band D), per gram of product:
    // first more acetanilide by 0.789292354551 g, less promoter by 0.2 g/P = 0.116788593959 g
    const Changes more_acetanilide{{"1.35166 g", "2.70332 g"},
                                   {"\"yield\": \"80 %\"", "\"mass\": \"1.712496 g\""}};
    const Changes more_promoter{{"0.05 g", "0.25 g"}, {"\"yield\": \"80 %\"", "\"mass\": \"1.712496 g\""}};
    const HazardComparison found = compare(small_route("bromine_poured", more_acetanilide),
                                           small_route("bromine_poured", more_promoter));
    const HazardPairCell& air = cell(found, "inhalation", HazardPlace::bottle);
    CHECK(air.least == Approx(789.292354551 - 11678.8593959).epsilon(1e-9));    // 1000 against 100 000 m3/g
    CHECK(air.greatest == Approx(7892.92354551 - 1167.88593959).epsilon(1e-9)); // 10 000 against 10 000 m3/g
    CHECK(air.by_interval == HazardOrder::depends);
    CHECK(air.by_value == HazardOrder::less); // 789.3 - 1167.9 at the low ends
    // Severity: more of the worse band D in the second route, more of D and C together in the first.
    CHECK(air.severity.order == HazardOrder::depends);
    CHECK(air.severity.crossing == "C");
    CHECK(found.by_value == HazardOrder::depends); // more oral dose, less dermal dose
    CHECK(found.by_interval == HazardOrder::depends);
}

TEST_CASE("more of what nobody has assessed is never less, and never for certain more") {
    const HazardComparison found =
        compare(small_route("bromine_made"), small_route("bromine_made", {{"0.1 g", "0.3 g"}}));
    CHECK(found.by_value == HazardOrder::equal);
    const HazardPairCell& air = cell(found, "inhalation", HazardPlace::bottle);
    CHECK(air.by_interval == HazardOrder::no_more);
    CHECK(std::isinf(air.least));
    CHECK(air.greatest == 0.0);
    const HazardPairCell& mouth = cell(found, "oral", HazardPlace::flask);
    CHECK(mouth.least == Approx(-2000 * 0.2 / 1.712496));
    CHECK(mouth.by_interval == HazardOrder::no_more);
    CHECK(mouth.severity.order == HazardOrder::equal);
    CHECK(!mouth.severity.firm);
}

TEST_CASE("a substance that both hold alike cancels, even where nothing bounds it") {
    // The catalyst has no data in either route; only the ethanol differs.
    const HazardComparison found =
        compare(small_route("bromine_made"), small_route("bromine_made", {{"\"5 g\"", "\"9 g\""}}));
    CHECK(cell(found, "fire", HazardPlace::bottle).by_interval == HazardOrder::less);
    CHECK(cell(found, "fire", HazardPlace::bottle).severity.firm);
    CHECK(cell(found, "inhalation", HazardPlace::bottle).by_interval == HazardOrder::equal);
}

TEST_CASE("severity curves add up grams from the worst level on") {
    const HazardComparison found = compare(small_route("bromine_poured"), small_route("bromine_made"));
    const SeverityCurves& skin = cell(found, "contact", HazardPlace::flask).severity;
    CHECK(skin.levels == std::vector<std::string>{"serious", "lower"});
    REQUIRE(skin.first.size() == 2);
    CHECK(skin.first[0] == Approx(7.24509721482561));
    CHECK(skin.first[1] == Approx(7.24509721482561 + 1.25));
    CHECK(skin.second[0] == Approx(1.51332557857069));
    CHECK(skin.second[1] == Approx(1.51332557857069 + 1.25));
    CHECK(skin.order == HazardOrder::more);
    CHECK(skin.firm); // 0.06 g of unassessed catalyst cannot turn it round

    // Air, by the band that holds the limit or follows from the statements: bromine 0.1 ppm E; promoter D;
    // peroxide 1 ppm D; acetic acid 10 ppm C, acetanilide C; hydrogen bromide and ethanol have no working-day
    // limit: none.
    const SeverityCurves& air = cell(found, "inhalation", HazardPlace::bottle).severity;
    CHECK(air.first[0] == Approx(0.933187581168));
    CHECK(air.first[1] == Approx(0.933187581168 + 0.029197148490));
    CHECK(air.first[2] == Approx(0.962384729658 + 5.839429697938 + 0.789292354551));
    CHECK(air.first[4] == air.first[2]);
    CHECK(air.second[0] == 0.0);
    CHECK(air.second[1] == Approx(0.198622361746));
    CHECK(air.second[2] == Approx(0.198622361746 + 0.789292354551));
}

TEST_CASE("comparing the other way round mirrors every order") {
    const WeighedRoute poured = small_route("bromine_poured"), made = small_route("bromine_made");
    const HazardComparison there = compare(poured, made), back = compare(made, poured);
    for (std::size_t i = 0; i < there.cells.size(); ++i) {
        CHECK(there.cells[i].by_value == mirrored(back.cells[i].by_value));
        CHECK(there.cells[i].by_interval == mirrored(back.cells[i].by_interval));
        CHECK(there.cells[i].severity.order == mirrored(back.cells[i].severity.order));
        CHECK(there.cells[i].severity.firm == back.cells[i].severity.firm);
        if (std::isinf(back.cells[i].greatest))
            CHECK(there.cells[i].least == -back.cells[i].greatest);
        else
            CHECK(there.cells[i].least == Approx(-back.cells[i].greatest));
    }
    CHECK(there.by_value == mirrored(back.by_value));
}

TEST_CASE("cells taken together") {
    using enum HazardOrder;
    CHECK(combine({}) == equal);
    CHECK(combine({equal, less, equal}) == less);
    CHECK(combine({equal, no_more}) == no_more);
    CHECK(combine({no_more, less}) == less);
    CHECK(combine({less, more}) == depends);
    CHECK(combine({less, no_less}) == depends);
    CHECK(combine({more, no_less, equal}) == more);
    CHECK(combine({less, depends}) == depends);
}

// What the corners promise must hold for every limit within the bands and every classification that the
// unassessed may turn out to have; what the curves promise, under every monotone weighting of the levels.
TEST_CASE("no point within the bands and no monotone weighting turns a certain order round") {
    std::mt19937 random(7);
    std::uniform_real_distribution<double> unit(0, 1);
    const auto amount = [&](double most) {
        return "\"" + std::to_string(most * (0.1 + unit(random))) + " g\"";
    };
    int certain_cells = 0, ordered_curves = 0;
    for (int pair = 0; pair < 60; ++pair) {
        const auto vary = [&](const char* name, const char* solvent, const char* trace) {
            return small_route(name, {{solvent, amount(10)}, {trace, amount(0.2)}});
        };
        const WeighedRoute first = vary("bromine_poured", "\"10 g\"", "\"0.05 g\"");
        const WeighedRoute second = unit(random) < 0.5 ? vary("bromine_poured", "\"10 g\"", "\"0.05 g\"")
                                                       : vary("bromine_made", "\"5 g\"", "\"0.1 g\"");
        for (const HazardPairCell& found : compare(first, second).cells) {
            if (found.severity.order == HazardOrder::less || found.severity.order == HazardOrder::more) {
                ++ordered_curves;
                double weight = 0,
                       difference = 0; // weights by level are sums of steps at this level and milder ones
                for (std::size_t l = 0; l < found.severity.levels.size(); ++l) {
                    weight = unit(random);
                    difference += weight * (found.severity.first[l] - found.severity.second[l]);
                }
                CHECK((difference < 0) == (found.severity.order == HazardOrder::less));
            }
            if (found.by_interval != HazardOrder::less && found.by_interval != HazardOrder::more) continue;
            ++certain_cells;
            for (int draw = 0; draw < 20; ++draw) {
                std::map<const Substance*, double> chosen; // one demand per gram for both routes
                const auto total = [&](const WeighedRoute& route, HazardColumn column) {
                    double sum = 0;
                    for (std::size_t c = 0; c < route.map().carriers().size(); ++c) {
                        const HazardContribution& per = route.map().contribution(found.endpoint, c);
                        const double high = std::isinf(per.high) ? per.low + 1e6 : per.high;
                        const double demand = per.low + unit(random) * (high - per.low);
                        const auto kept =
                            chosen.try_emplace(route.map().carriers()[c].substance, demand).first;
                        sum += kept->second * route.map().grams(route.values(), column, c);
                    }
                    return sum;
                };
                const bool other = found.place == HazardPlace::waste && unit(random) < 0.5;
                const HazardColumn column = other ? HazardColumn::waste_unreacted : column_of(found.place);
                const double difference = total(first, column) - total(second, column);
                CHECK((difference < 0) == (found.by_interval == HazardOrder::less));
            }
        }
    }
    CHECK(certain_cells > 200); // the promise has been tested
    CHECK(ordered_curves > 200);
}
