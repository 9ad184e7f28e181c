// SPDX-License-Identifier: MIT
#include "route/role.hpp"

#include <algorithm>
#include <array>

namespace routeweigh {
namespace {

constexpr std::array<Role, 23> roles{{
    // name, reactant, solvent, catalyst, drown-out
    {"substrate", true, false, false, false},
    {"reagent", true, false, false, false},
    {"oxidant", true, false, false, false},
    {"reductant", true, false, false, false},
    {"acid", true, false, false, false},
    {"base", true, false, false, false},
    {"catalyst", false, false, true, false},
    {"trace", false, false, true, false},
    {"reacting solvent", true, true, false, false},
    {"solvent", false, true, false, false},
    {"quench", false, false, false, false},
    {"neutraliser", false, false, false, false},
    {"drown-out", false, true, false, true},
    {"flask rinse", false, true, false, true},
    {"wash", false, true, false, false},
    {"extraction", false, true, false, false},
    {"drying agent", false, false, false, false},
    {"adsorbent", false, false, false, false},
    {"recrystallisation solvent", false, true, false, false},
    {"antisolvent", false, true, false, false},
    {"rinse", false, true, false, false},
    {"eluent", false, true, false, false},
    {"decolourising agent", false, false, false, false},
}};

} // namespace

std::span<const Role> all_roles() {
    return roles;
}

const Role* find_role(std::string_view name) {
    const auto found =
        std::find_if(roles.begin(), roles.end(), [name](const Role& role) { return role.name == name; });
    return found == roles.end() ? nullptr : &*found;
}

} // namespace routeweigh
