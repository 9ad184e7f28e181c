// SPDX-License-Identifier: MIT
// Stock list, labels and class results as documents: what they print is what they counted.
#include "app/labels_session.hpp"
#include "app/results_session.hpp"
#include "app/session.hpp"
#include "app/stock_session.hpp"
#include "assess/streams/route_waste.hpp"
#include "assess/streams/stream_rules.hpp"
#include "documents/compared.hpp"
#include "documents/composition_text.hpp"
#include "documents/papers.hpp"
#include "writing/wrap.hpp"
#include "writing/writer_list.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <map>
#include <string>
#include <vector>

using namespace routeweigh;

namespace {

/// Every shipped route, assessed once.
const std::vector<Comparison>& shipped_comparisons() {
    static const std::vector<Comparison> all = [] {
        std::vector<Comparison> made;
        for (const test::RouteSet& set : test::shipped_sets())
            made.push_back(test::compare_folder(set.folder, set.baseline));
        return made;
    }();
    return all;
}

const Assessment& bromination() {
    return shipped_comparisons().front().baseline();
}

const bench::Experiment& laid_out_bromination() {
    static const bench::BenchRules rules(Catalogue::embedded(),
                                         streams::shipped_local_rules(Catalogue::embedded(), "US"));
    static const bench::Experiment experiment(bromination(), rules);
    return experiment;
}

const writing::MachineList& list(const writing::MachineTree& tree, std::string_view name) {
    return std::get<writing::MachineList>(test::member(tree, name).value);
}

std::string text(const writing::MachineTree& tree, std::string_view name) {
    return std::get<std::string>(test::member(tree, name).value);
}

double number(const writing::MachineTree& tree, std::string_view name) {
    const auto& value = test::member(tree, name).value;
    if (const auto* whole = std::get_if<std::int64_t>(&value)) return static_cast<double>(*whole);
    return std::get<double>(value);
}

LabelRequest by_eu_rules() {
    LabelRequest request;
    request.local = streams::shipped_local_rules(Catalogue::embedded(), "EU");
    return request;
}

StockRequest class_of_72() {
    StockRequest request;
    request.size.students = 24;
    request.size.sections = 3;
    request.size.extra = "10%";
    return request;
}

} // namespace

TEST_CASE("labels of every shipped route: shares add up to 100, and waste to the ledger times the class") {
    for (const Comparison& comparison : shipped_comparisons())
        for (const auto& route : comparison.routes()) {
            INFO(route->route().id);
            LabelRequest request = by_eu_rules();
            request.size.students = 24;
            request.size.sections = 3;
            const writing::Document document = labels_document(*route, request, Catalogue::embedded());
            std::map<std::string, double> labelled;
            std::size_t bottles = 0;
            for (const auto& label : list(*document.machine, "labels")) {
                // Nobody planned how much water washes off what stays on crystals.
                const bool washings = text(label, "name").find(": washings of ") != std::string::npos;
                double percent = washings ? 100 : 0;
                for (const auto& part : list(label, "contents")) {
                    if (!washings) percent += number(part, "percent");
                    if (text(label, "kind") == "waste")
                        labelled[text(part, "substance")] += number(part, "grams");
                }
                CHECK(percent == doctest::Approx(100).epsilon(1e-12));
                bottles += text(label, "kind") == "bottle" ? 1U : 0U;
                CHECK_FALSE(text(label, "statements").empty());
            }
            CHECK(bottles == stock::needs_of_run(*route).size());
            // Nothing is on a label that is not in a stream, and no more of it.
            std::map<std::string, double> streams;
            for (const LedgerRow& row : route->ledger().rows)
                if (row.side == LedgerRow::Side::stream) streams[row.substance->name] += row.grams * 72;
            for (const auto& sum : labelled)
                CHECK_MESSAGE(sum.second <= streams[sum.first] * (1 + 1e-9) + 1e-12, sum.first);
        }
}

TEST_CASE("every container and every bottle that the waste plan names has a label") {
    std::size_t for_recovery = 0;
    for (const Comparison& comparison : shipped_comparisons())
        for (const auto& route : comparison.routes()) {
            INFO(route->route().id);
            LabelRequest request = by_eu_rules();
            request.bottles = false;
            const writing::Document document = labels_document(*route, request, Catalogue::embedded());
            std::vector<std::string> names;
            for (const auto& label : list(*document.machine, "labels")) {
                names.push_back(text(label, "name"));
                if (text(label, "kind") == "recovery") {
                    ++for_recovery;
                    CHECK(number(list(label, "contents").front(), "percent") > 90);
                }
            }
            const streams::StreamRules rules(Catalogue::embedded(), request.local);
            for (const streams::StreamAdvice& advice : assess_waste(route->route(), rules).streams) {
                using Outcome = streams::Decision::Outcome;
                const streams::Decision& decision = advice.decision;
                std::string wanted;
                if (decision.kind) wanted = rules.local.container(*decision.kind)->name;
                if (decision.outcome == Outcome::recovered) // each solvent by itself
                    wanted += ": " + advice.stream.recovered.portions().front().substance->name;
                if (decision.outcome == Outcome::own_bottle)
                    wanted = decision.bottle + ": " +
                             (advice.stream.stays_on_product() ? "washings of " : "") + advice.stream.title;
                if (wanted.empty()) continue;
                CHECK_MESSAGE(std::find(names.begin(), names.end(), wanted) != names.end(), wanted);
            }
        }
    CHECK(for_recovery >= 1); // dichloromethane of the convergent chalcone
}

TEST_CASE("the waste labels of the bromination hold all of its filtrate and mother liquor") {
    LabelRequest request = by_eu_rules();
    request.size.students = 24;
    request.bottles = false;
    const writing::Document document = labels_document(bromination(), request, Catalogue::embedded());
    double labelled = 0, streams = 0;
    for (const auto& label : list(*document.machine, "labels"))
        for (const auto& part : list(label, "contents"))
            if (text(label, "kind") == "waste") labelled += number(part, "grams");
    for (const LedgerRow& row : bromination().ledger().rows)
        if (row.side == LedgerRow::Side::stream && row.place.find("vapour") == std::string::npos &&
            row.place.find("salts left") == std::string::npos)
            streams += row.grams * 24;
    CHECK(labelled == doctest::Approx(streams).epsilon(1e-9));
}

TEST_CASE(
    "a waste label says that its composition is before what is done first, and what waits has its own") {
    const auto labels_of = [](const std::string& id) {
        std::map<std::string, std::string> contents; // by kind and name
        for (const Comparison& comparison : shipped_comparisons())
            for (const auto& route : comparison.routes()) {
                if (route->route().id != id) continue;
                LabelRequest request = by_eu_rules();
                request.size.students = 24;
                request.bottles = false;
                const writing::Document document = labels_document(*route, request, Catalogue::embedded());
                for (const auto& row : document.rows.rows)
                    contents[std::get<std::string>(row[0]) + ": " + std::get<std::string>(row[1])] =
                        std::get<std::string>(row[3]);
            }
        return contents;
    };
    auto h3 = labels_of("H3"); // sodium hydroxide is on it, and is neutralised first
    CHECK(h3["waste: flammable non-halogenated"].find("before what is done first (neutralised): ") !=
          std::string::npos);
    auto e2 = labels_of("E2"); // hydrogen peroxide is on it, and is quenched first
    CHECK(e2["waste: heavy metal"].find("before what is done first (quenched, neutralised): ") !=
          std::string::npos);
    const std::string waiting = e2["waiting: oxidiser awaiting its quench"];
    CHECK(waiting.find("until it is quenched: ") != std::string::npos);
    CHECK(waiting.find("hydrogen peroxide") != std::string::npos);
    // At 80 % conversion A1 leaves bromine, at full conversion none: the label of what waits has it.
    CHECK(labels_of("A1")["waiting: oxidiser awaiting its quench"].find("bromine") != std::string::npos);
    // Nothing is done to the mother liquor of A1, and nothing of H3 waits.
    CHECK(labels_of("A1")["waste: halogenated organic liquid"].find("As planned, by mass: ") == 0);
    CHECK(h3.count("waiting: oxidiser awaiting its quench") == 0);
}

TEST_CASE("a label of a bottle of its own says what the waste plan demands of it") {
    const auto labels_of = [](const std::string& id) {
        std::map<std::string, std::string> found; // contents and foot, by name
        for (const Comparison& comparison : shipped_comparisons())
            for (const auto& route : comparison.routes()) {
                if (route->route().id != id) continue;
                LabelRequest request = by_eu_rules();
                request.bottles = false;
                for (const auto& row : labels_document(*route, request, Catalogue::embedded()).rows.rows)
                    found[std::get<std::string>(row[1])] =
                        std::get<std::string>(row[3]) + " / " + std::get<std::string>(row[7]);
            }
        return found;
    };
    auto cyanide = labels_of("D1a-D2c-D3a");
    const std::string bottle = "own bottle, marked cyanide, kept basic: ";
    const std::string acid = "No acid into it: sodium cyanide would set a toxic gas free";
    for (const char* stream : {"benzoin: filtrate and wash", "benzoin: mother liquor"}) {
        CAPTURE(stream);
        CHECK(cyanide[bottle + stream].find(acid) != std::string::npos);
    }
    const std::string washings = cyanide[bottle + "washings of benzoin: salts left on the crystals"];
    CHECK(washings.find("sodium cyanide") != std::string::npos);
    CHECK(washings.find(acid) != std::string::npos);
    CHECK(washings.find('%') == std::string::npos);
    const auto nitric = labels_of("E1");
    CHECK(nitric.contains("own bottle with a vented cap, marked nitric acid, never one that held a solvent: "
                          "filtrate and wash"));
    for (const auto& [name, text] : nitric)
        CHECK(text.find("No acid into it") == std::string::npos);
}

TEST_CASE("a label prints the water, and traces by name") {
    const Catalogue& catalogue = Catalogue::embedded();
    const auto shares = documents::printed_shares({{catalogue.find_substance("water"), 50.0},
                                                   {catalogue.find_substance("ethanol"), 49.99},
                                                   {catalogue.find_substance("bromine"), 0.01}});
    CHECK(composition_text(shares) == "ethanol 50.0 %, water 50.0 %; traces of bromine");
    CHECK(composition_text(documents::printed_shares(
              {{catalogue.find_substance("sodium thiosulfate (anhydrous)"), 1.0},
               {catalogue.find_substance("water"), 9.0}})) == "sodium thiosulfate 10.0 %, water 90.0 %");
    CHECK(composition_text(documents::printed_shares(
              {{catalogue.find_substance("sodium thiosulfate (anhydrous)"), 1.0}})) ==
          "sodium thiosulfate (anhydrous) 100 %");
    CHECK(composition_text(documents::printed_shares({{catalogue.find_substance("ethanol"), 2.0}})) ==
          "ethanol 100 %");
}

TEST_CASE("a label of a strong acid has its signal word, pictogram and statements") {
    // Bromine as bought: Danger; GHS05, GHS06 and GHS09; H314, H330 and H400 (CLP, Annex VI, from memory).
    LabelRequest request = by_eu_rules();
    request.waste = false;
    request.copies = 2;
    const writing::Document document = labels_document(bromination(), request, Catalogue::embedded());
    const auto& labels = list(*document.machine, "labels");
    const auto found = std::find_if(labels.begin(), labels.end(),
                                    [](const auto& label) { return text(label, "name") == "bromine"; });
    REQUIRE(found != labels.end());
    CHECK(text(*found, "signal_word") == "Danger");
    for (const char* statement : {"H314", "H330", "H400"})
        CHECK(text(*found, "statements").find(statement) != std::string::npos);
    CHECK(number(*found, "copies") == 2);
}

TEST_CASE("a bottle that nobody has assessed says so of 100 %, in plain figures") {
    bool seen = false;
    for (const Comparison& comparison : shipped_comparisons())
        for (const auto& route : comparison.routes()) {
            LabelRequest request = by_eu_rules();
            request.waste = false;
            const writing::Document document = labels_document(*route, request, Catalogue::embedded());
            for (const auto& label : list(*document.machine, "labels")) {
                const std::string statements = text(label, "statements");
                CAPTURE(statements);
                CHECK(statements.find("e+") == std::string::npos);
                seen = seen || statements.find("not assessed for 100 % of it") != std::string::npos;
            }
        }
    CHECK(seen); // methyltrioctylammonium hydrogensulfate of E2, without a list of hazards
}

TEST_CASE("a number that stands in the stock list twice is the same number") {
    Problems problems;
    const writing::Document document =
        stock_document(laid_out_bromination(), class_of_72(), Catalogue::embedded(), problems);
    std::map<std::string, double> needed;
    for (const auto& need : list(*document.machine, "needs")) {
        needed[text(need, "material")] = number(need, "grams");
        CHECK(number(need, "grams") == doctest::Approx(number(need, "grams_per_run") * 79.2));
    }
    for (const writing::Table& table : test::tables_in(document.blocks)) {
        if (table.caption != "What the class uses") continue;
        CHECK(table.rows.size() == needed.size());
        for (const writing::Row& row : table.rows)
            CHECK(*row.cells[3].number == needed[row.cells[0].text]);
    }
    // Twice the students need twice of everything.
    StockRequest twice = class_of_72();
    twice.size.students = 48;
    const writing::Document other =
        stock_document(laid_out_bromination(), twice, Catalogue::embedded(), problems);
    for (const auto& need : list(*other.machine, "needs"))
        CHECK(number(need, "grams") == doctest::Approx(2 * needed[text(need, "material")]));
}

TEST_CASE("a recipe says how what burns skin meets water") {
    const auto recipes_of = [](const char* file) {
        Problems problems;
        const auto laid_out = test::lay_out_file(file);
        const writing::Document document =
            stock_document(laid_out->experiment(), class_of_72(), Catalogue::embedded(), problems);
        std::map<std::string, std::string> how;
        for (const writing::Table& table : test::tables_in(document.blocks))
            if (table.caption.starts_with("Solutions to make"))
                for (const writing::Row& row : table.rows)
                    how[row.cells.front().text] = row.cells.back().text;
        return how;
    };
    auto alkali = recipes_of("5-5-diphenylhydantoin/D1b-D2c-D3a.json"),
         acid = recipes_of("4-bromoacetanilide/A2.json");
    for (const char* words : {"goggles", "hot as it dissolves", "in small portions into cold stirred water"})
        CHECK(alkali["sodium hydroxide 3 M"].find(words) != std::string::npos);
    CHECK(acid["sulfuric acid 3 M"].find("slowly into the water, never the other way round") !=
          std::string::npos);
    CHECK(acid["sodium metabisulfite 10 % w/v"].find("water") == std::string::npos); // burns no skin
}

TEST_CASE("a stock list speaks of extra where there is some, and of end dates that nobody checked") {
    const auto laid_out = test::lay_out_file("4-bromoacetanilide/A3.json");
    const auto text_of_class = [&](const char* extra, std::vector<std::string> days) {
        StockRequest request;
        request.size.students = 24;
        request.size.extra = extra;
        request.size.days = std::move(days);
        request.shelf_name = "shelf.csv";
        request.shelf = bytes_of("material,amount,unit,best before\nacetanilide,85.5,g,2026-06-30\n");
        Problems problems;
        return test::text_of(
            stock_document(laid_out->experiment(), request, Catalogue::embedded(), problems));
    };
    const std::string plain = text_of_class("0%", {}), more = text_of_class("10%", {"2026-09-14"});
    CHECK(plain.find("one section\n") != std::string::npos);
    CHECK(plain.find("with extra") == std::string::npos);
    CHECK(plain.find("end dates were not checked") != std::string::npos);
    CHECK(more.find("one section, with extra") != std::string::npos);
    CHECK(more.find("end dates were not checked") == std::string::npos);
}

TEST_CASE("class results print no figure of a row that is not possible, and every row once") {
    Problems problems;
    const auto results = read_results(
        bromination(), "", "../term/my folder/class.csv",
        bytes_of("bench,section,product (g)\nA1,Mon,1.7\nA2,Mon,1.6\nA3,Tue,1.5\nA4,Tue,9\n"), problems);
    const writing::Document document = results_document(bromination(), results);
    CHECK(number(*document.machine, "rows") == 4);
    CHECK(number(*document.machine, "not_possible") == 1);
    CHECK(number(test::member(*document.machine, "percent_yield"), "count") == 3);
    CHECK(list(*document.machine, "yields").size() == 3);
    CHECK(document.rows.rows.size() == 4);
    const std::string text = test::text_of(document);
    CHECK(text.find("Kruskal") != std::string::npos);
    // A p of 0.05 or more is no proof of the opposite (common practice, no source).
    CHECK(text.find("may have come about by chance") != std::string::npos);
    CHECK(text.find("does not show that there is none") != std::string::npos);
    CHECK(writing::plain(document.subtitle) == "class.csv"); // the folders are nobody's business
}

TEST_CASE("texts of a class file and of a call act in no format") {
    Problems problems;
    const std::string table =
        "bench,section,product (g)\nA1,<script>alert(1)</script>,1.7\nA2,\"=HYPERLINK(\"\"x\"\")\",9\n"
        "A3,+1+1,8\nA4,| a | `b`,8\n";
    const auto results = read_results(bromination(), "", "=cmd|' /C calc'!A0.csv", bytes_of(table), problems);
    LabelRequest request = by_eu_rules();
    request.course = "\"><img src=x onerror=alert(1)>";
    request.contact = "=1+1";
    for (const writing::Document& document :
         {results_document(bromination(), results),
          labels_document(bromination(), request, Catalogue::embedded())}) {
        const auto write = [&](const char* format) {
            return writing::find_writer(format)->write(document, writing::WriteOptions());
        };
        CHECK(write("html").find("<script") == std::string::npos);
        CHECK(write("html").find("<img") == std::string::npos);
        CHECK(write("markdown").find("<script") == std::string::npos);
        const std::string csv = write("csv");
        for (const char* start : {",=", ",+", "\n=", "\n+", ",\"=", ",\"+"})
            CHECK_MESSAGE(csv.find(start) == std::string::npos, start);
    }
}

TEST_CASE("a wrong call says what is wrong with it") {
    const auto fault = [](auto&& call) {
        try {
            call();
        } catch (const CallError& error) {
            return std::string(error.what());
        }
        return std::string();
    };
    CHECK(fault([] {
              LabelRequest request = by_eu_rules();
              request.sheet = "a4-9";
              labels_document(bromination(), request, Catalogue::embedded());
          }).find("nearest: \"a4-8\"") != std::string::npos);
    CHECK(fault([] {
              ClassRequest request;
              request.sections = 2;
              request.days = {"2026-09-16", "2026-09-14"};
              class_plan(request);
          }).find("not in order") != std::string::npos);
    CHECK(fault([] {
              Problems problems;
              read_results(bromination(), "drying", "x.csv", bytes_of("bench,product (g)\nA1,1\n"), problems);
          }).find("no step of A1 is called \"drying\"") != std::string::npos);
}
