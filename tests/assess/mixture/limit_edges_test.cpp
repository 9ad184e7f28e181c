// SPDX-License-Identifier: MIT
// Limits just below, at and just above; the limits are those of the tables named in
// hazard-data/schemes/ghs_limits_*.json (CLP Annex I, UN GHS, 29 CFR 1910.1200 Appendix A; which were read
// and which are from memory stands there).
#include "mixture_case.hpp"

#include <doctest/doctest.h>

using namespace routeweigh;
using namespace routeweigh::test::mixtures;

namespace {

constexpr auto eu = MixtureRegime::eu;
constexpr auto un = MixtureRegime::un;
constexpr auto us = MixtureRegime::us;

// From `percent` of one ingredient of this class on, the mixture has the category; below it has `below`.
struct Edge {
    MixtureRegime regime;
    const char* ingredient;
    double percent;
    const char* endpoint;
    const char* reached;
    const char* below;
};

constexpr Edge edges[] = {
    {eu, "Skin Corr. 1A", 5, "skin", "Skin Corr. 1A", "Skin Irrit. 2"},
    {eu, "Skin Corr. 1B", 5, "skin", "Skin Corr. 1B", "Skin Irrit. 2"},
    {eu, "Skin Corr. 1C", 5, "skin", "Skin Corr. 1C", "Skin Irrit. 2"},
    {eu, "Skin Corr. 1", 5, "skin", "Skin Corr. 1", "Skin Irrit. 2"},
    {eu, "Skin Corr. 1B", 1, "skin", "Skin Irrit. 2", ""},
    {eu, "Skin Irrit. 2", 10, "skin", "Skin Irrit. 2", ""},
    {un, "Skin Irrit. 2", 10, "skin", "Skin Irrit. 2", "Skin Irrit. 3"},
    {un, "Skin Irrit. 2", 1, "skin", "Skin Irrit. 3", ""},
    {un, "Skin Irrit. 3", 10, "skin", "Skin Irrit. 3", ""},
    {us, "Skin Irrit. 2", 10, "skin", "Skin Irrit. 2", ""},
    {eu, "Eye Dam. 1", 3, "eye", "Eye Dam. 1", "Eye Irrit. 2"},
    {eu, "Eye Dam. 1", 1, "eye", "Eye Irrit. 2", ""},
    {eu, "Skin Corr. 1B", 3, "eye", "Eye Dam. 1", "Eye Irrit. 2"},
    {eu, "Eye Irrit. 2", 10, "eye", "Eye Irrit. 2", ""},
    {un, "Eye Irrit. 2A", 10, "eye", "Eye Irrit. 2A", ""},
    {un, "Eye Irrit. 2B", 10, "eye", "Eye Irrit. 2B", ""},
    {us, "Eye Dam. 1", 3, "eye", "Eye Dam. 1", "Eye Irrit. 2A"},
    {eu, "Resp. Sens. 1", 1, "respiratory_sensitisation", "Resp. Sens. 1", ""},
    {eu, "Resp. Sens. 1A", 0.1, "respiratory_sensitisation", "Resp. Sens. 1", ""},
    {us, "Resp. Sens. 1", 0.1, "respiratory_sensitisation", "Resp. Sens. 1", ""},
    {us, "Resp. Sens. 1B", 1, "respiratory_sensitisation", "Resp. Sens. 1", ""},
    {eu, "Skin Sens. 1", 1, "skin_sensitisation", "Skin Sens. 1", ""},
    {eu, "Skin Sens. 1A", 0.1, "skin_sensitisation", "Skin Sens. 1", ""},
    {eu, "Skin Sens. 1B", 1, "skin_sensitisation", "Skin Sens. 1", ""},
    {us, "Skin Sens. 1", 0.1, "skin_sensitisation", "Skin Sens. 1", ""},
    {un, "Skin Sens. 1", 1, "skin_sensitisation", "Skin Sens. 1", ""},
    {eu, "Muta. 1A", 0.1, "mutagenicity", "Muta. 1A", ""},
    {eu, "Muta. 1B", 0.1, "mutagenicity", "Muta. 1B", ""},
    {eu, "Muta. 2", 1, "mutagenicity", "Muta. 2", ""},
    {us, "Muta. 2", 1, "mutagenicity", "Muta. 2", ""},
    {eu, "Carc. 1A", 0.1, "carcinogenicity", "Carc. 1A", ""},
    {eu, "Carc. 1B", 0.1, "carcinogenicity", "Carc. 1B", ""},
    {eu, "Carc. 2", 1, "carcinogenicity", "Carc. 2", ""},
    {us, "Carc. 2", 0.1, "carcinogenicity", "Carc. 2", ""},
    {eu, "Repr. 1A", 0.3, "reproductive_toxicity", "Repr. 1A", ""},
    {eu, "Repr. 1B", 0.3, "reproductive_toxicity", "Repr. 1B", ""},
    {eu, "Repr. 2", 3, "reproductive_toxicity", "Repr. 2", ""},
    {us, "Repr. 1B", 0.1, "reproductive_toxicity", "Repr. 1B", ""},
    {us, "Repr. 2", 0.1, "reproductive_toxicity", "Repr. 2", ""},
    {eu, "Lact.", 0.3, "lactation", "Lact.", ""},
    {us, "Lact.", 0.1, "lactation", "Lact.", ""},
    {eu, "STOT SE 1", 10, "target_organ_single", "STOT SE 1", "STOT SE 2"},
    {eu, "STOT SE 1", 1, "target_organ_single", "STOT SE 2", ""},
    {eu, "STOT SE 2", 10, "target_organ_single", "STOT SE 2", ""},
    {us, "STOT SE 1", 1, "target_organ_single", "STOT SE 1", ""},
    {us, "STOT SE 2", 1, "target_organ_single", "STOT SE 2", ""},
    {eu, "STOT RE 1", 10, "target_organ_repeated", "STOT RE 1", "STOT RE 2"},
    {eu, "STOT RE 1", 1, "target_organ_repeated", "STOT RE 2", ""},
    {eu, "STOT RE 2", 10, "target_organ_repeated", "STOT RE 2", ""},
    {us, "STOT RE 1", 1, "target_organ_repeated", "STOT RE 1", ""},
    {eu, "STOT SE 3 (respiratory)", 20, "airway_irritation", "STOT SE 3", ""},
    {eu, "STOT SE 3 (narcotic)", 20, "drowsiness", "STOT SE 3", ""},
    {us, "STOT SE 3 (narcotic)", 20, "drowsiness", "STOT SE 3", ""},
    {eu, "Asp. Tox. 1", 10, "aspiration", "Asp. Tox. 1", ""},
    {un, "Asp. Tox. 2", 10, "aspiration", "Asp. Tox. 2", ""},
    {eu, "Aquatic Acute 1", 25, "aquatic_acute", "Aquatic Acute 1", ""},
    {un, "Aquatic Acute 1", 25, "aquatic_acute", "Aquatic Acute 1", "Aquatic Acute 2"},
    {un, "Aquatic Acute 1", 2.5, "aquatic_acute", "Aquatic Acute 2", "Aquatic Acute 3"},
    {un, "Aquatic Acute 2", 25, "aquatic_acute", "Aquatic Acute 2", "Aquatic Acute 3"},
    {un, "Aquatic Acute 3", 25, "aquatic_acute", "Aquatic Acute 3", ""},
    {eu, "Aquatic Chronic 1", 25, "aquatic_chronic", "Aquatic Chronic 1", "Aquatic Chronic 2"},
    {eu, "Aquatic Chronic 1", 2.5, "aquatic_chronic", "Aquatic Chronic 2", "Aquatic Chronic 3"},
    {eu, "Aquatic Chronic 1", 0.25, "aquatic_chronic", "Aquatic Chronic 3", ""},
    {eu, "Aquatic Chronic 2", 25, "aquatic_chronic", "Aquatic Chronic 2", "Aquatic Chronic 3"},
    {eu, "Aquatic Chronic 2", 2.5, "aquatic_chronic", "Aquatic Chronic 3", ""},
    {eu, "Aquatic Chronic 3", 25, "aquatic_chronic", "Aquatic Chronic 3", ""},
    {eu, "Aquatic Chronic 4", 25, "aquatic_chronic", "Aquatic Chronic 4", ""},
    {eu, "Ozone 1", 0.1, "ozone", "Ozone 1", ""},
};

} // namespace

TEST_CASE("each limit decides at its own number") {
    for (const Edge& edge : edges) {
        CAPTURE(edge.ingredient);
        CAPTURE(edge.percent);
        CAPTURE(words(edge.regime));
        const auto at = [&](double percent) {
            return found(Mixed().of(edge.ingredient, percent).judged(edge.regime), edge.endpoint);
        };
        CHECK(at(edge.percent * 0.9999) == edge.below);
        CHECK(at(edge.percent) == edge.reached);
        CHECK(at(edge.percent * 1.0001) == edge.reached);
    }
}

TEST_CASE("two halves of what adds up make a whole, two halves of what does not make nothing") {
    constexpr Edge summed[] = {
        {eu, "Skin Corr. 1B", 5, "skin", "Skin Corr. 1B", "Skin Irrit. 2"},
        {eu, "Skin Irrit. 2", 10, "skin", "Skin Irrit. 2", ""},
        {eu, "Eye Dam. 1", 3, "eye", "Eye Dam. 1", "Eye Irrit. 2"},
        {eu, "Eye Irrit. 2", 10, "eye", "Eye Irrit. 2", ""},
        {eu, "STOT SE 3 (narcotic)", 20, "drowsiness", "STOT SE 3", ""},
        {eu, "Asp. Tox. 1", 10, "aspiration", "Asp. Tox. 1", ""},
        {eu, "Aquatic Acute 1", 25, "aquatic_acute", "Aquatic Acute 1", ""},
        {eu, "Aquatic Chronic 3", 25, "aquatic_chronic", "Aquatic Chronic 3", ""},
    };
    for (const Edge& edge : summed) {
        CAPTURE(edge.ingredient);
        const auto at = [&](double percent) {
            return found(Mixed().of(edge.ingredient, percent / 2).of(edge.ingredient, percent / 2).judged(),
                         edge.endpoint);
        };
        CHECK(at(edge.percent * 0.9999) == edge.below);
        CHECK(at(edge.percent) == edge.reached);
    }
    for (const Edge& edge : edges) {
        const std::string_view endpoint = edge.endpoint;
        if (endpoint.find("sensitisation") == std::string_view::npos && endpoint != "mutagenicity" &&
            endpoint != "carcinogenicity" && endpoint != "reproductive_toxicity" && endpoint != "lactation" &&
            endpoint.find("target_organ") == std::string_view::npos && endpoint != "ozone")
            continue;
        CAPTURE(edge.ingredient);
        const double half = edge.percent / 2 * 1.01;
        CHECK(found(Mixed().of(edge.ingredient, half).of(edge.ingredient, half).judged(edge.regime),
                    edge.endpoint) == edge.below);
    }
}

TEST_CASE(
    "a specific limit comes before the general one, its lower edge belongs to it, its upper one does not") {
    Substance acid = liquid("acid", {"Skin Corr. 1A"});
    acid.ghs.front().specific_limits = {band("Skin Corr. 1A", 20), band("Skin Corr. 1B", 8, 20),
                                        band("Skin Irrit. 2", 2, 8), band("Eye Irrit. 2", 2, 8)};
    const auto judged = [&](double percent) { return Mixed().add(acid, percent).judged(); };
    CHECK(found(judged(20), "skin") == "Skin Corr. 1A");
    CHECK(found(judged(19.99), "skin") == "Skin Corr. 1B");
    CHECK(found(judged(8), "skin") == "Skin Corr. 1B");
    CHECK(found(judged(8), "eye") == "Eye Dam. 1");
    CHECK(found(judged(7.99), "skin") == "Skin Irrit. 2");
    CHECK(found(judged(7.99), "eye") == "Eye Irrit. 2");
    CHECK(found(judged(2), "skin") == "Skin Irrit. 2");
    CHECK(found(judged(1.99), "skin") == "");
    CHECK(found(judged(1.99), "eye") == "");

    Substance above = liquid("above", {"Carc. 1B"});
    above.ghs.front().specific_limits = {band("Carc. 1B", 2)};
    above.ghs.front().specific_limits.front().min_exclusive = true;
    CHECK(found(Mixed().add(above, 2).judged(), "carcinogenicity") == "");
    CHECK(found(Mixed().add(above, 2.001).judged(), "carcinogenicity") == "Carc. 1B");
}

TEST_CASE("in the US a specific limit does not lift that of long-term harm, but a stricter one counts") {
    Substance lifted = liquid("lifted", {"Carc. 1B"}), strict = liquid("strict", {"Carc. 1B"});
    lifted.ghs.front().specific_limits = {band("Carc. 1B", 5)};
    strict.ghs.front().specific_limits = {band("Carc. 1B", 0.01)};
    CHECK(found(Mixed().add(lifted, 1).judged(), "carcinogenicity") == "");
    CHECK(found(Mixed().add(lifted, 1).judged(us), "carcinogenicity") == "Carc. 1B");
    CHECK(found(Mixed().add(strict, 0.01).judged(us), "carcinogenicity") == "Carc. 1B");
}

TEST_CASE("gases have their own limit for sensitisers of the airways") {
    const auto at = [](double percent, MixtureRegime regime) {
        Mixed mixed;
        Substance gas = liquid("gas", {"Resp. Sens. 1B"}), rest = liquid("rest");
        gas.phase = rest.phase = Substance::Phase::gas;
        mixed.add(gas, percent).add(rest, 100 - percent);
        mixed.facts().by_volume = true;
        return found(mixed.judged(regime), "respiratory_sensitisation");
    };
    for (const MixtureRegime regime : {eu, un, us}) {
        CHECK(at(0.199, regime) == "");
        CHECK(at(0.2, regime) == "Resp. Sens. 1");
    }
}
