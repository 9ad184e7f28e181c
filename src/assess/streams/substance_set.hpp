// SPDX-License-Identifier: MIT
// Substances as the compatibility rules see them, and the sets in which the rules speak of them.
#pragma once

#include "assess/streams/composition.hpp"
#include "base/provenance.hpp"
#include "input/source.hpp"

#include <optional>
#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

namespace routeweigh {
class Field;
}

namespace routeweigh::streams {

/// What the list of reactivity groups says of one substance.
struct GroupMember {
    std::string name, cas;    ///< an id of the catalogue, or a name that the catalogue does not have
    std::vector<int> groups;  ///< empty: looked at, and no group fits
    double above_percent = 0; ///< from this share by mass on, `above` adds to the groups
    std::vector<int> above;
    std::vector<int>
        in_water; ///< instead of `groups` where its mixture is at least half water; empty: the same
    bool peroxide_former = false;
    Standing standing = Standing::judgement;
    std::string note;
};

struct ReactivityGroup {
    int number = 0;
    std::string name;
    Provenance from;
};

class ReactivityGroups {
  public:
    std::vector<ReactivityGroup> groups;
    Provenance assigned; ///< how members came to their groups

    void add(GroupMember member);
    const std::vector<GroupMember>& members() const { return members_; }
    /// By id, else by CAS number; nullptr: nobody assigned it.
    const GroupMember* find(const Substance& substance) const;
    const GroupMember* find(std::string_view name) const;
    const ReactivityGroup* group(int number) const;

  private:
    std::vector<GroupMember> members_;
    std::unordered_map<std::string, std::size_t> by_name_;
};

/// \throws InputError with every problem of the file
ReactivityGroups read_reactivity_groups(const Source& source);

/// One substance on one side of a meeting.
struct Participant {
    std::string name;
    const Substance* substance = nullptr; ///< nullptr where the catalogue does not have it
    const GroupMember* member = nullptr;  ///< nullptr where nobody assigned its groups
    double grams = 0;
    double share = 0; ///< by mass of the mixture it came in, 0 to 1; the largest where it came in several
    bool in_water = false; ///< that mixture was at least half water by mass
    bool trace = false;

    std::vector<int> groups() const;
    bool in_group(int number) const;
};

/// The parts of a mixture as participants.
std::vector<Participant> participants_of(const Composition& composition, const ReactivityGroups& groups);

/// Adds these to a list that holds every substance once: grams add up, of the shares the largest counts.
void join_participants(std::vector<Participant>& list, const std::vector<Participant>& more);

/// "ketones": whatever stands in one of these groups or is named.
struct SubstanceSet {
    std::vector<int> groups;
    std::vector<std::string> substances;
    bool peroxide_formers = false;
    double from_share = 0; ///< by mass of its mixture

    bool holds(const Participant& participant) const;
};

/// Members "groups", "substances", "peroxide_former", "from_percent" of a row; problems where a name is
/// unknown.
SubstanceSet read_substance_set(const Field& row);

} // namespace routeweigh::streams
