// SPDX-License-Identifier: MIT
// Every worked example that others published, and every vector constructed from the text of the rules; each
// with its source in data/published_mixtures.json.
#include "mixture_case.hpp"

#include "input/field.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <fstream>
#include <set>
#include <sstream>

using namespace routeweigh;
using namespace routeweigh::test::mixtures;
using doctest::Approx;

namespace {

Source example_file() {
    const std::string path = ROUTEWEIGH_ROOT "/tests/assess/mixture/data/published_mixtures.json";
    std::ifstream stream(path);
    REQUIRE(stream);
    std::ostringstream text;
    text << stream.rdbuf();
    return {"published_mixtures.json", text.str()};
}

// "vapour" of the examples is "vapours" by inhalation.
struct RouteOf {
    const char *key, *endpoint, *route, *form, *unit, *statement;
};
constexpr RouteOf routes[] = {
    {"oral", "acute_oral", "oral", "", "mg/kg bw", "H302"},
    {"dermal", "acute_dermal", "dermal", "", "mg/kg bw", "H312"},
    {"vapour", "acute_inhalation", "inhalation", "vapours", "mg/L", "H332"},
    {"mist", "acute_inhalation", "inhalation", "dusts or mists", "mg/L", "H332"},
    {"gas", "acute_inhalation", "inhalation", "gases", "ppmV", "H332"},
};

void add_estimates(const Field& field, Substance& substance, IngredientFacts& facts) {
    for (const RouteOf& route : routes) {
        const auto value = field.maybe(route.key);
        if (!value) continue;
        if (value->is_text()) {
            if (value->text() == "unknown") facts.unknown.emplace_back(route.endpoint);
            continue;
        }
        GhsEntry entry;
        entry.hazard_class = "Acute Tox.";
        entry.statement = route.statement; // its number says the route; the estimate says the category
        entry.acute_toxicity = AcuteToxicityEstimate{route.route, value->number(), route.unit, route.form};
        substance.ghs.push_back(entry);
    }
}

void add_aquatic(const Field& field, Substance& substance, IngredientFacts& facts) {
    for (const char* kind : {"acute", "chronic"}) {
        const auto category = field.maybe(std::string("aquatic_") + kind);
        if (!category) continue;
        GhsEntry made = entry(std::string(kind[0] == 'a' ? "Aquatic Acute " : "Aquatic Chronic ") +
                              std::to_string(category->integer()));
        if (const auto factor = field.maybe(std::string("m_") + kind)) made.m_factor = factor->number();
        substance.ghs.push_back(made);
    }
    if (const auto toxicity = field.maybe("ec50_mg_l")) facts.aquatic.acute_mg_per_litre = toxicity->number();
}

void add_ingredient(const Field& field, Mixed& mixed) {
    Substance substance = liquid(field["name"].text());
    IngredientFacts facts;
    if (const auto classes = field.maybe("classification"))
        for (const std::string& one : classes->texts())
            substance.ghs.push_back(entry(one));
    if (const auto bands = field.maybe("scl"))
        for (const Field& one : bands->items()) {
            const auto below = one.maybe("below_pct");
            const ConcentrationBand made =
                band(one["class"].text(), one["from_pct"].number(), below ? below->number() : 100.5);
            auto holder =
                std::find_if(substance.ghs.begin(), substance.ghs.end(),
                             [&](const GhsEntry& other) { return other.hazard_class == made.hazard_class; });
            if (holder == substance.ghs.end())
                holder = substance.ghs.insert(holder, entry(one["class"].text()));
            holder->specific_limits.push_back(made);
        }
    if (const auto estimates = field.maybe("ate")) add_estimates(*estimates, substance, facts);
    add_aquatic(field, substance, facts);
    if (const auto ph = field.maybe("pH")) facts.ph = ph->number();
    if (const auto additive = field.maybe("additive")) facts.additive = additive->boolean();
    if (const auto assessed = field.maybe("assessed")) substance.assessed = assessed->boolean();
    mixed.add(std::move(substance), field["pct"].number(), std::move(facts));
}

// Which results an example may be compared with; all where it does not say.
bool compares(const std::set<std::string>& tested, const MixtureResult& result) {
    if (tested.empty()) return true;
    const std::string of_class = result.hazard_class;
    for (const std::string& one : tested)
        if (of_class.starts_with(one) || result.endpoint.starts_with(one)) return true;
    return false;
}

std::set<std::string> printed(const MixtureClassification& judged, const std::set<std::string>& tested) {
    std::set<std::string> statements;
    for (const MixtureResult& result : judged.results)
        if (result.classified() && compares(tested, result) &&
            std::count(judged.label.statements.begin(), judged.label.statements.end(), result.statement) > 0)
            statements.insert(result.statement);
    return statements;
}

std::set<std::string> set_of(const Field& field) {
    const std::vector<std::string> texts = field.texts();
    return {texts.begin(), texts.end()};
}

void check_acute(const Field& expected, const MixtureClassification& judged) {
    for (const RouteOf& route : routes) {
        const MixtureResult* result = judged.result(route.endpoint);
        REQUIRE(result != nullptr);
        if (const auto estimates = expected.maybe("ate"))
            if (const auto value = estimates->maybe(route.key)) {
                REQUIRE(result->estimate.has_value());
                // Published to three or four figures.
                CHECK(*result->estimate == Approx(value->number()).epsilon(1e-3));
            }
        if (const auto categories = expected.maybe("category"))
            if (const auto keys = categories->keys();
                std::find(keys.begin(), keys.end(), route.key) != keys.end()) {
                const auto category = categories->maybe(route.key);
                CHECK(result->category == (category ? std::to_string(category->integer()) : ""));
            }
    }
}

void check_expected(const Field& expected, const char* codes_key, const MixtureClassification& judged) {
    std::set<std::string> tested;
    if (const auto list = expected.maybe("endpoints_tested")) tested = set_of(*list);
    if (const auto codes = expected.maybe(codes_key)) CHECK(printed(judged, tested) == set_of(*codes));
    const std::set<std::string> all = printed(judged, {});
    if (const auto absent = expected.maybe("not_h_codes"))
        for (const std::string& one : absent->texts())
            CHECK_FALSE(all.contains(one));
    if (const auto implied = expected.maybe("implied"))
        for (const std::string& one : implied->texts()) {
            CHECK_FALSE(all.contains(one));
            CHECK(std::any_of(judged.results.begin(), judged.results.end(),
                              [&](const MixtureResult& result) { return result.statement == one; }));
        }
    if (const auto subcategory = expected.maybe("subcategory"))
        CHECK(found(judged, "skin") == subcategory->text());
    if (const auto supplemental = expected.maybe("euh"))
        CHECK(judged.label.supplemental == supplemental->texts());
    for (const char* kind : {"aquatic_acute", "aquatic_chronic"})
        if (const auto keys = expected.keys(); std::string_view(codes_key) == "h_codes" &&
                                               std::find(keys.begin(), keys.end(), kind) != keys.end()) {
            const auto category = expected.maybe(kind);
            CHECK(judged.result(kind)->category == (category ? std::to_string(category->integer()) : ""));
        }
    if (const auto sums = expected.maybe("aquatic_sums_acute")) {
        const auto items = sums->items();
        const auto& tests = judged.result("aquatic_acute")->tests;
        if (std::string_view(codes_key) == "h_codes") {
            REQUIRE(tests.size() >= items.size());
            for (std::size_t i = 0; i < items.size(); ++i)
                CHECK(tests[i].value == Approx(items[i].number()));
        }
    }
    check_acute(expected, judged);
}

MixtureRegime regime_of(const std::string& text) {
    return text.starts_with("UN") ? MixtureRegime::un : MixtureRegime::eu;
}

} // namespace

TEST_CASE("every published example comes out as published") {
    const Document document = Document::parse(example_file());
    Problems problems;
    const Field root = document.root(problems);
    int count = 0;
    for (const Field& example : root["published"].items()) {
        ++count;
        CAPTURE(example["id"].text());
        CAPTURE(example["source"].text());
        Mixed mixed;
        for (const Field& ingredient : example["ingredients"].items())
            add_ingredient(ingredient, mixed);
        if (const auto facts = example.maybe("mixture"))
            if (const auto ph = facts->maybe("pH")) mixed.facts().ph = ph->number();
        const Field expected = example["expected"];
        const std::string regime = example["regime"].text();
        check_expected(expected, "h_codes", mixed.judged(regime_of(regime)));
        if (const auto clp = expected.maybe("clp")) check_expected(*clp, "h_codes", mixed.judged());
        if (expected.maybe("h_codes_clp")) {
            const std::set<std::string> codes = printed(mixed.judged(), {});
            CHECK(codes == set_of(expected["h_codes_clp"]));
        }
        if (expected.maybe("h_codes_osha"))
            CHECK(printed(mixed.judged(MixtureRegime::us), {}) == set_of(expected["h_codes_osha"]));
        if (regime == "UN GHS / CLP") check_expected(expected, "h_codes", mixed.judged());
    }
    CHECK(count == 18);
    CHECK(problems.all.empty());
}

TEST_CASE("every example that is remembered, and not at hand to be read, comes out") {
    const Document document = Document::parse(example_file());
    Problems problems;
    int count = 0;
    for (const Field& example : document.root(problems)["remembered"].items()) {
        ++count;
        CAPTURE(example["id"].text());
        CHECK(example["standing"].text().find("memory") != std::string::npos);
        Mixed mixed;
        for (const Field& ingredient : example["ingredients"].items())
            add_ingredient(ingredient, mixed);
        check_expected(example["expected"], "h_codes", mixed.judged());
    }
    CHECK(count == 1);
    CHECK(problems.all.empty());
}

TEST_CASE("every vector constructed from the rules comes out") {
    const Document document = Document::parse(example_file());
    Problems problems;
    int count = 0;
    for (const Field& vector : document.root(problems)["constructed"].items()) {
        ++count;
        CAPTURE(vector["id"].text());
        Mixed mixed;
        for (const Field& ingredient : vector["ingredients"].items())
            add_ingredient(ingredient, mixed);
        check_expected(vector["expected"], "h_codes", mixed.judged());
    }
    CHECK(count == 13);
    CHECK(problems.all.empty());
}

TEST_CASE("flammable liquids at the edges of flash point and boiling point") {
    const Document document = Document::parse(example_file());
    Problems problems;
    int count = 0;
    for (const Field& edge : document.root(problems)["flammable_liquid_edges"].items()) {
        ++count;
        Mixed mixed;
        mixed.of("Skin Irrit. 2", 1);
        mixed.facts().flash_point = edge["fp_c"].number();
        mixed.facts().boiling_point = edge["bp_c"].number();
        const auto expected = edge.maybe("h");
        CHECK(mixed.judged().result("flammable_liquid")->statement == (expected ? expected->text() : ""));
    }
    CHECK(count == 5);
}
