// SPDX-License-Identifier: MIT
// Points and limits: CLP Tables 3.1.1 (read) and 3.1.2 (memory). The arithmetic of each case stands beside
// it.
#include "mixture_case.hpp"

#include <doctest/doctest.h>

#include <string>

using namespace routeweigh;
using namespace routeweigh::test::mixtures;
using doctest::Approx;
using Phase = Substance::Phase;

namespace {

Substance toxic(std::string category, std::string statement, Phase phase = Phase::liquid) {
    Substance made = liquid("toxic " + category + " " + statement);
    made.phase = phase;
    GhsEntry entry;
    entry.hazard_class = "Acute Tox.";
    entry.category = std::move(category);
    entry.statement = std::move(statement);
    made.ghs.push_back(entry);
    return made;
}

Substance with_estimate(std::string category, std::string statement, AcuteToxicityEstimate estimate) {
    Substance made = toxic(std::move(category), std::move(statement));
    made.name += " " + std::to_string(estimate.value);
    made.ghs.front().acute_toxicity = std::move(estimate);
    return made;
}

const MixtureResult& result(const MixtureClassification& judged, std::string_view endpoint) {
    return *judged.result(endpoint);
}

} // namespace

TEST_CASE("the share at which a category by point leaves the mixture in each category") {
    // C = 100 x point / limit: category 3 by mouth has the point 100; 100/300 = 33.3 %, 100/2000 = 5 %.
    struct Row {
        const char *category, *statement, *endpoint;
        double percent;
        const char *at, *below;
    };
    constexpr Row rows[] = {
        {"2", "H300", "acute_oral", 10, "2", "3"},              // 5 / 0.1 = 50
        {"2", "H300", "acute_oral", 100.0 * 5 / 300, "3", "4"}, // 1.67 %
        {"2", "H300", "acute_oral", 0.25, "4", ""},             // 5 / 0.0025 = 2000
        {"3", "H301", "acute_oral", 100.0 / 3, "3", "4"},       // 100 / 300
        {"3", "H301", "acute_oral", 5, "4", ""},                // 100 / 0.05 = 2000
        {"4", "H302", "acute_oral", 25, "4", ""},               // 500 / 0.25 = 2000
        {"1", "H310", "acute_dermal", 10, "1", "2"},            // 5 / 0.1 = 50
        {"3", "H311", "acute_dermal", 30, "3", "4"},            // 300 / 0.3 = 1000
        {"3", "H311", "acute_dermal", 15, "4", ""},             // 300 / 0.15 = 2000
        {"4", "H312", "acute_dermal", 55, "4", ""},             // 1100 / 0.55 = 2000
    };
    for (const Row& row : rows) {
        CAPTURE(row.statement);
        CAPTURE(row.percent);
        const Substance substance = toxic(row.category, row.statement);
        CHECK(result(Mixed().add(substance, row.percent).judged(), row.endpoint).category == row.at);
        CHECK(result(Mixed().add(substance, row.percent * 0.9999).judged(), row.endpoint).category ==
              row.below);
    }
}

TEST_CASE("what is breathed is judged in the form of the mixture") {
    struct Row {
        const char *category, *statement;
        const char* form;
        double percent; // at which category 4 begins: 100 x point / limit
    };
    constexpr Row rows[] = {
        {"4", "H332", "vapours", 55},        // 11 / 20
        {"4", "H332", "dusts or mists", 30}, // 1.5 / 5
        {"4", "H332", "gases", 22.5},        // 4500 / 20000
        {"3", "H331", "vapours", 15},        // 3 / 20
        {"3", "H331", "dusts or mists", 10}, // 0.5 / 5
        {"3", "H331", "gases", 3.5},         // 700 / 20000
        {"2", "H330", "vapours", 2.5},       // 0.5 / 20
        {"2", "H330", "dusts or mists", 1},  // 0.05 / 5
        {"2", "H330", "gases", 0.5},         // 100 / 20000
    };
    for (const Row& row : rows) {
        CAPTURE(row.statement);
        CAPTURE(row.form);
        const auto at = [&](double percent) {
            Mixed mixed;
            mixed.add(toxic(row.category, row.statement), percent);
            mixed.facts().inhaled_form = row.form;
            return result(mixed.judged(), "acute_inhalation").category;
        };
        CHECK(at(row.percent) == "4");
        CHECK(at(row.percent * 0.9999) == "");
    }
}

TEST_CASE("a liquid is judged as vapour and as mist unless its ingredients say which") {
    // Category 4 at 40 %: as vapour 11 / 0.4 = 27.5, not classified; as mist 1.5 / 0.4 = 3.75, category 4.
    const auto both = Mixed().add(toxic("4", "H332"), 40).judged();
    CHECK(result(both, "acute_inhalation").category == "4");
    CHECK(result(both, "acute_inhalation").form == "dusts or mists");
    CHECK(result(both, "acute_inhalation").tests.size() == 2);
    // A solid gives no vapour: category 3 at 40 % is 0.5 / 0.4 = 1.25 as mist, and would be 7.5 as vapour.
    const auto solid = Mixed().add(toxic("3", "H331", Phase::solid), 40).judged();
    CHECK(result(solid, "acute_inhalation").category == "4");
    // An estimate as vapour is not turned into mist: 2.65 / 0.1 = 26.5 is above 20, though the point of its
    // category as mist, 0.5 / 0.1 = 5, would be category 4.
    const auto named =
        Mixed().add(with_estimate("3", "H331", {"inhalation", 2.65, "mg/L", "vapours"}), 10).judged();
    CHECK(result(named, "acute_inhalation").category == "");
    CHECK(*result(named, "acute_inhalation").estimate == Approx(26.5));
    // Beside it something that names no form is judged as mist by itself: 1.5 / 0.3 = 5.
    const auto mixed = Mixed()
                           .add(with_estimate("3", "H331", {"inhalation", 2.65, "mg/L", "vapours"}), 1)
                           .add(toxic("4", "H332"), 30)
                           .judged();
    CHECK(result(mixed, "acute_inhalation").form == "dusts or mists");
    CHECK(*result(mixed, "acute_inhalation").estimate == Approx(5.0));
}

TEST_CASE("an estimate of another form is replaced by the point of its category, and says so") {
    Mixed mixed;
    mixed.add(with_estimate("3", "H331", {"inhalation", 2.65, "mg/L", "vapours"}), 10);
    mixed.facts().inhaled_form = "dusts or mists";
    const auto judged = mixed.judged();
    CHECK(*result(judged, "acute_inhalation").estimate == Approx(5.0)); // 0.5 / 0.1
    CHECK(all_lines(result(judged, "acute_inhalation")).find("for another form") != std::string::npos);
}

TEST_CASE("gases go by volume, and mg/L become ppm") {
    // 17.031 g/mol: 1000 ppm are 1000 / (24450 / 17.031) = 0.6966 mg/L.
    Substance gas = with_estimate("3", "H331", {"inhalation", 0.69656, "mg/L", "gases"});
    gas.phase = Phase::gas;
    gas.molar_mass = 17.031;
    Substance rest = liquid("rest");
    rest.phase = Phase::gas;
    rest.molar_mass = 2 * 17.031;
    Mixed mixed;
    // Equal masses: two thirds by volume. 1000 / (2/3) = 1500 ppmV, category 3.
    mixed.add(gas, 50).add(rest, 50);
    CHECK(*result(mixed.judged(), "acute_inhalation").estimate == Approx(1500).epsilon(1e-4));
    CHECK(result(mixed.judged(), "acute_inhalation").category == "3");
    mixed.facts().by_volume = true;
    CHECK(*result(mixed.judged(), "acute_inhalation").estimate == Approx(2000).epsilon(1e-4));
}

TEST_CASE("the unknown share is stated, and taken off above 10 %") {
    Substance unknown = liquid("unknown");
    unknown.assessed = false;
    const auto judged = [&](double percent) {
        return Mixed().add(toxic("3", "H301"), 4.6).add(unknown, percent).judged();
    };
    CHECK(*result(judged(10), "acute_oral").estimate == Approx(100 / 0.046));
    CHECK(result(judged(10), "acute_oral").unknown_percent == Approx(10));
    CHECK(*result(judged(10.001), "acute_oral").estimate == Approx((100 - 10.001) / 0.046));
    CHECK(result(judged(10.001), "acute_oral").category == "4"); // 1957
    CHECK(all_lines(result(judged(12), "acute_oral")).find("12 % is of unknown hazard") != std::string::npos);
    // With the place of the rule: CLP Annex I, 3.1.3.6.2 (read).
    CHECK(all_lines(result(judged(12), "acute_oral")).find("off the 100 %: CLP Annex I, 3.1.3.6.2") !=
          std::string::npos);
    // Unknown on one route only.
    IngredientFacts facts;
    facts.unknown = {"acute_dermal"};
    const auto one = Mixed().add(liquid("by mouth known"), 50, facts).judged();
    CHECK(result(one, "acute_oral").unknown_percent == 0);
    CHECK(result(one, "acute_dermal").unknown_percent == Approx(50));
}

TEST_CASE("ingredients count from their cut-off on") {
    // Category 3 from 0.1 %, category 4 from 1 %; beside 4.95 % of category 3 (2020) they tip it below 2000.
    const auto judged = [](const Substance& other, double percent) {
        return result(Mixed().add(toxic("3", "H301"), 4.95).add(other, percent).judged(), "acute_oral")
            .tests.front()
            .parts.size();
    };
    Substance second = toxic("3", "H301"), mild = toxic("4", "H302");
    second.id = second.name = "second";
    CHECK(judged(second, 0.1) == 2);
    CHECK(judged(second, 0.0999) == 1);
    CHECK(judged(mild, 1.0) == 2);
    CHECK(judged(mild, 0.999) == 1);
}

TEST_CASE("a mixture is no worse than its worst ingredient, although points stand on the edge") {
    // The point of category 2 by mouth, 5 mg/kg, is the upper limit of category 1.
    for (const char* category : {"1", "2"})
        CHECK(result(Mixed().add(toxic(category, "H300"), 100).judged(), "acute_oral").category == category);
    CHECK(result(Mixed().add(toxic("3", "H331"), 100).judged(), "acute_inhalation").category == "3");
    const auto own = Mixed().add(with_estimate("", "H300", {"oral", 5, "mg/kg bw", ""}), 100).judged();
    CHECK(result(own, "acute_oral").category == "1"); // measured 5 is category 1
}

TEST_CASE("category 5 is a building block of the UN") {
    // 3450 mg/kg in 100 %: not classified in the EU, category 5 under the UN.
    const Substance mild = with_estimate("", "H302", {"oral", 3450, "mg/kg bw", ""});
    CHECK(result(Mixed().add(mild, 100).judged(), "acute_oral").category == "");
    CHECK(result(Mixed().add(mild, 100).judged(MixtureRegime::un), "acute_oral").category == "5");
    CHECK(result(Mixed().add(mild, 100).judged(MixtureRegime::un), "acute_oral").statement == "H303");
    CHECK(result(Mixed().add(mild, 100).judged(MixtureRegime::us), "acute_oral").category == "");
}
