// SPDX-License-Identifier: MIT
// What a class gets and what it orders, as spreadsheets: which rows and blanks they hold, and that each
// formula asks for what the stock list counted. That spreadsheet programs compute the same is the matter of
// an oracle.
#include "app/costs_session.hpp"
#include "app/house_records.hpp"
#include "app/results_session.hpp"
#include "app/session.hpp"
#include "documents/class_sheets.hpp"
#include "documents/courses.hpp"
#include "documents/papers.hpp"
#include "documents/route_workbook.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <set>
#include <sstream>
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

TEST_CASE("a workbook of class results leaves out what the tally leaves out, copies of a row among it") {
    const auto laid_out = test::lay_out_file("4-bromoacetanilide/A3.json");
    const Assessment& route = laid_out->experiment().assessment();
    Problems problems;
    const auto results = read_results(
        route, "", "class.csv", bytes_of("bench,product (g)\nA1,1.7\nA2,1.5\nA1,1.7\nA3,9\n"), problems);
    REQUIRE(results.all.count == 2);
    const writing::Workbook book = results_workbook(route, results);
    const auto& rows = book.sheets.front().rows;
    const auto place = [&](const char* words) {
        const auto found = std::find_if(rows.begin(), rows.end(), [&](const auto& row) {
            return !row.empty() && row.front().value == writing::SheetCell::words(words).value;
        });
        REQUIRE(found != rows.end());
        return found;
    };
    CHECK(place("results counted")->at(2).formula == "=COUNT(E14:E15)");
    const auto not_counted = place("Not counted");
    CHECK(not_counted - rows.begin() == 15); // row 16: two counted ones stand in 14 and 15
    CHECK(std::get<std::string>((not_counted + 1)->front().value) == "A1");
    CHECK(std::get<std::string>((not_counted + 2)->front().value) == "A3");
}

const writing::Sheet& sheet_named(const writing::Workbook& book, const std::string& name) {
    const auto found = std::find_if(book.sheets.begin(), book.sheets.end(),
                                    [&](const writing::Sheet& sheet) { return sheet.name == name; });
    REQUIRE(found != book.sheets.end());
    return *found;
}

/// nullptr for a blank.
const double* money_in(const writing::SheetCell& cell) {
    return std::get_if<double>(&cell.value);
}

bool says(const writing::Sheet& sheet, const std::string& words) {
    return std::get<std::string>(sheet.rows.at(1).front().value).find(words) != std::string::npos;
}

CostsRequest class_request(const std::string& prices) {
    CostsRequest request;
    request.size.students = 24;
    request.size.extra = "10 %";
    request.local = streams::shipped_local_rules(Catalogue::embedded(), "EU");
    if (!prices.empty()) request.prices = make_source("prices.json", prices);
    return request;
}

TEST_CASE("without prices no cost and no sum of a class is nought") {
    const auto laid_out = test::lay_out_file("4-bromoacetanilide/A3.json");
    const writing::Workbook book =
        class_workbook(laid_out->experiment().assessment(), class_request(""), Catalogue::embedded());
    const writing::Sheet &order = sheet_named(book, "Order"), &costs = sheet_named(book, "Costs");
    int cells = 0;
    const auto check_blank = [&](const writing::SheetCell& cell) {
        ++cells;
        CHECK(money_in(cell) == nullptr);
        CHECK(cell.formula.starts_with("=IF(COUNT("));
        CHECK(cell.number_format == "0.00;-0.00;"); // the third part, of a nought, is empty
    };
    for (std::size_t row = 3; row < order.rows.size(); ++row)
        check_blank(order.rows[row].at(7));
    for (std::size_t row = 3; row < costs.rows.size(); ++row)
        check_blank(costs.rows[row].at(5));
    CHECK(cells > 8);
    CHECK(says(order, "Without a price as the workbook was made, and so not in the sum: acetanilide, "));
    CHECK(says(costs, "acetanilide, "));
    CHECK(says(costs, "electricity, water."));
}

TEST_CASE("a cost is blank where the price is, and the sum is that of the rest") {
    const auto laid_out = test::lay_out_file("4-bromoacetanilide/A3.json");
    // Invented prices.
    const std::string prices =
        R"({"title": "t", "currency": "EUR", "date": "2026-08-15", "source": "invented",
        "packs": [{"material": "acetanilide", "pack": "25 g", "price": 4.50}], "electricity_per_kWh": 0.5})";
    const writing::Workbook book =
        class_workbook(laid_out->experiment().assessment(), class_request(prices), Catalogue::embedded());
    const writing::Sheet &order = sheet_named(book, "Order"), &costs = sheet_named(book, "Costs");
    double together = 0;
    int blank = 0;
    for (std::size_t row = 3; row + 1 < order.rows.size(); ++row) {
        const auto& cells = order.rows[row];
        const bool is_priced = std::get<std::string>(cells.front().value) == "acetanilide";
        CHECK((money_in(cells.at(5)) != nullptr) == is_priced);
        CHECK((money_in(cells.at(7)) != nullptr) == is_priced);
        if (is_priced)
            together = *money_in(cells.at(6)) * 4.50;
        else
            ++blank;
    }
    CHECK(together >= 4.50);
    CHECK(blank > 2);
    REQUIRE(money_in(order.rows.back().at(7)) != nullptr);
    CHECK(*money_in(order.rows.back().at(7)) == doctest::Approx(together));
    CHECK_FALSE(says(order, "acetanilide"));
    CHECK(says(order, "not in the sum: "));
    double sum = 0;
    for (std::size_t row = 3; row + 2 < costs.rows.size(); ++row)
        if (const double* money = money_in(costs.rows[row].at(5))) sum += *money;
    CHECK(sum >= together); // electricity with it
    const std::size_t last = costs.rows.size() - 1;
    REQUIRE(money_in(costs.rows[last - 1].at(5)) != nullptr);
    CHECK(*money_in(costs.rows[last - 1].at(5)) == doctest::Approx(sum));
    CHECK(*money_in(costs.rows[last].at(5)) == doctest::Approx(sum / 24));
    CHECK(says(costs, "disposal of "));
    CHECK(says(costs, "water."));
    CHECK_FALSE(says(costs, "electricity"));
}

/// The value of "=Stock!C7+0.25*Treatment!C4" or "=0" at the amounts as written.
double value_of(const std::string& formula, const course::ClassUse& use) {
    if (formula == "=0") return 0;
    double sum = 0;
    std::istringstream terms(formula.substr(1));
    for (std::string term; std::getline(terms, term, '+');) {
        const std::size_t star = term.find('*');
        const double share = star == std::string::npos ? 1.0 : std::stod(term);
        const std::string cell = star == std::string::npos ? term : term.substr(star + 1);
        const std::size_t row = std::stoul(cell.substr(cell.find("!C") + 2));
        const bool is_stock = cell.starts_with("Stock!");
        const auto& needs = is_stock ? use.stock.needs : use.stock.waste.needs;
        sum += share * needs.at(row - (is_stock ? 7 : 4)).grams;
    }
    return sum;
}

TEST_CASE("every line of an order asks for what the stock list needs, water for solutions with it") {
    const Catalogue& catalogue = Catalogue::embedded();
    const HouseRecords records(catalogue, streams::shipped_local_rules(catalogue, "EU"), nullptr);
    // A house without a tap has to order its water too.
    stock::Stockroom no_tap = records.house().stockroom;
    no_tap.from_tap.clear();
    const course::House house{catalogue, records.house().waste, no_tap, records.house().prices,
                              records.house().utilities};
    stock::ClassPlan plan;
    plan.students = 24;
    plan.extra = 0.1;
    int solutions = 0;
    for (const std::string& file : test::shipped_routes()) {
        INFO(file);
        const auto laid_out = test::lay_out_file(file);
        const course::ClassUse use = course::use_of_class(laid_out->experiment().assessment(), plan, house);
        solutions += static_cast<int>(use.stock.preparations.size());
        const writing::Sheet order = documents::order_sheet(use);
        REQUIRE(order.rows.size() == 3 + use.stock.lines.size() + 1);
        for (std::size_t i = 0; i < use.stock.lines.size(); ++i) {
            INFO(use.stock.lines[i].material->name);
            CHECK(value_of(order.rows[3 + i].at(1).formula, use) ==
                  doctest::Approx(use.stock.lines[i].needed()).epsilon(1e-9));
        }
    }
    CHECK(solutions > 0);
    const auto peroxide = test::lay_out_file("4-bromoacetanilide/A3.json");
    course::ClassUse use = course::use_of_class(peroxide->experiment().assessment(), plan, house);
    use.stock.lines.emplace_back();
    use.stock.lines.back().material = catalogue.find_material("bromine"); // what nothing asks for
    const writing::Sheet order = documents::order_sheet(use);
    CHECK(order.rows.at(order.rows.size() - 2).at(1).formula == "=0");
}

TEST_CASE("totals of one name have units that tell them apart") {
    const auto course = test::example_course();
    for (const course::Experiment& experiment : course->use().experiments) {
        const writing::Workbook book = route_workbook(experiment.use, course->house());
        const writing::Sheet& totals = sheet_named(book, "Totals");
        std::set<std::string> named; // "isolated product in g"
        for (std::size_t row = 3; row < totals.rows.size(); ++row) {
            const auto& cells = totals.rows[row];
            const std::string name =
                std::get<std::string>(cells[0].value) + " in " + std::get<std::string>(cells[2].value);
            CHECK_MESSAGE(named.insert(name).second, name);
        }
        CHECK(named.contains("isolated product in g"));
        CHECK(named.contains("isolated product in mol"));
    }
}

TEST_CASE("packs of several sizes are one row of the order, with the cost and the rest of all of them") {
    const auto course = test::example_course("10=../routes/adipic-acid/E2.json"); // 13 L of peroxide
    std::size_t mixed = 0;
    for (const course::Experiment& experiment : course->use().experiments) {
        const writing::Workbook book = route_workbook(experiment.use, course->house());
        const auto& rows = sheet_named(book, "Order").rows;
        for (const stock::StockLine& line : experiment.use.stock.lines) {
            if (line.packs.packs.size() < 2) continue;
            ++mixed;
            const auto row = std::find_if(rows.begin(), rows.end(), [&](const auto& cells) {
                return !cells.empty() &&
                       cells[0].value ==
                           writing::SheetCell::words(line.material->name + ", packs " + line.packs.words())
                               .value;
            });
            REQUIRE(row != rows.end());
            const auto value = [&](std::size_t column) { return std::get<double>(row->at(column).value); };
            CHECK(value(4) * value(6) - value(3) == doctest::Approx(line.packs.left_over));
            CHECK(value(5) * value(6) == doctest::Approx(line.packs.cost));
            CHECK(value(7) == doctest::Approx(line.packs.cost));
        }
    }
    CHECK(mixed > 0);
}

} // namespace
} // namespace routeweigh
