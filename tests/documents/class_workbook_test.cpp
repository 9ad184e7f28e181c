// SPDX-License-Identifier: MIT
// Class results as a spreadsheet: which rows it holds. That its formulas compute the same is the matter of an
// oracle.
#include "app/results_session.hpp"
#include "app/session.hpp"
#include "documents/papers.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <string>
#include <variant>
#include <vector>

namespace routeweigh {
namespace {

TEST_CASE("a workbook of class results holds every row once, and no class whose rows are not kept") {
    const auto laid_out = test::lay_out_file("4-bromoacetanilide/A3.json");
    const Assessment& route = laid_out->experiment().assessment();
    const auto results_of = [&](const std::string& table) {
        Problems problems;
        return read_results(route, "", "class.csv", bytes_of(table), problems);
    };
    const auto words_in = [](const writing::Workbook& book) {
        std::vector<std::string> words;
        for (const auto& row : book.sheets.front().rows)
            for (const writing::SheetCell& cell : row) {
                if (const auto* text = std::get_if<std::string>(&cell.value)) words.push_back(*text);
                if (!cell.formula.empty()) words.push_back(cell.formula);
            }
        return words;
    };
    const auto count = [](const std::vector<std::string>& words, const std::string& word) {
        return std::count(words.begin(), words.end(), word);
    };
    const auto some =
        words_in(results_workbook(route, results_of("bench,product (g)\nA1,1.7\nA2,9\nA3,1.5\n")));
    for (const char* bench : {"A1", "A2", "A3"})
        CHECK(count(some, bench) == 1);
    CHECK(count(some, "=MEDIAN(E14:E15)") == 1); // 9 g is more than can form
    const auto none = words_in(results_workbook(route, results_of("bench,product (g)\nA1,9\n")));
    CHECK(count(none, "No result is counted.") == 1);
    CHECK(
        std::none_of(none.begin(), none.end(), [](const std::string& one) { return one.starts_with("="); }));
    std::string many = "bench,product (g)\n";
    for (int i = 0; i <= 500; ++i)
        many += "A" + std::to_string(i) + ",1.7\n";
    CHECK_THROWS_AS(results_workbook(route, results_of(many)), CallError);
}

} // namespace
} // namespace routeweigh
