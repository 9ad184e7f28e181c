// SPDX-License-Identifier: MIT
// The same mixtures under the EU, the UN with and without its building blocks, and the US.
#include "mixture_case.hpp"

#include <doctest/doctest.h>

using namespace routeweigh;
using namespace routeweigh::test::mixtures;

namespace {

MixtureRules un_with(const std::map<std::string, bool>& blocks) {
    return read_mixture_rules(Catalogue::embedded(), MixtureRegime::un, blocks);
}

} // namespace

TEST_CASE("the regime and its building blocks are told") {
    CHECK(regime_text(Mixed().judged()) == "EU CLP");
    CHECK(regime_text(Mixed().judged(MixtureRegime::us)) == "US OSHA hazard communication");
    const MixtureRules bare = un_with({{"acute-toxicity-5", false},
                                       {"skin-irritation-3", false},
                                       {"eye-irritation-2a-2b", false},
                                       {"aspiration-2", false},
                                       {"aquatic-acute-2-3", false},
                                       {"flammable-liquid-4", false}});
    CHECK(regime_text(Mixed().judged(bare)) == "UN GHS");
    const MixtureRules one = un_with({{"acute-toxicity-5", false},
                                      {"skin-irritation-3", true},
                                      {"eye-irritation-2a-2b", false},
                                      {"aspiration-2", false},
                                      {"aquatic-acute-2-3", false},
                                      {"flammable-liquid-4", false}});
    CHECK(regime_text(Mixed().judged(one)) == "UN GHS, with skin irritation, category 3");
}

TEST_CASE("each building block can be switched off and on") {
    struct Row {
        const char *block, *ingredient;
        double percent;
        const char *endpoint, *on, *off;
    };
    constexpr Row rows[] = {
        {"skin-irritation-3", "Skin Irrit. 2", 5, "skin", "Skin Irrit. 3", ""},
        {"eye-irritation-2a-2b", "Eye Irrit. 2B", 12, "eye", "Eye Irrit. 2B", "Eye Irrit. 2"},
        {"aspiration-2", "Asp. Tox. 2", 12, "aspiration", "Asp. Tox. 2", ""},
        {"aquatic-acute-2-3", "Aquatic Acute 2", 30, "aquatic_acute", "Aquatic Acute 2", ""},
        {"low-sensitiser-limits", "Skin Sens. 1", 0.1, "skin_sensitisation", "Skin Sens. 1", ""},
        {"low-carcinogen-2-limit", "Carc. 2", 0.1, "carcinogenicity", "Carc. 2", ""},
        {"low-reproductive-limits", "Repr. 2", 0.1, "reproductive_toxicity", "Repr. 2", ""},
        {"low-target-organ-limits", "STOT RE 1", 1, "target_organ_repeated", "STOT RE 1", "STOT RE 2"},
    };
    for (const Row& row : rows) {
        CAPTURE(row.block);
        const Mixed mixed = Mixed().of(row.ingredient, row.percent);
        CHECK(found(mixed.judged(un_with({{row.block, true}})), row.endpoint) == row.on);
        CHECK(found(mixed.judged(un_with({{row.block, false}})), row.endpoint) == row.off);
    }
    Mixed warm;
    warm.of("Skin Irrit. 2", 1);
    warm.facts().flash_point = 80;
    CHECK(found(warm.judged(un_with({})), "flammable_liquid") == "Flam. Liq. 4");
    CHECK(found(warm.judged(un_with({{"flammable-liquid-4", false}})), "flammable_liquid") == "");
}

TEST_CASE("with all building blocks off the UN gives what the EU gives") {
    const MixtureRules bare = un_with({{"acute-toxicity-5", false},
                                       {"skin-irritation-3", false},
                                       {"eye-irritation-2a-2b", false},
                                       {"aspiration-2", false},
                                       {"aquatic-acute-2-3", false},
                                       {"flammable-liquid-4", false}});
    for (const Material* material : Catalogue::embedded().all_materials()) {
        const Mixture mixture = mixture_of(*material);
        const auto eu = classify(mixture, rules()), un = classify(mixture, bare);
        CHECK_MESSAGE(statements(eu) == statements(un), material->name);
        CHECK(un.label.supplemental.empty());
    }
}

TEST_CASE("bottles of the trade come out as their sheets have them") {
    // Outcomes of suppliers' and insurers' sheets. Hydrogen peroxide 30 %, nitric acid 30 %: BG RCI sheets
    // (read in public copies); the others are the bands of CLP Annex VI (read in the catalogue's source).
    CHECK(statements(bottle("hydrogen peroxide 30 %")) == "H302 H318 H332");
    CHECK(statements(bottle({{"nitric acid", 30}, {"water", 70}})) == "H314 H331");
    CHECK(statements(bottle("hydrobromic acid 48 %")) == "H314 H335");
    CHECK(statements(bottle("hydrochloric acid 37 %")) == "H314 H335");
    CHECK(statements(bottle("hydrochloric acid 10 %")) == "H315 H319 H335");
    CHECK(statements(bottle("hydrochloric acid 1 M")) == "");
    CHECK(statements(bottle({{"sulfuric acid", 10}, {"water", 90}})) == "H315 H319");
    CHECK(statements(bottle({{"acetic acid", 20}, {"water", 80}})).find("H315 H319") != std::string::npos);
    CHECK(statements(bottle("acetic acid 5 % (white vinegar)")) == "");
    CHECK(statements(bottle("sodium hydroxide 10 %")) == "H314");
    CHECK(statements(bottle("hydrogen peroxide 3 %")) == "");
    CHECK(statements(bottle("sodium chloride, saturated (brine)")) == "");
    CHECK(statements(bottle("ethanol 95 % by volume")) == "H225");
    // Sodium hypochlorite 0.5 %, a supplier's sheet (read): 10 x 0.5 = 5, 100 x 0.5 = 50.
    CHECK(statements(bottle({{"sodium hypochlorite", 0.5}, {"water", 99.5}})) == "H412");
}
