// SPDX-License-Identifier: MIT
// Litres of gas from one pot and from a room of them, and what takes up a spill.
#include "assess/streams/quench_plan.hpp"

#include "chemistry/catalogue.hpp"

namespace routeweigh::streams {

std::vector<FreedGas> freed_gases(const QuenchPlan& plan, double pots) {
    std::vector<FreedGas> gases;
    const auto add = [&](const std::string& gas, const std::string& when, double litres) {
        if (litres > 0) gases.push_back({gas, when, litres, litres * pots});
    };
    if (const BaseNeeded* base = plan.needed.with("NaHCO3"))
        add(base->base->gas,
            plan.needed.acid > plan.strong.acid
                ? "strong acid, and the weak acid of what goes to a neutral container, neutralised with "
                  "sodium hydrogencarbonate"
                : "strong acid neutralised with sodium hydrogencarbonate",
            base->gas_litres);
    if (const BaseNeeded* base = plan.with_weak.with("NaHCO3");
        base != nullptr && plan.with_weak.acid > plan.needed.acid)
        add(base->base->gas, "weak acid neutralised too", base->gas_litres);
    const QuenchNeed& need =
        plan.unreacted.gas_litres > plan.nominal.gas_litres ? plan.unreacted : plan.nominal;
    add(need.gas, "left alone instead of quenched", need.gas_litres);
    add("SO2", "acid on what the planned quench leaves at full conversion", plan.sulfur_dioxide);
    return gases;
}

double spill_bicarbonate(double acid, const QuenchTable& table, const Catalogue& catalogue) {
    const Material* material = catalogue.find_material(table.spill_material);
    const Substance* base = catalogue.find_substance("sodium-bicarbonate");
    if (material == nullptr || base == nullptr || !material->density) return 0;
    const Component* component = material->component_of(*base);
    if (component == nullptr) return 0;
    return acid * base->molar_mass / component->mass_fraction / *material->density;
}

} // namespace routeweigh::streams
