// SPDX-License-Identifier: MIT
// What the bench sheet says of streams before they leave the bench, and of the glassware.
#include "assess/bench/equipment.hpp"
#include "documents/bench_sheet.hpp"
#include "documents/compared.hpp"
#include "documents/destination.hpp"
#include "documents/papers.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <map>
#include <regex>
#include <string>
#include <vector>

namespace routeweigh {
namespace {

using documents::Edition;

/// The lists of what is done to streams before they leave the bench.
std::string treatments_of(const writing::Document& sheet) {
    std::string words;
    bool inside = false;
    for (const writing::Block& block : sheet.blocks) {
        if (const auto* heading = std::get_if<writing::Heading>(&block))
            inside = heading->text.runs.front().text == "Before the streams leave the bench";
        const auto* list = std::get_if<writing::BulletList>(&block);
        if (list == nullptr || !inside) continue;
        for (const writing::Text& item : list->items) {
            for (const writing::Run& run : item.runs)
                words += run.text;
            words += "\n";
        }
    }
    return words;
}

TEST_CASE("nobody waits for gas where a dilute acid takes up a base that is no carbonate") {
    using Kind = streams::Treatment::Kind;
    std::size_t without = 0;
    for (const std::string& file : test::shipped_routes()) {
        CAPTURE(file);
        const auto laid_out = test::lay_out_file(file);
        const std::string words = treatments_of(bench_sheet(laid_out->experiment(), Edition::key));
        const auto count = [&words](const std::string& part) {
            std::size_t found = 0;
            for (std::size_t at = words.find(part); at != std::string::npos; at = words.find(part, at + 1))
                ++found;
            return found;
        };
        std::size_t with_gas = 0, treated = 0;
        for (const bench::BenchStep& step : laid_out->experiment().steps()) {
            bool any = false, gas = false;
            for (const streams::StreamAdvice* advice : step.streams) {
                if (advice->decision.outcome == streams::Decision::Outcome::on_product) continue;
                for (const streams::Treatment& treatment : advice->decision.first) {
                    any = true;
                    // Acid that meets carbonate, and base, which is hydrogencarbonate, free carbon dioxide.
                    bool carbonate = false;
                    for (const auto* reading : {&advice->nominal, &advice->unreacted})
                        for (const streams::Portion& portion : reading->as_left.portions())
                            carbonate =
                                carbonate || portion.substance->name.find("carbonate") != std::string::npos;
                    gas = gas || (treatment.kind != Kind::part_layers &&
                                  (treatment.kind != Kind::add_acid || carbonate));
                }
            }
            treated += any ? 1U : 0U;
            with_gas += gas ? 1U : 0U;
        }
        CHECK(count("Wait until no more gas comes") == with_gas);
        CHECK(count("est with paper") == treated);
        without += treated - with_gas;
    }
    CHECK(without >= 1); // D1b, whose base is hydroxide
}

TEST_CASE("every stream that something is done to has a line to tick, and no other has one") {
    std::size_t lines = 0;
    for (const std::string& file : test::shipped_routes()) {
        CAPTURE(file);
        const auto laid_out = test::lay_out_file(file);
        const std::string words = treatments_of(bench_sheet(laid_out->experiment(), Edition::key));
        for (const streams::StreamAdvice& advice : laid_out->experiment().waste().streams) {
            const bool stays = advice.decision.outcome == streams::Decision::Outcome::on_product;
            const bool ticked =
                words.find(advice.stream.name + ": ") != std::string::npos &&
                words.find("then: " + documents::destination(advice.decision)) != std::string::npos;
            if (!advice.decision.first.empty() && !stays) {
                CAPTURE(advice.stream.name);
                CHECK(ticked);
                ++lines;
            }
        }
        CHECK(words.empty() == (words.find("then: ") == std::string::npos));
    }
    CHECK(lines > 15);
}

TEST_CASE("a sheet warns of the heat of a quench as the waste plan does, the student's without figures") {
    int warned = 0;
    for (const std::string& file : test::shipped_routes()) {
        CAPTURE(file);
        const auto laid_out = test::lay_out_file(file);
        const std::string key = test::in_every_format(bench_sheet(laid_out->experiment(), Edition::key));
        const std::string student =
            test::in_every_format(bench_sheet(laid_out->experiment(), Edition::student));
        for (const bench::BenchStep& step : laid_out->experiment().steps()) {
            const bool at_bench = std::any_of(
                step.streams.begin(), step.streams.end(), [](const streams::StreamAdvice* advice) {
                    return advice->decision.needs(streams::Treatment::Kind::quench) &&
                           advice->decision.outcome != streams::Decision::Outcome::on_product;
                });
            if (!at_bench) continue;
            CHECK(key.find("ool in ice and stir") != std::string::npos);
            CHECK(student.find("ool in ice and stir") != std::string::npos);
            CHECK(key.find("slowly, in portions") != std::string::npos);
            if (!(step.quench->warming > 0)) continue;
            ++warned;
            CHECK(key.find("K in the whole liquor") != std::string::npos);
            CHECK(student.find("K in the whole liquor") == std::string::npos);
            CHECK(student.find("he quench gets hot") != std::string::npos);
        }
    }
    CHECK(warned >= 2);
    const auto e3 = test::lay_out_file("adipic-acid/E3.json");
    const std::string key = test::in_every_format(bench_sheet(e3->experiment(), Edition::key));
    CHECK(key.find("The quench frees about 17 kJ") != std::string::npos);
    CHECK(key.find("in a vessel of at least 65 mL") != std::string::npos);
    CHECK(key.find("ask before anybody quenches it") != std::string::npos);
}

TEST_CASE("a sheet prints a stop as one") {
    const auto e1 = test::lay_out_file("adipic-acid/E1.json");
    const std::string sheet = test::text_of(bench_sheet(e1->experiment(), Edition::student));
    CHECK(sheet.find("STOP: own bottle with a vented cap, marked nitric acid") != std::string::npos);
    CHECK(sheet.find("(to: own bottle") == std::string::npos);
}

TEST_CASE("glassware is what stages and streams of the route ask for, each piece once") {
    const auto pieces_of = [](const char* file) {
        std::map<std::string, std::vector<std::string>> pieces;
        const auto laid_out = test::lay_out_file(file);
        for (const bench::Equipment& one : bench::equipment_of(laid_out->experiment()))
            CHECK(pieces.emplace(one.name, one.uses).second);
        return pieces;
    };
    const auto bromination = pieces_of("4-bromoacetanilide/A1.json");
    // Four times 73 mL, where carbonate goes in: 292 mL.
    CHECK(bromination.at("400 mL beaker") == std::vector<std::string>{"neutralising filtrate and washes"});
    CHECK(bromination.contains("reflux condenser with tubing, clamped"));
    CHECK(bromination.contains("suction flask with filter funnel and paper that fits it"));
    CHECK_FALSE(bromination.contains("condenser for distilling with adapter and receiver, clamped"));
    for (const std::string& file : test::shipped_routes()) {
        CAPTURE(file);
        const auto pieces = pieces_of(file.c_str());
        const auto laid_out = test::lay_out_file(file);
        const auto& streams = laid_out->experiment().waste().streams;
        CHECK(pieces.contains("gas trap") ==
              std::any_of(streams.begin(), streams.end(), [](const streams::StreamAdvice& advice) {
                  return advice.decision.outcome == streams::Decision::Outcome::trap;
              }));
    }
}

TEST_CASE("pieces of several steps are named once, and for each step what they are for") {
    const auto laid_out = test::lay_out_file("4-chloro-4-methoxychalcone/convergent.json");
    const bench::Experiment& experiment = laid_out->experiment();
    std::map<std::string, bench::Equipment> pieces;
    for (const bench::Equipment& one : bench::equipment_of(experiment))
        CHECK(pieces.emplace(one.name, one).second);
    const auto serves = [&](const char* piece, const char* use) {
        const auto& uses = pieces.at(piece).uses;
        return std::find(uses.begin(), uses.end(), use) != uses.end();
    };
    // What is boiled off is heated, though the file states no temperature for it.
    for (const char* piece : {"bath, mantle or plate to heat", "thermometer",
                              "condenser for distilling with adapter and receiver, clamped"}) {
        CAPTURE(piece);
        CHECK(serves(piece, "acylation: taking off the solvent"));
        CHECK(serves(piece, "oxidation: taking off the solvent"));
    }
    // A liquid dried over a salt runs through paper by its own weight.
    CHECK(serves("funnel with fluted paper", "acylation: drying over salt"));
    const char* suction = "suction flask with filter funnel and paper that fits it";
    CHECK_FALSE(serves(suction, "acylation: drying over salt"));
    CHECK(serves(suction, "condensation: dilution and filtration"));
    for (const bench::BenchStep& step : experiment.steps())
        for (const bench::Equipment& one : bench::equipment_of(step, experiment.rules())) {
            CAPTURE(one.name);
            CHECK(pieces.at(one.name).holds >= one.holds);
            for (const std::string& use : one.uses)
                CHECK(serves(one.name.c_str(), (step.step->id + ": " + use).c_str()));
        }
}

TEST_CASE("a bath is named by how cold it is") { // common practice, no source
    const auto has_bath = [](const char* temperature, const char* bath) {
        std::string text = test::text_of_route("acetylsalicylic-acid/G1.json");
        const std::string stated = "\"0 degC\"";
        text.replace(text.find(stated), stated.size(), temperature);
        const auto laid_out = test::lay_out_text(text);
        for (const bench::Equipment& one : bench::equipment_of(laid_out->experiment()))
            if (one.name == bath)
                for (const std::string& use : one.uses)
                    if (use == "water, ice and filtration") return true;
        return false;
    };
    CHECK(has_bath("\"0 degC\"", "ice bath"));
    CHECK(has_bath("\"-4 degC\"", "ice bath"));
    CHECK(has_bath("\"-5 degC\"", "ice-salt bath"));
    CHECK(has_bath("\"-20 degC\"", "ice-salt bath"));
    CHECK(has_bath("\"-21 degC\"", "dry ice bath"));
    CHECK_FALSE(has_bath("\"-21 degC\"", "ice bath"));
}

TEST_CASE("what comes before a container tells a student no amounts, and a key tells them") {
    const std::regex amount("[0-9] (µmol|mmol|mol|mg|g|mL|L)\\b");
    int told = 0;
    for (const std::string& file : test::shipped_routes()) {
        INFO(file);
        for (const char* rules : {"US", "EU"}) {
            const auto laid_out = test::lay_out_text(test::text_of_route(file), rules);
            const auto before = [&](Edition edition) {
                return treatments_of(bench_sheet(laid_out->experiment(), edition));
            };
            std::string student = before(Edition::student);
            // The strength of a bottle is its name: "1 g per 5 mL".
            for (const streams::QuenchPlan& plan : laid_out->experiment().waste().quenches)
                for (const streams::PlannedQuench& one : plan.planned)
                    if (const auto at = student.find(one.material); at != std::string::npos)
                        student.erase(at, one.material.size());
            CHECK_FALSE(std::regex_search(student, amount));
            told += std::regex_search(before(Edition::key), amount) ? 1 : 0;
        }
    }
    CHECK(told > 20);
    const auto h3 = test::lay_out_text(test::text_of_route("4-chloro-4-methoxychalcone/H3.json"), "EU");
    const std::string sheet = test::in_every_format(bench_sheet(h3->experiment(), Edition::student));
    CHECK(sheet.find("neutralise first: strong base keeps it out") != std::string::npos);
    CHECK(sheet.find("mmol strong base") == std::string::npos);
}

} // namespace
} // namespace routeweigh
