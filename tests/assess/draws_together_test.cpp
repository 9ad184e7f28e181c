// SPDX-License-Identifier: MIT
// Several draws evaluated at once must give the bits that each gives alone: the sampling loop and the reports
// share one arithmetic.
#include "assess/assessment.hpp"
#include "route/route_reader.hpp"
#include "support/random_route.hpp"
#include "support/rounds.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <bit>
#include <cmath>
#include <cstdint>
#include <fstream>
#include <random>
#include <sstream>
#include <string>
#include <vector>

using namespace routeweigh;
using namespace routeweigh::test;

namespace {

bool same_bits(double a, double b) {
    return (std::isnan(a) && std::isnan(b)) ||
           std::bit_cast<std::uint64_t>(a) == std::bit_cast<std::uint64_t>(b);
}

bool same_bits(const std::vector<Lanes>& together, std::size_t lane, const std::vector<double>& alone) {
    for (std::size_t i = 0; i < alone.size(); ++i)
        if (!same_bits(together[i][lane], alone[i])) return false;
    return together.size() == alone.size();
}

Route shipped(const std::string& id) {
    const std::string path = ROUTEWEIGH_ROOT "/routes/4-bromoacetanilide/" + id + ".json";
    std::stringstream text;
    text << std::ifstream(path).rdbuf();
    Problems problems;
    return read_route(make_source(path, text.str()), Catalogue::embedded(), problems);
}

/// Amounts off by so much (a fraction) at most.
std::vector<Lanes> wobbled(const std::vector<double>& values, double most, double ceiling,
                           std::mt19937& draw) {
    std::uniform_real_distribution<double> off(1.0 - most, 1.0 + most);
    std::vector<Lanes> result(values.size());
    for (std::size_t i = 0; i < values.size(); ++i)
        for (std::size_t lane = 0; lane < lane_count; ++lane)
            result[i].set(lane, std::min(ceiling, values[i] * off(draw)));
    return result;
}

std::vector<double> lane_of(const std::vector<Lanes>& values, std::size_t lane) {
    std::vector<double> result;
    for (const Lanes& value : values)
        result.push_back(value[lane]);
    return result;
}

/// \return false where the draws part ways
bool check_together(const RouteFigures& figures, double most, std::mt19937& draw) {
    constexpr double any = 1e300;
    const Inputs& nominal = figures.flat().nominal();
    const InputsOf<Lanes> inputs{
        wobbled(nominal.charged, most, any, draw), wobbled(nominal.fractions, most, 1.0, draw),
        wobbled(nominal.isolated, most / 4.0, any, draw), wobbled(nominal.reused, most, 1.0, draw)};
    RouteFigures::ValuesOf<Lanes> together;
    if (!figures.evaluate(inputs, together)) return false;
    RouteFigures::Values alone;
    for (std::size_t lane = 0; lane < lane_count; ++lane) {
        figures.evaluate({lane_of(inputs.charged, lane), lane_of(inputs.fractions, lane),
                          lane_of(inputs.isolated, lane), lane_of(inputs.reused, lane)},
                         alone);
        REQUIRE(same_bits(together.metrics, lane, alone.metrics));
        REQUIRE(same_bits(together.evaluation.out, lane, alone.evaluation.out));
        REQUIRE(same_bits(together.evaluation.out_unreacted, lane, alone.evaluation.out_unreacted));
        REQUIRE(same_bits(together.evaluation.flask, lane, alone.evaluation.flask));
        REQUIRE(same_bits(together.hazard.value, lane, alone.hazard.value));
        REQUIRE(same_bits(together.hazard.low, lane, alone.hazard.low));
        REQUIRE(same_bits(together.hazard.high, lane, alone.hazard.high));
        REQUIRE(same_bits(together.hazard.short_term, lane, alone.hazard.short_term));
        REQUIRE(same_bits(together.score.value[lane], alone.score.value));
        REQUIRE(same_bits(together.score.low[lane], alone.score.low));
        REQUIRE(same_bits(together.score.high[lane], alone.score.high));
    }
    return true;
}

} // namespace

TEST_CASE("random routes: draws at once give the bits of each alone") {
    const AssessmentRules rules = read_assessment_rules(Catalogue::embedded());
    std::mt19937 draw(61);
    int together = 0;
    const int all = rounds(3000);
    for (int round = 0; round < all; ++round) {
        CAPTURE(round);
        const auto random = random_route(draw);
        const RouteFigures figures(random->route, rules);
        together += check_together(figures, 0.05, draw) ? 1 : 0;
    }
    MESSAGE(together << " of " << all << " went together");
    CHECK(together > all / 4); // loops, seeds, and yields above what forms in some draws go apart
}

TEST_CASE("shipped one-step routes: draws at once give the bits of each alone, whatever runs out first") {
    const AssessmentRules rules = read_assessment_rules(Catalogue::embedded());
    std::mt19937 draw(62);
    for (const char* id : {"A1", "A2", "A2b", "A3", "A3w", "A4", "A5", "A6", "A7a", "A7b"}) {
        CAPTURE(id);
        const Route route = shipped(id);
        const RouteFigures figures(route, rules);
        int together = 0;
        for (int round = 0; round < 100; ++round)
            together += check_together(figures, 0.02, draw) ? 1 : 0;
        CHECK(together > 95);
    }
}
