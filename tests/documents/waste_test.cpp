// SPDX-License-Identifier: MIT
// The waste document: what it must say of every shipped route, under both rules.
#include "app/session.hpp"
#include "app/waste.hpp"
#include "documents/compared.hpp"
#include "documents/comparison_report.hpp"
#include "documents/waste/waste_document.hpp"

#include <doctest/doctest.h>

#include <filesystem>
#include <fstream>
#include <regex>
#include <sstream>

using namespace routeweigh;
using namespace routeweigh::test;

namespace {

SourcePtr file(const std::string& path) {
    std::ifstream stream(ROUTEWEIGH_ROOT "/" + path);
    REQUIRE(stream);
    std::ostringstream text;
    text << stream.rdbuf();
    return make_source(path, text.str());
}

/// What the command says; all that it points to lives as long.
struct Said {
    Said(const std::vector<SourcePtr>& sources, const std::string& jurisdiction, double pots,
         const std::vector<SourcePtr>& log_files = {})
        : rules(Catalogue::embedded(), streams::shipped_local_rules(Catalogue::embedded(), jurisdiction)) {
        Problems problems;
        routes = read_routes(sources, Catalogue::embedded(), problems);
        logs = read_container_logs(log_files, rules, problems);
        for (const Route& route : routes)
            wastes.push_back(streams::assess_class(route, pots, rules, logs));
        document = waste_document({&rules, &logs, wastes, pots, 1});
        text = text_of(document);
    }
    bool holds(const std::string& part) const { return text.find(part) != std::string::npos; }

    streams::StreamRules rules;
    std::vector<Route> routes;
    std::vector<streams::ContainerLog> logs;
    std::vector<streams::ClassWaste> wastes;
    writing::Document document;
    std::string text;
};

std::vector<SourcePtr> shipped_sources() {
    std::vector<SourcePtr> list;
    for (const auto& entry : std::filesystem::recursive_directory_iterator(ROUTEWEIGH_ROOT "/routes"))
        if (entry.path().extension() == ".json" &&
            entry.path().string().find(".schema.") == std::string::npos)
            list.push_back(file(std::filesystem::relative(entry.path(), ROUTEWEIGH_ROOT).string()));
    return list;
}

const std::string a3 = "routes/4-bromoacetanilide/A3.json";

} // namespace

TEST_CASE("every stream of every shipped route stands in the document with its container or a stop") {
    for (const char* jurisdiction : {"US", "EU"}) {
        const Said said(shipped_sources(), jurisdiction, 24);
        CHECK(said.wastes.size() >= 25); // every route that is shipped
        for (const streams::ClassWaste& one : said.wastes)
            for (const streams::StreamAdvice& advice : one.waste.streams) {
                INFO(one.route->id << ": " << advice.stream.name);
                CHECK(said.holds("Why: " + advice.stream.title + " to "));
                CHECK(said.holds(advice.decision.goes_to));
            }
    }
}

TEST_CASE("no page calls anything safe, and every page has the cautions") {
    static const std::regex word("\\bsafer?\\b", std::regex::icase);
    for (const char* jurisdiction : {"US", "EU"}) {
        const Said said(shipped_sources(), jurisdiction, 24);
        CHECK_FALSE(std::regex_search(said.text, word));
        CHECK(said.holds("licensed waste contractor"));
        CHECK(said.holds("no conflict found by this method"));
    }
}

TEST_CASE("mismatches come first, with composition, reason and both names") {
    const Said said({file(a3)}, "EU", 24);
    const std::size_t handout = said.text.find("14 % ethanol by volume, screened flash point about 40 degC");
    REQUIRE(handout != std::string::npos);
    CHECK(said.holds("handout says \"aqueous, halide-bearing\", should go to flammable non-halogenated"));
    CHECK(handout < said.text.find("The streams of A3 and their containers"));
}

TEST_CASE("quench and gas are told for a pot and for the room") {
    const Said said({file(a3)}, "US", 24);
    CHECK(said.holds("covers full conversion"));
    CHECK(said.holds("have "));
    CHECK(said.holds("more sodium metabisulfite ready"));
    CHECK(said.holds("a room of 24"));
    CHECK(said.holds("base before any acid"));
    CHECK(said.holds("starch-iodide"));
    CHECK(said.holds("in a vessel of at least"));
}

TEST_CASE(
    "the weak acid of what goes to a neutral container is told, and so is that other weak acid may stay") {
    const Said a1({file("routes/4-bromoacetanilide/A1.json")}, "EU", 1);
    CHECK(a1.holds("The weak acid of filtrate and washes takes base too, as its line says."));
    CHECK_FALSE(a1.holds("only if local rules ask for it"));
    CHECK(a1.holds("base for 120 mmol weak acid too, until paper shows pH 6 to 9"));
    const Said a5({file("routes/4-bromoacetanilide/A5.json")}, "EU", 1);
    CHECK(a5.holds("Weak acid only if local rules ask for it."));
}

TEST_CASE("what the log holds is named, with both substances and the standing") {
    const SourcePtr log = make_source("log.json", R"({"container": "aqueous, neutral", "additions": [
        {"date": "2026-02-02", "material": "household bleach 6 %", "amount": "500 mL"}]})");
    const Said said({file(a3)}, "US", 24, {log});
    CHECK(said.holds("with what the container holds by its log: do not add"));
    CHECK(said.holds("sodium hypochlorite"));
    CHECK(said.holds("remembered"));
    const SourcePtr brine = make_source("log.json", R"({"container": "aqueous, neutral", "additions": [
        {"date": "2026-02-02", "material": "water", "amount": "500 mL"}]})");
    const Said quiet({file("routes/4-chloro-4-methoxychalcone/H3.json")}, "US", 24, {brine});
    CHECK(quiet.holds("no conflict found by this method"));
}

TEST_CASE("logs of one container, and faults of several logs, are reported together") {
    const streams::StreamRules rules(Catalogue::embedded(),
                                     streams::shipped_local_rules(Catalogue::embedded(), "US"));
    const SourcePtr one = make_source("one.json", R"({"container": "heavy metal", "additions": []})");
    const SourcePtr two = make_source("two.json", R"({"container": "metal", "additions": []})");
    const SourcePtr bad = make_source("bad.json", R"({"container": "metall", "additions": []})");
    Problems warnings;
    try {
        read_container_logs({one, two, bad}, rules, warnings);
        FAIL("not refused");
    } catch (const InputError& error) {
        CHECK(error.problems.size() == 2);
    }
}

TEST_CASE("the comparison report says where the waste goes, for people only") {
    const Comparison comparison = compare_folder("4-bromoacetanilide", "A1");
    const writing::Document report = comparison_report(comparison);
    const std::string text = text_of(report);
    CHECK(text.find("Where the waste goes") != std::string::npos);
    CHECK(text.find("Containers, quench and gas of one pot") != std::string::npos);
    CHECK(text.find("Where the waste goes") < text.find("What is in the flask"));
    CHECK(text.find("A7a, filtrate and washes") != std::string::npos);
    CHECK(text.find("where the container is the neutral one their weak acid too") != std::string::npos);
    CHECK(text.find("Bromine over time, estimated, in one pot") != std::string::npos);
    CHECK(text.find("A4, A5, A6, A7a and A7b: the route files state no half-life") != std::string::npos);
    CHECK(comparison_report(comparison, writing::Reader::programs).blocks.empty());
}
