// SPDX-License-Identifier: MIT
// One route file feeds every paper: a number that stands in two of them is the same number.
#include "app/costs_session.hpp"
#include "app/stock_session.hpp"
#include "documents/bench_sheet.hpp"
#include "documents/committee_case.hpp"
#include "documents/compared.hpp"
#include "documents/costs_document.hpp"
#include "documents/courses.hpp"
#include "documents/papers.hpp"
#include "documents/stock_list_document.hpp"
#include "documents/talk_card.hpp"
#include "documents/term_document.hpp"
#include "documents/waste/waste_document.hpp"
#include "writing/tables_of.hpp"
#include "writing/writer_list.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <cstddef>
#include <map>
#include <set>
#include <string>

namespace routeweigh {
namespace {

using documents::Edition;

struct PaperMaker {
    const char* name;
    writing::Document (*make)(const bench::Experiment&);
};

/// A further paper joins by a line here; its machine data holds machine_of(figure) for what it shares.
constexpr PaperMaker papers[] = {
    {"bench sheet, key",
     [](const bench::Experiment& experiment) { return bench_sheet(experiment, Edition::key); }},
    {"bench sheet, student",
     [](const bench::Experiment& experiment) { return bench_sheet(experiment, Edition::student); }},
    {"talk card", [](const bench::Experiment& experiment) { return talk_card(experiment); }},
    {"waste plan",
     [](const bench::Experiment& experiment) {
         const std::vector<streams::ContainerLog> logs;
         const streams::ClassWaste waste =
             streams::assess_class(experiment.route(), 1, experiment.rules().streams);
         return waste_document({&experiment.rules().streams, &logs, {&waste, 1}, 1, 1});
     }},
};

using StatedFigures = std::map<std::string, std::vector<std::pair<std::string, test::Stated>>>;

StatedFigures stated_figures_of(const bench::Experiment& experiment) {
    StatedFigures all;
    for (const PaperMaker& paper : papers) {
        const writing::Document document = paper.make(experiment);
        for (const auto& [id, list] : test::shared_figures(document))
            for (const test::Stated& stated : list)
                all[id].emplace_back(paper.name, stated);
    }
    return all;
}

/// What a class of a course reads: the route stands in week 1, and in the case in the place of itself.
StatedFigures stated_by_class_papers(const std::string& route, const std::string& changed = {}) {
    const auto course = test::open_course_text(test::course_text({route}, 2, 12), {}, changed);
    const auto again =
        test::open_course_text(test::course_text({route}, 2, 12), "1=../routes/" + route, changed);
    const course::ClassUse& use = course->use().experiments.front().use;
    const course::House& house = course->house();
    const bench::BenchRules rules(house.catalogue, house.waste.local);
    const bench::Experiment laid_out(*use.route, rules);
    const std::pair<const char*, writing::Document> made[] = {
        {"stock list", stock_list_document(laid_out, use.stock, house.prices, "")},
        {"costs", costs_document(use, house)},
        {"term", term_document(course->use(), nullptr, house)},
        {"case", committee_case(proposal_of(*course, *again), house)},
    };
    StatedFigures all;
    for (const auto& paper : made) {
        const std::string_view name = paper.first;
        CAPTURE(name);
        const std::string text = test::text_of(paper.second);
        for (const auto& figure : test::shared_figures(paper.second))
            for (const test::Stated& stated : figure.second) {
                CAPTURE(figure.first);
                // The case names what does not differ without a number, and no paper what nobody knows.
                if (name != "case" && !stated.open) CHECK(text.find(stated.text) != std::string::npos);
                all[figure.first].emplace_back(name, stated);
            }
    }
    return all;
}

/// Checks that all statements of one number agree; the count of numbers that stand in two papers or more.
std::size_t check_agreement(const StatedFigures& statements) {
    std::size_t shared = 0;
    for (const auto& entry : statements) {
        CAPTURE(entry.first);
        const auto& list = entry.second;
        const test::Stated* first = nullptr;
        std::set<std::string> where;
        for (const auto& statement : list) {
            CAPTURE(statement.first);
            where.insert(statement.first);
            const test::Stated& stated = statement.second;
            CHECK(stated.unit == list.front().second.unit);
            if (stated.open) continue;
            if (first == nullptr) first = &stated;
            CHECK(stated.value == first->value);
            CHECK(stated.text == first->text);
        }
        if (where.size() > 1) ++shared;
    }
    return shared;
}

TEST_CASE("a number that stands in two papers is the same number, in value and in print") {
    for (const std::string& file : test::shipped_routes()) {
        CAPTURE(file);
        const auto laid_out = test::lay_out_file(file);
        CHECK(check_agreement(stated_figures_of(laid_out->experiment())) >= 3);
    }
}

TEST_CASE("no paper is without rows as a table for programs") {
    for (const std::string& file : test::shipped_routes()) {
        CAPTURE(file);
        const auto laid_out = test::lay_out_file(file);
        for (const PaperMaker& paper : papers) {
            CAPTURE(paper.name);
            const std::string csv =
                writing::find_writer("csv")->write(paper.make(laid_out->experiment()), {});
            CHECK(std::count(csv.begin(), csv.end(), '\n') > 1);
        }
    }
}

TEST_CASE("no two rows of a table for programs have the same place") {
    for (const std::string& file : test::shipped_routes()) {
        CAPTURE(file);
        const auto laid_out = test::lay_out_file(file);
        const auto course = test::open_course_text(test::course_text({file}, 2, 12));
        const std::pair<const char*, writing::Document> made[] = {
            {"bench sheet", bench_sheet(laid_out->experiment(), Edition::key)},
            {"costs", costs_document(course->use().experiments.front().use, course->house())},
        };
        for (const auto& paper : made) {
            CAPTURE(paper.first);
            // Tables may have the same caption in several sections, rows the same name in several groups, and
            // a reagent may stand twice in one group.
            std::set<std::vector<std::string>> places;
            for (const auto& row : writing::data_rows(paper.second).rows) {
                const auto words = [&row](std::size_t at) { return std::get<std::string>(row[at]); };
                CAPTURE(words(1) + ", " + words(4) + ", " + words(5));
                const auto line = static_cast<int>(std::get<double>(row[3]));
                CHECK(places.insert({words(0), words(1), std::to_string(line), words(5)}).second);
            }
        }
    }
}

TEST_CASE("what the machine data state also stands in the text of the paper") {
    const auto laid_out = test::lay_out_file("4-bromoacetanilide/A3.json");
    for (const PaperMaker& paper : papers) {
        const writing::Document document = paper.make(laid_out->experiment());
        const std::string text = test::text_of(document);
        for (const auto& figure : test::shared_figures(document)) {
            CAPTURE(figure.first);
            const test::Stated& stated = figure.second.front();
            if (!stated.open) CHECK(text.find(stated.text) != std::string::npos);
        }
    }
}

TEST_CASE("changing one amount in the route file changes every paper that states it") {
    std::string text = test::text_of_route("4-bromoacetanilide/A3.json");
    const StatedFigures before = stated_figures_of(test::lay_out_text(text)->experiment());
    const std::string old_amount = "\"2.107 g\"";
    REQUIRE(text.find(old_amount) != std::string::npos);
    text.replace(text.find(old_amount), old_amount.size(), "\"2.50 g\"");
    const StatedFigures after = stated_figures_of(test::lay_out_text(text)->experiment());
    check_agreement(after);
    const std::string mass = "A3/bromination/1.3/mass";
    REQUIRE(after.count(mass) == 1);
    for (const auto& [paper, stated] : after.at(mass))
        CHECK(stated.value == doctest::Approx(2.5));
    // Amount, volume, equivalents and the stream that takes the spare acid follow.
    std::size_t changed = 0;
    for (const auto& [id, list] : after)
        if (!list.front().second.open && list.front().second.value != before.at(id).front().second.value)
            ++changed;
    CHECK(changed >= 5);
}

TEST_CASE("a number of the class is the same in stock list, costs, term and case") {
    for (const std::string& file : test::shipped_routes()) {
        CAPTURE(file);
        const StatedFigures statements = stated_by_class_papers(file);
        CHECK(check_agreement(statements) == 9); // all of term_figures(), two of them money
        std::size_t in_four = 0, in_three = 0;
        for (const auto& [id, list] : statements) {
            std::set<std::string> where;
            for (const auto& [paper, stated] : list)
                where.insert(paper);
            in_four += where.size() == 4 ? 1U : 0U;
            in_three += where.size() == 3 ? 1U : 0U;
        }
        CHECK(in_four == 1);  // the packs to buy
        CHECK(in_three == 1); // what is used up, not in the stock list
    }
}

TEST_CASE("changing one amount in the route file changes costs, term and case alike") {
    std::string text = test::text_of_route("4-bromoacetanilide/A3.json");
    const StatedFigures before = stated_by_class_papers("changed.json", text);
    const std::string old_amount = "\"2.107 g\"";
    REQUIRE(text.find(old_amount) != std::string::npos);
    text.replace(text.find(old_amount), old_amount.size(), "\"21.07 g\"");
    const StatedFigures after = stated_by_class_papers("changed.json", text);
    check_agreement(after);
    for (const char* what : {"consumed", "waste_kg", "waste_without_water_kg", "collected_l"}) {
        const std::string id = std::string("A3/2 x 12/") + what;
        CAPTURE(id);
        REQUIRE(after.count(id) == 1);
        for (const auto& [paper, stated] : after.at(id))
            CHECK(stated.value > before.at(id).front().second.value);
    }
}

TEST_CASE("the workbook holds the masses that the bench sheet weighs out") {
    for (const std::string& file : test::shipped_routes()) {
        CAPTURE(file);
        const auto laid_out = test::lay_out_file(file);
        std::set<double> numbers;
        const writing::Workbook book = class_workbook(
            laid_out->experiment().assessment(),
            {{24, 1, "10 %", {}}, "", streams::shipped_local_rules(Catalogue::embedded(), "US"), nullptr},
            Catalogue::embedded());
        for (const writing::Sheet& sheet : book.sheets)
            for (const auto& row : sheet.rows)
                for (const writing::SheetCell& cell : row)
                    if (const auto* number = std::get_if<double>(&cell.value)) numbers.insert(*number);
        for (const bench::BenchStep& step : laid_out->experiment().steps())
            for (const bench::Reagent& reagent : step.reagents) {
                const documents::SharedFigure mass =
                    documents::mass_of(laid_out->experiment().route(), step, reagent);
                CAPTURE(mass.id);
                const auto near = numbers.lower_bound(mass.value * (1 - 1e-9));
                CHECK((near != numbers.end() && *near <= mass.value * (1 + 1e-9)));
            }
    }
}

TEST_CASE("report and workbook call theoretical yield what the bench sheet calls so") {
    std::size_t of_several_steps = 0;
    for (const std::string& file : test::shipped_routes()) {
        CAPTURE(file);
        const auto laid_out = test::lay_out_file(file);
        const Assessment& assessment = laid_out->experiment().assessment();
        const bench::BenchStep& last = laid_out->experiment().steps().back();
        const double sheet = documents::theoretical_mass(laid_out->experiment().route(), last).value;
        const double report = assessment.metric("theoretical_yield");
        const Metric& metric = *all_metrics()[static_cast<std::size_t>(metric_index("theoretical_yield"))];
        CHECK(metric.name == "Theoretical yield over all steps");
        CHECK(report * assessment.metric("yield") / 100 ==
              doctest::Approx(assessment.metric("isolated_mass")).epsilon(1e-12));
        if (laid_out->experiment().steps().size() == 1) {
            CHECK(report == doctest::Approx(sheet).epsilon(1e-12));
        } else {
            CHECK(report > 1.01 * sheet); // what the earlier steps lose
            ++of_several_steps;
        }
        const writing::Workbook book = class_workbook(
            assessment,
            {{24, 1, "10 %", {}}, "", streams::shipped_local_rules(Catalogue::embedded(), "US"), nullptr},
            Catalogue::embedded());
        std::size_t rows = 0;
        for (const writing::Sheet& page : book.sheets)
            for (const auto& row : page.rows) {
                if (row.size() < 3) continue;
                const auto* name = std::get_if<std::string>(&row.front().value);
                if (page.name == "Steps" && name != nullptr && *name == last.step->id) {
                    CHECK(std::get<double>(row[2].value) == doctest::Approx(sheet).epsilon(1e-12));
                    ++rows;
                }
                if (name == nullptr || !name->ends_with("heoretical yield over all steps")) continue;
                for (const writing::SheetCell& cell : row)
                    if (const auto* number = std::get_if<double>(&cell.value)) {
                        CAPTURE(*name);
                        CHECK(*number == doctest::Approx(report).epsilon(1e-9));
                        ++rows;
                    }
            }
        CHECK(rows == 3); // the sheets of steps, of totals and of figures
    }
    CHECK(of_several_steps >= 4);
}

TEST_CASE("the stock list of one student asks for what the bench sheet weighs out") {
    for (const std::string& file : test::shipped_routes()) {
        CAPTURE(file);
        const auto laid_out = test::lay_out_file(file);
        if (laid_out->experiment().steps().size() > 1)
            continue; // there the stock list scales the first steps
        std::map<std::string, double> weighed;
        for (const bench::Reagent& reagent : laid_out->experiment().steps().front().reagents)
            weighed[reagent.material().name] += reagent.grams;
        Problems problems;
        const writing::Document stock =
            stock_document(laid_out->experiment(), {}, Catalogue::embedded(), problems);
        const auto& needs = std::get<writing::MachineList>(test::member(*stock.machine, "needs").value);
        CHECK(needs.size() == weighed.size());
        for (const writing::MachineTree& need : needs) {
            const std::string material = std::get<std::string>(test::member(need, "material").value);
            CAPTURE(material);
            CHECK(test::number_of(test::member(need, "grams_per_run")) ==
                  doctest::Approx(weighed[material]).epsilon(1e-12));
        }
    }
}

} // namespace
} // namespace routeweigh
