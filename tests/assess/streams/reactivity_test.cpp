// SPDX-License-Identifier: MIT
// The chart of reactivity groups: every cell reachable, symmetric, covered.
#include "stream_case.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <set>

using namespace routeweigh;
using namespace routeweigh::streams;
using namespace routeweigh::streams::testing;

namespace {

/// A made-up substance that stands in one group only.
struct Stand {
    Substance substance;
    GroupMember member;
    Participant participant;

    explicit Stand(int group) {
        substance.id = substance.name = "stand-in of group " + std::to_string(group);
        member.name = substance.id;
        member.groups = {group};
        participant = {substance.name, &substance, &member, 1, 1, false, false};
    }
};

} // namespace

TEST_CASE("each of the 41 x 41 cells is reached through two substances, the same both ways") {
    const CompatibilityRules& rules = us_rules().compatibility;
    REQUIRE(rules.groups.groups.size() == 41);
    CHECK(rules.chart.cells().size() == 302); // as many as the chart is remembered to mark
    int named = 0, empty = 0;
    std::set<std::pair<int, int>> reached;
    for (const ReactivityGroup& a : rules.groups.groups)
        for (const ReactivityGroup& b : rules.groups.groups) {
            Stand one(a.number), other(b.number);
            const Meeting meeting = meet(one.participant, other.participant, rules);
            const Meeting mirrored = meet(other.participant, one.participant, rules);
            REQUIRE(meeting.codes == mirrored.codes);
            REQUIRE(rules.chart.find(a.number, b.number) == rules.chart.find(b.number, a.number));
            const ChartCell* cell = rules.chart.find(a.number, b.number);
            const bool from_chart =
                std::any_of(meeting.bases.begin(), meeting.bases.end(), [](const MeetingBasis& basis) {
                    return basis.kind == MeetingBasis::Kind::chart;
                });
            REQUIRE(from_chart == (cell != nullptr));
            if (cell == nullptr) {
                ++empty;
                continue;
            }
            ++named;
            reached.insert(std::minmax(a.number, b.number));
            for (const std::string& code : cell->codes)
                REQUIRE(std::find(meeting.codes.begin(), meeting.codes.end(), code) != meeting.codes.end());
        }
    CHECK(named + empty == 41 * 41);
    for (const auto& entry : rules.chart.cells()) {
        const auto& groups = entry.first;
        CHECK_MESSAGE(reached.count(groups) == 1, groups.first << " with " << groups.second);
    }
}

TEST_CASE("the group that reacts with too much meets nothing, itself included") {
    const ReactivityChart& chart = us_rules().compatibility.chart;
    for (const ReactivityGroup& group : us_rules().compatibility.groups.groups)
        CHECK_MESSAGE(chart.find(107, group.number) != nullptr, group.number);
}

// Cells that any textbook would give, so that a shifted column does not pass.
TEST_CASE("cells that chemistry requires") {
    const ReactivityChart& chart = us_rules().compatibility.chart;
    const auto codes = [&](int a, int b) {
        const ChartCell* cell = chart.find(a, b);
        return cell == nullptr ? std::vector<std::string>{} : chart.sorted(cell->codes);
    };
    CHECK(codes(1, 10) == std::vector<std::string>{"H"});         // acid and caustic
    CHECK(codes(11, 1) == std::vector<std::string>{"GT", "GF"});  // cyanide and acid
    CHECK(codes(33, 3) == std::vector<std::string>{"GT"});        // sulfide and acid
    CHECK(codes(104, 4) == std::vector<std::string>{"F", "H"});   // oxidiser and alcohol
    CHECK(codes(21, 106) == std::vector<std::string>{"GF", "H"}); // sodium and water
    CHECK(codes(21, 17) == std::vector<std::string>{"E", "H"});   // sodium and dichloromethane
    CHECK(codes(29, 13).empty());                                 // hexane and ethyl acetate
    CHECK(codes(16, 14).empty());                                 // toluene and ether
}

TEST_CASE("every datum carries a source and a standing, and weak rows say so") {
    const CompatibilityRules& rules = us_rules().compatibility;
    int read = 0, remembered = 0;
    for (const auto& [groups, cell] : rules.chart.cells()) {
        CHECK_FALSE(cell.from.source.empty());
        CHECK(std::set<std::string>{"high", "medium", "low"}.count(cell.confidence) == 1);
        (cell.from.standing == Standing::read ? read : remembered) += 1;
    }
    CHECK(read == 47);
    CHECK(remembered == 255);
    for (const IncompatibleWastes::Group& group : rules.appendix.groups)
        CHECK(group.from.standing == Standing::remembered);
    for (const SpecialMeeting& meeting : rules.special.meetings)
        CHECK_FALSE(describe(meeting.from).empty());
}

TEST_CASE("every substance of the catalogue was looked at") {
    const ReactivityGroups& groups = us_rules().compatibility.groups;
    for (const Substance* one : catalogue().all_substances())
        CHECK_MESSAGE(groups.find(*one) != nullptr, one->id);
    CHECK(groups.find("sodium azide") != nullptr); // outside the catalogue, by name
    CHECK(groups.find("26628-22-8") == groups.find("Sodium  azide"));
}

TEST_CASE("names in the sets of the special meetings are members, so that no rule is dead") {
    const CompatibilityRules& rules = us_rules().compatibility;
    for (const auto& entry : rules.special.sets) {
        const std::string& name = entry.first;
        const auto& set = entry.second;
        for (const std::string& member : set.substances)
            CHECK_MESSAGE(rules.groups.find(member) != nullptr, name << ": " << member);
        CHECK_MESSAGE((!set.substances.empty() || !set.groups.empty() || set.peroxide_formers), name);
    }
    for (const IncompatibleWastes::Group& group : rules.appendix.groups)
        for (const std::string& member : group.set.substances)
            CHECK_MESSAGE(rules.groups.find(member) != nullptr, group.name << ": " << member);
}
