// SPDX-License-Identifier: MIT
#include "assess/stock/pack_choice.hpp"

#include <doctest/doctest.h>

#include <fmt/format.h>

#include <algorithm>
#include <random>
#include <string>
#include <tuple>
#include <utility>
#include <vector>

using namespace routeweigh;
using namespace routeweigh::stock;

namespace {

PriceList packs_for_sale(const std::string& packs) {
    return read_price_list(
        make_source("prices.json", R"({"title": "t", "currency": "EUR", "date": "2026-08-15",
        "source": "invented", "packs": [)" +
                                       packs + "]}"),
        Catalogue::embedded());
}

const Material& material_named(const char* name) {
    return *Catalogue::embedded().find_material(name);
}

/// The cheapest by trying every number of every size: cost, packs, grams left over.
std::tuple<double, int, double> cheapest_by_trying_all(const std::vector<std::pair<int, int>>& sizes,
                                                       int need) {
    std::tuple<double, int, double> best{1e9, 0, 0};
    std::vector<int> taken(sizes.size(), 0);
    for (;;) {
        int grams = 0, price = 0, count = 0;
        for (std::size_t i = 0; i < sizes.size(); ++i) {
            grams += taken[i] * sizes[i].first;
            price += taken[i] * sizes[i].second;
            count += taken[i];
        }
        if (grams >= need) best = std::min(best, {price, count, grams - need});
        std::size_t i = 0;
        while (i < sizes.size() && ++taken[i] > need / sizes[i].first + 1)
            taken[i++] = 0;
        if (i == sizes.size()) return best;
    }
}

} // namespace

TEST_CASE("packs are those that cost least together; what is left over is told") {
    const PriceList prices = packs_for_sale(R"({"material": "acetanilide", "pack": "100 g", "price": 10},
        {"material": "acetanilide", "pack": "250 g", "price": 18},
        {"material": "ethanol 95 % by volume", "pack": "1 L", "price": 12})");
    const Material& acetanilide = material_named("acetanilide");
    CHECK(choose_packs(prices, acetanilide, 90).words() == "1 x 100 g");
    CHECK(choose_packs(prices, acetanilide, 100).words() == "1 x 100 g");
    const PackChoice two = choose_packs(prices, acetanilide, 101);
    CHECK(two.words() == "1 x 250 g"); // 18 beats 2 x 10
    CHECK(two.left_over == doctest::Approx(149));
    CHECK(choose_packs(prices, acetanilide, 251).words() == "1 x 250 g + 1 x 100 g"); // 28 beats 30 and 36
    CHECK(choose_packs(prices, acetanilide, 0).empty());
    CHECK(choose_packs(prices, material_named("water"), 5).empty());
    // A litre of it weighs 811.4 g.
    CHECK(choose_packs(prices, material_named("ethanol 95 % by volume"), 811.4).count() == 1);
    CHECK(choose_packs(prices, material_named("ethanol 95 % by volume"), 811.5).count() == 2);
}

TEST_CASE("no combination of packs is cheaper, by trying all of them") {
    const Material& acetanilide = material_named("acetanilide");
    std::mt19937 draws(7); // its numbers are the same everywhere
    const auto draw = [&](int from, int to) {
        return from + static_cast<int>(draws() % static_cast<unsigned>(to - from + 1));
    };
    int mixed = 0;
    for (int trial = 0; trial < 400; ++trial) {
        std::vector<std::pair<int, int>> sizes;
        std::string packs;
        for (int i = draw(1, 4); i > 0; --i) {
            const int size = draw(5, 40);
            sizes.emplace_back(size,
                               draw(2 + size / 2, 2 + size)); // a gram of a large pack tends to cost less
            packs += fmt::format(R"({}{{"material": "acetanilide", "pack": "{} g", "price": {}}})",
                                 packs.empty() ? "" : ", ", sizes.back().first, sizes.back().second);
        }
        const int need = draw(1, 90);
        const PackChoice found = choose_packs(packs_for_sale(packs), acetanilide, need);
        const auto [cost, count, left_over] = cheapest_by_trying_all(sizes, need);
        CHECK_MESSAGE(found.cost == doctest::Approx(cost), packs, " for ", need);
        CHECK_MESSAGE(found.count() == count, packs, " for ", need);
        CHECK_MESSAGE(found.left_over == doctest::Approx(left_over), packs, " for ", need);
        mixed += found.packs.size() > 1 ? 1 : 0;
    }
    CHECK(mixed > 50);
}

TEST_CASE("litres in packs of five and of one: 5.97 L take one of each") {
    const PriceList prices =
        packs_for_sale(R"({"material": "ethanol 95 % by volume", "pack": "1 L", "price": 12.40},
        {"material": "ethanol 95 % by volume", "pack": "5 L", "price": 46.00})");
    const PackChoice packs = choose_packs(prices, material_named("ethanol 95 % by volume"), 5970 * 0.8114);
    CHECK(packs.words() == "1 x 5 L + 1 x 1 L");
    CHECK(packs.cost == doctest::Approx(58.40));
}

TEST_CASE("kilograms in packs that all have one price a gram are found at once") {
    const PriceList prices = packs_for_sale(R"({"material": "acetanilide", "pack": "1 g", "price": 1},
        {"material": "acetanilide", "pack": "10 g", "price": 10}, {"material": "acetanilide", "pack": "100 g", "price": 100},
        {"material": "acetanilide", "pack": "1 kg", "price": 1000})");
    CHECK(choose_packs(prices, material_named("acetanilide"), 12345.5).words() ==
          "12 x 1 kg + 3 x 100 g + 4 x 10 g + 6 x 1 g");
}

TEST_CASE("many sizes of nearly one price, and needs of very many packs, are covered in no time") {
    std::string odd;
    for (const char* grams : {"10.371", "10.757", "11.143", "11.531", "11.921", "12.313"})
        odd += fmt::format(R"({}{{"material": "acetanilide", "pack": "{} g", "price": {}}})",
                           odd.empty() ? "" : ", ", grams, 0.1 * std::stod(grams));
    const PriceList prices = packs_for_sale(odd);
    const PackChoice choice = choose_packs(prices, material_named("acetanilide"), 28'000);
    CHECK(choice.grams >= 28'000 * (1 - 1e-9));
    CHECK(choice.cost == doctest::Approx(2800).epsilon(0.001));

    const PriceList small = packs_for_sale(R"({"material": "acetanilide", "pack": "1 mg", "price": 0.01})");
    CHECK(choose_packs(small, material_named("acetanilide"), 1000).count() == 1'000'000);
    CHECK_THROWS_AS(packs_for_sale(R"({"material": "acetanilide", "pack": "1 ug", "price": 0.01})"),
                    InputError);
}
