// SPDX-License-Identifier: MIT
// Documents about the catalogue and about one equation. The coefficients are those of any general chemistry
// textbook.
#include "base/problem.hpp"
#include "documents/balance_document.hpp"
#include "documents/catalogue_document.hpp"
#include "documents/compared.hpp"

#include <doctest/doctest.h>

using namespace routeweigh;
using namespace routeweigh::test;

namespace {

std::string outcome(const std::string& equation) {
    const writing::Document document = balance_document(equation, Catalogue::embedded());
    return std::get<std::string>(member(*document.machine, "outcome").value);
}

std::vector<std::string> solutions(const std::string& equation) {
    std::vector<std::string> result;
    const writing::Document document = balance_document(equation, Catalogue::embedded());
    for (const auto& solution : std::get<writing::MachineList>(member(*document.machine, "solutions").value))
        result.push_back(std::get<std::string>(member(solution, "equation").value));
    return result;
}

} // namespace

TEST_CASE("an equation is printed with its coefficients") {
    CHECK(solutions("KMnO4 + HCl -> KCl + MnCl2 + H2O + Cl2") ==
          std::vector<std::string>{"2 KMnO4 + 16 HCl -> 2 KCl + 2 MnCl2 + 8 H2O + 5 Cl2"});
    CHECK(solutions("acetanilide + bromine -> 4-bromoacetanilide + hydrogen bromide").size() == 1);
}

TEST_CASE("equations are read as books print them: glued coefficients, states, raised and lowered digits") {
    const std::vector<std::string> water{"2 H2 + O2 -> 2 H2O"};
    CHECK(solutions("2H2 + O2 -> 2H2O") == water);
    CHECK(solutions("H2(g) + O2(g) -> H2O(l)") == water);
    CHECK(solutions("3H\u2082(g) + O\u2082 \u2192 H\u2082O").size() == 1);
    CHECK(solutions("Ba\u00b2\u207a(aq) + SO\u2084\u00b2\u207b(aq) -> BaSO\u2084(s)").size() == 1);
    // A multiplier within a formula is no coefficient.
    CHECK(solutions("2KHSO5.KHSO4.K2SO4 -> KHSO5 + KHSO4 + K2SO4") ==
          std::vector<std::string>{"2KHSO5.KHSO4.K2SO4 -> 2 KHSO5 + KHSO4 + K2SO4"});
}

TEST_CASE("an equation with more than one way says so and gives as many as are independent") {
    CHECK(outcome("H2O2 + KMnO4 + H2SO4 -> K2SO4 + MnSO4 + H2O + O2") == "not_unique");
    CHECK(solutions("H2O2 + KMnO4 + H2SO4 -> K2SO4 + MnSO4 + H2O + O2").size() == 2);
}

TEST_CASE("an equation that cannot be balanced names the element that stands alone") {
    const writing::Document document = balance_document("H2 + O2 -> NaOH", Catalogue::embedded());
    CHECK(outcome("H2 + O2 -> NaOH") == "impossible");
    const auto& alone = std::get<writing::MachineList>(member(*document.machine, "one_sided").value);
    REQUIRE(alone.size() == 1);
    CHECK(std::get<std::string>(alone.front().value) == "Na");
    CHECK(text_of(document).find("Na") != std::string::npos);
}

TEST_CASE("a term that is neither formula nor name is refused with the nearest name") {
    try {
        balance_document("acetanilid + bromine -> x", Catalogue::embedded());
        FAIL("no error");
    } catch (const InputError& error) {
        REQUIRE(error.problems.size() == 1);
        CHECK(error.problems.front().nearest == "acetanilide");
    }
    CHECK_THROWS_AS(balance_document("H2 + O2", Catalogue::embedded()), InputError);
}

TEST_CASE("the catalogue tells of a substance with its sources, and of what comes from memory") {
    const writing::Document document = catalogue_document(Catalogue::embedded(), "acetanilide");
    CHECK(text_of(document).find("103-84-4") != std::string::npos); // CAS number of acetanilide, from memory
    CHECK_FALSE(std::get<writing::MachineList>(member(*document.machine, "substances").value).empty());
    for (const writing::Table& table : tables_in(document.blocks))
        CHECK_FALSE(table.rows.empty());
}

TEST_CASE("what is not in the catalogue gets a near name and no table") {
    const writing::Document document = catalogue_document(Catalogue::embedded(), "acetanilid x");
    CHECK(tables_in(document.blocks).empty());
    CHECK_FALSE(document.blocks.empty());
}
