// SPDX-License-Identifier: MIT
#include "assess/streams/substance_set.hpp"

#include "assess/streams/scheme_file.hpp"
#include "base/text.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <set>

namespace routeweigh::streams {
namespace {

std::vector<int> read_numbers(const Field& field) {
    std::vector<int> numbers;
    for (const Field& item : field.items())
        numbers.push_back(group_number(item));
    return numbers;
}

GroupMember read_member(const Field& row, const std::set<int>& known) {
    GroupMember member;
    member.name = row["substance"].text();
    member.cas = text_or_empty(row, "cas");
    member.groups = read_numbers(row["groups"]);
    if (const auto above = row.maybe("above")) {
        member.above_percent = (*above)["percent"].number();
        member.above = read_numbers((*above)["groups"]);
        above->close();
    }
    if (const auto in_water = row.maybe("in_water")) member.in_water = read_numbers(*in_water);
    for (const std::vector<int>* list : {&member.groups, &member.above, &member.in_water})
        for (const int number : *list)
            if (!known.contains(number)) row["groups"].problem(fmt::format("no group {}", number));
    if (const auto former = row.maybe("peroxide_former")) member.peroxide_former = former->boolean();
    const std::string word = row["standing"].one_of({"read", "remembered", "judgement"});
    member.standing = word == "read"         ? Standing::read
                      : word == "remembered" ? Standing::remembered
                                             : Standing::judgement;
    member.note = text_or_empty(row, "note");
    row.close();
    return member;
}

} // namespace

void ReactivityGroups::add(GroupMember member) {
    by_name_.try_emplace(fold(member.name), members_.size());
    if (!member.cas.empty()) by_name_.try_emplace(member.cas, members_.size());
    members_.push_back(std::move(member));
}

const GroupMember* ReactivityGroups::find(const Substance& substance) const {
    const GroupMember* member = find(substance.id);
    if (member == nullptr && !substance.cas.empty()) member = find(substance.cas);
    return member;
}

const GroupMember* ReactivityGroups::find(std::string_view name) const {
    const auto found = by_name_.find(fold(name));
    return found == by_name_.end() ? nullptr : &members_[found->second];
}

const ReactivityGroup* ReactivityGroups::group(int number) const {
    for (const ReactivityGroup& one : groups)
        if (one.number == number) return &one;
    return nullptr;
}

ReactivityGroups read_reactivity_groups(const Source& source) {
    const SchemeFile file(source, "reactivity groups");
    ReactivityGroups result;
    std::set<int> known;
    for (const Field& row : file.root()["groups"].items()) {
        result.groups.push_back({group_number(row["group"]), row["name"].text(), file.provenance(row)});
        if (!known.insert(result.groups.back().number).second) row["group"].problem("stands twice");
        row.close();
    }
    result.assigned = {Standing::judgement, file.root()["about"]["sources"]["assigned"].text()};
    for (const Field& row : file.root()["members"].items()) {
        GroupMember member = read_member(row, known);
        if (result.find(member.name) != nullptr)
            row["substance"].problem(fmt::format("\"{}\" stands twice", member.name));
        result.add(std::move(member));
    }
    file.finish();
    return result;
}

std::vector<int> Participant::groups() const {
    if (member == nullptr) return {};
    std::vector<int> all = in_water && !member->in_water.empty() ? member->in_water : member->groups;
    if (!member->above.empty() && 100 * share >= member->above_percent)
        all.insert(all.end(), member->above.begin(), member->above.end());
    return all;
}

bool Participant::in_group(int number) const {
    const std::vector<int> all = groups();
    return std::find(all.begin(), all.end(), number) != all.end();
}

std::vector<Participant> participants_of(const Composition& composition, const ReactivityGroups& groups) {
    std::vector<Participant> all;
    const bool in_water = composition.share(composition.grams("water")) >= 0.5;
    for (const Portion& portion : composition.portions())
        all.push_back({portion.substance->name, portion.substance, groups.find(*portion.substance),
                       portion.grams, composition.share(portion.grams), in_water, portion.trace});
    return all;
}

void join_participants(std::vector<Participant>& list, const std::vector<Participant>& more) {
    for (const Participant& part : more) {
        const auto known = std::find_if(list.begin(), list.end(),
                                        [&](const Participant& one) { return one.name == part.name; });
        if (known == list.end()) {
            list.push_back(part);
            continue;
        }
        known->grams += part.grams;
        known->share = std::max(known->share, part.share);
        known->in_water = known->in_water && part.in_water;
        known->trace = known->trace && part.trace;
    }
}

bool SubstanceSet::holds(const Participant& participant) const {
    if (participant.share < from_share) return false;
    if (peroxide_formers && participant.member != nullptr && participant.member->peroxide_former) return true;
    for (const int number : groups)
        if (participant.in_group(number)) return true;
    const auto named = [&](std::string_view name) {
        if (participant.substance != nullptr && participant.substance->id == name) return true;
        return participant.member != nullptr && participant.member->name == name;
    };
    return std::any_of(substances.begin(), substances.end(), named);
}

SubstanceSet read_substance_set(const Field& row) {
    SubstanceSet set;
    if (const auto groups = row.maybe("groups")) set.groups = read_numbers(*groups);
    if (const auto substances = row.maybe("substances")) set.substances = substances->texts();
    if (const auto former = row.maybe("peroxide_former")) set.peroxide_formers = former->boolean();
    if (const auto from = row.maybe("from_percent")) set.from_share = from->number() / 100.0;
    return set;
}

} // namespace routeweigh::streams
