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

TEST_CASE("a talk card names at most three hazards, a poison first, then the severe and the heavy; and every "
          "stream to stop at, then the largest") {
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
        const auto& streams = laid_out->experiment().waste().streams;
        const auto stops = static_cast<std::size_t>(
            std::count_if(streams.begin(), streams.end(), [](const streams::StreamAdvice& advice) {
                return advice.decision.outcome == streams::Decision::Outcome::own_bottle;
            }));
        CHECK(tables[1].rows.size() <= std::max<std::size_t>(2, stops));
        for (std::size_t i = 0; i < tables[1].rows.size(); ++i)
            CHECK((tables[1].rows[i].cells[2].text.rfind("STOP: ", 0) == 0) == (i < stops));
        for (const auto& hazard : hazards) // shown, or named as not shown
            CHECK(test::text_of(card).find(hazard.title) != std::string::npos);
        CHECK((test::text_of(card).find("A poison first") != std::string::npos) ==
              (hazards.size() > 3 && poison != hazards.end()));
    }
}

TEST_CASE("grams on a talk card are those of the bench sheet, step by step") {
    for (const std::string& file : test::shipped_routes()) {
        CAPTURE(file);
        const auto laid_out = test::lay_out_file(file);
        const auto& steps = laid_out->experiment().steps();
        for (const auto& hazard : documents::talk_hazards(laid_out->experiment()))
            for (const auto& bottle : hazard.bottles) {
                if (hazard.id == "bromine_set_free") continue;
                CAPTURE(bottle.name);
                for (const auto& amount : bottle.amounts) {
                    double on_sheet = 0;
                    for (const bench::Reagent& reagent :
                         steps[static_cast<std::size_t>(amount.step)].reagents)
                        if (reagent.material().name == bottle.name) on_sheet += reagent.grams;
                    CHECK(amount.grams == doctest::Approx(on_sheet));
                }
            }
    }
    const std::string card =
        test::text_of(talk_card(test::lay_out_file("5-5-diphenylhydantoin/D1a-D2c-D3a.json")->experiment()));
    CHECK(card.find("sodium cyanide (50.00\u00A0g in step 1)") !=
          std::string::npos); // for 500 g of benzaldehyde
    CHECK(card.find("STOP: own bottle, marked cyanide, kept basic; ask ") != std::string::npos);
}

TEST_CASE("a talk card says before a quench that its heat may boil the liquor, where it may") {
    const auto warns = [](const char* file) {
        return test::text_of(talk_card(test::lay_out_file(file)->experiment())).find("may boil the liquor") !=
               std::string::npos;
    };
    CHECK(warns("adipic-acid/E3.json"));
    CHECK_FALSE(warns("4-bromoacetanilide/A3.json"));
}

TEST_CASE("two gases leave, and one leaves") {
    const std::string d3 =
        test::text_of(talk_card(test::lay_out_file("5-5-diphenylhydantoin/D1a-D2c-D3a.json")->experiment()));
    CHECK(d3.find("nitrogen leaves.") != std::string::npos);
    for (const std::string& file : test::shipped_routes()) {
        CAPTURE(file);
        const std::string card = test::text_of(talk_card(test::lay_out_file(file)->experiment()));
        const std::size_t at = card.find("Bubbles: ");
        if (at == std::string::npos) continue;
        const std::string line = card.substr(at, card.find('.', at) - at);
        CHECK(line.ends_with(line.find(" and ") != std::string::npos ? " leave" : " leaves"));
    }
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
