// SPDX-License-Identifier: MIT
#include "stream_case.hpp"

#include <doctest/doctest.h>

using namespace routeweigh;
using namespace routeweigh::streams;
using namespace routeweigh::streams::testing;

namespace {

/// The US rules with one text changed; what the reader says of it.
std::string problems(const std::string& from, const std::string& to) {
    Source source = file("hazard-data/schemes/local_rules_us.json");
    const std::size_t at = source.text.find(from);
    REQUIRE(at != std::string::npos);
    source.text.replace(at, from.size(), to);
    try {
        read_local_rules(source, catalogue());
    } catch (const InputError& error) {
        return error.what();
    }
    return "";
}

} // namespace

TEST_CASE("the shipped rules carry the lines of their jurisdiction, each with a standing") {
    const LocalRules& us = us_rules().local;
    const LocalRules& eu = eu_rules().local;
    CHECK(us.ignitable_below.value == 60);
    CHECK(us.ignitable_below.from.source == "40 CFR 261.21");
    REQUIRE(us.alcohol_exempt_below.has_value());
    CHECK(us.alcohol_exempt_below->value == doctest::Approx(0.24));
    CHECK_FALSE(eu.alcohol_exempt_below.has_value());
    CHECK(us.halogenated_from.from.standing == Standing::common_practice); // no source was found for 1 %
    CHECK_FALSE(us.contact.empty());
    CHECK_FALSE(us.drain_permitted);
    CHECK(eu.container(ContainerKind::halogenated)->waste_code == "14 06 02*");
}

TEST_CASE("a house may edit names and lines") {
    CHECK(problems("\"name\": \"halogenated organic liquid\"", "\"name\": \"red drum\"").empty());
    CHECK(problems("\"value\": \"1 %\"", "\"value\": \"3 %\"").empty());
}

TEST_CASE("faults of a rules file are told with their place") {
    CHECK(holds(problems("\"value\": \"1 %\"", "\"value\": \"0.01\""), "/halogenated_from/value"));
    CHECK(holds(problems("\"0.01 mol/L\"", "\"0.01 g/L\""), "mol/L"));
    CHECK(holds(problems("\"kind\": \"metal\"", "\"kind\": \"metals\""), "metal"));
    CHECK(holds(problems("\"kind\": \"metal\"", "\"kind\": \"solids\""), "stands twice"));
    CHECK(holds(problems("\"Ag\"", "\"Xx\""), "is no symbol of an element"));
    CHECK(holds(problems("\"contact\"", "\"contacts\""), "contact"));
    CHECK(holds(problems("\"permitted\": false", "\"permitted\": \"no\""), "/drain/permitted"));
    CHECK(holds(problems("\"standing\": \"common practice, no source\"", "\"standing\": \"hearsay\""),
                "standing"));
}

TEST_CASE("a jurisdiction without rules is named") {
    CHECK_THROWS_AS(shipped_local_rules(catalogue(), "Atlantis"), InputError);
}

TEST_CASE("a house says only what differs from the rules it is based on") {
    const LocalRules house = read_local_rules(
        {"house.json",
         R"({"id": "house", "kind": "local rules", "title": "Rules of the house", "based_on": "US",
            "about": {"source": "invented"}, "contact": "the stockroom",
            "halogenated_from": {"value": "0 %", "note": "the contractor takes any halogen apart"},
            "containers": [{"kind": "flammable", "name": "red can", "size": "10 L"},
                           {"kind": "flammable_aqueous", "name": "yellow can", "takes": "water that burns"}],
            "handout_words": [{"says": "Red", "means": ["flammable"]}]})"},
        catalogue());
    CHECK(house.contact == "the stockroom");
    CHECK(house.jurisdiction == "US");
    CHECK(house.halogenated_from.value == 0);
    CHECK(describe(house.halogenated_from.from) == "Rules of the house (read)");
    CHECK(house.fill_limit.value == doctest::Approx(0.9));
    CHECK(house.container(ContainerKind::flammable)->name == "red can");
    CHECK(holds(house.container(ContainerKind::flammable)->takes, "other organic liquid"));
    CHECK(house.container(ContainerKind::flammable_aqueous)->name == "yellow can");
    CHECK(house.container(ContainerKind::metal) != nullptr);
    CHECK(house.handout_words.front().says == "red");
    CHECK(house.handout_words.size() == us_rules().local.handout_words.size() + 1);
    CHECK(house.stops.size() == us_rules().local.stops.size());
}

TEST_CASE("a house's own stop counts before the shipped one") {
    const LocalRules house = read_local_rules(
        {"house.json",
         R"({"id": "house", "kind": "local rules", "title": "Rules of the house", "based_on": "US",
            "about": {"source": "invented"},
            "stop": [{"what": "cyanide", "groups": [11], "from_percent": 0.001, "why": "the house collects it",
                      "bottle": "blue bottle, kept basic"}]})"},
        catalogue());
    const StreamRules rules(catalogue(), house);
    CHECK(decide(grams({{"sodium cyanide", 1}, {"water", 90}}), rules).goes_to == "blue bottle, kept basic");
}

TEST_CASE("a file based on nothing must say everything") {
    try {
        read_local_rules(
            {"house.json",
             R"({"id": "house", "kind": "local rules", "title": "x", "about": {"source": "invented"}})"},
            catalogue());
        FAIL("not refused");
    } catch (const InputError& error) {
        for (const char* missing : {"contact", "containers", "fill_limit", "stop"})
            CHECK(holds(error.what(), missing));
    }
}
