// SPDX-License-Identifier: MIT
#include "documents/bench_sheet.hpp"

#include "documents/compared.hpp"
#include "documents/papers.hpp"
#include "writing/html_style.hpp"

#include <doctest/doctest.h>
#include <fmt/format.h>

#include <algorithm>
#include <regex>
#include <sstream>
#include <string>
#include <vector>

namespace routeweigh {
namespace {

using documents::Edition;
using test::member;

const writing::MachineTree& first_step(const writing::Document& document) {
    return std::get<writing::MachineList>(member(*document.machine, "steps").value).front();
}

/// The first digits of an unrounded number as any format would print it; "" where so few are significant
/// that they could stand anywhere.
std::string telltale(double value) {
    const std::string digits = fmt::format("{}", value); // as many as tell it from every other number
    return digits.size() >= 10 && digits.find('e') == std::string::npos ? digits.substr(0, 8) : std::string();
}

/// Heights of the outlines of a path in its own units, the inner ones of letters among them.
std::vector<double> outline_heights(const std::string& path) {
    std::vector<double> heights;
    std::istringstream outlines(path);
    std::string outline;
    while (std::getline(outlines, outline, 'M')) {
        double lowest = 1e9, highest = -1e9;
        std::string numbers = std::regex_replace(outline, std::regex("[A-Z]"), " ");
        std::istringstream pairs(numbers);
        for (double x = 0, y = 0; pairs >> x >> y;) {
            lowest = std::min(lowest, y);
            highest = std::max(highest, y);
        }
        if (highest > lowest) heights.push_back(highest - lowest);
    }
    return heights;
}

// CSS: 96 pixels are 25.4 mm, and a drawing with a viewBox shrinks as a whole to the smaller of its limits.
TEST_CASE("letters of structural formulae are 1.2 mm high on paper, all drawings on one scale") {
    const std::string style(writing::html_style);
    std::smatch limits;
    const std::string print = style.substr(style.find("@media print"));
    REQUIRE(std::regex_search(
        print, limits, std::regex("svg[.]drawing [{] max-width: ([0-9.]+)mm; max-height: ([0-9.]+)mm")));
    const double most_wide = std::stod(limits[1]), most_high = std::stod(limits[2]);
    std::size_t drawings = 0;
    double least = 1e9;
    for (const std::string& file : test::shipped_routes()) {
        const auto laid_out = test::lay_out_file(file);
        for (const writing::Table& table :
             test::tables_in(bench_sheet(laid_out->experiment(), Edition::student).blocks))
            for (const writing::LineDrawing& drawing : table.drawings) {
                CAPTURE(drawing.alternative);
                const double natural = drawing.unit * 25.4 / 96;
                const double scale =
                    std::min({natural, most_wide / drawing.width, most_high / drawing.height});
                CHECK(scale == doctest::Approx(natural)); // nothing is so large that it has to shrink
                for (const double height : outline_heights(drawing.shapes))
                    if (height > 70 && height < 90)
                        least = std::min(least, height * scale); // capitals, digits
                ++drawings;
            }
    }
    CHECK(drawings > 100);
    CHECK(least >= 1.19);
    CHECK(least < 1.4); // larger ones fill pages
}

TEST_CASE("the student edition holds no key figure in any format, and the key edition holds them all") {
    std::size_t searched = 0;
    for (const std::string& file : test::shipped_routes()) {
        CAPTURE(file);
        const auto laid_out = test::lay_out_file(file);
        const writing::Document student = bench_sheet(laid_out->experiment(), Edition::student);
        const writing::Document key = bench_sheet(laid_out->experiment(), Edition::key);
        const std::string student_text = test::in_every_format(student);
        const std::string key_text = test::in_every_format(key);
        const auto open = test::shared_figures(student);
        for (const auto& figure : test::shared_figures(key)) {
            const std::string& id = figure.first;
            const std::vector<test::Stated>& list = figure.second;
            CAPTURE(id);
            REQUIRE(open.count(id) == 1);
            if (!open.at(id).front().open) continue;
            // What one step leaves may be just what the next one weighs out, and that is no secret.
            const bool weighed = std::any_of(open.begin(), open.end(), [&](const auto& entry) {
                const test::Stated& other = entry.second.front();
                return !other.open && other.unit == list.front().unit && other.text == list.front().text;
            });
            if (weighed) continue;
            ++searched;
            for (const char* space : {"\u00A0", " "})
                CHECK(student_text.find(list.front().text + space + list.front().unit) == std::string::npos);
            if (const std::string digits = telltale(list.front().value); !digits.empty()) {
                CHECK(key_text.find(digits) != std::string::npos);
                CHECK(student_text.find(digits) == std::string::npos);
            }
        }
        const auto open_figures = static_cast<std::size_t>(std::count_if(
            open.begin(), open.end(), [](const auto& entry) { return entry.second.front().open; }));
        CHECK(open_figures >= 5); // amount and equivalents of the substrate, theory, result
        // The answer that is a name.
        for (const auto& step : std::get<writing::MachineList>(member(*student.machine, "steps").value))
            CHECK(std::holds_alternative<std::monostate>(
                member(member(step, "theory"), "limiting_reagent").value));
        CHECK(student_text.find("Working") == std::string::npos);
    }
    CHECK(searched > 200);
}

TEST_CASE("labelled fields of the student edition are blank: amount, equivalents, theory") {
    const auto laid_out = test::lay_out_file("4-bromoacetanilide/A3.json");
    const writing::Document student = bench_sheet(laid_out->experiment(), Edition::student);
    const std::vector<writing::Table> tables = test::tables_in(student.blocks);
    for (const writing::Table& table : tables)
        for (std::size_t i = 0; i < table.columns.size(); ++i) {
            const std::string& heading = table.columns[i].heading;
            if (heading != "amount" && heading != "equiv." && heading != "amount over coefficient") continue;
            for (const writing::Row& row : table.rows) {
                if (row.kind == writing::RowKind::group) continue;
                CHECK_FALSE(row.cells[i].number.has_value());
                CHECK((row.cells[i].text.empty() || row.cells[i].text == documents::blank));
            }
        }
}

// Worked by hand from the amounts of the file: 1.3517 g / 135.17 g/mol = 10.00 mmol of acetanilide;
// 2.107 g x 0.48 / 80.91 g/mol = 12.50 mmol of hydrogen bromide; 1.474 g x 0.30 / 34.01 g/mol = 13.00 mmol of
// peroxide; the limiting 10.00 mmol x 214.06 g/mol = 2.141 g of product.
TEST_CASE("a salt that falls apart before it melts says at which temperature") {
    // Potassium bromate: about 370 °C (Merck Index, from memory).
    const auto laid_out = test::lay_out_file("4-bromoacetanilide/A2.json");
    const writing::Document sheet = bench_sheet(laid_out->experiment(), Edition::student);
    const writing::MachineTree& step = first_step(sheet);
    bool found = false;
    for (const writing::MachineTree& reagent :
         std::get<writing::MachineList>(member(step, "reagents").value)) {
        if (std::get<std::string>(member(reagent, "material").value) != "potassium bromate") continue;
        found = true;
        CHECK(test::number_of(member(reagent, "decomposes_C")) == 370);
        CHECK(std::holds_alternative<std::monostate>(member(reagent, "melting_point_C").value));
    }
    CHECK(found);
    CHECK(test::in_every_format(sheet).find("decomposes, 370 °C") != std::string::npos);
}

TEST_CASE("amounts, equivalents and theoretical yield agree with a sum by hand") {
    const auto laid_out = test::lay_out_file("4-bromoacetanilide/A3.json");
    const auto figures = test::shared_figures(bench_sheet(laid_out->experiment(), Edition::key));
    const auto value = [&](const char* id) { return figures.at(id).front().value; };
    CHECK(value("A3/bromination/1.1/amount") == doctest::Approx(10.00).epsilon(0.001));
    CHECK(value("A3/bromination/1.3/amount") == doctest::Approx(12.50).epsilon(0.001));
    CHECK(value("A3/bromination/1.3/equivalents") == doctest::Approx(1.25).epsilon(0.001));
    CHECK(value("A3/bromination/1.4/amount") == doctest::Approx(13.00).epsilon(0.001));
    CHECK(value("A3/bromination/theoretical_yield") == doctest::Approx(2.141).epsilon(0.001));
    CHECK(value("A3/bromination/isolated_mass") == doctest::Approx(0.8 * 2.141).epsilon(0.001));
    const writing::Document key = bench_sheet(laid_out->experiment(), Edition::key);
    CHECK(std::get<std::string>(member(member(first_step(key), "theory"), "limiting_reagent").value) ==
          "acetanilide");
}

TEST_CASE("two reactants in equal amounts run out together, and no key names one of them alone") {
    // 1.502 g / 150.17 g/mol and 1.406 g / 140.57 g/mol are 10.00 mmol each (route file H3), coefficients 1
    // and 1.
    const auto laid_out = test::lay_out_file("4-chloro-4-methoxychalcone/H3.json");
    CHECK(laid_out->experiment().steps().front().theory.run_out_first().size() == 2);
    const std::string key = test::text_of(bench_sheet(laid_out->experiment(), Edition::key));
    CHECK(key.find("run out together") != std::string::npos);
    CHECK(test::in_every_format(bench_sheet(laid_out->experiment(), Edition::student))
              .find("run out together") == std::string::npos);
    const auto bromination = test::lay_out_file("4-bromoacetanilide/A3.json");
    CHECK(bromination->experiment().steps().front().theory.run_out_first().size() == 1);
}

TEST_CASE("every working of a supply sums to the supply") {
    for (const std::string& file : test::shipped_routes()) {
        CAPTURE(file);
        const auto laid_out = test::lay_out_file(file);
        for (const bench::BenchStep& step : laid_out->experiment().steps()) {
            CAPTURE(step.step->id);
            for (const ReactantSupply& supply : step.theory.supplies) {
                double moles = 0;
                for (const bench::Reagent& reagent : step.reagents)
                    if (const Component* part = reagent.material().component_of(*supply.substance);
                        part != nullptr && reagent.stage <= step.theory.last_stage)
                        moles += reagent.grams * part->mass_fraction / supply.substance->molar_mass;
                CHECK(moles == doctest::Approx(supply.moles));
            }
            CHECK(step.theory.grams > 0);
            CHECK(step.theory.isolated <= step.theory.grams * (1 + 1e-9));
        }
    }
}

TEST_CASE("the pot of the stage that makes the product holds what the route's own arithmetic makes") {
    std::size_t checked = 0;
    for (const std::string& file : test::shipped_routes()) {
        CAPTURE(file);
        const auto laid_out = test::lay_out_file(file);
        const bench::Experiment& experiment = laid_out->experiment();
        for (const bench::BenchStep& step : experiment.steps()) {
            const auto& stage = step.stages[static_cast<std::size_t>(step.theory.last_stage)];
            const StepResult& result =
                experiment.assessment().evaluation().steps[static_cast<std::size_t>(step.index)];
            CHECK(stage.facts.pot.after.grams(*step.step->product) ==
                  doctest::Approx(result.made * step.step->product->molar_mass));
            ++checked;
        }
    }
    CHECK(checked >= 20);
}

TEST_CASE("cautions are specific: a boiling pot gets its condenser, a warm one does not, cyanide is named") {
    const auto rules_of = [](const std::string& file, std::size_t step, std::size_t stage) {
        const auto laid_out = test::lay_out_file(file);
        std::vector<std::string> rules;
        for (const auto& caution : laid_out->experiment().steps()[step].stages[stage].cautions)
            rules.emplace_back(caution.rule);
        return rules;
    };
    const auto has = [](const std::vector<std::string>& rules, const char* rule) {
        return std::find(rules.begin(), rules.end(), rule) != rules.end();
    };
    // Ethanol and water at 80 degC; ethanol boils at 78 degC.
    const auto boiling = rules_of("5-5-diphenylhydantoin/D1a-D2c-D3a.json", 0, 0);
    CHECK(has(boiling, "condenser"));
    CHECK(has(boiling, "no_flames"));
    CHECK(has(boiling, "no_acid"));
    CHECK(has(boiling, "toxic"));
    // 60 degC in ethanol: no reflux, but no flames, and bromine in the flask.
    const auto warm = rules_of("4-bromoacetanilide/A3.json", 0, 0);
    CHECK_FALSE(has(warm, "condenser"));
    CHECK(has(warm, "no_flames"));
    CHECK(has(warm, "bromine"));
    CHECK_FALSE(has(warm, "no_acid"));
    CHECK(has(rules_of("4-bromoacetanilide/A3.json", 0, 1), "quench"));
    // Washing crystals with water on a filter asks for nothing.
    CHECK(rules_of("4-bromoacetanilide/A3.json", 0, 2).empty());
}

TEST_CASE("no vessel is filled above the limit, and the next smaller one would be") {
    for (const std::string& file : test::shipped_routes()) {
        CAPTURE(file);
        const auto laid_out = test::lay_out_file(file);
        const bench::Glassware& glassware = laid_out->experiment().rules().glassware;
        for (const bench::BenchStep& step : laid_out->experiment().steps())
            for (const bench::BenchStage& stage : step.stages) {
                if (!stage.vessel || stage.vessel->size == 0) continue;
                CHECK(stage.vessel->holds <= stage.vessel->size * glassware.most_full * (1 + 1e-9));
            }
    }
    const auto laid_out = test::lay_out_file("4-bromoacetanilide/A3.json");
    const bench::Glassware& glassware = laid_out->experiment().rules().glassware;
    using Kind = bench::VesselKind;
    CHECK(glassware.fit(Kind::round_flask, 10).size == 25);         // 25 x 2/3 = 16.7
    CHECK(glassware.fit(Kind::round_flask, 17).size == 50);         // above 16.7
    CHECK(glassware.fit(Kind::conical_flask, 10, true).size == 50); // four times 10 where it foams
    CHECK(glassware.fit(Kind::cylinder, 10).size == 10);
    CHECK(glassware.fit(Kind::round_flask, 1e6).size == 0);
}

TEST_CASE("names of a route file break out of no format") {
    std::string text = test::text_of_route("4-bromoacetanilide/A3.json");
    const auto replace = [&](const std::string& from, const std::string& to) {
        const std::size_t at = text.find(from);
        REQUIRE(at != std::string::npos);
        text.replace(at, from.size(), to);
    };
    replace("\"title\": \"Hydrobromic acid", "\"title\": \"<script>alert(1)</script> Hydrobromic acid");
    const auto laid_out = test::lay_out_text(text);
    for (const Edition edition : {Edition::student, Edition::key}) {
        const std::string all = test::in_every_format(bench_sheet(laid_out->experiment(), edition));
        CHECK(all.find("&lt;script&gt;") != std::string::npos);
        CHECK(all.find("<h1><script") == std::string::npos);
        CHECK(all.find("<title><script") == std::string::npos);
    }
}

TEST_CASE("every organic reactant of the shipped routes is drawn") {
    for (const std::string& file : test::shipped_routes()) {
        CAPTURE(file);
        const auto laid_out = test::lay_out_file(file);
        const writing::Document sheet = bench_sheet(laid_out->experiment(), Edition::student);
        std::size_t drawings = 0;
        for (const writing::Table& table : test::tables_in(sheet.blocks))
            drawings += table.drawings.size();
        CHECK(drawings >= laid_out->experiment().steps().size());
    }
}

} // namespace
} // namespace routeweigh
