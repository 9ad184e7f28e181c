// SPDX-License-Identifier: MIT
// What comes onto the bench is what stands in bottles, judged as mixtures.
#include "documents/bench.hpp"

#include "assess/bench/bottles.hpp"
#include "assess/hazard/statement.hpp"
#include "chemistry/catalogue.hpp"
#include "documents/compared.hpp"

#include <doctest/doctest.h>

#include <algorithm>

namespace routeweigh {
namespace {

using documents::BenchBottle;
using documents::BenchHazard;

std::vector<BenchBottle> bench_of_route(const std::string& id, MixtureRegime regime) {
    static const Comparison comparison = test::compare_folder("4-bromoacetanilide", "A1");
    const ClassificationRules rules(*comparison.baseline().rules().catalogue, {regime, {}});
    for (std::size_t i = 0; i < comparison.routes().size(); ++i) {
        const Assessment& route = comparison.route(i);
        if (route.route().id == id)
            return documents::bench_of(route, classify_bottles(route.flat(), route.evaluation(), rules));
    }
    FAIL("no route " << id);
    return {};
}

const BenchBottle& bottle_with(const std::vector<BenchBottle>& bench, const std::string& substance) {
    const auto holds = [&](const BenchBottle& bottle) {
        const auto& parts = bottle.material->components;
        return std::any_of(parts.begin(), parts.end(),
                           [&](const Component& part) { return part.substance->id == substance; });
    };
    const auto found = std::find_if(bench.begin(), bench.end(), holds);
    REQUIRE(found != bench.end());
    return *found;
}

TEST_CASE("lasting harm is named by what it is") {
    // Regulation (EC) No 1272/2008, Annex VI (remembered): potassium bromate is Carc. 1B, H350.
    const std::vector<BenchBottle> bench = bench_of_route("A2", MixtureRegime::eu);
    CHECK(bottle_with(bench, "potassium-bromate").hazards.contains(BenchHazard::long_term));
    CHECK(documents::words(BenchHazard::long_term) == "serious health hazard");
}

TEST_CASE("hydrogen peroxide of 30 % damages eyes and neither burns skin nor oxidises as the neat one does") {
    // Regulation (EC) No 1272/2008, Annex VI, index number 008-003-00-9 (remembered): Ox. Liq. 2 from 50 %,
    // Skin Corr. 1B from 50 %, Skin Irrit. 2 from 35 %, Eye Dam. 1 from 8 %.
    const std::vector<BenchBottle> bench = bench_of_route("A3", MixtureRegime::eu);
    const BenchBottle& peroxide = bottle_with(bench, "hydrogen-peroxide");
    CHECK(peroxide.material->name.find("30 %") != std::string::npos);
    CHECK(peroxide.hazards == std::set{BenchHazard::corrosive, BenchHazard::harmful});
    CHECK(std::count(peroxide.statements.begin(), peroxide.statements.end(), "H318") == 1);
    CHECK(std::count(peroxide.statements.begin(), peroxide.statements.end(), "H314") == 0);
    REQUIRE(peroxide.reactants.size() == 1);
    CHECK(peroxide.reactants.front()->id == "hydrogen-peroxide");
}

TEST_CASE("every statement of the catalogue has its kind, the lesser categories the kind of the greater") {
    std::size_t seen = 0;
    for (const Substance* substance : Catalogue::embedded().all_substances())
        for (const GhsEntry& entry : substance->ghs) {
            CAPTURE(entry.statement);
            CHECK(documents::kind_of(statement_number(entry.statement)) != BenchHazard::other);
            ++seen;
        }
    CHECK(seen > 300);
    // Numbers by the GHS, Annex 3 (remembered): category 2 behind category 1.
    for (const auto& [greater, lesser] :
         {std::pair{340, 341}, {350, 351}, {360, 361}, {370, 371}, {372, 373}})
        CHECK((documents::kind_of(greater) == BenchHazard::long_term &&
               documents::kind_of(lesser) == BenchHazard::long_term));
    for (const int water : {400, 410, 411, 412, 413})
        CHECK(documents::kind_of(water) == BenchHazard::aquatic);
    CHECK(documents::kind_of(227) == BenchHazard::flammable);
    CHECK(documents::kind_of(999) == BenchHazard::other);
}

TEST_CASE("every statement that a label can print has an urgency and a kind") {
    const MixtureRules rules = read_mixture_rules(Catalogue::embedded());
    std::size_t seen = 0;
    for (int number = 200; number < 500; ++number) {
        const std::string statement = "H" + std::to_string(number);
        if (rules.labels.text(statement).empty()) continue;
        CAPTURE(statement);
        CHECK(bench::urgency(statement) > 0);
        CHECK(documents::kind_of(number) != BenchHazard::other);
        ++seen;
    }
    CHECK(seen > 60);
    // Numbers by the GHS, Annex 3 (remembered): in this program no substance and no label brings them yet.
    for (const int number : {223, 229, 230, 231, 232, 282, 283, 284}) {
        CAPTURE(number);
        CHECK(bench::urgency("H" + std::to_string(number)) > 0);
        CHECK(documents::kind_of(number) != BenchHazard::other);
    }
}

TEST_CASE("water is no bottle of the bench, and every other bought bottle is there once") {
    for (const char* id : {"A1", "A4", "A7a"}) {
        CAPTURE(id);
        const std::vector<BenchBottle> bench = bench_of_route(id, MixtureRegime::us);
        for (std::size_t i = 0; i < bench.size(); ++i) {
            CAPTURE(bench[i].material->name);
            const auto& parts = bench[i].material->components;
            CHECK_FALSE((parts.size() == 1 && parts.front().substance->id == "water"));
            CHECK(documents::find_on_bench(bench, bench[i].material) == &bench[i]);
            if (i > 0) CHECK(bench[i].grams <= bench[i - 1].grams);
        }
    }
}

} // namespace
} // namespace routeweigh
