// SPDX-License-Identifier: MIT
// Cases of waste practice: what must be reported when a stream meets a container's content.
#include "stream_case.hpp"

#include <doctest/doctest.h>

#include <algorithm>

using namespace routeweigh;
using namespace routeweigh::streams;
using namespace routeweigh::streams::testing;

namespace {

using Codes = std::vector<std::string>;

CompatibilityReport pour(const Composition& stream, const Composition& into) {
    return check_compatibility(poured(stream), poured(into), us_rules().compatibility);
}

const Meeting* meeting_of(const CompatibilityReport& report, const std::string& one,
                          const std::string& other) {
    for (const Meeting& meeting : report.meetings)
        if (meeting.one.name == one && meeting.other.name == other) return &meeting;
    return nullptr;
}

bool has(const Meeting* meeting, const std::string& code) {
    return meeting != nullptr &&
           std::find(meeting->codes.begin(), meeting->codes.end(), code) != meeting->codes.end();
}

bool words_hold(const Meeting* meeting, const std::string& part) {
    return meeting != nullptr &&
           std::any_of(meeting->bases.begin(), meeting->bases.end(),
                       [&](const MeetingBasis& basis) { return holds(basis.words, part); });
}

} // namespace

TEST_CASE(
    "nitric acid into a bottle that holds ethanol is stopped, by the chart, by name and by the appendix") {
    const CompatibilityReport report =
        pour(grams({{"nitric acid", 70}, {"water", 30}}), grams({{"ethanol", 100}}));
    CHECK(report.verdict == CompatibilityReport::Verdict::conflict);
    const Meeting* meeting = meeting_of(report, "nitric acid", "ethanol");
    CHECK(has(meeting, "H"));
    CHECK(has(meeting, "F"));
    CHECK(has(meeting, "E"));
    CHECK(words_hold(meeting, "Acids, mineral, oxidizing (2) with Alcohols and glycols (4)"));
    CHECK(words_hold(meeting, "Oxidizing agents, strong (104) with Alcohols and glycols (4)"));
    CHECK(words_hold(meeting, "may start after minutes or days"));
    CHECK(words_hold(meeting, "groups 6-A and 6-B"));
    CHECK(holds(report.words, "do not add: nitric acid meets ethanol"));
    CHECK_FALSE(report.vent.empty());
}

TEST_CASE("an acetone rinse into spent 3 % peroxide: the peroxides of ketones") {
    const CompatibilityReport report =
        pour(grams({{"acetone", 50}}), grams({{"hydrogen peroxide", 3}, {"water", 97}}));
    const Meeting* meeting = meeting_of(report, "acetone", "hydrogen peroxide");
    CHECK(has(meeting, "E"));
    CHECK(has(meeting, "F"));
    CHECK(words_hold(meeting, "cyclic peroxides"));
    CHECK(words_hold(meeting, "of which none was found")); // acid would make it worse
    const CompatibilityReport acid = pour(
        grams({{"acetone", 50}}), grams({{"hydrogen peroxide", 3}, {"sulfuric acid", 2}, {"water", 95}}));
    CHECK(words_hold(meeting_of(acid, "acetone", "hydrogen peroxide"), "which are there"));
}

TEST_CASE("ethyl acetate and hexane into toluene: nothing found, and not called anything better than that") {
    const CompatibilityReport report =
        pour(grams({{"ethyl acetate", 5}, {"hexane", 5}}), grams({{"toluene", 100}}));
    CHECK(report.verdict == CompatibilityReport::Verdict::nothing_found);
    CHECK(report.words == "no conflict found by this method");
    CHECK(report.meetings.empty());
}

TEST_CASE("what only whole groups of one source say, and no fire or gas, is a question and no stop") {
    using Verdict = CompatibilityReport::Verdict;
    const CompatibilityReport ester = pour(grams({{"acetic acid", 5}}), grams({{"ethanol", 100}}));
    CHECK(ester.verdict == Verdict::ask);
    CHECK_FALSE(ester.keeps_apart());
    CHECK(holds(ester.words, "ask first: acetic acid meets ethanol"));
    CHECK(holds(ester.words, "one source says so of whole groups, the other names nothing"));
    CHECK(pour(grams({{"4-chlorobenzaldehyde", 5}}), grams({{"sodium bicarbonate", 5}, {"water", 95}}))
              .verdict == Verdict::ask);
    // Named meetings stop whatever the amount.
    CHECK(pour(grams({{"sodium cyanide", 0.01}, {"water", 99.99}}),
               grams({{"hydrogen chloride", 4}, {"water", 96}}))
              .verdict == Verdict::conflict);
}

// Common practice, no source: what stands in the same bottle, extract or reagent every day.
TEST_CASE("a group of the chart does not speak for members that do not do it") {
    using Verdict = CompatibilityReport::Verdict;
    CHECK(pour(grams({{"hydrogen bromide", 5}, {"water", 95}}), grams({{"dichloromethane", 100}})).verdict ==
          Verdict::nothing_found);
    CHECK(pour(grams({{"hydroxylamine", 5}, {"water", 95}}), grams({{"water", 100}})).verdict ==
          Verdict::nothing_found);
    CHECK(pour(grams({{"4-bromoacetanilide", 5}}), grams({{"triethylamine", 100}})).verdict == Verdict::ask);
    // Below half of a watery mixture sulfuric acid lights nothing; without water it does.
    const Composition rinse = grams({{"ethanol", 20}, {"water", 80}});
    CHECK_FALSE(
        has(meeting_of(pour(grams({{"sulfuric acid", 3}, {"water", 97}}), rinse), "sulfuric acid", "ethanol"),
            "F"));
    CHECK(
        has(meeting_of(pour(grams({{"sulfuric acid", 98}, {"water", 2}}), rinse), "sulfuric acid", "ethanol"),
            "F"));
}

TEST_CASE("dichloromethane into triethylamine warms and gives gas") {
    const CompatibilityReport report = pour(grams({{"dichloromethane", 5}}), grams({{"triethylamine", 100}}));
    const Meeting* meeting = meeting_of(report, "dichloromethane", "triethylamine");
    CHECK(has(meeting, "H"));
    CHECK(has(meeting, "GT"));
    CHECK(words_hold(meeting, "a closed bottle warms"));
    CHECK(holds(meeting->disagreement, "Appendix V, which lists examples only, gives none"));
}

TEST_CASE("a hydrogencarbonate wash into acidic water gives carbon dioxide, by the rule for carbonates") {
    const CompatibilityReport report = pour(grams({{"sodium hydrogencarbonate", 5}, {"water", 95}}),
                                            grams({{"hydrogen chloride", 5}, {"water", 95}}));
    const Meeting* meeting = meeting_of(report, "sodium hydrogencarbonate", "hydrogen chloride");
    CHECK(has(meeting, "H"));
    CHECK(has(meeting, "G"));
    CHECK(words_hold(meeting, "24.5 L from a mol"));
    CHECK(any_holds(report.vent, "can burst a closed bottle"));
}

TEST_CASE("hydrogensulfite into acid gives sulfur dioxide, not a flammable gas") {
    const CompatibilityReport report = pour(grams({{"sodium hydrogensulfite", 5}, {"water", 95}}),
                                            grams({{"sulfuric acid", 5}, {"water", 95}}));
    const Meeting* meeting = meeting_of(report, "sodium hydrogensulfite", "sulfuric acid");
    CHECK(has(meeting, "GT"));
    CHECK_FALSE(has(meeting, "GF"));
    CHECK(words_hold(meeting_of(pour(grams({{"sodium hydrogensulfite", 5}, {"water", 95}}),
                                     grams({{"hydrogen bromide", 5}, {"water", 95}})),
                                "sodium hydrogensulfite", "hydrogen bromide"),
                     "takes GF of the chart away"));
    // Neither does it react with the water it stands in.
    CHECK(report.within.empty());
}

TEST_CASE("azide into acid, and azide into copper, are known by name though the catalogue has no azide") {
    const CompatibilityRules& rules = us_rules().compatibility;
    const std::vector<Participant> azide{
        {"sodium azide", nullptr, rules.groups.find("sodium azide"), 1, 0.01, true, false}};
    const CompatibilityReport acid =
        check_compatibility(azide, poured(grams({{"hydrogen chloride", 5}, {"water", 95}})), rules);
    CHECK(has(meeting_of(acid, "sodium azide", "hydrogen chloride"), "GT"));
    CHECK(has(meeting_of(acid, "sodium azide", "hydrogen chloride"), "E"));
    const CompatibilityReport copper = check_compatibility(
        azide, poured(grams({{"copper(II) sulfate pentahydrate", 5}, {"water", 95}})), rules);
    CHECK(has(copper.meetings.empty() ? nullptr : &copper.meetings.front(), "E"));
}

TEST_CASE("bleach into acid gives chlorine; zinc into acid gives hydrogen") {
    const CompatibilityReport bleach =
        pour(grams({{"sodium hypochlorite", 5}, {"sodium hydroxide", 1}, {"water", 94}}),
             grams({{"hydrogen chloride", 5}, {"water", 95}}));
    CHECK(has(meeting_of(bleach, "sodium hypochlorite", "hydrogen chloride"), "GT"));
    CHECK(words_hold(meeting_of(bleach, "sodium hypochlorite", "hydrogen chloride"), "chlorine"));
    CHECK(has(meeting_of(bleach, "sodium hydroxide", "hydrogen chloride"), "H"));
    const CompatibilityReport zinc =
        pour(grams({{"zinc", 5}, {"water", 95}}), grams({{"hydrogen chloride", 5}, {"water", 95}}));
    const Meeting* meeting = meeting_of(zinc, "zinc (powder)", "hydrogen chloride");
    CHECK(has(meeting, "GF"));
    CHECK(has(meeting, "F"));
    CHECK(words_hold(meeting, "groups 2-A and 2-B"));
}

TEST_CASE("a drying agent wet with ethyl acetate carries the ester into the solids bin") {
    const CompatibilityReport report = pour(
        grams({{"magnesium sulfate (anhydrous)", 5}, {"ethyl acetate", 2}}), grams({{"nitric acid", 1}}));
    CHECK(meeting_of(report, "ethyl acetate", "nitric acid") != nullptr);
    CHECK(report.outside_chart == std::vector<std::string>{"magnesium sulfate (anhydrous)"});
}

TEST_CASE("what nobody assigned is a finding, and nothing is cleared") {
    const CompatibilityRules& rules = us_rules().compatibility;
    const std::vector<Participant> unknown{{"yellow oil of unit 7", nullptr, nullptr, 1, 1, false, false}};
    const CompatibilityReport report = check_compatibility(unknown, poured(grams({{"water", 1}})), rules);
    CHECK(report.verdict == CompatibilityReport::Verdict::not_assessed);
    CHECK(holds(report.words, "nobody assigned a reactivity group to yellow oil of unit 7"));
    const CompatibilityReport behind = check_compatibility(poured(grams({{"toluene", 1}})), unknown, rules);
    CHECK(behind.verdict == CompatibilityReport::Verdict::not_assessed);
}

TEST_CASE("an organic liquid without a cell of its own counts as a fuel against oxidisers") {
    // Ammonium acetate has no group; dimethyl sulfoxide stands among the fuels; a liquid outside the chart
    // still burns.
    GroupMember none;
    none.name = "made-up oil";
    Substance oil = substance("toluene");
    oil.id = oil.name = "made-up oil";
    const std::vector<Participant> stream{{oil.name, &oil, &none, 1, 1, false, false}};
    const CompatibilityReport report =
        check_compatibility(stream, poured(grams({{"bromine", 1}})), us_rules().compatibility);
    REQUIRE(report.meetings.size() == 1);
    CHECK(words_hold(report.meetings.data(), "every organic liquid is also a fuel"));
}

TEST_CASE("a stated trace is shown and does not decide") {
    Composition stream = grams({{"ethanol", 100}});
    stream.add(substance("hydrogen bromide"), 1e-5, true);
    const CompatibilityReport report = pour(stream, grams({{"sodium hydrogencarbonate", 5}, {"water", 95}}));
    REQUIRE_FALSE(report.meetings.empty());
    CHECK(report.meetings.back().trace);
    CHECK(report.verdict == CompatibilityReport::Verdict::nothing_found);
}

TEST_CASE("both sources are shown where one is silent") {
    // The appendix has organic acids with oxidisers, and no cyanide with an organic acid: its 1-B means
    // mineral acids.
    const CompatibilityReport report =
        pour(grams({{"sodium cyanide", 1}, {"water", 99}}), grams({{"acetic acid", 5}, {"water", 95}}));
    const Meeting* meeting = meeting_of(report, "sodium cyanide", "acetic acid");
    CHECK(has(meeting, "GT"));
    CHECK(holds(meeting->disagreement, "Appendix V"));
    const CompatibilityReport mineral =
        pour(grams({{"sodium cyanide", 1}, {"water", 99}}), grams({{"hydrogen chloride", 5}, {"water", 95}}));
    CHECK(words_hold(meeting_of(mineral, "sodium cyanide", "hydrogen chloride"), "groups 5-A and 5-B"));
    CHECK(meeting_of(mineral, "sodium cyanide", "hydrogen chloride")->disagreement.empty());
    // Strong caustic with acetone: the chart has heat, the appendix nothing; with ethanol the appendix alone
    // speaks.
    const CompatibilityReport caustic =
        pour(grams({{"sodium hydroxide", 30}, {"water", 70}}), grams({{"ethanol", 90}}));
    const Meeting* alone = meeting_of(caustic, "sodium hydroxide", "ethanol");
    REQUIRE(alone != nullptr);
    CHECK(holds(alone->disagreement, "Appendix V gives a consequence"));
}

TEST_CASE("strength counts where a source asks for it") {
    // Below 70 % sulfuric acid is not among the water-reactives.
    CHECK(meeting_of(pour(grams({{"sulfuric acid", 96}, {"water", 4}}), grams({{"water", 100}})),
                     "sulfuric acid", "water") != nullptr);
    const CompatibilityReport dilute =
        pour(grams({{"sulfuric acid", 25}, {"water", 75}}), grams({{"water", 100}}));
    CHECK(dilute.meetings.empty()); // what already stands in water meets no water anew
}

TEST_CASE("no wording of any report calls anything safe") {
    for (const char* one : {"ethanol", "nitric acid", "sodium chloride", "acetone", "sodium cyanide"})
        for (const char* other : {"water", "toluene", "hydrogen peroxide", "zinc"}) {
            const CompatibilityReport report = pour(grams({{one, 10}}), grams({{other, 10}}));
            CHECK_FALSE(calls_anything_safe(report.words));
            for (const Meeting& meeting : report.meetings)
                for (const MeetingBasis& basis : meeting.bases)
                    CHECK_FALSE(calls_anything_safe(basis.words));
        }
}
