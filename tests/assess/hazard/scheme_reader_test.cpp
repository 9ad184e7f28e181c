// SPDX-License-Identifier: MIT
#include "hazard_case.hpp"

#include <doctest/doctest.h>

using namespace routeweigh;
using namespace routeweigh::test;

namespace {

// The shipped file with one place changed.
Source changed(const std::string& path, const std::string& from, const std::string& to) {
    Source source = file(path);
    const std::size_t at = source.text.find(from);
    REQUIRE_MESSAGE(at != std::string::npos, from);
    source.text.replace(at, from.size(), to);
    return source;
}

const std::string score_file = "hazard-data/schemes/hazard_score.json";
const std::string band_file = "hazard-data/schemes/niosh_2019_132.json";

// The only problem of a faulty scheme, as it is printed.
template<typename Read>
std::string problem_of(Read read, const Source& source) {
    try {
        read(source);
    } catch (const InputError& error) {
        return error.what();
    }
    return "";
}

} // namespace

TEST_CASE("the shipped scheme has the endpoints, places and scales of its definition") {
    const HazardScheme& scheme = schemes().score;
    const std::vector<std::pair<std::string, double>> expected{
        {"inhalation", 1},  {"aquatic_acute", 0.001}, {"aquatic_chronic", 0.001}, {"oral", 1},
        {"dermal", 1},      {"fire", 0.01},           {"contact", 0.01},          {"sensitisation", 0.01},
        {"long_term", 0.01}};
    REQUIRE(scheme.endpoints.size() == expected.size());
    for (std::size_t e = 0; e < expected.size(); ++e) {
        CHECK(scheme.endpoints[e].id == expected[e].first);
        CHECK(scheme.endpoints[e].x0 == expected[e].second);
        CHECK(scheme.endpoints[e].weight == 1.0);
        CHECK(scheme.endpoints[e].unit != "");
    }
    CHECK(scheme.places[index_of(HazardPlace::waste)].scored);
    CHECK(!scheme.places[index_of(HazardPlace::product)].scored);
    CHECK(scheme.air_molar_volume == 24.45);
    CHECK(scheme.x0_factors == std::vector<double>{10, 0.1});
}

TEST_CASE("levels run from the worst on") {
    const auto names = [](std::string_view id) {
        return level_names(schemes().score.endpoints[endpoint(id)], schemes().bandings[0]);
    };
    CHECK(names("inhalation") == std::vector<std::string>{"E", "D", "C", "B", "A"});
    CHECK(names("aquatic_chronic") == std::vector<std::string>{"H410", "H411", "H412"});
    CHECK(names("oral") == std::vector<std::string>{"category 1", "category 2", "category 3", "category 4"});
    CHECK(names("fire") == std::vector<std::string>{"serious", "lower"});
}

TEST_CASE("a faulty scheme is refused with the place of the fault") {
    const auto score_problem = [](const std::string& from, const std::string& to) {
        return problem_of(read_hazard_scheme, changed(score_file, from, to));
    };
    CHECK(score_problem("\"x0\": 1,", "\"x0\": 0,").find("/endpoints/0/x0") != std::string::npos);
    CHECK(score_problem("\"kind\": \"graded\"", "\"kind\": \"grated\"").find("nearest: \"graded\"") !=
          std::string::npos);
    CHECK(score_problem("\"weight\": 1", "\"wieght\": 1").find("weight") != std::string::npos);
    CHECK(score_problem("\"id\": \"flask\"", "\"id\": \"bottle\"").find("stands twice") != std::string::npos);
    CHECK(score_problem("\"id\": \"oral\"", "\"id\": \"fire\"").find("stands twice") != std::string::npos);
    CHECK(score_problem("{\"id\": \"product\", \"scored\": false",
                        "{\"id\": \"product\", \"scored\": true") != "");
    CHECK(score_problem("\"short_term_scored\": false", "\"short_term_scored\": true") != "");
    CHECK(score_problem("\"g_per_m3\": 10}", "\"g_per_m3\": -10}").find("/endpoints/1/limits/1") !=
          std::string::npos);
}

TEST_CASE("a faulty banding is refused with the place of the fault") {
    const auto band_problem = [](const std::string& from, const std::string& to) {
        return problem_of(read_banding, changed(band_file, from, to));
    };
    CHECK(band_problem("\"band\": \"E\", \"provenance\": \"memory\", \"confidence\": \"high\"},\n    "
                       "{\"endpoint\": \"skin",
                       "\"band\": \"F\", \"provenance\": \"memory\", \"confidence\": \"high\"},\n    "
                       "{\"endpoint\": \"skin")
              .find("/rows/3/band") != std::string::npos);
    CHECK(band_problem("\"lower\": 10, \"upper\": null", "\"lower\": null, \"upper\": null")
              .find("without any edge") != std::string::npos);
    CHECK(band_problem("\"lower\": 1, \"upper\": 10}", "\"lower\": 10, \"upper\": 1}").find("/bands/1") !=
          std::string::npos);
    CHECK(band_problem("\"H302\"", "\"302\"").find("hazard statement") != std::string::npos);
}
