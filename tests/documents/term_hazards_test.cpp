// SPDX-License-Identifier: MIT
// Hazards of a term: those of the labels of its bottles, and what a change brings and takes.
#include "documents/term_hazards.hpp"

#include "assess/hazard/statement.hpp"
#include "assess/input_class.hpp"
#include "documents/case_rows.hpp"
#include "documents/compared.hpp"
#include "documents/courses.hpp"
#include "documents/term_document.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <set>

namespace routeweigh {
namespace {

using documents::HazardChange;
using documents::WeekHazards;

bool is_only_water(const Material& material) {
    return material.is_neat() && is_water(*material.components.front().substance);
}

bool holds(const std::vector<std::string>& list, const std::string& text) {
    return std::find(list.begin(), list.end(), text) != list.end();
}

TEST_CASE("the hazards of a week are the statements of the bottles that its stock list asks for") {
    const auto course = test::example_course();
    const ClassificationRules rules(course->house().catalogue, {});
    const auto hazards = documents::hazards_of_term(course->use(), rules);
    REQUIRE(hazards.size() == course->use().experiments.size());
    const std::string text = test::text_of(term_document(course->use(), nullptr, course->house()));
    for (std::size_t i = 0; i < hazards.size(); ++i) {
        CAPTURE(hazards[i].product);
        std::set<std::string> expected, found;
        for (const stock::Need& need : course->use().experiments[i].use.stock.needs) {
            if (is_only_water(*need.material)) continue;
            const MixtureLabel label = classify_bottle(*need.material, rules).label;
            expected.insert(label.statements.begin(), label.statements.end());
            expected.insert(label.supplemental.begin(), label.supplemental.end());
        }
        for (const auto& [statement, bottles] : hazards[i].statements) {
            found.insert(statement);
            for (const std::string& bottle : bottles)
                CHECK(text.find(bottle) != std::string::npos);
            // No statement without its kind; supplemental ones are "of another kind".
            CHECK(hazards[i].kinds.contains(statement.starts_with("H")
                                                ? documents::kind_of(statement_number(statement))
                                                : documents::BenchHazard::other));
        }
        CHECK(found == expected);
        CHECK_FALSE(found.empty());
    }
}

TEST_CASE("bromine in the place of peroxide: what comes and goes is that of the case, and named by week") {
    const std::string bromine = "5=../routes/4-bromoacetanilide/A1.json";
    const auto before = test::example_course(), after = test::example_course(bromine);
    const ClassificationRules rules(before->house().catalogue, {});
    const auto then = documents::hazards_of_term(before->use(), rules),
               now = documents::hazards_of_term(after->use(), rules);
    const auto changes = documents::hazard_changes(then, now);
    REQUIRE(changes.size() == 2);
    CHECK(changes[0].week == 5);
    const auto lists = documents::case_lists(proposal_of(*before, *after), rules);
    REQUIRE(lists.front().id == "statements");
    CHECK(changes[0].comes == lists.front().comes);
    CHECK(changes[0].goes == lists.front().goes);
    // Bromine: H330, H314 and H400, Annex VI to Regulation (EC) No 1272/2008, index 035-001-00-5; remembered.
    // H314 is not news, for hydrobromic acid stood there before.
    CHECK(holds(changes[0].comes, "H330 (bromine)"));
    CHECK(holds(changes[0].comes, "H400 (bromine)"));
    CHECK_FALSE(holds(changes[0].comes, "H314 (bromine)"));
    CHECK(changes[1].week == 0);
    // Another week may have a statement already: over the term there is never more news than in its weeks.
    CHECK(changes[1].comes.size() <= changes[0].comes.size());
    for (const std::string& one : changes[1].comes)
        CHECK(one.find("in week 5") != std::string::npos);

    const auto back = documents::hazard_changes(now, then);
    CHECK(back[0].comes == changes[0].goes);
    CHECK(back[0].goes == changes[0].comes);
    const std::string text = test::text_of(term_document(after->use(), &before->use(), after->house()));
    CHECK(text.find("H330 (bromine)") != std::string::npos);
    CHECK(text.find("fewer of them prove nothing") != std::string::npos);
}

TEST_CASE("a bottle that nobody has assessed comes and goes like a statement, for it may have any") {
    const auto before = test::example_course(),
               after = test::example_course("10=../routes/adipic-acid/E2.json");
    const ClassificationRules rules(before->house().catalogue, {});
    const auto then = documents::hazards_of_term(before->use(), rules),
               now = documents::hazards_of_term(after->use(), rules);
    // The phase-transfer catalyst of E2; the catalogue has no classification of it.
    const std::string catalyst = "methyltrioctylammonium hydrogensulfate: not assessed";
    const auto changes = documents::hazard_changes(then, now);
    REQUIRE(changes.size() == 2);
    CHECK(changes[0].week == 10);
    CHECK(holds(changes[0].comes, catalyst));
    CHECK(changes[1].week == 0);
    CHECK(holds(changes[1].comes, catalyst + " (in week 10)"));
    const auto back = documents::hazard_changes(now, then);
    CHECK(back[0].goes == changes[0].comes);
    CHECK(back[1].goes == changes[1].comes);

    const auto lists = documents::case_lists(proposal_of(*before, *after), rules);
    REQUIRE(lists.front().id == "statements");
    CHECK(lists.front().coming_is_loss);
    CHECK(lists.front().comes == changes[0].comes);
    CHECK(lists.front().goes == changes[0].goes);

    // What comes or goes of these is what the weeks call open, and it is no statement.
    for (const auto* term : {&then, &now})
        for (const WeekHazards& week : *term) {
            CHECK_FALSE(week.statements.contains(catalyst));
            CHECK(week.told.contains(catalyst) == holds(week.open, catalyst));
        }
}

TEST_CASE("a term against itself changes nothing, and a week without a counterpart comes as a whole") {
    const auto course = test::example_course();
    const ClassificationRules rules(course->house().catalogue, {});
    const auto hazards = documents::hazards_of_term(course->use(), rules);
    const auto none = documents::hazard_changes(hazards, hazards);
    REQUIRE(none.size() == 1);
    CHECK(none[0].week == 0);
    CHECK(none[0].comes.empty());
    CHECK(none[0].goes.empty());

    const std::vector<WeekHazards> first(hazards.begin(), hazards.begin() + 1);
    const auto fewer = documents::hazard_changes(first, hazards);
    for (const WeekHazards& week : hazards) {
        const auto change = std::find_if(fewer.begin(), fewer.end(),
                                         [&](const HazardChange& one) { return one.week == week.week; });
        CHECK((change == fewer.end()) == (week.week == hazards.front().week));
        if (change != fewer.end()) CHECK(change->comes.size() == week.told.size());
    }
}

} // namespace
} // namespace routeweigh
