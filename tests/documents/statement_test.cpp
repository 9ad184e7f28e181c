// SPDX-License-Identifier: MIT
// What the section "In short" claims, by the kinds of its statements; their words are free to change.
#include "documents/compared.hpp"
#include "documents/findings/finding.hpp"
#include "support/route_builder.hpp"

#include <doctest/doctest.h>
#include <fmt/format.h>

#include <algorithm>

using namespace routeweigh;
using namespace routeweigh::documents;
using namespace routeweigh::test;

namespace {

std::vector<std::string> routes_of(const Statements& statements, std::string_view kind) {
    std::vector<std::string> routes;
    for (const Statement& statement : statements)
        if (statement.kind == kind)
            routes.insert(routes.end(), statement.routes.begin(), statement.routes.end());
    return routes;
}

bool claims(const Statements& statements, std::string_view kind, const std::string& route) {
    const auto routes = routes_of(statements, kind);
    return std::find(routes.begin(), routes.end(), route) != routes.end();
}

/// Benzyl alcohol from invented amounts: grams of solvent are all that tells two such routes apart.
std::string hydrogenation(const std::string& id, const std::string& solvent, bool assumed) {
    std::string text = route(
        "benzyl alcohol", {step("benzyl alcohol", "benzaldehyde", "benzaldehyde + hydrogen -> benzyl alcohol",
                                {stage("reaction",
                                       {charge("benzaldehyde", "10 mmol", "substrate"),
                                        charge("hydrogen", "10 mmol", "reductant"),
                                        charge("ethyl acetate", solvent, "solvent")},
                                       {reaction("benzaldehyde + hydrogen -> benzyl alcohol")})},
                                fmt::format(R"("isolated": {{"yield": "80 %", "assumed": {}}})", assumed))});
    const std::string_view anonymous = R"("id": "T")";
    text.replace(text.find(anonymous), anonymous.size(), fmt::format(R"("id": "{}")", id));
    return text;
}

Statements statements_of(const Comparison& comparison) {
    return find_statements(ReportView(comparison));
}

} // namespace

TEST_CASE("the honest finding of the bromination comes out by itself") {
    const Statements statements = statements_of(compare_folder("4-bromoacetanilide", "A1"));
    CHECK(routes_of(statements, "atom_economy.higher") == std::vector<std::string>{"A3", "A3w"});
    CHECK(routes_of(statements, "greener_sounding.atom_economy") == std::vector<std::string>{"A3", "A3w"});
    CHECK(routes_of(statements, "greener_sounding.heaviest") == std::vector<std::string>{"A5"});
    CHECK(routes_of(statements, "equation.excess") == std::vector<std::string>{"A2b"});
    CHECK(routes_of(statements, "mass.higher") == std::vector<std::string>{"A5"});
    CHECK(routes_of(statements, "mass.lower").empty());
    CHECK(claims(statements, "mass.depends", "A3"));
    CHECK(routes_of(statements, "bromine.handled") == std::vector<std::string>{"A1"});
    CHECK(routes_of(statements, "bromine.carried") == std::vector<std::string>{"A7a", "A7b"});
    CHECK(claims(statements, "moved.new_hazard", "A3"));
    CHECK(claims(statements, "moved.made_elsewhere", "A3"));
}

TEST_CASE(
    "of every set each route but the baseline has one verdict on mass, and it is that of the comparison") {
    for (const RouteSet& set : shipped_sets()) {
        CAPTURE(set.folder);
        const Comparison comparison = compare_folder(set.folder, set.baseline);
        const Statements statements = statements_of(comparison);
        const std::pair<MassVerdict, const char*> kinds[] = {{MassVerdict::lower, "mass.lower"},
                                                             {MassVerdict::higher, "mass.higher"},
                                                             {MassVerdict::depends, "mass.depends"},
                                                             {MassVerdict::within_yield, "mass.within_yield"},
                                                             {MassVerdict::equal, "mass.equal"}};
        for (std::size_t i = 0; i < comparison.routes().size(); ++i) {
            if (i == comparison.baseline_index()) continue;
            const std::string& id = comparison.route(i).route().id;
            CAPTURE(id);
            for (const auto& [verdict, kind] : kinds)
                CHECK(claims(statements, kind, id) == (comparison.against_baseline(i).mass == verdict));
            // What the summary calls firm or open must be so.
            const MassVerdict verdict = *comparison.against_baseline(i).mass;
            if (verdict == MassVerdict::lower || verdict == MassVerdict::higher)
                CHECK(claims(statements, "summary.firm", id));
            if (verdict == MassVerdict::depends || verdict == MassVerdict::within_yield)
                CHECK(claims(statements, "summary.open", id));
        }
    }
}

TEST_CASE("a difference that a yield can turn round is stated as no order, a wide one as less") {
    const auto near =
        statements_of(compare_texts({hydrogenation("a", "10.0 g", true), hydrogenation("b", "9.6 g", true)}));
    CHECK(claims(near, "mass.within_yield", "b"));
    CHECK_FALSE(claims(near, "mass.lower", "b"));

    const auto wide =
        statements_of(compare_texts({hydrogenation("a", "10.0 g", true), hydrogenation("b", "2.0 g", true)}));
    CHECK(claims(wide, "mass.lower", "b"));
    CHECK_FALSE(claims(wide, "mass.within_yield", "b"));

    // Measured yields are not turned round by assuming others.
    const auto measured = statements_of(
        compare_texts({hydrogenation("a", "10.0 g", false), hydrogenation("b", "9.6 g", false)}));
    CHECK(claims(measured, "mass.lower", "b"));
    CHECK(routes_of(measured, "standing.yield").empty());

    const auto same = statements_of(
        compare_texts({hydrogenation("a", "10.0 g", true), hydrogenation("b", "10.0 g", true)}));
    CHECK(claims(same, "mass.equal", "b"));
    CHECK(claims(same, "atom_economy.equal", "b"));
}

TEST_CASE("bromine is spoken of only where there is any") {
    for (const RouteSet& set : shipped_sets()) {
        CAPTURE(set.folder);
        bool spoken = false;
        for (const Statement& statement : statements_of(compare_folder(set.folder, set.baseline)))
            spoken = spoken || statement.topic == Topic::bromine;
        CHECK(spoken == (set.folder == "4-bromoacetanilide"));
    }
}

TEST_CASE("no statement is made of a single route") {
    CHECK(statements_of(compare_texts({hydrogenation("a", "10.0 g", true)})).empty());
}
