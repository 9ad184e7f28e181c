// SPDX-License-Identifier: MIT
// What may happen when a stream meets what a container holds.
//
// Warns and never clears: where nothing is found it says so of the method, and a substance whose groups
// nobody assigned is a finding by itself. Neither source knows amount, concentration or time.
#pragma once

#include "assess/streams/incompatible_wastes.hpp"
#include "assess/streams/reactivity_chart.hpp"
#include "assess/streams/special_meetings.hpp"
#include "assess/streams/substance_set.hpp"

#include <string>
#include <vector>

namespace routeweigh::streams {

struct CompatibilityRules {
    ReactivityGroups groups;
    ReactivityChart chart;
    SpecialMeetings special;
    IncompatibleWastes appendix;
};

/// One reason for a meeting.
struct MeetingBasis {
    enum class Kind { chart, special, rule, fuel, appendix };
    Kind kind;
    std::vector<std::string> codes;
    std::string words;      ///< "alcohols and glycols with acids, mineral, oxidizing", "carbon dioxide ..."
    std::string confidence; ///< of the chart
    Provenance from;
};

struct Meeting {
    Participant one, other;
    bool within = false;            ///< both are parts of the stream itself
    bool trace = false;             ///< one of them is there as a stated trace only
    std::vector<std::string> codes; ///< of all bases, worst first
    std::vector<MeetingBasis> bases;
    std::string disagreement; ///< where one source names a consequence and the other none; "" otherwise
    /// What only whole groups say, and no named meeting, asks where there is little of it, or where one
    /// source alone says so and of neither fire nor gas; little of what is neither is only noted, as are
    /// traces.
    enum class Weight { stops, asks, noted };
    Weight weight = Weight::stops;

    /// Not by groups alone: somebody wrote down what these two do.
    bool named() const;
    /// One is an aldehyde, isocyanate, epoxide or what the chart calls polymerizable; an acid beside an
    /// alcohol is not.
    bool can_polymerise() const;
    /// Less than a thousandth by mass of one of them: our line, for no source knows amounts.
    bool of_little() const { return trace || one.share < 0.001 || other.share < 0.001; }
};

struct ConditionFound {
    Participant one;
    const HazardousCondition* condition;
};

struct CompatibilityReport {
    enum class Verdict { conflict, not_assessed, ask, nothing_found };
    Verdict verdict = Verdict::nothing_found;
    std::string words;             ///< of the verdict
    std::vector<Meeting> meetings; ///< stream with content, worst first
    std::vector<Meeting> within;   ///< inside the stream, worst first
    std::vector<ConditionFound> conditions;
    std::vector<std::string> not_assigned;  ///< nobody assigned a group: stop and ask
    std::vector<std::string> outside_chart; ///< looked at, and no group of the chart fits
    std::vector<std::string> vent;          ///< why no tight cap; empty where nothing says so

    /// Whether the stream has to stay out of what it was held against.
    bool keeps_apart() const { return verdict == Verdict::conflict || verdict == Verdict::not_assessed; }
};

/// "can catch fire, releases heat"; that it can polymerise only where one of the two can.
std::string consequences(const Meeting& meeting, const ReactivityChart& chart);

/// What two substances do by both sources; no bases where neither names anything.
Meeting meet(const Participant& one, const Participant& other, const CompatibilityRules& rules,
             const std::vector<Participant>& also_there = {});

/// \param content  empty for a new container: then only what is inside the stream is looked at
CompatibilityReport check_compatibility(const std::vector<Participant>& stream,
                                        const std::vector<Participant>& content,
                                        const CompatibilityRules& rules);

} // namespace routeweigh::streams
