// SPDX-License-Identifier: MIT
#include "chemistry/equation.hpp"

#include <doctest/doctest.h>

#include <string>
#include <vector>

using namespace routeweigh;

namespace {

std::vector<Formula> formulas(const std::vector<EquationTerm>& terms) {
    std::vector<Formula> result;
    result.reserve(terms.size());
    for (const EquationTerm& term : terms)
        result.push_back(parse_formula(term.name));
    return result;
}

std::string imbalance_of(const std::string& text) {
    const Equation equation = parse_equation(text);
    return format_imbalance(imbalance(equation, formulas(equation.left), formulas(equation.right)));
}

std::string refusal(const std::string& text) {
    try {
        parse_equation(text);
    } catch (const EquationError& error) {
        return error.what();
    }
    return "";
}

bool contains(const std::string& text, const std::string& part) {
    return text.find(part) != std::string::npos;
}

} // namespace

TEST_CASE("equations are read by names, formulas and coefficients") {
    const Equation equation = parse_equation(
        " acetanilide + hydrogen bromide +  hydrogen peroxide -> 4-bromoacetanilide + 2 water ");
    REQUIRE(equation.left.size() == 3);
    REQUIRE(equation.right.size() == 2);
    CHECK(equation.left[2].name == "hydrogen peroxide");
    CHECK(equation.left[2].coefficient == 1);
    CHECK(equation.right[0].name == "4-bromoacetanilide"); // the digit belongs to the name
    CHECK(equation.right[1].name == "water");
    CHECK(equation.right[1].coefficient == 2);
    CHECK(format_equation(equation) ==
          "acetanilide + hydrogen bromide + hydrogen peroxide -> 4-bromoacetanilide + 2 water");
    CHECK(equation.text.front() == 'a');

    CHECK(format_equation(parse_equation("2 2-butanone \u2192 3 1,4-dioxane")) ==
          "2 2-butanone -> 3 1,4-dioxane");
    CHECK(format_equation(parse_equation("2 H2 + O2 = 2 H2O")) == "2 H2 + O2 -> 2 H2O");
    CHECK(parse_equation("H+ + OH- -> H2O").left[0].name == "H+");
    CHECK(parse_equation("(R)-(+)-limonene -> p-cymene").left[0].name == "(R)-(+)-limonene");
    CHECK(parse_equation("A->B").right[0].name == "B");
}

TEST_CASE("what is no equation is refused with the reason") {
    CHECK(contains(refusal("H2 + O2"), "no \"->\""));
    CHECK(contains(refusal(""), "no \"->\""));
    CHECK(contains(refusal("A -> B -> C"), "more than two sides"));
    CHECK(contains(refusal("A = B -> C"), "more than two sides"));
    CHECK(contains(refusal("A <-> B"), "both ways"));
    CHECK(contains(refusal("-> B"), "a term is missing"));
    CHECK(contains(refusal("A ->"), "a term is missing"));
    CHECK(contains(refusal("A + -> B"), "a term is missing"));
    CHECK(contains(refusal("A + + B -> C"), "a term is missing"));
    CHECK(contains(refusal("0 A -> B"), "is 0"));
    CHECK(contains(refusal("1/2 O2 + H2 -> H2O"), "whole coefficient"));
    CHECK(contains(refusal("0.5 O2 + H2 -> H2O"), "whole coefficient"));
    CHECK(contains(refusal("0,5 O2 + H2 -> H2O"), "whole coefficient"));
    CHECK(contains(refusal("99999999999999999999 O2 -> O3"), "whole coefficient"));
}

TEST_CASE("an equation that does not balance names the elements and how they differ") {
    CHECK(imbalance_of("2 H2 + O2 -> 2 H2O") == "");
    CHECK(imbalance_of("H2 + O2 -> H2O") == "O 2 on the left, 1 on the right");
    CHECK(imbalance_of("C6H12O6 -> 2 C2H5OH + CO2") ==
          "C 6 on the left, 5 on the right; O 6 on the left, 4 on the right");
    CHECK(imbalance_of("Fe^3+ + Cu -> Fe^2+ + Cu^2+") == "charge 3 on the left, 4 on the right");
    const Equation equation = parse_equation("A -> B");
    CHECK_THROWS_AS(imbalance(equation, {}, {}), EquationError);
}
