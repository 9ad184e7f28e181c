// SPDX-License-Identifier: MIT
#include "app/shipped.hpp"
#include "assess/streams/route_waste.hpp"
#include "compare/charge_place.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>

using namespace routeweigh;
using namespace routeweigh::test;

namespace {

const SolventRules& solvents() {
    static const SolventRules read = read_solvent_rules(Catalogue::embedded());
    return read;
}

Improvements improve(const Assessment& route, const std::string& figure = "process_mass_intensity",
                     std::size_t pairs_of = 0, const ImprovementLimits& limits = {}) {
    return find_improvements(
        {route, solvents(), limits, apply_to(route.route(), Catalogue::embedded(), rules())}, pick(figure),
        pairs_of);
}

/// All that was tried and could be worked.
std::vector<Improvement> tried(const Improvements& improvements) {
    std::vector<Improvement> all = improvements.ranked;
    all.insert(all.end(), improvements.no_help.begin(), improvements.no_help.end());
    return all;
}

std::vector<Improvement> of_kind(const Improvements& improvements, std::string_view kind) {
    std::vector<Improvement> all = tried(improvements);
    std::erase_if(all, [kind](const Improvement& entry) { return entry.candidate.kind != kind; });
    return all;
}

/// What was looked at and is not to be tried.
std::vector<Improvements::Refused> not_proposed(const Improvements& improvements, std::string_view kind) {
    std::vector<Improvements::Refused> list = improvements.refused;
    std::erase_if(list, [kind](const Improvements::Refused& entry) {
        return entry.candidate.kind != kind || entry.candidate.against.empty();
    });
    return list;
}

} // namespace

TEST_CASE("the ranking is by gain, and what stands in it really helps") {
    for (const std::string& name : all_shipped()) {
        CAPTURE(name);
        const auto route = shipped(name);
        const Improvements found = improve(*route);
        for (std::size_t i = 0; i < found.ranked.size(); ++i) {
            CHECK(found.ranked[i].after < found.ranked[i].before);
            CHECK(found.ranked[i].before == route->metric("process_mass_intensity"));
            if (i > 0) CHECK(found.ranked[i].gain <= found.ranked[i - 1].gain);
            CHECK_FALSE(found.ranked[i].candidate.cautions.empty());
            CHECK_FALSE(found.ranked[i].candidate.question.empty());
        }
        for (const Improvement& entry : found.no_help)
            CHECK(entry.gain <= 1e-9 * entry.before);
        for (const Improvements::Refused& entry : found.refused)
            MESSAGE(name, ": ", entry.candidate.what, ": ", entry.why);
    }
}

TEST_CASE(
    "half of a solvent or wash lowers the mass intensity by half its mass per gram of product, exactly") {
    int checked = 0;
    for (const std::string& name : all_shipped()) {
        const auto route = shipped(name);
        if (!route->route().reuse.empty()) continue;
        const auto places = charge_places(*route);
        for (const Improvement& entry : of_kind(improve(*route), "halved")) {
            CAPTURE(name);
            CAPTURE(entry.candidate.what);
            REQUIRE(entry.candidate.changes.size() == 1);
            const auto place = std::find_if(places.begin(), places.end(), [&](const ChargePlace& p) {
                return p.charge->pointer + "/amount" == entry.candidate.changes.front().pointer;
            });
            REQUIRE(place != places.end());
            const Evaluation& evaluation = route->evaluation();
            const double scale = evaluation.steps[static_cast<std::size_t>(place->step_index)].scale;
            CHECK(entry.gain ==
                  doctest::Approx(0.5 * place->grams * scale / evaluation.product).epsilon(1e-9));
            ++checked;
        }
    }
    CHECK(checked > 60);
}

TEST_CASE("the yield at par, put into the changed route, gives the figure as it was") {
    for (const std::string figure : {"process_mass_intensity", "hazard_score"}) {
        const auto route = shipped("4-bromoacetanilide/A3");
        for (const Improvement& entry : improve(*route, figure).ranked) {
            if (!entry.yield_at_par) continue;
            CAPTURE(entry.candidate.what);
            std::vector<Assignment> changes = entry.candidate.changes;
            changes.push_back(
                {"/steps/0/isolated/yield",
                 json_quoted(find_input(route->route(), "yield").written(100.0 * *entry.yield_at_par))});
            const Outcome outcome = apply_to(route->route(), Catalogue::embedded(), rules())(changes);
            REQUIRE(outcome.trial);
            CHECK(pick(figure).value(outcome.trial->values()) == doctest::Approx(entry.before).epsilon(1e-9));
            // With fixed inputs it is one over the yield; what is recovered depends on the yield.
            if (figure == std::string("process_mass_intensity") && entry.candidate.kind != "recovery")
                CHECK(*entry.yield_at_par ==
                      doctest::Approx(0.80 * entry.after / entry.before).epsilon(1e-9));
        }
    }
}

TEST_CASE("an excess is cut to the floor and no further, and never below what limits") {
    const auto route = shipped("4-bromoacetanilide/A3");
    const auto cut = of_kind(improve(*route), "excess");
    REQUIRE(cut.size() == 2); // hydrobromic acid 1.25 and peroxide 1.3 equivalents
    CHECK(cut[0].candidate.what.find("to 1.05 equivalents") != std::string::npos);
    ImprovementLimits wide;
    wide.excess_floor = 1.5;
    CHECK(of_kind(improve(*route, "process_mass_intensity", 0, wide), "excess").empty());
    // What is then charged: 1.05 x 10 mmol x 80.91 g/mol / 0.48 = 1.770 g of the acid, worked by hand.
    const auto acid = std::find_if(cut.begin(), cut.end(), [](const Improvement& entry) {
        return entry.candidate.what.find("hydrobromic") != std::string::npos;
    });
    REQUIRE(acid != cut.end());
    CHECK(acid->candidate.what.find("to 1.77 g") != std::string::npos);
}

TEST_CASE("a solvent that is recovered saves four fifths of what its stream holds") {
    const auto route = shipped("4-chloro-4-methoxychalcone/H3");
    const auto recovered = of_kind(improve(*route), "recovery");
    REQUIRE_FALSE(recovered.empty());
    for (const Improvement& entry : recovered) {
        const Outcome outcome =
            apply_to(route->route(), Catalogue::embedded(), rules())(entry.candidate.changes);
        REQUIRE(outcome.trial);
        const Evaluation& evaluation = outcome.trial->values().evaluation;
        CHECK(evaluation.recovered.size() == 1);
        CHECK(entry.gain == doctest::Approx(evaluation.recovered.front() / evaluation.product).epsilon(1e-9));
    }
}

TEST_CASE("no recovery is offered for what is no listed solvent, or from a stream with an oxidiser") {
    // Nitric acid dissolves adipic acid in this procedure, and stays in every stream.
    CHECK(of_kind(improve(*shipped("adipic-acid/E1")), "recovery").empty());
}

TEST_CASE("no solvent is distilled out of a stream with cyanide, and no crude that holds it goes into acid") {
    const Improvements found = improve(*shipped("5-5-diphenylhydantoin/D1a-D2c-D3a"));
    constexpr int benzoin = 0; // the step that is charged with sodium cyanide
    for (const Improvement& entry : tried(found)) {
        CAPTURE(entry.candidate.what);
        CHECK_FALSE((entry.candidate.step == benzoin && entry.candidate.kind == "recovery"));
        CHECK_FALSE((entry.candidate.step == benzoin && entry.candidate.kind == "telescoping"));
    }
    for (const std::string_view kind : {"recovery", "telescoping"}) {
        const auto refused = not_proposed(found, kind);
        REQUIRE_FALSE(refused.empty());
        CHECK(refused.front().why.find("sodium cyanide") != std::string::npos);
    }
    CHECK(not_proposed(found, "telescoping").front().why.find("toxic gas") != std::string::npos);
}

TEST_CASE("a stream that the rules of waste stop gives no solvent back") {
    int stopped = 0;
    for (const std::string& name : all_shipped()) {
        const auto route = shipped(name);
        const streams::RouteWaste waste = assess_waste(route->route(), solvents().waste);
        for (const Improvement& entry : of_kind(improve(*route), "recovery"))
            for (const streams::StreamAdvice& advice : waste.streams)
                if (advice.decision.outcome == streams::Decision::Outcome::own_bottle) {
                    CAPTURE(name);
                    ++stopped;
                    CHECK_FALSE(
                        (advice.stream.step == entry.candidate.step &&
                         entry.candidate.what.find(" in " + advice.stream.name + " (") != std::string::npos));
                }
    }
    MESSAGE(stopped, " pairs of a recovery and a stream that is stopped");
}

TEST_CASE("a recovery that is not proposed is told with what the stream holds") {
    for (const std::string id : {"A2", "A3", "A3w", "A5"}) {
        CAPTURE(id);
        const Improvements found = improve(*shipped("4-bromoacetanilide/" + id));
        CHECK(of_kind(found, "recovery").empty());
        const auto refused = not_proposed(found, "recovery");
        REQUIRE_FALSE(refused.empty());
        for (const Improvements::Refused& entry : refused)
            CHECK(entry.why.find("the stream") != std::string::npos);
    }
}

TEST_CASE("a liquid in excess that carries its stage is cut with what less liquid may do to it") {
    for (const std::string name : {"adipic-acid/E1", "acetylsalicylic-acid/G1", "acetylsalicylic-acid/G2"}) {
        CAPTURE(name);
        const auto cut = of_kind(improve(*shipped(name)), "excess");
        REQUIRE_FALSE(cut.empty());
        for (const std::string_view word : {"solubility: ", "heat: ", "stirring: "})
            CHECK(std::any_of(cut.front().candidate.cautions.begin(), cut.front().candidate.cautions.end(),
                              [&](const std::string& caution) { return caution.starts_with(word); }));
    }
    // The ethanol carries the stage of A3, so what is said of its acid and peroxide stays short.
    for (const Improvement& entry : of_kind(improve(*shipped("4-bromoacetanilide/A3")), "excess"))
        CHECK(entry.candidate.cautions.size() == 2);
}

TEST_CASE("what a cut leaves over is named with its grams") {
    const auto route = shipped("4-bromoacetanilide/A4");
    const auto cut = of_kind(improve(*route), "excess");
    const auto bromide = std::find_if(cut.begin(), cut.end(), [](const Improvement& entry) {
        return entry.candidate.what.find("sodium bromide") != std::string::npos;
    });
    REQUIRE(bromide != cut.end());
    const auto left =
        std::find_if(bromide->left_over.begin(), bromide->left_over.end(), [](const LeftOver& entry) {
            return entry.substance.find("hypochlor") != std::string::npos;
        });
    REQUIRE(left != bromide->left_over.end());
    CHECK(left->after > left->before);
    // Half of a wash leaves nothing of what reacts.
    for (const Improvement& entry : of_kind(improve(*route), "halved"))
        CHECK(entry.left_over.empty());
}

TEST_CASE("pairs that only take away inputs add up; a recovered solvent that is also halved does not") {
    const auto route = shipped("4-chloro-4-methoxychalcone/H3");
    const Improvements found = improve(*route, "process_mass_intensity", 20);
    CHECK(found.pairs_tried >= 20);
    const Apply apply = apply_to(route->route(), Catalogue::embedded(), rules());
    bool halved_and_recovered = false;
    for (const Interaction& pair : found.interactions) {
        const Candidate &first = found.ranked[pair.first].candidate,
                        &second = found.ranked[pair.second].candidate;
        CAPTURE(first.what);
        CAPTURE(second.what);
        CHECK_FALSE((first.kind == "halved" && second.kind == "halved"));
        if (!pair.refused.empty()) continue;
        // The joint effect again, by another way: both in one list of assignments.
        std::vector<Assignment> both = first.changes;
        both.insert(both.end(), second.changes.begin(), second.changes.end());
        const Outcome outcome = apply(both);
        REQUIRE(outcome.trial);
        CHECK(pair.joint == doctest::Approx(found.figure.value(outcome.trial->values()) - found.value));
        halved_and_recovered = halved_and_recovered ||
                               (first.kind == "halved" && second.kind == "recovery") ||
                               (first.kind == "recovery" && second.kind == "halved");
    }
    CHECK(halved_and_recovered);
}

TEST_CASE(
    "a better quarter of the class is a candidate only when the class has one, and only when it is better") {
    const auto route = shipped("4-bromoacetanilide/A3");
    CHECK(of_kind(improve(*route), "better_yield").empty());
    ImprovementLimits class_known;
    class_known.upper_quartile["bromination"] = 0.88;
    const auto better = of_kind(improve(*route, "process_mass_intensity", 0, class_known), "better_yield");
    REQUIRE(better.size() == 1);
    CHECK(better.front().after == doctest::Approx(better.front().before * 0.80 / 0.88));
    class_known.upper_quartile["bromination"] = 0.70;
    CHECK(of_kind(improve(*route, "process_mass_intensity", 0, class_known), "better_yield").empty());
}

TEST_CASE("another solvent of a family is one that lowers the hazard score, and the lowest of them") {
    // No shipped route has a solvent that another one of its family would better.
    const auto route = changed(*shipped("2-3-dibromo-3-phenylpropanoic-acid/B1"),
                               {"/steps/0/stages/0/charges/1/material=\"chloroform\""});
    const Improvements found = improve(*route, "hazard_score");
    const auto swapped = of_kind(found, "other_solvent");
    REQUIRE_FALSE(swapped.empty());
    CHECK(swapped.front().candidate.what.find("dichloromethane in place of chloroform") != std::string::npos);
    for (const Improvement& entry : swapped) {
        CAPTURE(entry.candidate.what);
        CHECK(entry.after < entry.before);
    }
    for (const Improvement& entry : swapped)
        CHECK(std::count_if(swapped.begin(), swapped.end(), [&](const Improvement& other) {
                  return other.candidate.alternatives == entry.candidate.alternatives;
              }) == 1);
}

TEST_CASE("all charges of a solvent in one role of a step are exchanged together") {
    const auto route = changed(
        *shipped("2-3-dibromo-3-phenylpropanoic-acid/B1"),
        {"/steps/0/stages/0/charges/1/material=\"chloroform\"",
         R"(/steps/0/stages/0/charges/-={"material": "chloroform", "amount": "3 g", "role": "solvent"})"});
    const auto swapped = of_kind(improve(*route, "hazard_score"), "other_solvent");
    REQUIRE(swapped.size() == 1);
    CHECK(swapped.front().candidate.changes.size() == 4); // material and amount of both
    CHECK(swapped.front().added.empty());
}

TEST_CASE("water takes the place of an organic drown-out") {
    const auto route =
        changed(*shipped("4-bromoacetanilide/A7b"), {"/steps/0/stages/1/charges/0/material=\"methanol\""});
    const auto swapped = of_kind(improve(*route, "hazard_score"), "water_drown_out");
    REQUIRE(swapped.size() == 1);
    CHECK(swapped.front().after < swapped.front().before);
}

TEST_CASE("a catalyst is halved, never below its floor, and the mass intensity falls by what is left out") {
    int halved = 0, floored = 0, left = 0;
    for (const std::string& name : all_shipped()) {
        CAPTURE(name);
        const auto route = shipped(name);
        const std::vector<ChargePlace> places = charge_places(*route);
        if (!route->route().reuse.empty() ||
            std::none_of(places.begin(), places.end(),
                         [](const ChargePlace& place) { return place.role() == "catalyst"; }))
            continue;
        const ImprovementLimits limits;
        const std::vector<Improvement> found = of_kind(improve(*route), "catalyst");
        std::size_t expected = 0;
        for (const ChargePlace& place : places) {
            if (place.role() != "catalyst") continue;
            CAPTURE(place.material());
            const double now = equivalents(place);
            const auto entry = std::find_if(found.begin(), found.end(), [&](const Improvement& candidate) {
                return candidate.candidate.changes.front().pointer == place.charge->pointer + "/amount";
            });
            if (now <= limits.catalyst_floor * least_cut) {
                CHECK(entry == found.end());
                ++left;
                continue;
            }
            ++expected;
            REQUIRE(entry != found.end());
            const double kept = std::max(0.5, limits.catalyst_floor / now);
            (kept == 0.5 ? halved : floored) += 1;
            const Evaluation& evaluation = route->evaluation();
            const double scale = evaluation.steps[static_cast<std::size_t>(place.step_index)].scale;
            CHECK(entry->gain == doctest::Approx((1.0 - kept) * place.grams * scale / evaluation.product)
                                     .scale(0.0)
                                     .epsilon(1e-3)); // amounts are written with four digits
        }
        CHECK(found.size() == expected);
    }
    MESSAGE(halved, " halved, ", floored, " to the floor, ", left, " left");
    CHECK(halved > 0);
    CHECK(left + floored > 0);
}

TEST_CASE("an intermediate carried on crude loses its purification and nothing else") {
    const auto route = shipped("5-5-diphenylhydantoin/D1b-D2c-D3a");
    const auto crude = of_kind(improve(*route), "telescoping");
    REQUIRE_FALSE(crude.empty());
    // 9.72 g + 2.79 g of solvent a run of the first step; its runs for one of the last are counted by the
    // route.
    const double scale = route->evaluation().steps[0].scale;
    CHECK(crude.front().gain ==
          doctest::Approx((9.72 + 2.79) * scale / route->evaluation().product).epsilon(1e-9));
}

TEST_CASE("questions to students hold no number but those in names") {
    for (const std::string& name : all_shipped()) {
        const auto route = shipped(name);
        for (const Improvement& entry : tried(improve(*route))) {
            std::string question = entry.candidate.question;
            std::vector<std::string> names;
            for (const ChargePlace& place : charge_places(*route)) {
                names.push_back(place.material());
                names.push_back(place.stage->title);
                names.push_back(place.step->id);
                for (const Component& part : place.charge->material->components)
                    names.push_back(part.substance->name);
            }
            for (const Step& step : route->route().steps)
                names.push_back(step.product->name);
            std::sort(names.begin(), names.end(),
                      [](const std::string& a, const std::string& b) { return a.size() > b.size(); });
            for (const std::string& known : names)
                if (const auto at = question.find(known); at != std::string::npos)
                    question.replace(at, known.size(), "");
            CAPTURE(entry.candidate.question);
            CHECK(question.find_first_of("0123456789") == std::string::npos);
        }
    }
}
