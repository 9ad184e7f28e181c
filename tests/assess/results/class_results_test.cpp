// SPDX-License-Identifier: MIT
#include "assess/results/class_results.hpp"

#include "support/route_builder.hpp"

#include <doctest/doctest.h>

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <string>

using namespace routeweigh;
using namespace routeweigh::results;

namespace {

constexpr const char* equation = "acetanilide + bromine -> 4-bromoacetanilide + hydrogen bromide";

/// 10 mmol of acetanilide (1.35166 g) and 12.5 mmol of bromine: 2.14062 g of product at most.
const Theory& theory() {
    static const AssessmentRules rules = read_assessment_rules(Catalogue::embedded());
    static const Assessment route(
        test::Built(test::one_pot("4-bromoacetanilide", "acetanilide", equation,
                                  {test::charge("acetanilide", "10 mmol", "substrate"),
                                   test::charge("bromine", "12.5 mmol", "reagent")},
                                  {test::reaction(equation)}))
            .route,
        rules);
    static const Theory made = theory_of(route, 0);
    return made;
}

ClassResults read(const std::string& table) {
    Problems problems;
    CsvReader rows("class.csv", bytes_of(table));
    ClassResults results = read_class_results(rows, theory(), problems);
    problems.throw_if_error();
    return results;
}

std::string faults_of(const std::string& table) {
    try {
        read(table);
    } catch (const InputError& error) {
        return error.what();
    }
    return {};
}

KeptRow row_of(const std::string& columns, const std::string& row) {
    return read("bench," + columns + "\nA1," + row + "\n").kept.at(0);
}

bool holds(const std::string& text, std::string_view part) {
    return text.find(part) != std::string::npos;
}

bool finds(const KeptRow& row, Finding finding) {
    return row.judgement.has(finding);
}

const OwnNumber& own(const KeptRow& row, OwnNumber::Kind kind) {
    return *std::find_if(row.own.begin(), row.own.end(),
                         [kind](const auto& number) { return number.kind == kind; });
}

} // namespace

TEST_CASE("the theory of a step: limiting reagent, theoretical yield, and how both go with the substrate") {
    // Molar masses 135.166 and 214.062 g/mol (IUPAC 2021).
    CHECK(theory().limiting->name == "acetanilide");
    CHECK(theory().grams == doctest::Approx(2.14062).epsilon(1e-5));
    CHECK(theory().limiting_mmol == doctest::Approx(10));
    CHECK(theory().grams_at(0.9) == doctest::Approx(0.9 * 2.14062).epsilon(1e-5));
    // With half as much again the bromine runs out first: 12.5 mmol.
    CHECK(theory().grams_at(1.5) == doctest::Approx(1.25 * 2.14062).epsilon(1e-5));
}

TEST_CASE("a usual row is plausible, and its yield is mass over theory") {
    const KeptRow row = row_of("product (g),melting range", "1.712,166-168");
    CHECK(row.judgement.verdict == Verdict::plausible);
    CHECK(*row.judgement.yield == doctest::Approx(79.976).epsilon(1e-4));
    CHECK(*row.melts_from == 166);
    const KeptRow by_difference = row_of("boat and product (mg),boat (mg)", "2912,1200");
    CHECK(*by_difference.judgement.mass == doctest::Approx(1.712));
    CHECK(by_difference.judgement.verdict == Verdict::plausible);
    const KeptRow less_weighed = row_of("product (g),substrate (g)", "1.712,1.2165");
    CHECK(*less_weighed.judgement.yield == doctest::Approx(79.976 / 0.9).epsilon(1e-3));
}

TEST_CASE("what cannot be is told from what has to be checked") {
    CHECK(row_of("product (g)", "2.50").judgement.verdict == Verdict::not_possible);
    CHECK(finds(row_of("product (g)", "2.50"), Finding::above_theory));
    // 2.1406 g at most; the balance reads 0.01 g, so 2.15 is within one reading.
    CHECK(row_of("product (g)", "2.15").judgement.verdict == Verdict::check);
    CHECK(finds(row_of("product (g)", "2.15"), Finding::slightly_above));
    CHECK(finds(row_of("product (g)", "-0.2"), Finding::mass_not_above_zero));
    CHECK(finds(row_of("product (g)", "1712"), Finding::thousandfold_mass));
    CHECK(finds(row_of("product (mg)", "1.712"), Finding::thousandth_of_mass));
    // The heading has g, so the words may not speak of a column of mg.
    CHECK(finds(row_of("product (g)", "0.001712"), Finding::thousandth_of_mass));
    CHECK(finds(row_of("product (g),boat (g)", "2.912,1.2"), Finding::boat_weighed_too));
    CHECK_FALSE(finds(row_of("product (g),boat (g)", "1.712,1.2"), Finding::boat_weighed_too));
    CHECK(finds(row_of("boat and product (g),boat (g)", "2.912,"), Finding::no_mass));
    CHECK(finds(row_of("product (g),boat and product (g),boat (g)", "1.712,2.612,1.2"),
                Finding::masses_disagree));
    CHECK(finds(row_of("product (g)", "0.05"), Finding::very_low));
}

TEST_CASE("a dried mass is as uncertain as its own last digit, however the product was weighed before") {
    // 2.1406 g at most: 2.15 is within one reading of 0.01 g, 2.145 is not within one of 0.001 g.
    CHECK(row_of("product (g)", "2.15").judgement.verdict == Verdict::check);
    const char* const boats = "boat and product (g),boat (g),dried once (g)";
    CHECK(finds(row_of(boats, ",,2.15"), Finding::slightly_above));
    CHECK(finds(row_of(boats, "3.400,1.200,2.15"), Finding::slightly_above));
    CHECK(finds(row_of(boats, ",,2.145"), Finding::above_theory));
    CHECK(finds(row_of("product (g),dried once (g)", "2.2,2.145"), Finding::above_theory));
}

TEST_CASE("a mass with an exponent is judged as the same mass without one") {
    for (const auto& [plain, exponent] :
         {std::pair{"2.2", "2.2E+00"}, {"2.15", "215E-2"}, {"2.15", "0.215e1"}})
        CHECK(row_of("product (g)", plain).judgement.findings ==
              row_of("product (g)", exponent).judgement.findings);
    CHECK(finds(row_of("product (g)", "2.2E+00"), Finding::slightly_above));
}

TEST_CASE("a pair of dryings tells whether it was dry, and the dried mass counts") {
    const KeptRow wet = row_of("product (g),dried once (g),dried again (g)", "2.50,1.72,1.712");
    CHECK(finds(wet, Finding::lighter_once_dried));
    CHECK_FALSE(finds(wet, Finding::still_drying));
    CHECK_FALSE(finds(wet, Finding::above_theory));
    CHECK(*wet.judgement.mass == 1.712);
    CHECK(
        finds(row_of("product (g),dried once (g),dried again (g)", "2.00,1.90,1.72"), Finding::still_drying));
}

TEST_CASE(
    "a gain is no drying: weighings exchanged, wet again, or another boat (common practice, no source)") {
    const char* const columns = "product (g),dried once (g),dried again (g)";
    for (const char* masses : {",1.5,1.7", "1.8,1.50,1.70", "1.50,1.70,1.70"}) {
        const KeptRow gained = row_of(columns, masses);
        CHECK_MESSAGE(finds(gained, Finding::gained_mass), masses);
        CHECK_FALSE_MESSAGE(finds(gained, Finding::still_drying), masses);
        CHECK(gained.judgement.verdict == Verdict::check);
    }
    // One in the last digit, or one per cent, is the balance.
    for (const char* masses : {",1.5,1.6", "1.72,1.710,1.715", "1.6,1.65,1.65"})
        CHECK_FALSE_MESSAGE(finds(row_of(columns, masses), Finding::gained_mass), masses);
}

TEST_CASE(
    "what melts where the starting material melts is named so (acetanilide 114.4 degC in the catalogue)") {
    const KeptRow row = row_of("product (g),melting range", "1.70,113-115");
    CHECK(finds(row, Finding::melts_as_substrate));
    CHECK(finds(row, Finding::melts_low));
    CHECK_FALSE(finds(row_of("product (g),melting range", "1.70,150-160"), Finding::melts_as_substrate));
    CHECK_FALSE(finds(row_of("product (g),melting range", "1.70,166-168"), Finding::melts_as_substrate));
}

TEST_CASE("a melting range is read with half degrees, blanks and its unit") {
    for (const char* range : {"165.5-167", "165.5 - 167", "165.5 to 167",
                              "165.5-167 \xC2\xB0"
                              "C",
                              "165.5 degC - 167 degC",
                              "165.5\xE2\x80\x93"
                              "167 \xE2\x84\x83"}) {
        const KeptRow row = row_of("product (g),melting range", std::string("1.70,") + range);
        CHECK_MESSAGE(*row.melts_from == 165.5, range);
        CHECK_MESSAGE(*row.melts_to == 167, range);
    }
    CHECK(*row_of("product (g),melting range", "1.70,12.5-14").melts_from == 12.5);
    CHECK(holds(faults_of("bench,product (g),melting range\nA1,1.70,12.05.24\n"), "is a date"));
    CHECK(holds(faults_of("bench,product (g),melting range\nA1,1.70,331-333 K\n"),
                "unit stands in the heading"));
}

TEST_CASE("melting ranges: low, broad, high, backwards (168 degC in the catalogue, 3 K to either side)") {
    CHECK(finds(row_of("product (g),mp", "1.712,158-162"), Finding::melts_low));
    CHECK(finds(row_of("product (g),mp", "1.712,161-168"), Finding::melts_over_a_broad_range));
    CHECK(finds(row_of("product (g),mp", "1.712,173-174"), Finding::melts_high));
    CHECK(finds(row_of("product (g),mp", "1.712,168-165"), Finding::melts_backwards));
    CHECK(row_of("product (g),melts from,melts to", "1.712,165,168").judgement.findings == 0);
    CHECK(row_of("product (g),mp", "1.712,165\xE2\x80\x93"
                                   "168")
              .judgement.findings == 0);
    CHECK(row_of("product (g),mp", "1.712,165 to 168").judgement.findings == 0);
}

TEST_CASE("a bench that comes again is checked; a copy does not count twice") {
    const ClassResults results =
        read("bench,section,product (g)\nA1,Mon,1.7\nA2,Mon,1.6\nA1,Tue,1.5\nA1,Mon,1.7\nA2,Mon,1.61\n");
    CHECK_FALSE(finds(results.kept[2], Finding::bench_again)); // another section
    CHECK(finds(results.kept[3], Finding::row_again));
    CHECK(results.kept[3].earlier_line == 2);
    CHECK(finds(results.kept[4], Finding::bench_again));
    CHECK(results.all.count == 4);
}

TEST_CASE("the usual mistakes are known by the numbers they give") {
    using Kind = OwnNumber::Kind;
    using Standing = OwnNumber::Standing;
    const std::string columns = "product (g),boat (g),mmol,theoretical (g),yield (%)";
    const auto standing = [&](const char* row, Kind kind) {
        return own(row_of(columns, row), kind).standing;
    };
    const auto words = [&](const char* row, Kind kind) { return own(row_of(columns, row), kind).words; };

    CHECK(standing("1.712,1.2,10.0,2.14,80", Kind::amount) == Standing::right);
    CHECK(standing("1.712,1.2,10.0,2.14,80", Kind::theory) == Standing::right);
    CHECK(standing("1.712,1.2,10.0,2.14,80", Kind::yield) == Standing::right);
    // 12.5 mmol bromine for the limiting reagent, and 12.5 x 214.062 mg.
    CHECK(holds(words("1.712,1.2,12.5,2.676,64.0", Kind::amount), "amount of bromine"));
    CHECK(standing("1.712,1.2,12.5,2.676,64.0", Kind::theory) == Standing::carried);
    CHECK(standing("1.712,1.2,12.5,2.676,64.0", Kind::yield) == Standing::carried);
    CHECK(holds(words("1.712,1.2,10.0,2.676,80", Kind::theory), "bromine is taken as the limiting reagent"));
    CHECK(holds(words("1.712,1.2,10.0,1.352,80", Kind::theory), "masses stand for mole ratios"));
    CHECK(holds(words("1.712,1.2,10.0,1.712,80", Kind::theory), "the mass that was isolated"));
    CHECK(holds(words("1.712,1.2,10.0,2141,80", Kind::theory), "in mg"));
    CHECK(holds(words("1.712,1.2,0.0100,2.14,80", Kind::amount), "in mol"));
    CHECK(holds(words("1.712,1.2,10.0,2.14,125.0", Kind::yield), "upside down"));
    CHECK(holds(words("1.712,1.2,10.0,2.14,0.80", Kind::yield), "not turned into per cent"));
    CHECK(holds(words("1.712,1.2,10.0,2.14,136.0", Kind::yield), "boat is not taken off"));
    CHECK(holds(words("1.712,1.2,10.0,2.14,64.0", Kind::yield), "bromine is taken as the limiting reagent"));
    CHECK(holds(words("1.712,1.2,1.3517,2.14,80", Kind::amount), "grams of acetanilide are written as mmol"));
    // 1.712 g noted as 1712 mg in a column of g: the yield that was reckoned in g is right.
    CHECK(standing("1712,1.2,10.0,2.14,80", Kind::yield) == Standing::right);
    CHECK(own(row_of(columns, "1712,1.2,10.0,2.14,80"), Kind::yield).right ==
          doctest::Approx(100 * 1.712 / 2.14062).epsilon(1e-4));
    CHECK(holds(words("1712,1.2,10.0,2.14,79975", Kind::yield), "the mass is not turned into g"));
    CHECK(standing("1712,1.2,10.0,2.14,55.5", Kind::yield) == Standing::unexplained);
    CHECK(standing("1.712,1.2,10.0,2.10,80", Kind::theory) == Standing::rounded);
    CHECK(standing("1.712,1.2,10.0,3.33,80", Kind::theory) == Standing::unexplained);
}

TEST_CASE("a solution taken as pure and a hydrate taken as dry are known by their numbers") {
    static const AssessmentRules rules = read_assessment_rules(Catalogue::embedded());
    // 2.00 g of 48 % acid hold 0.96 g = 11.86 mmol; taken as pure they would be 24.72 mmol.
    const char* neutral = "hydrogen bromide + sodium hydroxide -> sodium bromide + water";
    const Assessment route(
        test::Built(test::one_pot("sodium bromide", "hydrogen bromide", neutral,
                                  {test::charge("hydrobromic acid 48 %", "2.00 g", "reagent"),
                                   test::charge("sodium hydroxide", "20 mmol", "base")},
                                  {test::reaction(neutral)}))
            .route,
        rules);
    const Theory made = theory_of(route, 0);
    CHECK(made.limiting_mmol == doctest::Approx(960 / 80.912).epsilon(1e-4));
    const auto taken =
        std::find_if(made.wrong_amounts.begin(), made.wrong_amounts.end(), [](const auto& wrong) {
            return holds(wrong.mistake, "is taken as pure hydrogen bromide");
        });
    REQUIRE(taken != made.wrong_amounts.end());
    CHECK(taken->fixed + taken->scaled == doctest::Approx(2000 / 80.912).epsilon(1e-4));

    // Sodium thiosulfate pentahydrate 248.17 g/mol, without its water 158.10 g/mol.
    const char* titration = "2 sodium thiosulfate pentahydrate + iodine -> "
                            "2 sodium iodide + sodium tetrathionate + 10 water";
    const Assessment hydrate(
        test::Built(test::one_pot("sodium iodide", "sodium thiosulfate pentahydrate", titration,
                                  {test::charge("sodium thiosulfate pentahydrate", "5 mmol", "reagent"),
                                   test::charge("iodine", "5 mmol", "reagent")},
                                  {test::reaction(titration)}))
            .route,
        rules);
    const Theory of_hydrate = theory_of(hydrate, 0);
    CHECK(
        std::any_of(of_hydrate.wrong_amounts.begin(), of_hydrate.wrong_amounts.end(), [](const auto& wrong) {
            return holds(wrong.mistake, "crystal water") &&
                   std::abs(wrong.fixed + wrong.scaled - 5 * 248.17 / 158.10) < 0.01;
        }));
}

TEST_CASE("yields for whoever samples them: all of a class, quantiles of a crowd") {
    const ClassResults few = read("bench,product (g)\nA1,1.8\nA2,1.6\nA3,9.9\n");
    CHECK(few.yields().size() == 2); // 9.9 g is not possible
    CHECK(few.yields().front() == doctest::Approx(1.6 / 2.14062).epsilon(1e-5));
    std::string many = "bench,product (g)\n";
    for (int i = 0; i < 5000; ++i)
        many += fmt::format("A{},{}\n", i, 1.5 + 0.0001 * i);
    const ClassResults crowd = read(many);
    CHECK(crowd.yields(100).size() == 100);
    CHECK(crowd.yields(100).front() == doctest::Approx(crowd.all.least / 100));
    CHECK(crowd.yields(100).back() == doctest::Approx(crowd.all.most / 100));
    CHECK_FALSE(crowd.all_kept);
    CHECK(crowd.kept.size() <= ClassResults::most_kept);
}

TEST_CASE("columns that name people are refused, and what stands in them is not repeated") {
    for (const char* heading :
         {"name", "Student", "E-Mail", "surname", "Matriculation no.", "student_name"}) {
        const std::string faults = faults_of(fmt::format("bench,{},product (g)\nA1,Jane Roe,1.7\n", heading));
        CHECK_MESSAGE(holds(faults, "looks as if it named people"), heading);
        CHECK_FALSE(holds(faults, "Jane"));
    }
    const std::string in_bench =
        faults_of("bench,product (g)\nJane Roe,1.7\njane.roe@example.org,1.7\nJane,1.7\n");
    CHECK(std::count(in_bench.begin(), in_bench.end(), '\n') == 2);
    CHECK_FALSE(holds(in_bench, "Jane"));
    CHECK_FALSE(holds(in_bench, "jane"));
}

TEST_CASE("a bench code that a spreadsheet made a date of is refused, one that names no month is not") {
    for (const char* code : {"May-03", "3-May", "2026-05-03", "01.Feb"}) {
        const std::string faults = faults_of(fmt::format("bench,product (g)\nA1,1.7\n{},1.7\n", code));
        CHECK_MESSAGE(holds(faults, "class.csv:3: column \"bench\": \"" + std::string(code) + "\" is a date"),
                      code);
    }
    for (const char* code : {"A-03", "03-A", "marble-03", "Mo.3", "2-13", "deck-5"})
        CHECK_MESSAGE(faults_of(fmt::format("bench,product (g)\n{},1.7\n", code)).empty(), code);
}

TEST_CASE("numbers beyond a double, and temperatures that nothing melts at, are refused with the row") {
    CHECK(holds(faults_of("bench,product (g)\nA1,1e400\n"),
                "class.csv:2: column \"product (g)\": \"1e400\" is too large for a number"));
    for (const char* range : {"166168", "2166", "2166-168", "166-2168"})
        CHECK_MESSAGE(holds(faults_of(fmt::format("bench,product (g),mp\nA1,1.7,{}\n", range)),
                            "class.csv:2: column \"mp\": "),
                      range);
    CHECK(holds(faults_of("bench,product (g),mp\nA1,1.7,166168\n"), "did two numbers run together?"));
    CHECK(holds(faults_of("bench,product (g),mp\nA1,1.7,-300\n"), "is below absolute zero"));
    CHECK(faults_of("bench,product (g),mp\nA1,1.7,801\n").empty()); // sodium chloride
}

TEST_CASE("faults name row and column; several are told together") {
    const std::string faults =
        faults_of("bench;product (g);mp\nA1;2.May;166-168\nA2;1,7;1/2/2026\nA3;1.7;\nA4;x;\n");
    CHECK(holds(faults, "class.csv:2: column \"product (g)\": \"2.May\" is a date"));
    CHECK(holds(faults, "class.csv:3: column \"mp\": \"1/2/2026\" is a date"));
    CHECK(holds(faults, "class.csv:4: column \"product (g)\": \"1.7\" has a decimal point"));
    CHECK(holds(faults, "class.csv:5: column \"product (g)\": \"x\" is no number"));
    CHECK(holds(faults_of("bench,product\nA1,1.7\n"), "has no unit; write \"product (g)\""));
    CHECK(holds(faults_of("bench,product (mL)\nA1,1.7\n"), "has the unit \"ml\"; it takes g or mg"));
    CHECK(holds(faults_of("bench,prodct (g)\nA1,1.7\n"), "nearest: \"product\""));
    CHECK(holds(faults_of("bench,mass (g),product (g)\nA1,1.7,1.7\n"), "says what another column says"));
    CHECK(holds(faults_of("product (g)\n1.7\n"), "\"bench\""));
    CHECK(holds(faults_of("bench,product (g)\nA1,1.7,3\n"), "the row has 3 fields, the headings are 2"));
    CHECK(holds(faults_of("bench,product (g)\n"), "no row below"));
    CHECK(holds(faults_of(""), "the file is empty"));
    std::string much = "bench,product (g)\n";
    for (int i = 0; i < 1000; ++i)
        much += "A1,x\n";
    CHECK(holds(faults_of(much), "50 faults were found"));
}
