// SPDX-License-Identifier: MIT
#include "assess/stock/stock_list.hpp"

#include "input/field.hpp"
#include "route/route_reader.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <map>
#include <sstream>
#include <string>

using namespace routeweigh;
using namespace routeweigh::stock;

namespace {

const Catalogue& catalogue() {
    return Catalogue::embedded();
}

const Stockroom& stockroom() {
    static const Stockroom read = read_stockroom(catalogue());
    return read;
}

const Assessment& shipped(const std::filesystem::path& file) {
    static const AssessmentRules rules = read_assessment_rules(catalogue());
    static std::map<std::string, std::unique_ptr<Assessment>> all;
    auto& found = all[file.string()];
    if (!found) {
        std::ostringstream text;
        text << std::ifstream(file).rdbuf();
        Problems problems;
        found = std::make_unique<Assessment>(
            read_route(make_source(file.filename().string(), text.str()), catalogue(), problems), rules);
    }
    return *found;
}

const Assessment& peroxide_route() {
    return shipped(std::filesystem::path(ROUTEWEIGH_ROOT) / "routes/4-bromoacetanilide/A3.json");
}

PriceList prices_of(const std::string& packs) {
    return read_price_list(
        make_source("prices.json", R"({"title": "t", "currency": "EUR", "date": "2026-08-15",
        "source": "invented", "packs": [)" +
                                       packs + "]}"),
        catalogue());
}

Shelf shelf_of(const std::string& table) {
    Problems problems;
    CsvReader rows("shelf.csv", bytes_of(table));
    return read_shelf(rows, catalogue(), problems);
}

StockList list_of(const Assessment& route, const ClassPlan& plan, const Shelf& shelf = {},
                  const PriceList& prices = {}) {
    return make_stock_list(route, {}, plan, stockroom(), catalogue(), shelf, prices);
}

const StockLine* line_of(const StockList& list, const char* name) {
    const Material* material = catalogue().find_material(name);
    const auto found = std::find_if(list.lines.begin(), list.lines.end(),
                                    [&](const StockLine& line) { return line.material == material; });
    return found == list.lines.end() ? nullptr : &*found;
}

using BySubstance = std::map<const Substance*, double>;

void check_equal(const BySubstance& one, const BySubstance& other) {
    CHECK(one.size() == other.size());
    for (const auto& entry : one) {
        INFO(entry.first->name);
        const auto found = other.find(entry.first);
        REQUIRE(found != other.end());
        CHECK(entry.second == doctest::Approx(found->second).epsilon(1e-9));
    }
}

} // namespace

TEST_CASE("the stock list of every shipped route adds up to the ledger times the class") {
    ClassPlan plan;
    plan.students = 24;
    plan.sections = 3;
    plan.extra = 0.1;
    const Shelf shelf =
        shelf_of("material,amount,unit\nwater,1,L\nethanol 50 % by volume,20,mL\nacetanilide,3,g\n");
    int routes = 0;
    for (const auto& entry :
         std::filesystem::recursive_directory_iterator(std::filesystem::path(ROUTEWEIGH_ROOT) / "routes")) {
        if (entry.path().extension() != ".json" || entry.path().stem().extension() == ".schema") continue;
        ++routes;
        INFO(entry.path().filename().string());
        const Assessment& route = shipped(entry.path());
        const StockList list = list_of(route, plan, shelf);
        BySubstance ledger, listed;
        for (const LedgerRow& row : route.ledger().rows)
            if (row.side == LedgerRow::Side::in) ledger[row.substance] += row.grams * plan.portions();
        // What the air gives and what is only a trace are in the ledger and in no bottle.
        for (std::size_t i = 0; i < route.flat().inflows().size(); ++i)
            if (const Inflow& inflow = route.flat().inflows()[i]; inflow.as_used || inflow.role->is_trace())
                ledger[inflow.substance] -= route.evaluation().in[i] * plan.portions();
        for (const StockLine& line : list.lines)
            for (const Component& component : line.material->components)
                listed[component.substance] += line.needed() * component.mass_fraction;
        for (auto it = ledger.begin(); it != ledger.end();)
            it = std::abs(it->second) < 1e-9 ? ledger.erase(it) : std::next(it);
        check_equal(listed, ledger);
        for (const Preparation& made : list.preparations) {
            double batches = 0;
            for (const Batch& batch : made.batches)
                batches += batch.grams;
            CHECK(batches == doctest::Approx(made.grams));
        }
    }
    CHECK(routes >= 19);
}

TEST_CASE("what the waste plan asks for is fetched and made with the rest, spare stock included") {
    static const streams::StreamRules rules(catalogue(), streams::shipped_local_rules(catalogue(), "US"));
    const Assessment& route = peroxide_route();
    const WasteNeeds waste = waste_needs_of_run(route, streams::assess_waste(route.route(), rules), rules);
    ClassPlan plan;
    plan.students = 24;
    plan.extra = 0.1;
    const StockList with = make_stock_list(route, waste, plan, stockroom(), catalogue(), {}, {});
    const StockList without = list_of(route, plan);
    REQUIRE(waste.needs.size() == 2);
    double solution = 0;
    for (const Need& need : waste.needs)
        if (need.material->name == "sodium metabisulfite 10 % w/v")
            solution = need.per_run;
        else {
            CHECK(need.material->name == "sodium hydrogencarbonate");
            CHECK(line_of(without, "sodium hydrogencarbonate") == nullptr);
            CHECK(line_of(with, "sodium hydrogencarbonate")->needed() ==
                  doctest::Approx(need.per_run * 24 * 1.1));
        }
    // The reducer to have ready is a solution that is made: one batch for the runs and the waste.
    CHECK(solution > 0);
    CHECK(with.preparations.size() == without.preparations.size());
    const double more = line_of(with, "sodium metabisulfite")->for_making -
                        line_of(without, "sodium metabisulfite")->for_making;
    CHECK(more == doctest::Approx(solution * 24 * 1.1 * with.preparations.front().recipe.stock_share));
}

TEST_CASE("a solution is made from a solid or a stronger solution by weighing") {
    const auto bisulfite =
        recipe_of(*catalogue().find_material("sodium hydrogensulfite 10 %"), stockroom(), catalogue(), {});
    REQUIRE(bisulfite);
    CHECK(bisulfite->stock->is_neat());
    CHECK(bisulfite->stock_share == doctest::Approx(0.1));
    // 3 M sulfuric acid is 24.96 % by mass, from acid of 96 %: 0.26 g for each gram.
    const auto acid =
        recipe_of(*catalogue().find_material("sulfuric acid 3 M"), stockroom(), catalogue(), {});
    REQUIRE(acid);
    CHECK(acid->stock->name == "sulfuric acid 96 %");
    CHECK(acid->stock_share == doctest::Approx(0.2496 / 0.96));
    // The stronger acid is taken where it is the one at hand.
    const Material* strongest = catalogue().find_material("sulfuric acid 98 %");
    CHECK(recipe_of(*catalogue().find_material("sulfuric acid 3 M"), stockroom(), catalogue(), {strongest})
              ->stock == strongest);
    for (const char* bought :
         {"hydrobromic acid 48 %", "hydrogen peroxide 30 %", "household bleach 6 %", "acetanilide"})
        CHECK_FALSE(recipe_of(*catalogue().find_material(bought), stockroom(), catalogue(), {}).has_value());
}

TEST_CASE("batches last as long as a solution keeps") {
    ClassPlan plan;
    plan.sections = 3;
    plan.days = {*read_day("2026-09-14"), *read_day("2026-09-16"), *read_day("2026-09-18")};
    const StockList list = list_of(peroxide_route(), plan);
    REQUIRE(list.preparations.size() == 2);
    CHECK(list.preparations[0].recipe.solution->name == "sodium metabisulfite 10 % w/v"); // for the day only
    CHECK(list.preparations[0].batches.size() == 3);
    CHECK(list.preparations[1].recipe.solution->name == "ethanol 50 % by volume");
    CHECK(list.preparations[1].batches.size() == 1);
    plan.days = {};
    CHECK(list_of(peroxide_route(), plan).preparations[1].batches.size() == 3); // nobody knows how far apart
}

TEST_CASE("the shelf is taken first, but nothing past its date") {
    ClassPlan plan;
    plan.students = 10;
    plan.days = {*read_day("2026-09-14")};
    const Shelf shelf =
        shelf_of("material;amount;unit;best before\nacetanilide;10,0;g;\n"
                 "hydrogen peroxide 30 %;1;L;2026-09-13\nhydrobromic acid 48 %;1;kg;2026-09-14\n");
    const StockList list = list_of(peroxide_route(), plan, shelf);
    CHECK(line_of(list, "acetanilide")->to_get == doctest::Approx(3.517)); // 13.517 g less 10
    CHECK(line_of(list, "hydrogen peroxide 30 %")->on_shelf == 0);
    CHECK(line_of(list, "hydrogen peroxide 30 %")->shelf_expired);
    CHECK(line_of(list, "hydrobromic acid 48 %")->to_get == 0);
}

TEST_CASE("price lists are refused with the place of each fault") {
    const auto faults = [](const std::string& packs) {
        try {
            prices_of(packs);
        } catch (const InputError& error) {
            return std::string(error.what());
        }
        return std::string();
    };
    CHECK(
        faults(R"({"material": "acetanilid", "pack": "1 g", "price": 1})").find("nearest: \"acetanilide\"") !=
        std::string::npos);
    CHECK(faults(R"({"material": "acetanilide", "pack": "1 h", "price": 1})").find("/packs/0/pack") !=
          std::string::npos);
    CHECK(
        faults(R"({"material": "acetanilide", "pack": "0 g", "price": 1})").find("is none: at least 1 mg") !=
        std::string::npos);
    CHECK(faults(R"({"material": "acetanilide", "pack": "1 g", "price": -1})").find("not negative") !=
          std::string::npos);
    CHECK(faults(R"({"material": "palladium on carbon 10 %", "pack": "1 mL", "price": 1})")
              .find("no density") != std::string::npos);
}

TEST_CASE("a shelf is refused with line and column; what the catalogue does not know is warned of") {
    Problems problems;
    CsvReader rows("shelf.csv", bytes_of("material;amount;unit\nacetanlide;3;g\nacetanilide;4;g\n"));
    const Shelf shelf = read_shelf(rows, catalogue(), problems);
    CHECK(shelf.items.size() == 1);
    REQUIRE(problems.all.size() == 1);
    CHECK(problems.all[0].severity == Severity::warning);
    CHECK(problems.all[0].nearest == "acetanilide");
    const auto faults = [](const std::string& table) {
        try {
            shelf_of(table);
        } catch (const InputError& error) {
            return std::string(error.what());
        }
        return std::string();
    };
    CHECK(faults("material;amount\nacetanilide;3\n").find("a column \"unit\" is missing") !=
          std::string::npos);
    CHECK(faults("material;amount;unit;shelf\n").find("no column \"shelf\"") != std::string::npos);
    CHECK(faults("material;amount;unit\nacetanilide;2.May;g\n")
              .find("shelf.csv:2: column \"amount\": \"2.May\" is a date") != std::string::npos);
    CHECK(faults("material;amount;unit\nacetanilide;-2;g\n").find("negative") != std::string::npos);
    CHECK(faults("material;amount;unit\nacetanilide;2;furlong\n").find("column \"unit\"") !=
          std::string::npos);
    CHECK(faults("material;amount;unit;best before\nacetanilide;2;g;31.12.2026\n").find("is no day") !=
          std::string::npos);
    CHECK(faults("").find("the file is empty") != std::string::npos);
}

TEST_CASE("a shelf is read to its end however many of its materials are unknown, and up to 50 faults") {
    std::string table = "material;amount;unit\n";
    for (int i = 0; i < 120; ++i)
        table += "something else;1;g\n";
    Problems problems;
    CsvReader rows("shelf.csv", bytes_of(table + "acetanilide;4;g\n"));
    CHECK(read_shelf(rows, catalogue(), problems).items.size() == 1);
    REQUIRE(problems.all.size() == 21);
    CHECK(problems.all.back().message ==
          "the catalogue has no material for 100 more rows; they are left out");
    CHECK_FALSE(problems.any_error());

    table = "material;amount;unit\n";
    for (int i = 0; i < 60; ++i)
        table += "acetanilide;much;g\n";
    try {
        shelf_of(table);
        FAIL("no fault was found");
    } catch (const InputError& error) {
        CHECK(error.problems.size() == 51);
        CHECK(error.problems.back().message == "50 faults were found; the rest of the file was not read");
    }
}
