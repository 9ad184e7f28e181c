// SPDX-License-Identifier: MIT
#include "assess/streams/incompatible_wastes.hpp"

#include "assess/streams/scheme_file.hpp"

#include <fmt/core.h>

#include <algorithm>

namespace routeweigh::streams {

const IncompatibleWastes::Group* IncompatibleWastes::find(std::string_view name) const {
    for (const Group& group : groups)
        if (group.name == name) return &group;
    return nullptr;
}

bool IncompatibleWastes::belongs(const Participant& participant, std::string_view name) const {
    const Group* group = find(name);
    if (group == nullptr) return false;
    if (group->set.holds(participant)) return true;
    const auto in = [&](const std::string& other) { return belongs(participant, other); };
    if (std::any_of(group->of.begin(), group->of.end(), in)) return true;
    return 100 * participant.share >= concentrated_from.value &&
           std::any_of(group->concentrated.begin(), group->concentrated.end(), in);
}

std::vector<const IncompatibleWastes::Pair*> IncompatibleWastes::meetings(const Participant& one,
                                                                          const Participant& other) const {
    std::vector<const Pair*> found;
    for (const Pair& pair : pairs)
        if ((belongs(one, pair.a) && belongs(other, pair.b)) ||
            (belongs(one, pair.b) && belongs(other, pair.a)))
            found.push_back(&pair);
    return found;
}

IncompatibleWastes read_incompatible_wastes(const Source& source) {
    const SchemeFile file(source, "incompatible wastes");
    IncompatibleWastes result;
    const Field line = file.root()["concentrated"];
    result.concentrated_from = {line["from_percent"].number(), file.provenance(line)};
    line.close();
    std::vector<std::string> names;
    const auto others = [&](const Field& row, const char* key) {
        std::vector<std::string> list;
        if (const auto field = row.maybe(key))
            for (const Field& item : field->items())
                list.push_back(item.one_of(names));
        return list;
    };
    for (const Field& row : file.root()["groups"].items()) { // a group is made of earlier ones only
        IncompatibleWastes::Group group{row["group"].text(),         row["name"].text(),
                                        read_substance_set(row),     others(row, "of"),
                                        others(row, "concentrated"), file.provenance(row)};
        row.close();
        names.push_back(group.name);
        result.groups.push_back(std::move(group));
    }
    for (const Field& row : file.root()["pairs"].items()) {
        result.pairs.push_back({row["a"].one_of(names), row["b"].one_of(names), row["consequence"].text(),
                                row["codes"].texts(), file.provenance(row)});
        row.close();
    }
    file.finish();
    return result;
}

} // namespace routeweigh::streams
