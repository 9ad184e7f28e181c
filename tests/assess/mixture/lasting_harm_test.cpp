// SPDX-License-Identifier: MIT
// Sensitisers, lasting harm and organs. Limits: CLP Annex I, Tables 3.4.5 to 3.9.4 (memory, 3.7.2 read).
#include "mixture_case.hpp"

#include <doctest/doctest.h>

using namespace routeweigh;
using namespace routeweigh::test::mixtures;

namespace {

Substance stating(std::string name, std::string hazard_class, std::string category, std::string statement,
                  std::string target = {}) {
    Substance made = liquid(std::move(name));
    GhsEntry entry;
    entry.hazard_class = std::move(hazard_class);
    entry.category = std::move(category);
    entry.statement = std::move(statement);
    entry.target = std::move(target);
    made.ghs.push_back(entry);
    return made;
}

} // namespace

TEST_CASE("a sensitiser below its limit is named from a tenth of it on") {
    const auto supplemental = [](const MixtureClassification& judged) {
        return join(judged.label.supplemental, " ");
    };
    CHECK(supplemental(Mixed().of("Skin Sens. 1", 0.1).judged()) == "EUH208");
    CHECK(supplemental(Mixed().of("Skin Sens. 1", 0.099).judged()) == "");
    CHECK(supplemental(Mixed().of("Skin Sens. 1A", 0.01).judged()) == "EUH208");
    CHECK(supplemental(Mixed().of("Skin Sens. 1A", 0.0099).judged()) == "");
    CHECK(supplemental(Mixed().of("Resp. Sens. 1", 0.5).judged()) == "EUH208");
    Substance strict = liquid("strict", {"Skin Sens. 1A"});
    strict.ghs.front().specific_limits = {band("Skin Sens. 1A", 0.001)};
    CHECK(supplemental(Mixed().add(strict, 0.0001).judged()) == "EUH208");
    CHECK(supplemental(Mixed().add(strict, 0.00009).judged()) == "");
    CHECK(found(Mixed().add(strict, 0.001).judged(), "skin_sensitisation") == "Skin Sens. 1");
    // A classified mixture names them without the statement; the UN and the US have none.
    const auto classified = Mixed().of("Skin Sens. 1", 2).of("Skin Sens. 1", 0.5).judged();
    CHECK(supplemental(classified) == "");
    CHECK(classified.label.sensitisers.size() == 1);
    CHECK(supplemental(Mixed().of("Skin Sens. 1", 0.5).judged(MixtureRegime::un)) == "");
}

TEST_CASE("the statement names the sensitiser") {
    const auto judged = Mixed().of("Skin Sens. 1", 0.5).judged();
    CHECK(statement_text("EUH208", judged.label, judged.results, rules().labels) ==
          "Contains ingredient 1. May produce an allergic reaction");
}

TEST_CASE("letters of fertility and the unborn child are joined") {
    const auto statement = [](const std::vector<std::pair<const char*, double>>& ingredients) {
        Mixed mixed;
        for (const auto& [code, percent] : ingredients)
            mixed.add(stating(std::string(code) + " " + std::to_string(percent), "Repr.",
                              code[3] == '0' ? "1B" : "2", code),
                      percent);
        return mixed.judged().result("reproductive_toxicity")->statement;
    };
    CHECK(statement({{"H360F", 1}}) == "H360F");
    CHECK(statement({{"H360F", 1}, {"H360D", 1}}) == "H360FD");
    CHECK(statement({{"H360D", 1}, {"H361f", 4}}) == "H360Df");
    CHECK(statement({{"H360D", 1}, {"H361f", 2}}) == "H360D"); // 2 % is below its own limit of 3 %
    CHECK(statement({{"H360F", 1}, {"H361d", 4}}) == "H360Fd");
    CHECK(statement({{"H360Fd", 1}}) == "H360Fd");
    CHECK(statement({{"H360Df", 1}, {"H360F", 1}}) == "H360FD");
    CHECK(statement({{"H360", 1}, {"H360D", 1}}) == "H360"); // one of them leaves the effect open
    CHECK(statement({{"H361f", 4}, {"H361d", 4}}) == "H361fd");
    CHECK(statement({{"H361d", 4}}) == "H361d");
}

TEST_CASE("cancer by breathing alone stays so only where all that decide do it that way") {
    const Substance breathed = stating("breathed", "Carc.", "1B", "H350i"),
                    plain = stating("plain", "Carc.", "1B", "H350");
    CHECK(Mixed().add(breathed, 1).judged().result("carcinogenicity")->statement == "H350i");
    CHECK(Mixed().add(breathed, 1).add(plain, 1).judged().result("carcinogenicity")->statement == "H350");
    CHECK(Mixed().add(breathed, 1).add(plain, 0.05).judged().result("carcinogenicity")->statement == "H350i");
}

TEST_CASE("the more severe category comes first, each with its own limit") {
    CHECK(found(Mixed().of("Carc. 1B", 0.1).of("Carc. 2", 5).judged(), "carcinogenicity") == "Carc. 1B");
    CHECK(found(Mixed().of("Carc. 1B", 0.09).of("Carc. 2", 5).judged(), "carcinogenicity") == "Carc. 2");
    CHECK(found(Mixed().of("STOT RE 1", 0.9).of("STOT RE 2", 10).judged(), "target_organ_repeated") ==
          "STOT RE 2");
}

TEST_CASE("an organ is named where it is one") {
    const Substance lungs = stating("a", "STOT RE", "1", "H372", "lungs"),
                    more = stating("b", "STOT RE", "1", "H372", "lungs"),
                    nerves = stating("c", "STOT RE", "1", "H372", "nervous system");
    CHECK(Mixed().add(lungs, 20).judged().result("target_organ_repeated")->target == "lungs");
    CHECK(Mixed().add(lungs, 20).add(more, 20).judged().result("target_organ_repeated")->target == "lungs");
    CHECK(Mixed().add(lungs, 20).add(nerves, 20).judged().result("target_organ_repeated")->target == "");
    const auto judged = Mixed().add(lungs, 20).judged();
    CHECK(statement_text("H372", judged.label, judged.results, rules().labels) ==
          "Causes damage to organs through prolonged or repeated exposure (lungs)");
}

TEST_CASE("methanol has its own limits for organs") {
    // CLP Annex VI, 603-001-00-X: category 1 from 10 %, category 2 from 3 % on (read in the catalogue's
    // source).
    const auto at = [](double percent, MixtureRegime regime = MixtureRegime::eu) {
        return found(bottle({{"methanol", percent}, {"water", 100 - percent}}, regime),
                     "target_organ_single");
    };
    CHECK(at(10) == "STOT SE 1");
    CHECK(at(9.99) == "STOT SE 2");
    CHECK(at(3) == "STOT SE 2");
    CHECK(at(2.99) == "");
    CHECK(at(2, MixtureRegime::us) == "STOT SE 1"); // 1 % there, and a specific limit does not lift it
}

TEST_CASE("an entry that holds under a condition says so") {
    const auto judged = bottle({{"petroleum ether", 50}, {"ethanol", 50}});
    CHECK(found(judged, "carcinogenicity") == "Carc. 1B");
    CHECK(all_lines(*judged.result("carcinogenicity")).find("benzene") != std::string::npos);
}

TEST_CASE("thick liquids and solids run into no lungs") {
    const auto at = [](double viscosity, MixtureRegime regime) {
        Mixed mixed;
        mixed.of("Asp. Tox. 1", 50);
        mixed.facts().viscosity = viscosity;
        return found(mixed.judged(regime), "aspiration");
    };
    CHECK(at(20.5, MixtureRegime::eu) == "Asp. Tox. 1");
    CHECK(at(20.6, MixtureRegime::eu) == "");
    CHECK(at(14, MixtureRegime::un) == "Asp. Tox. 1");
    Mixed solid;
    solid.of("Asp. Tox. 1", 50);
    solid.facts().phase = Substance::Phase::solid;
    CHECK(found(solid.judged(), "aspiration") == "");
    Mixed second; // category 2 of the UN needs 14 mm2/s
    second.of("Asp. Tox. 2", 50);
    second.facts().viscosity = 15;
    CHECK(found(second.judged(MixtureRegime::un), "aspiration") == "");
    second.facts().viscosity = 14;
    CHECK(found(second.judged(MixtureRegime::un), "aspiration") == "Asp. Tox. 2");
    CHECK(all_lines(*Mixed().of("Asp. Tox. 1", 50).judged().result("aspiration"))
              .find("viscosity is not stated") != std::string::npos);
}
