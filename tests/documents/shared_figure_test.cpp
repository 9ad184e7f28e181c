// SPDX-License-Identifier: MIT
// One route file feeds every paper: a number that stands in two of them is the same number.
#include "app/stock_session.hpp"
#include "documents/bench_sheet.hpp"
#include "documents/compared.hpp"
#include "documents/papers.hpp"
#include "documents/talk_card.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <cstddef>
#include <set>

namespace routeweigh {
namespace {

using documents::Edition;

struct PaperMaker {
    const char* name;
    writing::Document (*make)(const bench::Experiment&);
};

/// A further paper joins by a line here; its machine data holds machine_of(figure) for what it shares.
constexpr PaperMaker papers[] = {
    {"bench sheet, key",
     [](const bench::Experiment& experiment) { return bench_sheet(experiment, Edition::key); }},
    {"bench sheet, student",
     [](const bench::Experiment& experiment) { return bench_sheet(experiment, Edition::student); }},
    {"talk card", [](const bench::Experiment& experiment) { return talk_card(experiment); }},
};

using StatedFigures = std::map<std::string, std::vector<std::pair<std::string, test::Stated>>>;

StatedFigures stated_figures_of(const bench::Experiment& experiment) {
    StatedFigures all;
    for (const PaperMaker& paper : papers) {
        const writing::Document document = paper.make(experiment);
        for (const auto& [id, list] : test::shared_figures(document))
            for (const test::Stated& stated : list)
                all[id].emplace_back(paper.name, stated);
    }
    return all;
}

/// Checks that all statements of one number agree; the count of numbers that stand in two papers or more.
std::size_t check_agreement(const StatedFigures& statements) {
    std::size_t shared = 0;
    for (const auto& [id, list] : statements) {
        CAPTURE(id);
        const test::Stated* first = nullptr;
        std::set<std::string> where;
        for (const auto& [paper, stated] : list) {
            CAPTURE(paper);
            where.insert(paper);
            CHECK(stated.unit == list.front().second.unit);
            if (stated.open) continue;
            if (first == nullptr) first = &stated;
            CHECK(stated.value == first->value);
            CHECK(stated.text == first->text);
        }
        if (where.size() > 1) ++shared;
    }
    return shared;
}

TEST_CASE("a number that stands in two papers is the same number, in value and in print") {
    for (const std::string& file : test::shipped_routes()) {
        CAPTURE(file);
        const auto laid_out = test::lay_out_file(file);
        CHECK(check_agreement(stated_figures_of(laid_out->experiment())) >= 3);
    }
}

TEST_CASE("what the machine data state also stands in the text of the paper") {
    const auto laid_out = test::lay_out_file("4-bromoacetanilide/A3.json");
    for (const PaperMaker& paper : papers) {
        const writing::Document document = paper.make(laid_out->experiment());
        const std::string text = test::text_of(document);
        for (const auto& [id, list] : test::shared_figures(document)) {
            CAPTURE(id);
            if (!list.front().open) CHECK(text.find(list.front().text) != std::string::npos);
        }
    }
}

TEST_CASE("changing one amount in the route file changes every paper that states it") {
    std::string text = test::text_of_route("4-bromoacetanilide/A3.json");
    const StatedFigures before = stated_figures_of(test::lay_out_text(text)->experiment());
    const std::string old_amount = "\"2.107 g\"";
    REQUIRE(text.find(old_amount) != std::string::npos);
    text.replace(text.find(old_amount), old_amount.size(), "\"2.50 g\"");
    const StatedFigures after = stated_figures_of(test::lay_out_text(text)->experiment());
    check_agreement(after);
    const std::string mass = "A3/bromination/1.3/mass";
    REQUIRE(after.count(mass) == 1);
    for (const auto& [paper, stated] : after.at(mass))
        CHECK(stated.value == doctest::Approx(2.5));
    // Amount, volume, equivalents and the stream that takes the spare acid follow.
    std::size_t changed = 0;
    for (const auto& [id, list] : after)
        if (!list.front().second.open && list.front().second.value != before.at(id).front().second.value)
            ++changed;
    CHECK(changed >= 5);
}

TEST_CASE("the stock list of one student asks for what the bench sheet weighs out") {
    for (const std::string& file : test::shipped_routes()) {
        CAPTURE(file);
        const auto laid_out = test::lay_out_file(file);
        if (laid_out->experiment().steps().size() > 1)
            continue; // there the stock list scales the first steps
        std::map<std::string, double> weighed;
        for (const bench::Reagent& reagent : laid_out->experiment().steps().front().reagents)
            weighed[reagent.material().name] += reagent.grams;
        Problems problems;
        const writing::Document stock =
            stock_document(laid_out->experiment().assessment(), {}, Catalogue::embedded(), problems);
        const auto& needs = std::get<writing::MachineList>(test::member(*stock.machine, "needs").value);
        CHECK(needs.size() == weighed.size());
        for (const writing::MachineTree& need : needs) {
            const std::string material = std::get<std::string>(test::member(need, "material").value);
            CAPTURE(material);
            CHECK(test::number_of(test::member(need, "grams_per_run")) ==
                  doctest::Approx(weighed[material]).epsilon(1e-12));
        }
    }
}

} // namespace
} // namespace routeweigh
