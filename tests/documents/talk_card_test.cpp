// SPDX-License-Identifier: MIT
#include "documents/bench_sheet.hpp"
#include "documents/compared.hpp"
#include "documents/papers.hpp"
#include "documents/papers/talk_points.hpp"
#include "documents/talk_card.hpp"

#include <doctest/doctest.h>

#include <algorithm>

namespace routeweigh {
namespace {

TEST_CASE("a talk card names at most three hazards and two streams, a poison first, then the severe and the "
          "heavy") {
    for (const std::string& file : test::shipped_routes()) {
        CAPTURE(file);
        const auto laid_out = test::lay_out_file(file);
        const auto hazards = documents::talk_hazards(laid_out->experiment());
        const auto poison = std::find_if(hazards.begin(), hazards.end(),
                                         [](const auto& hazard) { return hazard.id == "poison"; });
        CHECK((poison == hazards.begin() || poison == hazards.end()));
        for (std::size_t i = poison == hazards.end() ? 1 : 2; i < hazards.size(); ++i)
            CHECK((hazards[i - 1].urgency > hazards[i].urgency ||
                   (hazards[i - 1].urgency == hazards[i].urgency &&
                    hazards[i - 1].grams() >= hazards[i].grams())));
        const writing::Document card = talk_card(laid_out->experiment());
        const auto tables = test::tables_in(card.blocks);
        REQUIRE(tables.size() == 2);
        CHECK(tables[0].rows.size() == std::min<std::size_t>(3, hazards.size()));
        CHECK(tables[1].rows.size() <= 2);
    }
}

TEST_CASE("grams on a talk card are those that one pot of the last step takes") {
    // The route needs a fraction of its first step and several runs of its second: all steps once would be
    // wrong.
    const auto laid_out = test::lay_out_file("5-5-diphenylhydantoin/D1a-D2c-D3a.json");
    const bench::Experiment& experiment = laid_out->experiment();
    const auto grams_of = [&](const std::string& id, const std::string& name) {
        for (const auto& hazard : documents::talk_hazards(experiment))
            for (const auto& bottle : hazard.bottles)
                if (hazard.id == id && bottle.name == name) return bottle.grams;
        return 0.0;
    };
    double once = 0, taken = 0;
    for (const bench::BenchStep& step : experiment.steps())
        for (const bench::Reagent& reagent : step.reagents)
            if (reagent.material().name == "ethanol 95 % by volume") {
                once += reagent.grams;
                taken +=
                    reagent.grams *
                    experiment.assessment().evaluation().steps[static_cast<std::size_t>(step.index)].scale;
            }
    CHECK(taken < 0.5 * once);
    CHECK(grams_of("fire", "ethanol 95 % by volume") == doctest::Approx(taken));
    // 50 g of cyanide for 500 g of benzaldehyde, of which the last step takes 2 to 3 %.
    CHECK(grams_of("poison", "sodium cyanide") > 1.0);
    CHECK(grams_of("poison", "sodium cyanide") < 1.5);
}

TEST_CASE("a product that harms for good is on the bench sheet and the talk card") {
    // 5,5-diphenylhydantoin is H360D in the catalogue, and no bottle of its route is.
    const auto laid_out = test::lay_out_file("5-5-diphenylhydantoin/D1b-D2c-D3a.json");
    const auto hazards = documents::talk_hazards(laid_out->experiment());
    const auto lasting = std::find_if(hazards.begin(), hazards.end(),
                                      [](const auto& hazard) { return hazard.id == "lasting"; });
    REQUIRE(lasting != hazards.end());
    CHECK(std::any_of(lasting->bottles.begin(), lasting->bottles.end(),
                      [](const auto& bottle) { return bottle.name == "5,5-diphenylhydantoin"; }));
    for (const auto edition : {documents::Edition::student, documents::Edition::key}) {
        const std::string sheet = test::text_of(bench_sheet(laid_out->experiment(), edition));
        CHECK(sheet.find("H360D") != std::string::npos);
    }
}

TEST_CASE("bromine that is poured is named as a bottle, bromine that is made as set free") {
    const auto ids = [](const std::string& file) {
        const auto laid_out = test::lay_out_file(file);
        std::vector<std::string> found;
        for (const auto& hazard : documents::talk_hazards(laid_out->experiment()))
            found.emplace_back(hazard.id);
        return found;
    };
    const auto has = [](const std::vector<std::string>& list, const char* id) {
        return std::find(list.begin(), list.end(), id) != list.end();
    };
    const auto poured = ids("4-bromoacetanilide/A1.json");
    CHECK(has(poured, "poison"));
    CHECK_FALSE(has(poured, "bromine_set_free"));
    CHECK(has(ids("4-bromoacetanilide/A3.json"), "bromine_set_free"));
    CHECK_FALSE(has(ids("adipic-acid/E2.json"), "bromine_set_free"));
}

} // namespace
} // namespace routeweigh
