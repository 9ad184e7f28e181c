// SPDX-License-Identifier: MIT
// Precedence on the label: CLP Articles 26 to 28 and Annex III (memory).
#include "base/list.hpp"
#include "mixture_case.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <set>

using namespace routeweigh;
using namespace routeweigh::test::mixtures;

namespace {

std::string pictograms(const MixtureClassification& judged) {
    return join(judged.label.pictograms, " ");
}

GhsEntry acute(std::string category, std::string statement) {
    GhsEntry made;
    made.hazard_class = "Acute Tox.";
    made.category = std::move(category);
    made.statement = std::move(statement);
    return made;
}

} // namespace

TEST_CASE("statements give way, and the classification keeps them") {
    const auto corrosive = Mixed().of("Skin Corr. 1B", 10).judged();
    CHECK(statements(corrosive) == "H314");
    CHECK(found(corrosive, "eye") == "Eye Dam. 1");
    REQUIRE(corrosive.label.omitted.size() == 1);
    CHECK(corrosive.label.omitted.front().what == "H318");
    CHECK(corrosive.label.omitted.front().beside == "H314");

    const auto water = Mixed().add(liquid("both", {"Aquatic Acute 1", "Aquatic Chronic 1"}), 50).judged();
    CHECK(statements(water) == "H410");
    CHECK(found(water, "aquatic_acute") == "Aquatic Acute 1");
    const auto second = Mixed().add(liquid("both", {"Aquatic Acute 1", "Aquatic Chronic 2"}), 50).judged();
    CHECK(statements(second) == "H400 H411");
}

TEST_CASE("irritated airways give way to corroded ones unless a specific limit speaks") {
    Substance acid = liquid("acid", {"Skin Corr. 1B", "STOT SE 3 (respiratory)"});
    acid.ghs.push_back(acute("3", "H331"));
    const auto general = Mixed().add(acid, 50).judged();
    CHECK(general.label.supplemental == std::vector<std::string>{"EUH071"});
    CHECK(statements(general) == "H314 H331");
    acid.ghs[1].specific_limits = {band("STOT SE 3 (respiratory)", 10)};
    CHECK(statements(Mixed().add(acid, 50).judged()) == "H314 H331 H335");
}

TEST_CASE("pictograms give way") {
    // Exclamation mark: beside corrosion not for irritation, but for drowsiness and for harm by mouth.
    CHECK(pictograms(Mixed().of("Skin Corr. 1B", 10).judged()) == "GHS05");
    CHECK(pictograms(Mixed().of("Eye Dam. 1", 10).of("Skin Irrit. 2", 20).judged()) == "GHS05");
    CHECK(pictograms(Mixed().of("Skin Corr. 1B", 10).of("STOT SE 3 (narcotic)", 30).judged()) ==
          "GHS05 GHS07");
    Substance harmful = liquid("harmful");
    harmful.ghs.push_back(acute("4", "H302"));
    CHECK(pictograms(Mixed().of("Skin Corr. 1B", 10).add(harmful, 50).judged()) == "GHS05 GHS07");
    // Beside the skull never.
    Substance toxic = liquid("toxic");
    toxic.ghs.push_back(acute("3", "H301"));
    CHECK(pictograms(Mixed().add(toxic, 50).of("STOT SE 3 (narcotic)", 30).judged()) == "GHS06");
    // Beside a sensitiser of the airways not for skin sensitisation and irritation.
    CHECK(pictograms(Mixed().of("Resp. Sens. 1", 2).of("Skin Sens. 1", 2).judged()) == "GHS08");
    CHECK(pictograms(Mixed().of("Carc. 2", 2).of("Skin Sens. 1", 2).judged()) == "GHS07 GHS08");
}

TEST_CASE("the signal word is that of the worst") {
    CHECK(Mixed().of("Skin Irrit. 2", 20).judged().label.signal == "Warning");
    CHECK(Mixed().of("Skin Irrit. 2", 20).of("Carc. 1B", 1).judged().label.signal == "Danger");
    CHECK(Mixed().of("Aquatic Chronic 2", 30).judged().label.signal == "");
    CHECK(Mixed().of("Aquatic Chronic 1", 30).judged().label.signal == "Warning");
    CHECK(Mixed().judged().label.signal == "");
}

TEST_CASE("signal words of statements that depend on the category") {
    // Oxidising liquids: Danger for category 2, Warning for category 3 (UN GHS, annex 1, memory).
    CHECK(bottle({{"hydrogen peroxide", 55}, {"sodium chloride", 45}}).label.signal == "Danger");
    const LabelElements& elements = rules().labels;
    CHECK(elements.statement("H272", "2")->signal == "Danger");
    CHECK(elements.statement("H272", "3")->signal == "Warning");
    CHECK(elements.statement("H228", "1")->signal == "Danger");
    CHECK(elements.statement("H228", "2")->signal == "Warning");
}

TEST_CASE("a label takes at most six precautions, and one for water beside them, and says nothing twice") {
    for (const Material* material : Catalogue::embedded().all_materials()) {
        const MixtureClassification judged = classify(mixture_of(*material), rules());
        const std::vector<std::string>& chosen = judged.label.precautions;
        CAPTURE(material->name);
        CHECK(chosen.size() <= (contains(chosen, "P273") ? 7U : 6U));
        CHECK(chosen.empty() == judged.label.statements.empty());
        for (const std::string& first : chosen) {
            CHECK(!rules().labels.text(first).empty());
            for (const std::string& second : chosen)
                CHECK((first == second || !rules().labels.covers(first, second)));
        }
    }
    const auto acid = bottle("sulfuric acid 96 %");
    CHECK(join(acid.label.precautions, " ") == "P260 P280 P301+P330+P331 P303+P361+P353 P305+P351+P338 P310");
}

// GHS gives P260, P301+P330+P331, P303+P361+P353, P305+P351+P338 and P310 to H314 (annex 3, memory); a milder
// statement beside it must not displace them by its weaker wording.
TEST_CASE("first aid for what corrodes stands on the label whatever else the mixture does") {
    for (const char* name :
         {"acetic anhydride", "nitric acid 70 %", "hydrobromic acid 48 %", "sulfuric acid 96 %"}) {
        CAPTURE(name);
        const auto acid = bottle(name);
        REQUIRE(contains(acid.label.statements, "H314"));
        for (const char* code : {"P301+P330+P331", "P303+P361+P353", "P305+P351+P338", "P310"})
            CHECK(contains(acid.label.precautions, code));
        for (const char* weaker : {"P261", "P301+P312", "P311", "P312"})
            CHECK(!contains(acid.label.precautions, weaker));
    }
}

// GHS gives P273 to H400 and H410 to H413 (annex 3, memory); which ones stand on a label is left to the
// supplier, no more than six unless the hazards ask for it (CLP Art. 28(3), memory).
TEST_CASE("what harms water says so among the precautions, even where first aid fills all six places") {
    for (const Material* material : Catalogue::embedded().all_materials()) {
        const MixtureLabel label = classify(mixture_of(*material), rules()).label;
        CAPTURE(material->name);
        const bool harms_water =
            std::any_of(label.statements.begin(), label.statements.end(), [](const std::string& statement) {
                return statement == "H400" || statement.starts_with("H41");
            });
        CHECK(contains(label.precautions, "P273") == harms_water);
    }
    // Fatal if inhaled, corrosive, and H400: none of the six gives way.
    CHECK(join(bottle("bromine").label.precautions, " ") ==
          "P260 P273 P280 P303+P361+P353 P304+P340 P305+P351+P338 P310");
}

TEST_CASE("fresh air stands on a label that says fatal if inhaled, and no flame on that of a corrosive that "
          "burns") {
    CHECK(contains(bottle("bromine").label.precautions, "P304+P340"));
    const auto acid = bottle("acetic acid");
    REQUIRE(contains(acid.label.statements, "H226"));
    CHECK(contains(acid.label.precautions, "P210"));
    CHECK(contains(acid.label.precautions, "P310"));
}

TEST_CASE("what decides a health class is named on the label") {
    const auto judged = bottle({{"hydrogen peroxide", 30}, {"water", 70}});
    REQUIRE(judged.label.named.size() == 1);
    CHECK(judged.label.named.front()->name == "hydrogen peroxide");
}

TEST_CASE("every statement that a rule or an entry gives has a text, and every class a signal") {
    std::set<std::string> codes;
    for (const MixtureRegime regime : {MixtureRegime::eu, MixtureRegime::un, MixtureRegime::us}) {
        const MixtureLimits& limits = rules(regime).limits;
        for (const AcuteRoute& route : limits.acute.routes)
            for (const AcuteCategory& category : route.categories)
                codes.insert(category.statement);
        for (const ThresholdEndpoint& endpoint : limits.thresholds.endpoints)
            for (const ThresholdRow& row : endpoint.rows)
                codes.insert(row.statement);
        for (const AspirationCategory& category : limits.aspiration)
            codes.insert(category.statement);
        for (const auto* list : {&limits.aquatic.acute, &limits.aquatic.chronic})
            for (const AquaticCategory& category : *list)
                codes.insert(category.statement);
        for (const FlammableCategory& category : limits.flammable.categories)
            codes.insert(category.statement);
    }
    for (const CarriedStatement& carried : rules().notes.carried)
        codes.insert(carried.statement);
    for (const Substance* substance : Catalogue::embedded().all_substances()) {
        for (const GhsEntry& entry : substance->ghs)
            codes.insert(entry.statement);
        for (const std::string& code : substance->supplemental)
            codes.insert(code);
    }
    codes.insert({"H314", "H315", "H316", "H318", "H319", "H320", "H335", "H336", "EUH071", "EUH208"});
    for (const std::string& code : codes)
        CHECK_MESSAGE(!rules().labels.text(code).empty(), code);
}
