// SPDX-License-Identifier: MIT
#include "stream_case.hpp"

#include <doctest/doctest.h>

using namespace routeweigh;
using namespace routeweigh::streams;
using namespace routeweigh::streams::testing;

namespace {

ContainerLog read(const std::string& additions) {
    return read_container_log(
        {"log.json",
         R"({"container": "flammable non-halogenated", "size": "4 L", "additions": [)" + additions + "]}"},
        catalogue(), us_rules().compatibility.groups, us_rules().local);
}

} // namespace

TEST_CASE("additions by volume, by mass and by parts are read into grams") {
    const ContainerLog log = read(
        R"({"date": "2026-02-02", "from": "section A", "material": "ethyl acetate", "amount": "250 mL", "by": "J. M."},
        {"date": "2026-02-03", "material": "ethanol 95 % by volume", "amount": "81.14 g"},
        {"date": "2026-02-04", "parts": {"acetone": "40 %", "water": "60 %"}, "amount": "100 g"})");
    REQUIRE(log.additions.size() == 3);
    CHECK(log.size == doctest::Approx(4000));
    CHECK(log.additions[0].composition.grams("ethyl-acetate") == doctest::Approx(250 * 0.9003));
    CHECK(log.additions[1].millilitres == doctest::Approx(100));
    CHECK(log.additions[2].composition.grams("acetone") == doctest::Approx(40));
    CHECK(log.millilitres() == doctest::Approx(250 + 100 + 40 / 0.7845 + 60 / 0.997));
    const std::vector<Participant> content = log.content(us_rules().compatibility.groups);
    CHECK(content.size() == 4); // ethyl acetate, ethanol, water, acetone
    for (const Participant& part : content)
        if (part.name == "water") CHECK(part.share == doctest::Approx(0.6)); // the largest it had
}

TEST_CASE("a stranger is a finding of the check and a warning, not an error of the file") {
    const ContainerLog log = read(R"({"date": "2026-02-02", "material": "sodium azide", "amount": "1 g"},
        {"date": "2026-02-02", "material": "yellow oil", "amount": "5 mL"})");
    const std::vector<Participant> content = log.content(us_rules().compatibility.groups);
    REQUIRE(content.size() == 2);
    CHECK(content[0].member != nullptr);
    CHECK(content[1].member == nullptr);
    const CompatibilityReport report =
        check_compatibility(poured(grams({{"toluene", 1}})), content, us_rules().compatibility);
    CHECK(report.not_assigned == std::vector<std::string>{"yellow oil"});
    CHECK(report.keeps_apart());
}

TEST_CASE(
    "a name that nobody knows is told with its place and the nearest spelling, and what is full is full") {
    const ContainerLog log = read(R"({"date": "2026-02-02", "material": "ehtanol", "amount": "4 L"})");
    REQUIRE(log.warnings.size() == 1);
    CHECK(log.warnings[0].place.pointer == "/additions/0/material");
    CHECK(log.warnings[0].nearest == "ethanol");
    CHECK(log.warnings[0].severity == Severity::warning);
    CHECK(read(R"({"date": "2026-02-02", "material": "ethanol", "amount": "4 L"})").warnings.empty());
}

TEST_CASE("what the catalogue does not have stands in the water beside it") {
    const ContainerLog log = read(
        R"({"date": "2026-02-02", "parts": {"tin(II) chloride": "5 %", "water": "95 %"}, "amount": "100 g"})");
    for (const Participant& part : log.content(us_rules().compatibility.groups))
        CHECK(part.in_water);
}

TEST_CASE("faults of a log are told with their place") {
    const auto problems = [](const std::string& additions) -> std::string {
        try {
            read(additions);
        } catch (const InputError& error) {
            return error.what();
        }
        return "";
    };
    CHECK(holds(problems(R"({"date": "2026-02-02", "material": "ethanol", "amount": "5 mol"})"),
                "/additions/0/amount"));
    CHECK(holds(problems(R"({"date": "2026-02-02", "material": "ethanol", "amount": "-5 mL"})"),
                "/additions/0/amount"));
    CHECK(holds(
        problems(
            R"({"date": "2026-02-02", "parts": {"ethanol": "60 %", "water": "60 %"}, "amount": "5 mL"})"),
        "the parts make 120 %, not 100 %"));
    CHECK(
        holds(problems(R"({"date": "2026-02-02", "material": "ethanol", "amount": "5 mL", "colour": "red"})"),
              "colour"));
    CHECK(holds(problems(R"({"material": "ethanol", "amount": "5 mL"})"), "date"));
    CHECK(holds(problems(R"({"date": "2 Feb", "material": "ethanol", "amount": "5 mL"})"),
                "\"2 Feb\" is no day of the calendar like 2026-02-02"));
    CHECK(holds(problems(R"({"date": "2026-02-31", "material": "ethanol", "amount": "5 mL"})"),
                "/additions/0/date: \"2026-02-31\" is no day"));
    CHECK(holds(problems(R"({"date": "2026-02-02", "material": "ethanol", "amount": "2.5 L"},
                            {"date": "2026-02-03", "material": "ethanol", "amount": "2.5 L"})"),
                "/additions: the additions make 5.00 L, more than the 4.00 L that the container holds"));
}

TEST_CASE("the container is one of the local rules, by its name there or by its kind") {
    const auto log = [](const std::string& container) {
        return read_container_log({"log.json", R"({"container": ")" + container + R"(", "additions": []})"},
                                  catalogue(), us_rules().compatibility.groups, us_rules().local);
    };
    CHECK(log("Flammable  Non-halogenated").container == ContainerKind::flammable);
    CHECK(log("flammable").size == doctest::Approx(4000)); // as the local rules have it
    CHECK_THROWS_WITH_AS(log("flamable non-halogenated"),
                         doctest::Contains("nearest: \"flammable non-halogenated\""), InputError);
}
