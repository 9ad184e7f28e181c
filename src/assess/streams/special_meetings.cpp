// SPDX-License-Identifier: MIT
#include "assess/streams/special_meetings.hpp"

#include "assess/streams/scheme_file.hpp"
#include "base/text.hpp"

#include <fmt/core.h>

namespace routeweigh::streams {
namespace {

const SubstanceSet* find_set(const SpecialMeetings& all, const Field& field) {
    const std::string name = field.text();
    const auto found = all.sets.find(name);
    if (found != all.sets.end()) return &found->second;
    std::vector<std::string> names;
    for (const auto& [known, set] : all.sets)
        names.push_back(known);
    field.problem(fmt::format("no set \"{}\"", name), nearest(name, names));
    return nullptr;
}

SpecialMeeting read_meeting(const SchemeFile& file, const Field& row, const SpecialMeetings& all) {
    SpecialMeeting meeting;
    meeting.one = find_set(all, row["one"]);
    meeting.with = find_set(all, row["with"]);
    meeting.one_name = row["one"].text();
    meeting.with_name = row["with"].text();
    meeting.codes = row["codes"].texts();
    if (const auto instead = row.maybe("instead_of")) meeting.instead_of = instead->texts();
    if (const auto worse = row.maybe("worse_with")) {
        meeting.worse_with = find_set(all, *worse);
        meeting.worse_name = worse->text();
    }
    meeting.detail = row["detail"].text();
    meeting.rule = text_or_empty(row, "rule");
    meeting.from = file.provenance(row);
    row.close();
    return meeting;
}

} // namespace

SpecialMeetings read_special_meetings(const Source& source) {
    const SchemeFile file(source, "special meetings");
    SpecialMeetings all;
    const Field sets = file.root()["sets"];
    for (const std::string& name : sets.keys()) {
        all.sets[name] = read_substance_set(sets[name]);
        sets[name].close();
    }
    for (const Field& row : file.root()["meetings"].items())
        all.meetings.push_back(read_meeting(file, row, all));
    for (const Field& row : file.root()["rules"].items()) {
        all.rules.push_back(read_meeting(file, row, all));
        if (all.rules.back().rule.empty()) row.problem("a rule has a name");
    }
    for (const Field& row : file.root()["conditions"].items()) {
        all.conditions.push_back({find_set(all, row["one"]), row["one"].text(), row["condition"].text(),
                                  row["detail"].text(), row["codes"].texts(), file.provenance(row)});
        row.close();
    }
    const Field fuel = file.root()["fuel"];
    all.fuel.as = group_number(fuel["as"]);
    for (const Field& number : fuel["against"].items())
        all.fuel.against.push_back(group_number(number));
    all.fuel.detail = fuel["detail"].text();
    all.fuel.from = file.provenance(fuel);
    fuel.close();
    file.finish();
    return all;
}

} // namespace routeweigh::streams
