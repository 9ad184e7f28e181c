// SPDX-License-Identifier: MIT
#include "chemistry/equation.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <numeric>
#include <random>
#include <string>
#include <vector>

using namespace routeweigh;

namespace {

struct Case {
    explicit Case(const std::string& text) : equation(parse_equation(text)) {
        for (const EquationTerm& term : equation.left)
            left.push_back(parse_formula(term.name));
        for (const EquationTerm& term : equation.right)
            right.push_back(parse_formula(term.name));
        result = balance(left, right);
    }

    // The equation with the coefficients of a solution; terms of coefficient 0 left out.
    std::string written(const std::vector<long>& solution) const {
        Equation filled;
        for (std::size_t i = 0; i < left.size(); ++i)
            if (solution[i] != 0) filled.left.push_back({solution[i], equation.left[i].name});
        for (std::size_t i = 0; i < right.size(); ++i)
            if (solution[left.size() + i] != 0)
                filled.right.push_back({solution[left.size() + i], equation.right[i].name});
        return format_equation(filled);
    }

    bool solves(const std::vector<long>& solution) const {
        Equation filled = equation;
        for (std::size_t i = 0; i < solution.size(); ++i)
            (i < left.size() ? filled.left[i] : filled.right[i - left.size()]).coefficient = solution[i];
        return imbalance(filled, left, right).empty();
    }

    Equation equation;
    std::vector<Formula> left;
    std::vector<Formula> right;
    Balance result;
};

using Outcome = Balance::Outcome;

} // namespace

TEST_CASE("published equations are balanced as printed") {
    const std::vector<std::string> printed = {
        // Standardisation of permanganate with oxalate: D. C. Harris, Quantitative Chemical Analysis, redox
        // titrations (from memory); below with acid and salts in neutral units.
        "2 MnO4- + 5 H2C2O4 + 6 H+ -> 2 Mn^2+ + 10 CO2 + 8 H2O",
        "2 KMnO4 + 5 H2C2O4 + 3 H2SO4 -> K2SO4 + 2 MnSO4 + 10 CO2 + 8 H2O",
        // Iron by dichromate, and the permanganate half-reaction: the same book (from memory).
        "Cr2O7^2- + 6 Fe^2+ + 14 H+ -> 2 Cr^3+ + 6 Fe^3+ + 7 H2O",
        "MnO4- + 8 H+ + 5 e- -> Mn^2+ + 4 H2O",
        // Iodometry (common practice, no source).
        "I2 + 2 Na2S2O3 -> 2 NaI + Na2S4O6",
        // R. Stout, Redox challenges, J. Chem. Educ. 1995, 72, 1125 (from memory).
        std::string("10 [Cr(N2H4CO)6]4[Cr(CN)6]3 + 1176 KMnO4 + 1399 H2SO4 -> ") +
            "35 K2Cr2O7 + 1176 MnSO4 + 420 CO2 + 660 KNO3 + 223 K2SO4 + 1879 H2O",
        // Bromination of acetanilide with bromide and hydrogen peroxide (common practice, no source).
        "C8H9NO + HBr + H2O2 -> C8H8BrNO + 2 H2O",
        // Adipic acid: K. Sato, M. Aoki, R. Noyori, Science 1998, 281, 1646 (from memory).
        "C6H10 + 4 H2O2 -> C6H10O4 + 4 H2O",
        "2 C8H18 + 25 O2 -> 16 CO2 + 18 H2O",
        "4 FeS2 + 11 O2 -> 2 Fe2O3 + 8 SO2",
        "Na2CO3.10H2O -> Na2CO3 + 10 H2O",
    };
    for (const std::string& text : printed) {
        CAPTURE(text);
        const Case read(text);
        CHECK(read.result.outcome == Outcome::unique);
        CHECK(read.result.dimension == 1);
        REQUIRE(read.result.solutions.size() == 1);
        CHECK(read.written(read.result.solutions[0]) == text);
        CHECK(read.result.reason.empty());
    }
}

TEST_CASE("an equation that is a sum of reactions is not unique, and the reactions are given") {
    // That hydrogen peroxide and permanganate balance in infinitely many ways is a classroom classic (common
    // practice, no source): the peroxide may also decompose by itself.
    const Case read("KMnO4 + H2O2 + H2SO4 -> K2SO4 + MnSO4 + O2 + H2O");
    CHECK(read.result.outcome == Outcome::not_unique);
    CHECK(read.result.dimension == 2);
    std::vector<std::string> written;
    for (const auto& solution : read.result.solutions)
        written.push_back(read.written(solution));
    std::sort(written.begin(), written.end());
    CHECK(written == std::vector<std::string>{"2 H2O2 -> O2 + 2 H2O",
                                              "4 KMnO4 + 6 H2SO4 -> 2 K2SO4 + 4 MnSO4 + 5 O2 + 6 H2O"});

    const Case chlorate("KClO3 + HCl -> KCl + H2O + Cl2 + ClO2");
    CHECK(chlorate.result.dimension == 2);
    CHECK(chlorate.result.outcome == Outcome::not_unique);

    const Case burning("C + O2 -> CO + CO2");
    CHECK(burning.result.dimension == 2);
    CHECK(burning.result.solutions.size() == 2);

    // A substance that is used and made again may stand there in any amount.
    const Case catalyst("C2H4 + H2 + Pd -> C2H6 + Pd");
    CHECK(catalyst.result.outcome == Outcome::not_unique);
    CHECK(catalyst.result.dimension == 2);
}

TEST_CASE("what cannot be balanced says why") {
    const Case one_side("H2 + N2 -> H2O + Cl2");
    CHECK(one_side.result.outcome == Outcome::impossible);
    CHECK(one_side.result.left_only == std::vector<std::string>{"N"});
    CHECK(one_side.result.right_only == std::vector<std::string>{"O", "Cl"});
    CHECK(one_side.result.reason == "N stands on the left only, and O, Cl on the right only");
    CHECK(Case("H2O + N2 -> H2").result.reason == "N, O stand on the left only");

    const Case charge("Na -> Na+");
    CHECK(charge.result.right_only == std::vector<std::string>{"charge"});
    CHECK(Case("Cl- -> Cl2").result.left_only == std::vector<std::string>{"charge"});

    // 3 NO -> N2O + NO2 is the reaction.
    const Case wrong_side("N2O + NO -> NO2");
    CHECK(wrong_side.result.outcome == Outcome::impossible);
    CHECK(wrong_side.result.left_only.empty());
    CHECK(wrong_side.result.right_only.empty());
    CHECK(wrong_side.result.reason == "it balances only with N2O on the other side");

    const Case never("CO -> CO2");
    CHECK(never.result.outcome == Outcome::impossible);
    CHECK(never.result.dimension == 0);
    CHECK(never.result.never == std::vector<std::size_t>{0, 1});

    const Case bystander("2 NO2 + NO -> N2O4");
    CHECK(bystander.result.reason == "it balances only without NO");
    CHECK(bystander.result.never == std::vector<std::size_t>{1});

    const Case two_reactions("C + O2 + ClF -> CO + CO2 + ClF3");
    CHECK(two_reactions.result.outcome == Outcome::impossible);
    CHECK(two_reactions.result.dimension == 2);
    CHECK(two_reactions.result.reason == "it balances only without ClF, ClF3");

    CHECK_THROWS_AS(balance({}, two_reactions.right), EquationError);
}

TEST_CASE("several dimensions without a solution of the right signs are impossible") {
    // Every product holds more oxygen for its other atoms than any starting material.
    const Case richer("H2O + CO2 + N2O -> H2O2 + CO3 + NO2 + NO + O3 + N2O3");
    CHECK(richer.result.outcome == Outcome::impossible);
    CHECK(richer.result.dimension > 1);
    CHECK(richer.result.never.size() == 9);
    CHECK(richer.result.reason == "it balances only with terms on the other side");
}

// Random compounds of three elements: whatever the balancer returns must balance, be whole without a common
// divisor, and be as many independent vectors as it says.
TEST_CASE("every solution of a random equation balances") {
    std::mt19937 random(20240501);
    const auto number = [&](int below) { return static_cast<int>(random() % static_cast<unsigned>(below)); };
    const std::vector<std::string> elements = {"C", "H", "O"};
    int unique = 0;
    int several = 0;
    for (int round = 0; round < 400; ++round) {
        std::string text;
        const int terms = 3 + number(5);
        for (int term = 0; term < terms; ++term) {
            std::string formula;
            for (const std::string& element : elements)
                if (const int count = number(4); count > 0) formula += element + std::to_string(count);
            if (formula.empty()) formula = "H2O";
            text += term == 0 ? formula : term == terms / 2 ? " -> " + formula : " + " + formula;
        }
        CAPTURE(text);
        const Case read(text);
        CHECK((read.result.outcome == Outcome::impossible) == read.result.solutions.empty());
        CHECK((read.result.outcome == Outcome::impossible) == !read.result.reason.empty());
        if (read.result.outcome == Outcome::unique) ++unique;
        if (read.result.outcome == Outcome::not_unique) ++several;
        if (read.result.outcome != Outcome::impossible)
            CHECK(read.result.solutions.size() == static_cast<std::size_t>(read.result.dimension));
        std::vector<long> sum(read.left.size() + read.right.size());
        for (const auto& solution : read.result.solutions) {
            CHECK(read.solves(solution));
            CHECK(*std::min_element(solution.begin(), solution.end()) >= 0);
            CHECK(std::accumulate(solution.begin(), solution.end(), 0L,
                                  [](long a, long b) { return std::gcd(a, b); }) == 1);
            for (std::size_t i = 0; i < sum.size(); ++i)
                sum[i] += solution[i];
        }
    }
    CHECK(unique > 10);
    CHECK(several > 20);
}

TEST_CASE("an equation of a hundred terms is balanced, one of more refused") {
    const std::vector<Formula> many(50, parse_formula("H2O"));
    CHECK(balance(many, many).dimension == 99);
    const std::vector<Formula> more(51, parse_formula("H2O"));
    CHECK_THROWS_AS(balance(more, many), EquationError);
}
