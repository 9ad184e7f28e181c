// SPDX-License-Identifier: MIT
// What the stages of a bench sheet say to do, in the right order, and how it fits the other papers.
#include "app/stock_session.hpp"
#include "assess/bench/equipment.hpp"
#include "assess/course/class_use.hpp"
#include "assess/stock/stock_list.hpp"
#include "documents/bench_sheet.hpp"
#include "documents/compared.hpp"
#include "documents/papers.hpp"
#include "documents/talk_card.hpp"

#include <doctest/doctest.h>
#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <string>
#include <vector>

namespace routeweigh {
namespace {

using documents::Edition;
using test::member;

std::string sheet_text(const std::string& file, Edition edition = Edition::student) {
    return test::text_of(bench_sheet(test::lay_out_file(file)->experiment(), edition));
}

bool says(const std::string& text, std::string_view words) {
    return text.find(words) != std::string::npos;
}

bool has_caution(const bench::BenchStage& stage, std::string_view rule) {
    return std::any_of(stage.cautions.begin(), stage.cautions.end(),
                       [rule](const auto& caution) { return caution.rule == rule; });
}

// Cyclohexene boils at 82.9 degC (catalogue) and is gone when the reaction is over: 100 g at 85 degC for 8 h.
TEST_CASE("what is in the pot before the reaction gets its flame caution and its condenser") {
    const auto laid_out = test::lay_out_file("adipic-acid/E2.json");
    const bench::BenchStage& stage = laid_out->experiment().steps()[0].stages[0];
    REQUIRE(stage.facts.condenses != nullptr);
    CHECK(stage.facts.condenses->name == "cyclohexene");
    CHECK(has_caution(stage, "no_flames"));
    CHECK(has_caution(stage, "condenser"));
    REQUIRE(stage.vessel.has_value());
    CHECK(stage.vessel->kind == bench::VesselKind::round_flask);
    const std::string sheet = sheet_text("adipic-acid/E2.json");
    CHECK(says(sheet, "No flames with cyclohexene"));
    CHECK(says(sheet, "reflux condenser"));
}

TEST_CASE("a pot holds what it holds at its fullest, before or after the reaction") {
    for (const std::string& file : test::shipped_routes()) {
        CAPTURE(file);
        const auto laid_out = test::lay_out_file(file);
        for (const bench::BenchStep& step : laid_out->experiment().steps())
            for (const bench::BenchStage& stage : step.stages) {
                CHECK(stage.facts.volume >= stage.facts.pot.before.volume().millilitres);
                CHECK(stage.facts.volume >= stage.facts.pot.after.volume().millilitres);
                // No reaction makes or loses mass but as gas, and none draws more than air gives.
                CHECK(stage.facts.pot.after.total() <= stage.facts.pot.before.total() * 1.001);
            }
    }
}

TEST_CASE("what a caution says to add last stands last in the checklist") {
    std::size_t checked = 0;
    for (const std::string& file : test::shipped_routes()) {
        CAPTURE(file);
        const auto laid_out = test::lay_out_file(file);
        for (const bench::BenchStep& step : laid_out->experiment().steps())
            for (const bench::BenchStage& stage : step.stages)
                for (const bench::StageCaution& caution : stage.cautions) {
                    if (caution.rule != "portions" || !caution.words.starts_with("Add ")) continue;
                    ++checked;
                    CHECK(says(caution.words, stage.facts.charged.back()->material().name));
                }
    }
    CHECK(checked >= 5);
    // Bromate comes second to last in the file: its water and the bromide go in before it.
    const std::string sheet = sheet_text("4-bromoacetanilide/A2.json");
    const std::size_t stages = sheet.rfind("Put in potassium bromate");
    REQUIRE(stages != std::string::npos);
    CHECK(stages > sheet.rfind("Put in potassium bromide"));
    CHECK(stages < sheet.rfind("Quench with"));
}

// Procedures of adipic acid with peroxide and tungstate mix oxidant and catalyst first (Sato, Aoki, Noyori,
// Science 1998, 281, 1646; remembered), and cyclohexanol is dropped into boiling nitric acid (Organic
// Syntheses, Coll. Vol. 1, 18; remembered).
TEST_CASE("an oxidiser that is the flask comes before what is dropped into it, under reflux too") {
    const auto order_in = [](const char* file) {
        const auto laid_out = test::lay_out_file(file);
        std::vector<std::string> names;
        for (const bench::Reagent* reagent : laid_out->experiment().steps()[0].stages[0].facts.charged)
            names.push_back(reagent->material().name);
        return names;
    };
    CHECK(order_in("adipic-acid/E3.json") ==
          std::vector<std::string>{"sodium tungstate dihydrate", "methyltrioctylammonium chloride",
                                   "potassium hydrogensulfate", "hydrogen peroxide 30 %", "cyclohexene"});
    CHECK(order_in("adipic-acid/E1.json") == std::vector<std::string>{"nitric acid 70 %", "cyclohexanol"});
    for (const char* file : {"adipic-acid/E1.json", "adipic-acid/E2.json", "adipic-acid/E3.json"}) {
        CAPTURE(file);
        const std::string sheet = sheet_text(file);
        CHECK(says(sheet, "last, in portions or dropwise, stirred and with the condenser in place"));
        CHECK(says(sheet, "it gets hot"));
    }
}

TEST_CASE("bromine goes in last, behind the acid that thins it") {
    const std::string sheet = sheet_text("4-bromoacetanilide/A1.json");
    CHECK(says(sheet, "Add bromine last, in portions or dropwise"));
    CHECK(sheet.rfind("Put in bromine") > sheet.rfind("Put in acetic acid"));
    CHECK(says(sheet_text("4-bromoacetanilide/A7b.json"), "Add pyridinium tribromide last"));
}

TEST_CASE("a gas is taken in and never poured: no vessel, and cautions of its own") {
    std::size_t gases = 0;
    for (const std::string& file : test::shipped_routes()) {
        CAPTURE(file);
        const auto laid_out = test::lay_out_file(file);
        for (const bench::BenchStep& step : laid_out->experiment().steps())
            for (const bench::BenchStage& stage : step.stages) {
                const bool any =
                    std::any_of(stage.facts.charged.begin(), stage.facts.charged.end(),
                                [](const bench::Reagent* reagent) {
                                    return reagent->material().is_neat() &&
                                           reagent->material().components.front().substance->phase ==
                                               Substance::Phase::gas;
                                });
                CHECK(any == has_caution(stage, "charged_gas"));
                if (any) CHECK_FALSE(stage.vessel.has_value());
                gases += any ? 1 : 0;
            }
    }
    CHECK(gases >= 2);
    const std::string sheet = sheet_text("ibuprofen/three-step.json");
    CHECK(says(sheet, "Vessel: none is proposed here. Gas under pressure or from a cylinder"));
    CHECK(says(sheet, "Take in hydrogen: "));
    CHECK(says(sheet, "Take in carbon monoxide: "));
    CHECK_FALSE(says(sheet, "Put in carbon monoxide"));
    CHECK(says(sheet, "Hydrogen: flammable gas"));
    CHECK(says(sheet, "Carbon monoxide: poisonous, and no smell may warn of it: a detector"));
    CHECK_FALSE(says(sheet, "Weigh and pour only in the hood"));
}

TEST_CASE("a trace is in the flask and on no paper") {
    const auto laid_out = test::lay_out_file("4-bromoacetanilide/A7a.json");
    const bench::Experiment& experiment = laid_out->experiment();
    for (const auto& document : {bench_sheet(experiment, Edition::student),
                                 bench_sheet(experiment, Edition::key), talk_card(experiment)})
        CHECK_FALSE(says(test::in_every_format(document), "hydrobromic acid"));
    for (const stock::Need& need : stock::needs_of_run(experiment.assessment()))
        CHECK(need.material->name != "hydrobromic acid 48 %");
    const auto inflows = experiment.assessment().flat().inflows();
    CHECK(std::any_of(inflows.begin(), inflows.end(),
                      [](const Inflow& inflow) { return inflow.substance->name == "hydrogen bromide"; }));
}

// Common practice, no source: iodide paper tells an oxidiser; an anhydride that meets water boils up.
TEST_CASE("starch-iodide paper is for oxidisers alone; an anhydride meets water dropwise and in the hood") {
    for (const char* file :
         {"acetylsalicylic-acid/G1.json", "acetylsalicylic-acid/G2.json", "acetylsalicylic-acid/G4.json"}) {
        CAPTURE(file);
        const std::string sheet = sheet_text(file);
        CHECK_FALSE(says(sheet, "iodide"));
        CHECK_FALSE(says(sheet, "until the colour is gone"));
        CHECK(says(sheet, "Acetic anhydride meets water here"));
        CHECK(says(sheet, "acid vapour"));
        const std::string card = test::text_of(talk_card(test::lay_out_file(file)->experiment()));
        CHECK_FALSE(says(card, "iodide"));
        CHECK(says(card, "Water on acetic anhydride"));
    }
    for (const char* file : {"4-bromoacetanilide/A1.json", "4-bromoacetanilide/A3.json"}) {
        CAPTURE(file);
        CHECK(says(sheet_text(file), "iodide"));
        CHECK(says(test::text_of(talk_card(test::lay_out_file(file)->experiment())), "iodide"));
        CHECK_FALSE(says(sheet_text(file), "anhydride"));
    }
}

TEST_CASE(
    "a checklist pours as its caution says, and water that quenches goes into the mixture before that") {
    const std::string sheet = sheet_text("acetylsalicylic-acid/G2.json");
    CHECK(says(sheet, "Once the quench has calmed, pour the mixture into the rest of the water"));
    const std::size_t quench = sheet.find("Quench with water"),
                      pour = sheet.find("Pour the mixture into water");
    REQUIRE(quench != std::string::npos);
    REQUIRE(pour != std::string::npos);
    CHECK(quench < pour);
    for (const std::string& file : test::shipped_routes()) {
        CAPTURE(file);
        const auto laid_out = test::lay_out_file(file);
        for (const bench::BenchStep& step : laid_out->experiment().steps())
            for (const bench::BenchStage& stage : step.stages)
                if (has_caution(stage, "pour")) CHECK(says(sheet_text(file), "Pour the mixture into "));
    }
}

TEST_CASE("a checklist has the notes of the route file, the student's without what is to be worked out") {
    const std::string student = sheet_text("acetylsalicylic-acid/G2.json");
    CHECK(says(student, "; dropwise"));
    CHECK(says(student, "; ice-cold"));
    const std::string addition = sheet_text("2-3-dibromo-3-phenylpropanoic-acid/B2.json");
    CHECK(says(addition, "in five portions"));
    CHECK_FALSE(says(addition, "1.02 equivalents"));
    CHECK(says(sheet_text("2-3-dibromo-3-phenylpropanoic-acid/B2.json", Edition::key), "1.02 equivalents"));
    CHECK_FALSE(says(sheet_text("4-bromoacetanilide/A2.json"), "than needed"));
}

// Common practice, no source: hot, the product is in solution and runs through the paper.
TEST_CASE("a warm recrystallisation is cooled before it is filtered, and nothing else is") {
    const std::string words =
        "Let it cool to room temperature, then in ice, until crystals have come; only then filter";
    for (const char* file :
         {"4-bromoacetanilide/A3.json", "4-chloro-4-methoxychalcone/H3.json",
          "2-3-dibromo-3-phenylpropanoic-acid/B4.json", "5-5-diphenylhydantoin/D1b-D2c-D3a.json"}) {
        CAPTURE(file);
        const std::string sheet = sheet_text(file);
        const std::size_t cool = sheet.find(words);
        REQUIRE(cool != std::string::npos);
        CHECK(sheet.find("Filter; what runs through", cool) - cool < words.size() + 40);
    }
    CHECK_FALSE(says(sheet_text("adipic-acid/E2.json"), words));
    for (const std::string& file : test::shipped_routes()) {
        CAPTURE(file);
        const auto laid_out = test::lay_out_file(file);
        for (const bench::BenchStep& step : laid_out->experiment().steps())
            for (const bench::BenchStage& stage : step.stages)
                if (stage.facts.cools_before_filtering()) {
                    CHECK(stage.facts.is(Phase::purification));
                    CHECK(stage.facts.has_role("recrystallisation solvent"));
                }
    }
}

TEST_CASE("bench sheet, cooling water and techniques agree on every condenser") {
    const utilities::UtilityData data = utilities::read_utility_data(Catalogue::embedded());
    std::size_t refluxes = 0;
    for (const std::string& file : test::shipped_routes()) {
        CAPTURE(file);
        const auto laid_out = test::lay_out_file(file);
        const bench::Experiment& experiment = laid_out->experiment();
        const Assessment& route = experiment.assessment();
        const utilities::RouteUse use = utilities::estimate_use(route.flat(), route.evaluation(), data);
        bool any = false;
        for (const utilities::StageUse& stage : use.stages) {
            const bench::BenchStage& on_sheet = experiment.steps()[static_cast<std::size_t>(stage.step)]
                                                    .stages[static_cast<std::size_t>(stage.stage)];
            CAPTURE(on_sheet.facts.stage->title);
            CHECK(stage.reflux == on_sheet.facts.refluxes());
            CHECK(stage.reflux == has_caution(on_sheet, "condenser")); // none of them distils
            if (!stage.cooling.stated && stage.minutes)
                CHECK((stage.cooling.usual > 0) == (on_sheet.facts.condenses != nullptr));
            if (stage.reflux) CHECK(on_sheet.vessel->kind == bench::VesselKind::round_flask);
            any = any || stage.reflux;
            refluxes += stage.reflux ? 1 : 0;
        }
        const auto techniques = course::techniques_of(route, use);
        CHECK(any ==
              (std::find(techniques.begin(), techniques.end(), "heating under reflux") != techniques.end()));
        CHECK(any == says(sheet_text(file), "reflux condenser with tubing"));
    }
    CHECK(refluxes >= 15);
    // Ethanol boils at 78 degC; steam from an open flask harms nobody.
    const auto condenses = [](const char* file, std::size_t stage) {
        return test::lay_out_file(file)->experiment().steps()[0].stages[stage].facts.condenses != nullptr;
    };
    CHECK(condenses("4-bromoacetanilide/A3.json", 3));
    CHECK_FALSE(condenses("adipic-acid/E3.json", 3));
}

// For carbon monoxide no glass is proposed, and the route states nothing else that would need any.
TEST_CASE("a step that no glassware is proposed for has no heading over an empty list") {
    const std::string heading = "Glassware and apparatus", remark = "none filled above";
    const auto count = [](const std::string& text, const std::string& words) {
        std::size_t found = 0;
        for (std::size_t at = text.find(words); at != std::string::npos; at = text.find(words, at + 1))
            ++found;
        return found;
    };
    std::size_t empty = 0;
    for (const std::string& file : test::shipped_routes()) {
        CAPTURE(file);
        const auto laid_out = test::lay_out_file(file);
        const bench::Experiment& experiment = laid_out->experiment();
        std::size_t listed = 0;
        for (const bench::BenchStep& step : experiment.steps())
            if (!bench::equipment_of(step, experiment.rules()).empty()) ++listed;
        empty += experiment.steps().size() - listed;
        const std::string sheet = sheet_text(file);
        CHECK(count(sheet, heading) == listed);
        CHECK(count(sheet, remark) == listed);
    }
    CHECK(empty >= 1);
    const auto ibuprofen = test::lay_out_file("ibuprofen/three-step.json");
    const bench::Experiment& experiment = ibuprofen->experiment();
    CHECK(bench::equipment_of(experiment.steps()[2], experiment.rules()).empty());
    CHECK_FALSE(bench::equipment_of(experiment.steps()[0], experiment.rules()).empty());
}

TEST_CASE("a step that one run of serves several students takes fewer sets of glassware, and says so") {
    std::size_t pooled = 0;
    for (const std::string& file : test::shipped_routes()) {
        CAPTURE(file);
        const auto laid_out = test::lay_out_file(file);
        const bench::Experiment& experiment = laid_out->experiment();
        double most = 0;
        for (const StepResult& step : experiment.assessment().evaluation().steps)
            most = std::max(most, step.scale);
        Problems problems;
        StockRequest request;
        request.size.students = 24;
        const std::string stock =
            test::text_of(stock_document(experiment, request, Catalogue::embedded(), problems));
        bool any = false;
        for (const bench::Equipment& one : bench::equipment_of(experiment)) {
            CAPTURE(one.name);
            CHECK(one.pieces(24) >= 1);
            CHECK(one.pieces(24) >= 24 * std::min(one.runs, 1.0) - 1e-6);
            CHECK(one.pieces(24) < 24 * std::min(one.runs, 1.0) + 1);
            CHECK(one.runs <= most);
            any = any || one.is_pooled();
            if (experiment.steps().size() == 1) CHECK(one.pieces(24) == 24);
        }
        CHECK(any == says(stock, "Pooled: "));
        pooled += any ? 1U : 0U;
    }
    CHECK(pooled >= 2);
    // One student needs 0.027 run of the benzoin step, so 24 take less than one.
    const auto laid_out = test::lay_out_file("5-5-diphenylhydantoin/D1a-D2c-D3a.json");
    const auto all = bench::equipment_of(laid_out->experiment());
    const auto largest = std::max_element(all.begin(), all.end(),
                                          [](const auto& a, const auto& b) { return a.holds < b.holds; });
    CHECK(largest->pieces(24) == 1);
    CHECK(largest->runs == doctest::Approx(0.027).epsilon(0.05));
}

TEST_CASE("hot concentrated nitric acid has a caution of its own, whatever gas the equation writes") {
    std::size_t found = 0;
    for (const std::string& file : test::shipped_routes()) {
        CAPTURE(file);
        const auto laid_out = test::lay_out_file(file);
        for (const bench::BenchStep& step : laid_out->experiment().steps())
            for (const bench::BenchStage& stage : step.stages) {
                const bool nitric = stage.facts.pot.before.grams("nitric-acid") > 0;
                if (has_caution(stage, "nitrogen_oxides")) {
                    CHECK(nitric);
                    CHECK(stage.facts.warm);
                    ++found;
                }
            }
    }
    CHECK(found >= 1);
    CHECK(says(sheet_text("adipic-acid/E1.json"), "gives brown nitrogen oxides"));
}

TEST_CASE("a melting point is expected at the listed one only where one is listed") {
    std::size_t listed = 0, not_listed = 0;
    for (const std::string& file : test::shipped_routes()) {
        CAPTURE(file);
        const auto laid_out = test::lay_out_file(file);
        for (const writing::Table& table :
             test::tables_in(bench_sheet(laid_out->experiment(), Edition::key).blocks))
            for (const writing::Row& row : table.rows) {
                if (!row.cells.front().text.starts_with("melting range")) continue;
                const bool has_point = says(row.cells.front().text, "(listed: ");
                CHECK(has_point == says(row.cells.back().text, "listed point"));
                CHECK(says(row.cells.back().text, "sharp"));
                ++(has_point ? listed : not_listed);
            }
    }
    CHECK(listed >= 1);
    CHECK(not_listed >= 1);
}

TEST_CASE("phosphoric acid 85 % is a liquid on every paper") {
    const Material* acid = Catalogue::embedded().find_material("phosphoric acid 85 %");
    REQUIRE(acid != nullptr);
    CHECK(phase_of(mixture_of(*acid)) == Substance::Phase::liquid);
    CHECK(stock::is_poured(*acid));
    std::size_t charges = 0;
    for (const std::string& file : test::shipped_routes()) {
        const auto laid_out = test::lay_out_file(file);
        for (const bench::BenchStep& step : laid_out->experiment().steps())
            for (const bench::Reagent& reagent : step.reagents) {
                if (&reagent.material() != acid) continue;
                CAPTURE(file);
                REQUIRE(reagent.millilitres.has_value());
                CHECK(*reagent.millilitres == doctest::Approx(reagent.grams / 1.689)); // g/mL, 85 %, 20 degC
                ++charges;
            }
    }
    CHECK(charges >= 2);
}

TEST_CASE("bench sheet and techniques agree on what is cooled in ice") {
    const utilities::UtilityData data = utilities::read_utility_data(Catalogue::embedded());
    const auto holds = [](const std::vector<std::string>& list, std::string_view text) {
        return std::find(list.begin(), list.end(), text) != list.end();
    };
    const auto agree = [&](const LaidOutRoute& laid_out) {
        const bench::Experiment& experiment = laid_out.experiment();
        const Assessment& route = experiment.assessment();
        const auto techniques =
            course::techniques_of(route, utilities::estimate_use(route.flat(), route.evaluation(), data));
        std::vector<std::string> pieces;
        for (const bench::Equipment& one : bench::equipment_of(experiment))
            pieces.push_back(one.name);
        const bool ice = holds(techniques, "cooling in ice");
        CHECK(ice == (holds(pieces, "ice bath") || holds(pieces, "ice-salt bath")));
        CHECK(holds(techniques, "cooling in dry ice") == holds(pieces, "dry ice bath"));
        return ice;
    };
    std::size_t cooled = 0, not_cooled = 0;
    for (const std::string& file : test::shipped_routes()) {
        CAPTURE(file);
        ++(agree(*test::lay_out_file(file)) ? cooled : not_cooled);
    }
    CHECK(cooled >= 1);
    CHECK(not_cooled >= 1);
    CHECK(agree(*test::lay_out_file("4-bromoacetanilide/A1.json"))); // states nothing below 20 degC
    // Colder than ice reaches; no shipped route is.
    std::string text = test::text_of_route("acetylsalicylic-acid/G1.json");
    const std::string stated = "\"0 degC\"";
    REQUIRE(text.find(stated) != std::string::npos);
    agree(*test::lay_out_text(text.replace(text.find(stated), stated.size(), "\"-10 degC\"")));
    agree(*test::lay_out_text(text.replace(text.find("\"-10 degC\""), 10, "\"-30 degC\"")));
}

// 4.240 g of benzoin go into one pot of the second step and one pot of the first leaves 1.484 g, that is
// 4.240 / 1.484 = 2.86 pots for each of the second step.
TEST_CASE("a step whose product is needed more than once says how often, the student edition less exactly") {
    const std::string file = "5-5-diphenylhydantoin/D1b-D2c-D3a.json";
    const auto laid_out = test::lay_out_file(file);
    const bench::Experiment& experiment = laid_out->experiment();
    const auto& steps = experiment.assessment().evaluation().steps;
    REQUIRE(steps.size() == 3);
    CHECK(steps[0].scale / steps[1].scale == doctest::Approx(4.240 / 1.484).epsilon(0.001));
    CHECK(steps[2].scale == doctest::Approx(1));
    const writing::Document key = bench_sheet(experiment, Edition::key);
    const std::string exact = fmt::format("{:.1f} times", steps[0].scale);
    CHECK(says(test::text_of(key), "needed " + exact + " for one run of the last step"));
    CHECK(says(test::text_of(talk_card(experiment)), "step 1 " + exact));
    const std::string student = sheet_text(file);
    CHECK_FALSE(says(student, exact));
    CHECK(says(student, fmt::format("needed {:.0f} to {:.0f} times for one run of the last step",
                                    std::floor(steps[0].scale), std::ceil(steps[0].scale))));
    CHECK(std::get<double>(member(std::get<writing::MachineList>(member(*key.machine, "steps").value)[0],
                                  "runs_for_one_of_the_last")
                               .value) == doctest::Approx(steps[0].scale));
    CHECK_FALSE(says(sheet_text("4-bromoacetanilide/A3.json"), "for one run of the last step"));
}

} // namespace
} // namespace routeweigh
