// SPDX-License-Identifier: MIT
#include "app/shipped.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <bit>
#include <cmath>
#include <cstdint>

using namespace routeweigh;
using namespace routeweigh::test;

namespace {

bool same_bits(double a, double b) {
    return std::bit_cast<std::uint64_t>(a) == std::bit_cast<std::uint64_t>(b);
}

std::string refusal(const Assessment& parent, const std::string& words) {
    try {
        (void)changed(parent, {words});
    } catch (const CallError& error) {
        return error.what();
    } catch (const InputError& error) {
        return error.what();
    }
    return "taken";
}

} // namespace

TEST_CASE("a change that changes nothing leaves every figure of every route bit for bit") {
    for (const std::string& name : all_shipped()) {
        CAPTURE(name);
        const auto before = shipped(name), after = changed(*before, {}, "{}");
        const auto first = before->figures(), second = after->figures();
        REQUIRE(first.size() == second.size());
        for (std::size_t i = 0; i < first.size(); ++i)
            CHECK_MESSAGE(same_bits(first[i].value, second[i].value), first[i].id);
        CHECK(after->route().parent->changes.empty());
        CHECK(after->route().status == before->route().status);
        CHECK(after->yield_assumed() == before->yield_assumed());
    }
}

TEST_CASE("every numeric input can be set to what it is, and to something else") {
    for (const std::string& name : all_shipped()) {
        const auto before = shipped(name);
        const Apply apply = apply_to(before->route(), Catalogue::embedded(), rules());
        for (const NumericInput& input : numeric_inputs(before->route())) {
            CAPTURE(name);
            CAPTURE(input.pointer);
            const Outcome same = apply({{input.pointer, json_text(input.written(input.value))}});
            REQUIRE_MESSAGE(same.trial, same.refused);
            const FigurePick pmi = pick("process_mass_intensity");
            CHECK(pmi.value(same.trial->values()) ==
                  doctest::Approx(pmi.value(before->values())).epsilon(1e-12));
            // A little less of a yield or an amount is always another route.
            const Outcome less = apply({{input.pointer, json_text(input.written(0.99 * input.value))}});
            if (less.trial && input.kind == NumericInput::Kind::yield)
                CHECK(pmi.value(less.trial->values()) > pmi.value(before->values()));
        }
    }
}

TEST_CASE("a figure picked by its id is the figure that the table prints") {
    const auto route = shipped("4-bromoacetanilide/A3");
    const auto figures = route->figures();
    const auto ids = figure_ids(rules().hazard.score);
    REQUIRE(ids.size() == figures.size());
    for (std::size_t i = 0; i < figures.size(); ++i) {
        CHECK(ids[i] == figures[i].id);
        CHECK_MESSAGE(same_bits(pick(ids[i]).value(route->values()), figures[i].value), ids[i]);
        CHECK(pick(ids[i]).name() == figures[i].name);
        CHECK(pick(ids[i]).unit() == figures[i].unit);
    }
}

TEST_CASE("a changed route records its parentage and what was changed") {
    const auto parent = shipped("4-bromoacetanilide/A3");
    const auto child = changed(*parent, {"yield=70 %", "/steps/0/stages/0/charges/1/amount=3.24 g"});
    CHECK(child->route().id == "A3-changed");
    REQUIRE(child->route().parent);
    CHECK(child->route().parent->id == "A3");
    const auto change_at = [&](const std::string& place) {
        const auto& all = child->route().parent->changes;
        const auto found =
            std::find_if(all.begin(), all.end(), [&](const auto& change) { return change.at == place; });
        return found == all.end() ? Parentage::Change{} : *found;
    };
    CHECK(change_at("/steps/0/isolated/yield").before == "80 %");
    CHECK(change_at("/steps/0/isolated/yield").after == "70 %");
    CHECK(change_at("/steps/0/stages/0/charges/1/amount").before == "6.48 g");
    CHECK(change_at("/steps/0/stages/0/charges/1/amount").after == "3.24 g");
    // 80 to 70 % yield and 3.24 g less: worked by hand from the masses of the file.
    const double inputs = parent->totals().inputs, product = parent->totals().product;
    CHECK(child->metric("process_mass_intensity") ==
          doctest::Approx((inputs - 3.24) / (product * 7.0 / 8.0)).epsilon(1e-12));
}

TEST_CASE("what the source says of an amount goes with the amount, so that no paper prints it of another") {
    const auto parent = shipped("4-bromoacetanilide/A3");
    const std::string acid = "/steps/0/stages/0/charges/2", wash = "/steps/0/stages/2/charges/0";
    const auto charge_at = [](const Assessment& route, const std::string& pointer) {
        for (const Stage& stage : route.route().steps[0].stages)
            for (const Charge& charge : stage.charges)
                if (charge.pointer == pointer) return charge;
        return Charge{};
    };
    REQUIRE(charge_at(*parent, acid).given_as == "1.25 equivalents");
    const auto child = changed(*parent, {acid + "/amount=1.77 g", wash + "/note=in 3 x 2.5 mL"});
    CHECK(charge_at(*child, acid).given_as.empty());
    CHECK(charge_at(*child, acid).source.empty());
    // A note with a figure in it goes, words alone stay, and so does what the amount of which stays.
    CHECK(charge_at(*child, wash).note == "in 3 x 2.5 mL");
    CHECK(charge_at(*changed(*child, {wash + "/amount=7.5 g"}), wash).note.empty());
    CHECK(charge_at(*changed(*parent, {wash + "/amount=7.5 g"}), wash).note == "in three equal portions");
    // Who says it anew in the same call is believed.
    const auto said = changed(*parent, {acid + "/amount=1.77 g", acid + "/given_as=1.05 equivalents"});
    CHECK(charge_at(*said, acid).given_as == "1.05 equivalents");
}

TEST_CASE("a strength put in place of one with a spread takes the spread with it") {
    const auto parent = shipped("4-bromoacetanilide/A3");
    REQUIRE_FALSE(parent->route().bottles.empty());
    REQUIRE(parent->route().bottles[0].spread.has_value());
    const auto child = changed(*parent, {"/bottles/0/strength=48 %"});
    CHECK_FALSE(child->route().bottles[0].spread.has_value());
}

TEST_CASE("a changed route is one that was never run, with assumed yields") {
    const auto parent = shipped("adipic-acid/E1");
    REQUIRE_FALSE(parent->yield_assumed());
    REQUIRE(parent->route().status == "published amounts");
    const auto child = changed(*parent, {"/steps/0/stages/0/charges/1/amount=265 g"});
    CHECK(child->yield_assumed());
    CHECK(child->route().status == "designed from the equations, never run");
    // Who names a status is believed.
    const std::string status = "equations only, amounts are stoichiometric";
    const auto named = changed(*parent, {}, R"({"status": ")" + status + R"(", "title": "x"})");
    CHECK(named->route().title == "x");
    CHECK(named->route().status == status);
}

TEST_CASE("a change of a changed route names its own parent") {
    const auto first = shipped("4-bromoacetanilide/A3");
    const auto second = changed(*first, {"yield=70 %"});
    const auto third = changed(*second, {"yield=60 %"});
    CHECK(third->route().parent->id == "A3-changed");
    REQUIRE(third->route().parent->changes.size() == 1);
    CHECK(third->route().parent->changes.front().before == "70 %");
}

TEST_CASE("inputs are found by name where the name is enough") {
    const auto route = shipped("4-bromoacetanilide/A3");
    CHECK(find_input(route->route(), "yield").pointer == "/steps/0/isolated/yield");
    CHECK(find_input(route->route(), "Hydrobromic acid 48 %").pointer ==
          "/steps/0/stages/0/charges/2/amount");
    CHECK(refusal(*route, "water=3 g").starts_with("\"water\" may be any of 2 inputs: "));
    CHECK(refusal(*route, "yeild=3 %").find("nearest: \"yield\"") != std::string::npos);
    CHECK(refusal(*route, "etanol=3 g").find("nearest: \"ethanol 95 % by volume\"") != std::string::npos);
}

TEST_CASE("a figure that is picked has the unit that every other document gives it") {
    const auto route = shipped("4-bromoacetanilide/A3");
    for (const Figure& figure : route->figures()) {
        CAPTURE(figure.id);
        CHECK(pick(figure.id).unit() == figure.unit);
    }
    CHECK(pick("inhalation_flask").unit() == "m3 air per g");
}

TEST_CASE("wrong changes are refused by name") {
    const auto route = shipped("4-bromoacetanilide/A3");
    CHECK(refusal(*route, "/parent={}").find("is recorded, not set") != std::string::npos);
    CHECK(refusal(*route, "yield") == "--set takes PLACE=VALUE, unlike \"yield\"");
    CHECK(refusal(*route, "/stepps/0=1").find("nearest: \"/steps\"") != std::string::npos);
    CHECK(refusal(*route, "/title/0=1").find("is a text") != std::string::npos);
    CHECK(refusal(*route, "yield=103 %").find("/steps/0/isolated/yield: a yield of 103 % cannot be") !=
          std::string::npos);
    CHECK(refusal(*route, "/steps/0/stages/0/charges/1/ammount=3 g").find("nearest: \"amount\"") !=
          std::string::npos);
    CHECK(
        refusal(*route, "/steps/0/stages/0/reactions/0/equation=bromine -> water").find("does not balance") !=
        std::string::npos);
    CHECK(refusal(*route, "/notes=" + std::string(100, '[')).find("nest deeper") != std::string::npos);
    CHECK(refusal(*route, "yield=\xff").find("UTF-8") != std::string::npos);
}
