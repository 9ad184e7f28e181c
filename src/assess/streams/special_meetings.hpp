// SPDX-License-Identifier: MIT
// Named meetings that go wrong in teaching laboratories, rules where the chart misleads, and conditions that
// need no second substance; beside them the groups of 40 CFR 265 Appendix V.
#pragma once

#include "assess/streams/substance_set.hpp"

#include <map>
#include <string>
#include <vector>

namespace routeweigh::streams {

struct SpecialMeeting {
    const SubstanceSet* one = nullptr;
    const SubstanceSet* with = nullptr;
    std::string one_name, with_name;
    std::vector<std::string> codes;
    std::vector<std::string> instead_of; ///< codes of the chart that this rule takes away
    const SubstanceSet* worse_with = nullptr;
    std::string worse_name;
    std::string detail;
    std::string rule; ///< "" for a meeting
    Provenance from;
};

struct HazardousCondition {
    const SubstanceSet* one = nullptr;
    std::string one_name, condition, detail;
    std::vector<std::string> codes;
    Provenance from;
};

/// An organic without a pair of its own against these groups counts as that group.
struct FuelRule {
    int as = 0;
    std::vector<int> against;
    std::string detail;
    Provenance from;
};

struct SpecialMeetings {
    SpecialMeetings() = default;
    SpecialMeetings(SpecialMeetings&&) =
        default; ///< meetings point into `sets`, whose nodes stay where they are
    SpecialMeetings& operator=(SpecialMeetings&&) = default;
    SpecialMeetings(const SpecialMeetings&) = delete;
    SpecialMeetings& operator=(const SpecialMeetings&) = delete;

    std::map<std::string, SubstanceSet> sets;
    std::vector<SpecialMeeting> meetings, rules;
    std::vector<HazardousCondition> conditions;
    FuelRule fuel;
};

/// \throws InputError with every problem of the file
SpecialMeetings read_special_meetings(const Source& source);

} // namespace routeweigh::streams
