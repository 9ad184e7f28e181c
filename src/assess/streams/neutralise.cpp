// SPDX-License-Identifier: MIT
#include "assess/streams/neutralise.hpp"

namespace routeweigh::streams {

const BaseNeeded* Neutralisation::with(std::string_view formula) const {
    for (const BaseNeeded& one : bases)
        if (one.base->formula == formula) return &one;
    return nullptr;
}

Neutralisation neutralise(double acid, double liquid, const QuenchTable& table) {
    Neutralisation result;
    result.acid = acid;
    result.vessel = table.vessel.value * liquid;
    for (const Neutraliser& base : table.neutralisers) {
        BaseNeeded needed;
        needed.base = &base;
        needed.grams = acid / base.protons * base.molar_mass;
        needed.gas_litres = acid * base.gas_per_proton * table.litres_per_mol;
        if (const auto per_proton = base.equation.enthalpy("H^+", table.formation))
            needed.heat = -acid * *per_proton;
        result.bases.push_back(needed);
    }
    return result;
}

double warming(double heat, double grams) {
    constexpr double heat_capacity = 4.18e-3; // kJ/(g K), of water
    return grams > 0 ? heat / (heat_capacity * grams) : 0;
}

} // namespace routeweigh::streams
