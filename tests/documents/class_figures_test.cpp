// SPDX-License-Identifier: MIT
// Costs, term and the case for a committee: every figure is the one that was counted, and sums are sums.
#include "documents/case_rows.hpp"
#include "documents/committee_case.hpp"
#include "documents/compared.hpp"
#include "documents/costs_document.hpp"
#include "documents/courses.hpp"
#include "documents/papers.hpp"
#include "documents/term_document.hpp"
#include "documents/term_figures.hpp"

#include <doctest/doctest.h>

#include <map>

namespace routeweigh {
namespace {

using documents::CaseRow;
using documents::RowStanding;

const writing::Table& table_named(const std::vector<writing::Table>& tables, const std::string& start) {
    for (const writing::Table& table : tables)
        if (table.caption.starts_with(start)) return table;
    FAIL("no table " << start);
    return tables.front();
}

const writing::Row& row_named(const writing::Table& table, const std::string& name) {
    for (const writing::Row& row : table.rows)
        if (row.cells.front().text == name) return row;
    FAIL("no row " << name);
    return table.rows.front();
}

double number_in(const writing::Row& row, std::size_t column) {
    return row.cells.at(column).number.value();
}

const CaseRow& case_row_of(const std::vector<CaseRow>& rows, const std::string& id) {
    for (const CaseRow& row : rows)
        if (row.id == id) return row;
    FAIL("no row " << id);
    return rows.front();
}

const writing::Row& row_starting(const writing::Table& table, const std::string& start) {
    for (const writing::Row& row : table.rows)
        if (row.cells.front().text.starts_with(start)) return row;
    FAIL("no row begins with " << start);
    return table.rows.front();
}

/// Volumes of the waste plan times prices of the list, by container; what has no price is left out.
std::map<std::string, double> disposal_costs(const course::ClassUse& use, const stock::PriceList& prices) {
    std::map<std::string, double> costs;
    for (const streams::ContainerFit& fit : use.waste.fits)
        if (const double* price = prices.disposal_of(std::string(streams::id_of(fit.container->kind))))
            if (fit.volume > 0) costs[fit.container->name] = *price * fit.volume / 1000;
    const double* own = prices.disposal_of("own_bottle");
    for (const streams::OwnBottle& bottle : use.waste.own_bottles)
        if (own != nullptr) costs["bottles of their own"] += *own * bottle.volume / 1000;
    return costs;
}

TEST_CASE("costs of every experiment: money by class, student and gram is that of the estimate") {
    const auto course = test::example_course();
    const stock::PriceList& prices = course->house().prices;
    for (const course::Experiment& experiment : course->use().experiments) {
        CAPTURE(experiment.source);
        const course::ClassUse& use = experiment.use;
        const writing::Document document = costs_document(use, course->house());
        const auto tables = test::tables_in(document.blocks);
        const writing::Table& money = table_named(tables, "Money");
        // Worked anew from volumes and prices: litres x price, kWh x price, m3 x price.
        double disposal = 0;
        for (const auto& entry : disposal_costs(use, prices)) {
            const std::string& container = entry.first;
            CAPTURE(container);
            CHECK(number_in(row_starting(money, "disposal: " + container + " ("), 1) ==
                  doctest::Approx(entry.second).epsilon(1e-12));
            disposal += entry.second;
        }
        // Two sections of twelve; the 10 % extra is spare stock and runs nothing.
        const double power = *prices.electricity * use.one.socket.usual * 24 / 3600;
        const double water = *prices.water * (use.one.cooling.usual + use.one.suction.usual) * 24 / 1000;
        CHECK(number_in(row_named(money, "electricity"), 1) == doctest::Approx(power).epsilon(1e-12));
        CHECK(number_in(row_named(money, "water"), 1) == doctest::Approx(water).epsilon(1e-12));
        const double used = number_in(row_named(money, "chemicals used up"), 1);
        const writing::Row& sum = row_named(money, "used up, disposal, electricity, water");
        CHECK(number_in(sum, 1) == doctest::Approx(used + disposal + power + water).epsilon(1e-12));
        CHECK(number_in(sum, 2) == doctest::Approx(number_in(sum, 1) / 24).epsilon(1e-12));
        CHECK(number_in(sum, 3) ==
              doctest::Approx(number_in(sum, 1) / (24 * use.route->totals().product)).epsilon(1e-12));
        CHECK(number_in(row_named(money, "packs bought for it, with the extra"), 1) == use.stock.cost);
        double minutes = 0;
        for (const writing::Row& row : table_named(tables, "Stage by stage").rows)
            if (row.cells.size() > 1 && row.cells[1].number) minutes += *row.cells[1].number;
        if (use.route->route().steps.size() == 1)
            CHECK(minutes == doctest::Approx(use.one.minutes).epsilon(1e-12));
    }
}

TEST_CASE("a container without a price has a row without a number, and the sum is that of the others") {
    const auto course = test::open_course_text(test::course_text({"4-bromoacetanilide/A3.json"}, 1, 12));
    const course::House& house = course->house();
    const Assessment& route = *course->use().experiments.front().use.route;
    const stock::ClassPlan& plan = course->use().experiments.front().use.plan;
    const auto all = disposal_costs(course->use().experiments.front().use, house.prices);
    REQUIRE(all.size() > 1);
    for (const auto& [id, price] : house.prices.disposal) {
        stock::PriceList fewer = house.prices;
        fewer.disposal.erase(id);
        const course::House poorer{house.catalogue, house.waste, house.stockroom, fewer, house.utilities};
        const course::ClassUse use = course::use_of_class(route, plan, poorer);
        const auto left = disposal_costs(use, fewer);
        double sum = 0;
        for (const auto& [container, cost] : left)
            sum += cost;
        CHECK(use.money.disposal() == doctest::Approx(sum).epsilon(1e-12));
        CHECK(use.money.disposals.size() == all.size());
        const auto tables = test::tables_in(costs_document(use, poorer).blocks);
        for (const auto& entry : all) {
            const std::string& container = entry.first;
            CAPTURE(container);
            const writing::Row& row =
                row_starting(table_named(tables, "Money"), "disposal: " + container + " (");
            CHECK(row.cells.at(1).number.has_value() == left.contains(container));
        }
    }
}

TEST_CASE("a term is the sum of its experiments, figure by figure") {
    const auto course = test::example_course();
    const course::CourseUse& term = course->use();
    const writing::Document document = term_document(term, nullptr, course->house());
    const auto tables = test::tables_in(document.blocks);
    const writing::Table& figures = table_named(tables, "What the whole class takes");
    const std::size_t weeks = term.experiments.size();
    CHECK(figures.rows.size() == documents::term_figures().size());
    for (const writing::Row& row : figures.rows) {
        double sum = 0;
        for (std::size_t week = 0; week < weeks; ++week)
            sum += number_in(row, 2 + week);
        // Packs are bought once for all weeks.
        if (row.cells.front().text == "packs to buy")
            CHECK(number_in(row, 2 + weeks) < sum);
        else
            CHECK(number_in(row, 2 + weeks) == doctest::Approx(sum).epsilon(1e-12));
    }
    for (std::size_t week = 0; week < weeks; ++week) {
        const course::ClassUse& use = term.experiments[week].use;
        const Totals& totals = use.route->totals();
        const std::size_t column = 2 + week;
        CAPTURE(use.route->route().id);
        CHECK(number_in(row_named(figures, "waste, water and gas with it"), column) ==
              doctest::Approx(totals.waste * 24 / 1000).epsilon(1e-12));
        CHECK(number_in(row_named(figures, "packs to buy"), column) == use.stock.cost);
        CHECK(number_in(row_named(figures, "drawn from the socket"), column) ==
              doctest::Approx(use.one.socket.usual * 24 / 3600).epsilon(1e-12));
        CHECK(number_in(row_named(figures, "time at the bench, a student"), column) ==
              doctest::Approx(use.one.minutes / 60).epsilon(1e-12));
    }
}

TEST_CASE("packs of a term are bought once: the same week twice takes the packs of both amounts together") {
    // No arithmetic of its own in the program is trusted here: grams of both weeks through the choice of
    // packs.
    const auto once = test::open_course_text(test::course_text({"4-bromoacetanilide/A3.json"}, 1, 12));
    const auto twice = test::open_course_text(
        test::course_text({"4-bromoacetanilide/A3.json", "4-bromoacetanilide/A3.json"}, 1, 12));
    const stock::PriceList& prices = once->house().prices;
    double both = 0, alone = 0;
    for (const stock::StockLine& line : once->use().experiments.front().use.stock.lines) {
        both += stock::choose_packs(prices, *line.material, 2 * line.to_get).cost;
        alone += line.packs.cost;
    }
    CHECK(once->use().cost_of_packs(prices) == doctest::Approx(alone).epsilon(1e-12));
    CHECK(twice->use().cost_of_packs(prices) == doctest::Approx(both).epsilon(1e-12));
    CHECK(both < 2 * alone);
    const std::string text = test::text_of(term_document(twice->use(), nullptr, twice->house()));
    CHECK(text.find("as if the shelf were empty") != std::string::npos);
}

TEST_CASE("the extra is spare stock: packs hold it, and no waste, power, water or name of a figure does") {
    const std::string with = test::course_text({"4-bromoacetanilide/A3.json"}, 2, 12);
    std::string without = with;
    without.replace(without.find("10 %"), 4, "0 %");
    const auto spare = test::open_course_text(with), plain = test::open_course_text(without);
    const course::ClassUse &more = spare->use().experiments.front().use,
                           &less = plain->use().experiments.front().use;
    const stock::PriceList& prices = spare->house().prices;
    for (const documents::TermFigure& figure : documents::term_figures()) {
        CAPTURE(figure.name);
        const std::string id = documents::figure_of(figure, more, prices).id;
        CHECK((id.find("10 %") != std::string::npos) == figure.spare);
        if (!figure.spare) CHECK(figure.of(more) == doctest::Approx(figure.of(less)).epsilon(1e-12));
    }
    CHECK(more.stock.needs.front().grams == doctest::Approx(1.1 * less.stock.needs.front().grams));
    for (const writing::Document& document :
         {term_document(spare->use(), nullptr, spare->house()), costs_document(more, spare->house())})
        CHECK(test::text_of(document).find("The 10 % extra is spare stock") != std::string::npos);
    CHECK(test::text_of(costs_document(less, plain->house())).find("spare stock, made ready") ==
          std::string::npos);
}

TEST_CASE("a term says of every experiment whether it fits the session, and a case what a longer one loses") {
    const auto course = test::example_course(); // sessions of 180 min
    const course::CourseUse& term = course->use();
    const auto tables = test::tables_in(term_document(term, nullptr, course->house()).blocks);
    const writing::Table& experiments = table_named(tables, "The experiments");
    for (std::size_t week = 0; week < term.experiments.size(); ++week) {
        const course::ClassUse& use = term.experiments[week].use;
        CAPTURE(use.route->route().id);
        const std::string& words = experiments.rows[week].cells.back().text;
        CHECK(words.starts_with("no, lacks") == (use.one.minutes > 180));
        CHECK(words.starts_with("yes") == (use.one.minutes <= 180 && use.one.silent_stages == 0));
    }
    const ClassificationRules rules(course->house().catalogue, {});
    const auto list_of = [&](const std::string& replace) {
        const auto changed = test::example_course(replace);
        const auto lists = documents::case_lists(proposal_of(*course, *changed), rules);
        REQUIRE(lists.back().id == "session");
        return lists.back();
    };
    const documents::CaseList longer =
        list_of("5=../routes/adipic-acid/E2.json"); // 540 min by its route file
    CHECK(longer.comes.front() == "as proposed 360 min are lacking");
    CHECK(longer.goes.empty());
    // And back again.
    const auto long_course = test::example_course("5=../routes/adipic-acid/E2.json");
    const documents::CaseList shorter =
        documents::case_lists(make_proposal(long_course->use(), course->use(), 5, course->house()), rules)
            .back();
    CHECK(shorter.goes == std::vector<std::string>{"now 360 min are lacking",
                                                   "as proposed none are by the times that are stated"});
    CHECK(shorter.comes.empty());
}

TEST_CASE("a technique that both methods have is neither kept nor lost; one that the course names stays with "
          "its product") {
    const auto course = test::example_course(); // names a melting range in week 5
    const ClassificationRules rules(course->house().catalogue, {});
    const auto techniques_of_case = [&](const std::string& replace) {
        const auto changed = test::example_course(replace);
        for (const documents::CaseList& list : documents::case_lists(proposal_of(*course, *changed), rules))
            if (list.id == "techniques") return list;
        return documents::CaseList();
    };
    const auto names = [](const std::vector<std::string>& entries, const std::string& technique) {
        return std::any_of(entries.begin(), entries.end(),
                           [&](const std::string& entry) { return entry.starts_with(technique); });
    };
    const documents::CaseList same = techniques_of_case("5=../routes/4-bromoacetanilide/A1.json"),
                              other = techniques_of_case("5=../routes/acetylsalicylic-acid/G2.json");
    CHECK_FALSE(names(same.goes, "melting range"));
    CHECK_FALSE(names(same.comes, "melting range"));
    // A3 is cooled in the workup, and both before the recrystallised product is filtered.
    CHECK_FALSE(names(same.goes, "cooling in ice"));
    CHECK_FALSE(names(same.comes, "cooling in ice"));
    CHECK(names(other.goes, "melting range")); // of another product nothing is known
    for (const documents::CaseList* list : {&same, &other})
        for (const std::string& gone : list->goes)
            CHECK_FALSE(names(list->comes, gone));
}

TEST_CASE("the containers of a term hold the streams of its experiments, each with the allowance") {
    const auto course = test::example_course();
    const course::CourseUse& term = course->use();
    const double allowance = 1 + course->house().waste.local.allowance.value;
    std::map<std::string, double> litres;
    for (const course::Experiment& experiment : term.experiments)
        for (const streams::StreamAdvice& advice : experiment.use.waste.waste.streams) {
            const double volume = advice.largest_volume() * advice.stream.runs * 24 * allowance / 1000;
            if (advice.decision.outcome == streams::Decision::Outcome::container)
                litres[advice.decision.goes_to] += volume;
            else if (advice.decision.outcome == streams::Decision::Outcome::own_bottle)
                litres["bottles of their own"] += volume;
        }
    const writing::Document document = term_document(term, nullptr, course->house());
    const writing::Table containers = table_named(test::tables_in(document.blocks), "Containers of the term");
    for (const writing::Row& row : containers.rows) {
        CAPTURE(row.cells.front().text);
        CHECK(number_in(row, 1) == doctest::Approx(litres[row.cells.front().text]).epsilon(1e-9));
    }
}

TEST_CASE("year against year: before and after are the sums of both terms, and what is more stands first") {
    const auto before = test::open_course_text(test::course_text(
        {"4-bromoacetanilide/A1.json", "acetylsalicylic-acid/G2.json"}, 1, 12, "autumn 2025"));
    const auto after = test::open_course_text(test::course_text({"4-bromoacetanilide/A3.json"}, 2, 12));
    const stock::PriceList& prices = after->house().prices;
    const writing::Document document = term_document(after->use(), &before->use(), after->house());
    const writing::Table changes = table_named(test::tables_in(document.blocks), "What changes");
    bool rest = false;
    for (const documents::TermFigure& figure : documents::term_figures()) {
        CAPTURE(figure.name);
        if (!documents::is_shown(figure, after->use().experiments.front().use.plan, prices)) continue;
        const writing::Row& row = row_named(changes, std::string(figure.name));
        double then = 0, now = 0;
        for (const auto& experiment : before->use().experiments)
            then += figure.of(experiment.use);
        for (const auto& experiment : after->use().experiments)
            now += figure.of(experiment.use);
        if (figure.id == "packs") {
            then = before->use().cost_of_packs(prices);
            now = after->use().cost_of_packs(prices);
        }
        CHECK(number_in(row, 2) == doctest::Approx(then).epsilon(1e-12));
        CHECK(number_in(row, 3) == doctest::Approx(now).epsilon(1e-12));
        CHECK(number_in(row, 4) == doctest::Approx(now - then).epsilon(1e-9));
    }
    for (const writing::Row& row : changes.rows) {
        const bool more = row.cells.back().text == "more";
        CHECK_FALSE((rest && more));
        rest = rest || !more;
    }
    CHECK(test::text_of(document).find("autumn 2025") != std::string::npos);
}

TEST_CASE("an experiment in another week is moved, and neither left out nor added") {
    const auto before = test::open_course_text(
        test::course_text({"4-bromoacetanilide/A1.json", "acetylsalicylic-acid/G2.json"}, 1, 12));
    const auto after = test::open_course_text(test::course_text(
        {"acetylsalicylic-acid/G2.json", "4-bromoacetanilide/A3.json", "acetylsalicylic-acid/G4.json"}, 1,
        12));
    const std::string text = test::text_of(term_document(after->use(), &before->use(), after->house()));
    const auto says = [&text](const std::string& words) { return text.find(words) != std::string::npos; };
    CHECK(says("Moved from week 2 to week 1: acetylsalicylic acid, "));
    CHECK(says("Week 1 leaves out: 4-bromoacetanilide, "));
    CHECK(says("Week 2 adds: 4-bromoacetanilide, "));
    CHECK(says("Week 3 adds: acetylsalicylic acid, "));
    CHECK_FALSE(says("leaves out: acetylsalicylic acid"));
    const std::string same = test::text_of(term_document(after->use(), &after->use(), after->house()));
    for (const char* words : {"Moved from", " leaves out: ", " adds: "})
        CHECK(same.find(words) == std::string::npos);
}

TEST_CASE("money of nothing that has a price is missing, and not 0.00") {
    const auto course = test::open_course_text(test::course_text({"4-bromoacetanilide/A3.json"}, 1, 12));
    stock::PriceList others = course->house().prices;
    others.packs.clear();
    others.packs.push_back(course->house().prices.packs.front());
    others.packs.front().material = Catalogue::embedded().find_material("benzene"); // not of this route
    others.electricity.reset();
    others.water.reset();
    others.disposal.clear();
    const course::House house{course->house().catalogue, course->house().waste, course->house().stockroom,
                              others, course->house().utilities};
    const course::ClassUse& shipped = course->use().experiments.front().use;
    const course::ClassUse use = course::use_of_class(*shipped.route, shipped.plan, house);
    const writing::Table money = table_named(test::tables_in(costs_document(use, house).blocks), "Money");
    REQUIRE(money.rows.size() >= 7);
    for (const writing::Row& row : money.rows) {
        CAPTURE(row.cells.front().text);
        CHECK(row.cells[1].mark == writing::Mark::missing);
    }
    course::CourseUse term = course->use();
    term.experiments.front().use = use;
    const writing::Table figures =
        table_named(test::tables_in(term_document(term, nullptr, house).blocks), "What the whole class");
    for (const documents::TermFigure& figure : documents::term_figures())
        if (figure.money) {
            const writing::Row& row = row_named(figures, std::string(figure.name));
            CHECK(row.cells[2].mark == writing::Mark::missing);
            CHECK(row.cells.back().mark == writing::Mark::missing);
        }
}

TEST_CASE("a case of a route in its own place has no row that wins, loses or is open") {
    const auto before = test::example_course();
    for (const course::Experiment& experiment : before->use().experiments) {
        const auto again = test::example_course(std::to_string(experiment.week) + "=" + experiment.source);
        for (const CaseRow& row : documents::case_rows(proposal_of(*before, *again), again->house().prices)) {
            CAPTURE(row.id);
            CHECK(row.standing == RowStanding::same);
        }
    }
}

TEST_CASE("a case counts a row only where ten points of yield leave it so") {
    const std::string a1 = "5=../routes/4-bromoacetanilide/A1.json";
    const auto before = test::example_course();
    const auto after = test::example_course(a1);
    const Proposal proposal = proposal_of(*before, *after);
    const auto rows = documents::case_rows(proposal, after->house().prices);
    const double yield = proposal.proposed->use.route->totals().yield;
    const CaseRow& mass = case_row_of(rows, "process_mass_intensity");
    // Inputs stay, so the intensity goes as one over the yield.
    CHECK(mass.low == doctest::Approx(mass.proposed * yield / (yield + 0.1)).epsilon(1e-9));
    CHECK(mass.high == doctest::Approx(mass.proposed * yield / (yield - 0.1)).epsilon(1e-9));
    for (const CaseRow& row : rows) {
        CAPTURE(row.id);
        CHECK(row.low <= row.proposed);
        CHECK(row.high >= row.proposed);
        if (row.standing == RowStanding::less) CHECK(row.high < row.now);
        if (row.standing == RowStanding::more) CHECK(row.low > row.now);
    }
    // As written A1 takes more than A3, with the same auxiliaries less: the boundary decides.
    CHECK(mass.standing == RowStanding::open);
    CHECK(case_row_of(rows, "process_mass_intensity_same_auxiliaries").standing == RowStanding::open);
    CHECK(case_row_of(rows, "waste_kg").standing == RowStanding::more);
    CHECK(case_row_of(rows, "power_kwh").standing == RowStanding::less);
    CHECK(case_row_of(rows, "bench_h").standing == RowStanding::open); // stages that state no time
}

TEST_CASE("a case for any route of the same product calls nothing safe, and nothing better for itself") {
    const auto before = test::example_course();
    for (const std::string& file : test::shipped_routes()) {
        if (!file.starts_with("4-bromoacetanilide/")) continue;
        CAPTURE(file);
        const auto after = test::example_course("5=../routes/" + file);
        const Proposal proposal = proposal_of(*before, *after);
        const std::string all = test::in_every_format(committee_case(proposal, after->house()));
        for (const char* word : {" safe ", " safer", "is better", " harmless", " nan", " inf "}) {
            CAPTURE(word);
            CHECK(all.find(word) == std::string::npos);
        }
        if (file != "4-bromoacetanilide/A3.json") continue;
        for (const CaseRow& row : documents::case_rows(proposal, after->house().prices)) {
            CAPTURE(row.id);
            CHECK(row.now == row.proposed);
            CHECK(row.standing != RowStanding::more);
            CHECK(row.standing != RowStanding::less);
        }
    }
}

} // namespace
} // namespace routeweigh
