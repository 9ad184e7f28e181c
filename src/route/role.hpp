// SPDX-License-Identifier: MIT
// What a charge is put in for: the fixed vocabulary of the route format and what each word means for the mass
// figures.
#pragma once

#include <span>
#include <string_view>

namespace routeweigh {

struct Role {
    std::string_view name;
    bool reactant;  ///< its part on the left of the overall equation counts as reactant
    bool solvent;   ///< what is not reactant and not water counts as solvent
    bool catalyst;  ///< counts with reactants and reagents in the parts of the mass intensity
    bool drown_out; ///< belongs to the class "drown-out and flask rinse" of the same-auxiliaries boundary

    /// Stands for what is there anyway and starts a chain: it counts in the flask and in the figures, but
    /// nobody measures it, so no paper, stock list or label has it.
    bool is_trace() const { return name == "trace"; }
};

/// All roles, in the order in which a bench sheet meets them.
std::span<const Role> all_roles();

/// \return nullptr for a word outside the vocabulary
const Role* find_role(std::string_view name);

} // namespace routeweigh
