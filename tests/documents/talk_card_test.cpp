// SPDX-License-Identifier: MIT
#include "documents/compared.hpp"
#include "documents/papers.hpp"
#include "documents/papers/talk_points.hpp"
#include "documents/talk_card.hpp"

#include <doctest/doctest.h>

#include <algorithm>

namespace routeweigh {
namespace {

TEST_CASE("a talk card names at most three hazards and two streams, the severe and the heavy first") {
    for (const std::string& file : test::shipped_routes()) {
        CAPTURE(file);
        const auto laid_out = test::lay_out_file(file);
        const auto hazards = documents::talk_hazards(laid_out->experiment());
        for (std::size_t i = 1; i < hazards.size(); ++i)
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
