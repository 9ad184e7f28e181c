// SPDX-License-Identifier: MIT
#include "assess/streams/acid_base.hpp"

#include <limits>

namespace routeweigh::streams {

const AcidBaseSubstance* AcidBaseTable::substance(std::string_view id) const {
    for (const AcidBaseSubstance& one : substances)
        if (one.id == id) return &one;
    return nullptr;
}

const HydrolysingAcid* AcidBaseTable::hydrolysing_acid(std::string_view id) const {
    for (const HydrolysingAcid& one : hydrolysing)
        if (one.id == id) return &one;
    return nullptr;
}

const Couple* AcidBaseTable::as_acid(std::string_view species) const {
    for (const Couple& couple : couples)
        if (couple.acid == species) return &couple;
    return nullptr;
}

const Couple* AcidBaseTable::as_base(std::string_view species) const {
    for (const Couple& couple : couples)
        if (couple.base == species) return &couple;
    return nullptr;
}

int AcidBaseTable::charge(const std::string& species) const {
    const auto found = charges.find(species);
    return found == charges.end() ? 0 : found->second;
}

AcidBaseLeft count_acid_and_base(const Composition& composition, const AcidBaseTable& table) {
    AcidBaseLeft left;
    const auto add = [&](const Portion& portion, double per_mol, double pKa, bool acid, bool strong) {
        const double moles = portion.moles() * per_mol;
        double& sum = acid ? (strong ? left.strong_acid : left.weak_acid)
                           : (strong ? left.strong_base : left.weak_base);
        sum += moles;
        left.parts.push_back({portion.substance, moles, pKa, acid, strong});
    };
    for (const Portion& portion : composition.portions()) {
        if (const HydrolysingAcid* acid = table.hydrolysing_acid(portion.substance->id)) {
            if (acid->acid > 0)
                add(portion, acid->acid, std::numeric_limits<double>::quiet_NaN(), true, acid->strong);
            continue;
        }
        const AcidBaseSubstance* entry = table.substance(portion.substance->id);
        if (entry == nullptr) continue;
        for (const auto& [species, count] : entry->species) {
            const Couple* acid = table.as_acid(species);
            if (entry->acid > 0 && acid != nullptr)
                add(portion, entry->acid, acid->pKa, true, acid->pKa <= table.strong_acid_at_most.value);
            const Couple* base = table.as_base(species);
            if (entry->base > 0 && base != nullptr)
                add(portion, entry->base, base->pKa, false, base->pKa >= table.strong_base_from.value);
        }
    }
    return left;
}

} // namespace routeweigh::streams
