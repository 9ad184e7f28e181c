// SPDX-License-Identifier: MIT
#include "documents/improvements_document.hpp"

#include "app/what_if.hpp"
#include "documents/break_even_document.hpp"
#include "documents/compared.hpp"

#include <doctest/doctest.h>
#include <fmt/format.h>

#include <cmath>
#include <regex>
#include <string>
#include <variant>

using namespace routeweigh;
using namespace routeweigh::test;

namespace {

const Comparison& anilides() {
    static const Comparison comparison = compare_folder("4-bromoacetanilide", "A1");
    return comparison;
}

const Assessment& anilide(const std::string& id) {
    for (const auto& route : anilides().routes())
        if (route->route().id == id) return *route;
    FAIL("no route " << id);
    return anilides().baseline();
}

Improvements improved(const Assessment& route, const std::string& figure) {
    static const SolventRules solvents = read_solvent_rules(Catalogue::embedded());
    const ImprovementLimits limits;
    return find_improvements(
        {route, solvents, limits, apply_to(route.route(), Catalogue::embedded(), shipped_rules())},
        figure_named(figure, shipped_rules()), 0);
}

std::string key_of(const std::string& figure) {
    const Assessment& route = anilide("A3");
    return text_of(improvement_questions(route, improved(route, figure), 6, true));
}

bool has_caution(const writing::Document& document) {
    for (const writing::Block& block : document.blocks)
        if (std::holds_alternative<writing::Caution>(block)) return true;
    return false;
}

writing::Document break_even(double target, const std::string& input) {
    const Assessment& route = anilide("A3");
    const FigurePick figure = figure_named("process_mass_intensity", shipped_rules());
    return break_even_document(
        {&route, figure, target, ""},
        {answer_break_even(route, find_input(route.route(), input), figure, target,
                           apply_to(route.route(), Catalogue::embedded(), shipped_rules()))});
}

} // namespace

TEST_CASE("the key's rule for the yield that may be lost gives its number again from those that it prints") {
    // Which rule holds is arithmetic: mass in over product is one over the yield, E-factor and one is the
    // same, product over mass in or over volume and time goes as the yield.
    const std::regex plain(R"(Here: ([\d.]+) % × ([\d.]+) / ([\d.]+) = ([\d.]+)\D)"),
        shifted(R"(Here: ([\d.]+) % × \(([\d.]+) \+ 1\) / \(([\d.]+) \+ 1\) = ([\d.]+)\D)");
    struct Case {
        std::string figure, rule;
        bool plus_one = false;
    };
    for (const Case& one : {Case{"process_mass_intensity", "yield × after / before"},
                            Case{"complete_e_factor", "yield × (after + 1) / (before + 1)", true},
                            Case{"reaction_mass_efficiency", "yield × before / after"},
                            Case{"mass_productivity", "yield × before / after"},
                            Case{"space_time_yield", "yield × before / after"}}) {
        CAPTURE(one.figure);
        const std::string key = key_of(one.figure);
        CHECK(key.find(one.rule) != std::string::npos);
        std::smatch found;
        REQUIRE(std::regex_search(key, found, one.plus_one ? shifted : plain));
        const double more = one.plus_one ? 1.0 : 0.0;
        const double yield =
            std::stod(found[1]) * (std::stod(found[2]) + more) / (std::stod(found[3]) + more);
        CHECK(fmt::format("{:.1f}", yield) == found[4].str());
    }
    CHECK(key_of("hazard_score").find("one over the yield") == std::string::npos);
}

TEST_CASE("ratios of the key give their result again from the numbers that they print") {
    const std::regex ratio(R"((?:Before|After): ([\d.]+) / ([\d.]+) = ([\d.]+) g/g)");
    const std::string key = key_of("process_mass_intensity");
    int checked = 0;
    for (std::sregex_iterator at(key.begin(), key.end(), ratio), end; at != end; ++at, ++checked)
        CHECK(fmt::format("{:.1f}", std::stod((*at)[1]) / std::stod((*at)[2])) == (*at)[3].str());
    CHECK(checked >= 6);
}

TEST_CASE("questions are there for programs, with answers only in the key") {
    const Assessment& route = anilide("A3");
    const Improvements found = improved(route, "process_mass_intensity");
    const writing::Document sheet = improvement_questions(route, found, 3, false),
                            key = improvement_questions(route, found, 3, true);
    const auto& asked = std::get<writing::MachineList>(member(*sheet.machine, "questions").value);
    const auto& answered = std::get<writing::MachineList>(member(*key.machine, "questions").value);
    REQUIRE(asked.size() == 7); // mass, three levers, order, loss, assumed yield
    REQUIRE(answered.size() == asked.size());
    for (std::size_t i = 0; i < asked.size(); ++i) {
        CHECK(std::get<writing::MachineObject>(asked[i].value).size() == 1);
        CHECK_FALSE(std::get<std::string>(member(answered[i], "answer").value).empty());
    }
    CHECK(sheet.rows.rows.size() == asked.size());
    CHECK(sheet.rows.columns.size() == 4);
    for (const auto& row : key.rows.rows)
        CHECK(row.size() == key.rows.columns.size());
}

TEST_CASE("a sheet without a lever cautions too, and names the figure as a sentence does") {
    const Assessment& route = anilide("A3");
    const writing::Document sheet = improvement_questions(route, improved(route, "yield"), 3, false);
    CHECK(has_caution(sheet));
    CHECK(text_of(sheet).find("improves yield") != std::string::npos);
}

TEST_CASE("what is not proposed stands on the page") {
    const Assessment& route = anilide("A3");
    const std::string page =
        text_of(improvements_document(route, improved(route, "process_mass_intensity"), 6));
    CHECK(page.find("Not proposed: recover 80 % of the ethanol") != std::string::npos);
}

TEST_CASE("a figure that nearly reaches a target is printed so that the two differ") {
    // At full yield A3 has its mass intensity of 80 % x 0.80.
    const double least = 0.80 * anilide("A3").metric("process_mass_intensity");
    const std::string page = text_of(break_even(least - 0.001, "yield"));
    CHECK(page.find("nearest is " + fmt::format("{:.1f} g/g", least)) == std::string::npos);
    CHECK(page.find("nearest is " + fmt::format("{:.2f}", least).substr(0, 4)) != std::string::npos);
}

TEST_CASE("an input without a break-even tells programs why, and how near it comes") {
    const writing::Document document = break_even(20.0, "yield");
    const writing::MachineTree& input =
        std::get<writing::MachineList>(member(*document.machine, "inputs").value).front();
    CHECK(std::get<std::string>(member(input, "reason").value).starts_with("none up to 100 %"));
    CHECK(std::get<double>(member(member(input, "nearest"), "input").value) == doctest::Approx(100.0));
    CHECK(std::get<writing::MachineList>(member(input, "curve").value).size() > 20);
    CHECK(std::get<std::string>(document.rows.rows.front().back()).starts_with("none up to 100 %"));
    CHECK(text_of(document).find("baseline") == std::string::npos);
    const writing::Document reached = break_even(50.0, "yield");
    CHECK(std::get<double>(reached.rows.rows.front().back()) < 80.0);
}

TEST_CASE("what would meet in the pot is looked out for, and nowhere a thing to test") {
    const Comparison comparison = compare_folder("5-5-diphenylhydantoin", "D1b-D2c-D3a");
    const Assessment& route = comparison.baseline();
    const Improvements found = improved(route, "process_mass_intensity");
    const std::string text = text_of(improvements_document(route, found, 20));
    CHECK(text.find("Look out:") != std::string::npos);
    for (std::size_t at = text.find("left on the crude meets"); at != std::string::npos;
         at = text.find("left on the crude meets", at + 1))
        CHECK(text.rfind("Look out: ", at) > text.rfind('\n', at));
    std::size_t dangers = 0;
    for (const Improvement& entry : found.ranked) {
        dangers += entry.candidate.dangers.size();
        for (const std::string& caution : entry.candidate.cautions)
            CHECK(caution.find("meets") == std::string::npos);
    }
    CHECK(dangers > 0);
}
