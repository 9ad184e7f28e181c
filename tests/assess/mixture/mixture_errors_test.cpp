// SPDX-License-Identifier: MIT
#include "mixture_case.hpp"

#include "assess/mixture/limits_reader.hpp"

#include <doctest/doctest.h>

#include <cmath>
#include <functional>

using namespace routeweigh;
using namespace routeweigh::test::mixtures;

namespace {

std::vector<std::string> errors_of(const std::function<void()>& work) {
    try {
        work();
    } catch (const InputError& error) {
        std::vector<std::string> messages;
        for (const Problem& problem : error.problems)
            messages.push_back(format(problem));
        return messages;
    }
    return {};
}

std::vector<std::string> errors_of(const Mixture& mixture) {
    return errors_of([&] { classify(mixture, rules()); });
}

Mixture water_and(std::string_view name, double percent, double water) {
    return mixture_of(Catalogue::embedded(), "bad", {{name, percent}, {"water", water}});
}

} // namespace

TEST_CASE("bad compositions are refused with the reason") {
    using Errors = std::vector<std::string>;
    CHECK(errors_of(water_and("ethanol", 60, 50)) == Errors{"the shares sum to 110 %, which is above 100 %"});
    CHECK(errors_of(water_and("ethanol", -5, 50)) == Errors{"the share of \"ethanol\" is negative: -5 %"});
    CHECK(errors_of(water_and("ethanol", std::nan(""), 50)) ==
          Errors{"the share of \"ethanol\" is no number"});
    CHECK(errors_of(water_and("ethanol", HUGE_VAL, 50)).size() == 2); // no number, and above 100 %
    CHECK(errors_of(Mixture{}) == Errors{"the mixture has no ingredients"});
    CHECK(errors_of(water_and("ethanol", 0, 0)) == Errors{"the mixture has no ingredients"});
    Mixture unknown = water_and("ethanol", 50, 50);
    unknown.ingredients.front().substance = nullptr;
    CHECK(errors_of(unknown) == Errors{"ingredient 1 is unknown"});
    CHECK(
        errors_of(water_and("hydrogen", 1, 99)) ==
        Errors{
            "\"hydrogen\" is a gas and has no entry as a solution, but the mixture is liquid; say that it is "
            "dissolved, or leave it out"});
    CHECK(errors_of(mixture_of(Catalogue::embedded(), "bad", {{"ethylene", 5}, {"sodium chloride", 95}}))
              .front()
              .find("the mixture is solid") != std::string::npos);
}

TEST_CASE("shares by volume need molar masses") {
    Mixture vapour = mixture_of(Catalogue::embedded(), "vapour", {{"petroleum ether", 10}, {"nitrogen", 90}});
    vapour.facts.phase = Substance::Phase::gas;
    const auto errors = errors_of(vapour);
    REQUIRE(errors.size() == 1);
    CHECK(errors.front().find("has no molar mass") != std::string::npos);
    vapour.facts.by_volume = true;
    CHECK(errors_of(vapour).empty());
}

TEST_CASE("every fault of a composition is told at once") {
    Mixture mixture = water_and("ethanol", -5, 200);
    mixture.ingredients.push_back({Catalogue::embedded().find_substance("hydrogen"), 0.1, false, {}});
    mixture.facts.ph = 20;
    CHECK(errors_of(mixture).size() == 4);
}

TEST_CASE("unknown names are told with the nearest spelling") {
    const auto errors = errors_of([] {
        mixture_of(Catalogue::embedded(), "bad", {{"etanol", 50}, {"water", 40}, {"acetonn", 10}});
    });
    CHECK(errors == std::vector<std::string>{"no substance \"etanol\"; nearest: \"ethanol\"",
                                             "no substance \"acetonn\"; nearest: \"acetone\""});
}

TEST_CASE("facts that cannot be are refused") {
    const auto with = [](const std::function<void(MixtureFacts&)>& change) {
        Mixture mixture = water_and("ethanol", 50, 50);
        change(mixture.facts);
        return errors_of(mixture).size();
    };
    CHECK(with([](MixtureFacts& facts) { facts.ph = 17; }) == 1);
    CHECK(with([](MixtureFacts& facts) { facts.ph = std::nan(""); }) == 1);
    CHECK(with([](MixtureFacts& facts) { facts.viscosity = 0; }) == 1);
    CHECK(with([](MixtureFacts& facts) { facts.flash_point = -300; }) == 1);
    CHECK(with([](MixtureFacts& facts) { facts.boiling_point = -300; }) == 1);
    CHECK(with([](MixtureFacts& facts) { facts.inhaled_form = "smoke"; }) == 1);
    CHECK(with([](MixtureFacts& facts) { facts.by_volume = true; }) == 1);
    CHECK(with([](MixtureFacts& facts) { facts.ph = 7; }) == 0);
}

TEST_CASE("shares that miss 100 % by their rounding are right; a real gap is of unknown composition") {
    CHECK(errors_of(water_and("ethanol", 33.33333, 66.666671)).empty());
    const auto gap = classify(water_and("ethanol", 40, 40), rules());
    CHECK(gap.mixture.unstated_percent == doctest::Approx(20));
    CHECK(gap.unassessed_percent == doctest::Approx(20));
    CHECK(gap.result("acute_oral")->unknown_percent == doctest::Approx(20));
    CHECK(join(gap.notes(), "\n").find("20 % of the mixture is not stated") != std::string::npos);
    CHECK(classify(water_and("ethanol", 40, 60), rules()).mixture.unstated_percent == 0);
}

TEST_CASE("what nobody has assessed is said, and nothing is concluded from it") {
    const auto judged = bottle("2-bromoacetanilide");
    for (const char* endpoint : {"acute_oral", "skin", "eye", "carcinogenicity", "aquatic_acute"})
        CHECK(judged.result(endpoint)->outcome == MixtureOutcome::not_judged);
    CHECK(judged.unassessed_percent == doctest::Approx(100));
    CHECK(join(judged.notes(), "\n").find("nobody has assessed it") != std::string::npos);
}

TEST_CASE("a substance that is listed twice counts once with its whole share") {
    const Mixture twice = mixture_of(Catalogue::embedded(), "twice",
                                     {{"acetonitrile", 30}, {"water", 40}, {"acetonitrile", 30}});
    const Mixture once = mixture_of(Catalogue::embedded(), "once", {{"acetonitrile", 60}, {"water", 40}});
    CHECK(statements(classify(twice, rules())) == statements(classify(once, rules())));
    CHECK(classify(twice, rules()).mixture.ingredients.size() == 2);
}

TEST_CASE("a building block that is unknown, and one where there are none, are refused") {
    const auto un = errors_of([] {
        read_mixture_rules(Catalogue::embedded(), MixtureRegime::un, {{"acute-toxicity-6", true}});
    });
    REQUIRE(un.size() == 1);
    CHECK(
        un.front().find("no building block \"acute-toxicity-6\" in UN GHS; nearest: \"acute-toxicity-5\"") !=
        std::string::npos);
    CHECK(errors_of([] {
              read_mixture_rules(Catalogue::embedded(), MixtureRegime::eu, {{"acute-toxicity-5", true}});
          }).size() == 1);
}

TEST_CASE("a faulty limits file is refused at the place") {
    const Source* shipped = Catalogue::embedded().scheme("ghs_limits_eu");
    REQUIRE(shipped != nullptr);
    const auto changed = [&](const std::string& from, const std::string& to) {
        Source source = *shipped;
        const std::size_t at = source.text.find(from);
        REQUIRE(at != std::string::npos);
        source.text.replace(at, from.size(), to);
        return errors_of([&] { read_mixture_limits(source); });
    };
    CHECK(changed("\"severe_pct\": 5", "\"severe_pct\": 0")
              .front()
              .find("/skin/severe_pct: 0 is no limit in per cent") != std::string::npos);
    CHECK(changed("\"upper\": 50", "\"upper\": 4").front().find("most severe first") != std::string::npos);
    CHECK(changed("\"kind\": \"mixture limits\"", "\"kind\": \"other\"").size() == 1);
    CHECK(changed("\"irritant_pct\"", "\"iritant_pct\"").size() >= 1);
}
