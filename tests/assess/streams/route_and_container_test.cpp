// SPDX-License-Identifier: MIT
// Streams of a route against what stands in their container, by its log or from the same route.
#include "stream_case.hpp"

#include <doctest/doctest.h>

using namespace routeweigh;
using namespace routeweigh::streams;
using namespace routeweigh::streams::testing;

TEST_CASE("a stream of a route against the log of its container") {
    const Source bleach{"log.json", R"({"container": "aqueous, neutral", "size": "10 L", "additions": [
        {"date": "2026-02-02", "material": "household bleach 6 %", "amount": "500 mL"}]})"};
    const Source brine{"brine.json", R"({"container": "heavy metal", "additions": []})"};
    const std::vector<ContainerLog> logs{
        read_container_log(bleach, catalogue(), us_rules().compatibility.groups, us_rules().local),
        read_container_log(brine, catalogue(), us_rules().compatibility.groups, us_rules().local)};
    const WasteOf a1("routes/4-bromoacetanilide/A1.json", us_rules());
    const RouteWaste waste = assess_waste(*a1.route, us_rules(), logs);
    for (const StreamAdvice& advice : waste.streams) {
        INFO(advice.stream.name);
        CHECK(advice.decision.kind != ContainerKind::aqueous_neutral);
        if (advice.log.empty()) continue;
        CHECK(advice.log == "aqueous, neutral");
        CHECK(advice.with_log->verdict == CompatibilityReport::Verdict::conflict);
        CHECK(holds(advice.with_log->words, "do not add"));
        CHECK(advice.decision.outcome == Decision::Outcome::own_bottle);
    }
    for (const ContainerFit& fit : fit_class(waste, 24, us_rules().local, logs))
        CHECK(fit.container->kind != ContainerKind::aqueous_neutral);
    CHECK(own_bottles(waste, 24, us_rules().local).size() ==
          own_bottles(a1.waste, 24, us_rules().local).size() + 1);
}

TEST_CASE("what a log allows goes into the container that stands there") {
    const Source salt{"log.json", R"({"container": "aqueous, neutral", "size": "10 L", "additions": [
        {"date": "2026-02-02", "parts": {"sodium chloride": "5 %", "water": "95 %"}, "amount": "500 g"}]})"};
    const std::vector<ContainerLog> logs{
        read_container_log(salt, catalogue(), us_rules().compatibility.groups, us_rules().local)};
    const WasteOf a1("routes/4-bromoacetanilide/A1.json", us_rules());
    const RouteWaste waste = assess_waste(*a1.route, us_rules(), logs);
    int begun = 0;
    for (const ContainerFit& fit : fit_class(waste, 24, us_rules().local, logs))
        if (fit.container->kind == ContainerKind::aqueous_neutral && fit.present > 0) ++begun;
    CHECK(begun == 1);
}

namespace {

/// The words for the stream of A3 that goes into the watery container, held against such a log.
const StreamAdvice& against(const RouteWaste& waste) {
    for (const StreamAdvice& advice : waste.streams)
        if (!advice.log.empty()) return advice;
    throw std::runtime_error("no stream meets the log");
}

RouteWaste a3_against(const std::string& additions) {
    static const WasteOf a3_alone(a_route("A3"), us_rules());
    const Source source{"log.json", R"({"container": "aqueous, neutral", "size": "10 L", "additions": [)" +
                                        additions + "]}"};
    return assess_waste(
        *a3_alone.route, us_rules(),
        {read_container_log(source, catalogue(), us_rules().compatibility.groups, us_rules().local)});
}

} // namespace

TEST_CASE("what a log says is there must not be poured upon when it should never have met") {
    const RouteWaste chlorine = a3_against(
        R"({"date": "2026-02-02", "parts": {"sodium hypochlorite": "5 %", "water": "95 %"}, "amount": "1 L"},
                      {"date": "2026-02-03", "parts": {"hydrogen chloride": "10 %", "water": "90 %"}, "amount": "1 L"})");
    CHECK(holds(against(chlorine).with_log->words,
                "add nothing: the container holds hydrogen chloride beside"));
    CHECK(against(chlorine).decision.outcome == Decision::Outcome::own_bottle);
    const RouteWaste cyanide = a3_against(
        R"({"date": "2026-02-02", "parts": {"sodium cyanide": "0.05 %", "water": "99.95 %"}, "amount": "1 L"})");
    CHECK(holds(against(cyanide).with_log->words, "add nothing: the container holds sodium cyanide"));
    CHECK(against(cyanide).decision.outcome == Decision::Outcome::own_bottle);
}

TEST_CASE("sulfite that a quench may leave meets the acid of a log") {
    const RouteWaste acid = a3_against(
        R"({"date": "2026-02-02", "parts": {"acetic acid": "5 %", "water": "95 %"}, "amount": "1 L"})");
    CHECK(against(acid).with_log->verdict == CompatibilityReport::Verdict::conflict);
    CHECK(
        holds(against(acid).with_log->words, "hydrogensulfite meets acetic acid, which gives off toxic gas"));
}

TEST_CASE("no stream stands in a container beside one that it must not meet") {
    for (const std::string& path : shipped_routes())
        for (const StreamRules* rules : {&us_rules(), &eu_rules()}) {
            INFO(path);
            for (const StreamAdvice& advice : WasteOf(path, *rules).waste.streams)
                if (advice.decision.outcome == Decision::Outcome::container)
                    CHECK_FALSE((advice.with_others && advice.with_others->keeps_apart()));
        }
}

TEST_CASE("streams of one route that go into one container are held against each other") {
    const WasteOf one("routes/5-5-diphenylhydantoin/D1b-D2c-D3a.json", us_rules());
    int together = 0;
    for (const StreamAdvice& advice : one.waste.streams)
        if (advice.with_others) ++together;
    CHECK(together >= 2);
}
