// SPDX-License-Identifier: MIT
#include "assess/solvent_families.hpp"

#include "assess/streams/scheme_file.hpp"
#include "base/list.hpp"
#include "input/field.hpp"
#include "route/name_reader.hpp"
#include "route/role.hpp"

#include <utility>

namespace routeweigh {
namespace {

SolventFamily read_family(const Field& field, const Catalogue& catalogue) {
    SolventFamily family;
    family.title = field["title"].text();
    family.mixes_with_water = field["mixes_with_water"].boolean();
    std::vector<std::string> roles;
    for (const Role& role : all_roles())
        roles.emplace_back(role.name);
    for (const Field& item : field["purposes"].items())
        family.purposes.push_back(item.one_of(roles));
    for (const Field& item : field["members"].items())
        if (const Substance* member = read_substance(item, catalogue)) family.members.push_back(member);
    field.close();
    return family;
}

} // namespace

bool SolventFamily::has(const Substance& solvent, std::string_view role) const {
    return contains(purposes, role) && contains(members, &solvent);
}

std::vector<const Substance*> SolventFamilies::others(const Substance& solvent, std::string_view role) const {
    std::vector<const Substance*> found;
    for (const SolventFamily& family : families) {
        if (!family.has(solvent, role)) continue;
        for (const Substance* member : family.members)
            if (member != &solvent && !contains(found, member)) found.push_back(member);
    }
    return found;
}

SolventRules read_solvent_rules(const Catalogue& catalogue) {
    using namespace streams;
    const Document document = Document::parse(required_scheme(catalogue, "solvents"));
    Problems problems;
    SolventFamilies families;
    for (const Field& item : document.root(problems)["families"].items())
        families.families.push_back(read_family(item, catalogue));
    problems.throw_if_error();
    return {std::move(families), {catalogue, shipped_local_rules(catalogue, "US")}};
}

} // namespace routeweigh
