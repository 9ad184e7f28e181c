// SPDX-License-Identifier: MIT
// Skin and eyes. Rules: CLP Annex I, 3.2.3.3 and 3.3.3.3 (read in part); arithmetic beside each case.
#include "mixture_case.hpp"

#include <doctest/doctest.h>

#include <string>

using namespace routeweigh;
using namespace routeweigh::test::mixtures;
using doctest::Approx;

namespace {

Substance limited(std::string name, const std::string& hazard_class,
                  const std::vector<ConcentrationBand>& bands) {
    Substance made = liquid(std::move(name), {hazard_class});
    made.ghs.front().specific_limits = bands;
    return made;
}

IngredientFacts not_additive() {
    IngredientFacts facts;
    facts.additive = false;
    return facts;
}

} // namespace

TEST_CASE("corrosive ingredients count tenfold among the irritating") {
    // 10 x 0.9 is left out, for 0.9 % is below the cut-off; 10 x 1 + 0 = 10
    CHECK(found(Mixed().of("Skin Corr. 1B", 0.99).of("Skin Irrit. 2", 9.9).judged(), "skin") == "");
    CHECK(found(Mixed().of("Skin Corr. 1B", 1).judged(), "skin") == "Skin Irrit. 2");
    CHECK(found(Mixed().of("Eye Dam. 1", 0.99).of("Eye Irrit. 2", 9.9).judged(), "eye") == "");
    CHECK(found(Mixed().of("Skin Corr. 1B", 1).of("Eye Irrit. 2", 9).judged(), "eye") == "Eye Irrit. 2");
}

TEST_CASE("subcategories: 1A alone, then with 1B, then with 1C; without one the mixture has none") {
    CHECK(found(Mixed().of("Skin Corr. 1A", 5).of("Skin Corr. 1C", 50).judged(), "skin") == "Skin Corr. 1A");
    CHECK(found(Mixed().of("Skin Corr. 1A", 3).of("Skin Corr. 1B", 2).judged(), "skin") == "Skin Corr. 1B");
    CHECK(found(Mixed().of("Skin Corr. 1A", 2).of("Skin Corr. 1B", 2).of("Skin Corr. 1C", 1).judged(),
                "skin") == "Skin Corr. 1C");
    CHECK(found(Mixed().of("Skin Corr. 1", 3).of("Skin Corr. 1C", 3).judged(), "skin") == "Skin Corr. 1");
    CHECK(found(Mixed().of("Skin Corr. 1", 3).of("Skin Corr. 1A", 6).judged(), "skin") == "Skin Corr. 1A");
}

TEST_CASE("a substance that corrodes skin and damages eyes counts once for the eyes") {
    Mixed mixed;
    mixed.add(liquid("both", {"Skin Corr. 1B", "Eye Dam. 1"}), 2);
    const auto judged = mixed.judged();
    CHECK(found(judged, "eye") == "Eye Irrit. 2"); // 2 % is below 3 %; twice 2 % would not be
    CHECK(judged.result("eye")->tests.front().value == Approx(2.0 / 3));
}

TEST_CASE("specific and general limits add up as shares of each") {
    const Substance strong =
        limited("strong", "Skin Corr. 1B", {band("Skin Corr. 1B", 2), band("Skin Irrit. 2", 0.5, 2)});
    // 1 / 2 + 2.5 / 5 = 1
    const auto judged = Mixed().add(strong, 1).of("Skin Corr. 1B", 2.5).judged();
    CHECK(found(judged, "skin") == "Skin Corr. 1B");
    CHECK(judged.result("skin")->specific);
    // 0.99 / 2 + 2.5 / 5 = 0.995
    CHECK(found(Mixed().add(strong, 0.99).of("Skin Corr. 1B", 2.5).judged(), "skin") == "Skin Irrit. 2");
    // A specific limit below 1 % lowers the cut-off: 0.4 / 0.5 + 2 / 10 = 1, but 0.4 is below 0.5
    CHECK(found(Mixed().add(strong, 0.4).of("Skin Irrit. 2", 9.9).judged(), "skin") == "");
    CHECK(found(Mixed().add(strong, 0.5).judged(), "skin") == "Skin Irrit. 2");
}

TEST_CASE("what a specific limit says of the skin does not carry over to the eyes, and the other way") {
    // As nitric acid up to 70 %: limits for the skin only. At 4 % it damages eyes by the general limit of 3
    // %.
    const Substance skin_only =
        limited("skin only", "Skin Corr. 1A", {band("Skin Corr. 1A", 20), band("Skin Corr. 1B", 5, 20)});
    CHECK(found(Mixed().add(skin_only, 4).judged(), "skin") == "Skin Irrit. 2");
    CHECK(found(Mixed().add(skin_only, 4).judged(), "eye") == "Eye Dam. 1");
    // Where it irritates eyes up to a share it damages them from there on, not from 3 %.
    const Substance both =
        limited("both", "Skin Corr. 1B",
                {band("Skin Corr. 1B", 25), band("Skin Irrit. 2", 10, 25), band("Eye Irrit. 2", 10, 25)});
    CHECK(found(Mixed().add(both, 24).judged(), "eye") == "Eye Irrit. 2");
    CHECK(found(Mixed().add(both, 9.9).judged(), "eye") == "");
}

TEST_CASE("an ingredient for which limits do not add up decides by itself") {
    const auto corrosive = [](double percent) {
        return Mixed().add(liquid("phenol-like", {"Skin Corr. 1B"}), percent, not_additive()).judged();
    };
    CHECK(found(corrosive(1), "skin") == "Skin Corr. 1B");
    CHECK(found(corrosive(1), "eye") == "Eye Dam. 1");
    CHECK(found(corrosive(0.999), "skin") == "");
    const auto irritant = [](double percent) {
        return Mixed()
            .add(liquid("aldehyde-like", {"Skin Irrit. 2", "Eye Irrit. 2"}), percent, not_additive())
            .judged();
    };
    CHECK(found(irritant(3), "skin") == "Skin Irrit. 2");
    CHECK(found(irritant(3), "eye") == "Eye Irrit. 2");
    CHECK(found(irritant(2.99), "skin") == "");
    CHECK(found(irritant(2.99), "eye") == "");
    // A specific limit is data on its solutions and comes first.
    Mixed mixed;
    mixed.add(limited("known", "Skin Corr. 1B", {band("Skin Corr. 1B", 10)}), 5, not_additive());
    CHECK(found(mixed.judged(), "skin") == "Skin Irrit. 2");
}

TEST_CASE("the pH of an ingredient makes it a strong acid or base") {
    const auto with_ph = [](double ph) {
        IngredientFacts facts;
        facts.ph = ph;
        return found(Mixed().add(liquid("acid", {"Skin Corr. 1"}), 4, facts).judged(), "skin");
    };
    CHECK(with_ph(2.0) == "Skin Corr. 1");
    CHECK(with_ph(2.1) == "Skin Irrit. 2");
    CHECK(with_ph(11.4) == "Skin Irrit. 2");
    CHECK(with_ph(11.5) == "Skin Corr. 1");
}

TEST_CASE("an extreme pH of the mixture decides, unless specific limits account for it") {
    const auto at = [](double ph) {
        Mixed mixed;
        mixed.of("Skin Irrit. 2", 0.5);
        mixed.facts().ph = ph;
        return mixed.judged();
    };
    CHECK(found(at(2.0), "skin") == "Skin Corr. 1");
    CHECK(found(at(2.0), "eye") == "Eye Dam. 1");
    CHECK(found(at(2.01), "skin") == "");
    CHECK(found(at(11.49), "skin") == "");
    CHECK(found(at(11.5), "skin") == "Skin Corr. 1");
    CHECK(found(at(13), "eye") == "Eye Dam. 1");

    const auto lye = [](double ph) {
        MixtureClassification judged;
        Mixture mixture = mixture_of(Catalogue::embedded(), "lye", {{"sodium hydroxide", 1}, {"water", 99}});
        mixture.facts.ph = ph;
        return classify(mixture, rules());
    };
    CHECK(statements(lye(13.4)) == "H315 H319");      // CLP Annex VI: 0.5 to 2 % irritates
    CHECK(found(lye(1.0), "skin") == "Skin Corr. 1"); // a base does not account for an acid pH
    CHECK(all_lines(*lye(13.4).result("skin")).find("account for the pH") != std::string::npos);
}

TEST_CASE("eye irritants of category 2B make 2B only among themselves") {
    const auto un = MixtureRegime::un;
    CHECK(found(Mixed().of("Eye Irrit. 2B", 6).of("Eye Irrit. 2B", 6).judged(un), "eye") == "Eye Irrit. 2B");
    CHECK(found(Mixed().of("Eye Irrit. 2B", 9).of("Eye Irrit. 2A", 1).judged(un), "eye") == "Eye Irrit. 2A");
    CHECK(found(Mixed().of("Eye Irrit. 2B", 9).of("Eye Irrit. 2A", 1).judged(), "eye") == "Eye Irrit. 2");
    CHECK(Mixed().of("Eye Irrit. 2B", 12).judged(un).result("eye")->statement == "H320");
}

TEST_CASE("a strong acid without stated pH is told that it would decide") {
    Mixed mixed;
    mixed.add(liquid("acid", {"Skin Corr. 1"}), 0.9, not_additive());
    CHECK(all_lines(*mixed.judged().result("skin")).find("pH is not stated") != std::string::npos);
}
