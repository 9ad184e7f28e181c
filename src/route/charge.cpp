// SPDX-License-Identifier: MIT
#include "route/charge.hpp"

#include "base/unit_table.hpp"

#include <fmt/core.h>

#include <cmath>
#include <limits>

namespace routeweigh {
namespace {

UnitKind kind_of(const Charge& charge) {
    const UnitSpelling* const unit = find_unit(charge.amount.unit);
    return unit == nullptr ? UnitKind::none : unit->kind;
}

bool is_relative(const Charge& charge) {
    return kind_of(charge) == UnitKind::equivalents || kind_of(charge) == UnitKind::mole_percent;
}

const Component& counted_component(const Charge& charge) {
    const Component* component =
        charge.of != nullptr ? charge.material->component_of(*charge.of) : charge.material->only_active();
    if (component == nullptr)
        throw ChargeError{
            fmt::format("\"{}\" holds several substances: say in \"of\" which of them \"{}\" counts",
                        charge.material->name, charge.amount.unit)};
    return *component;
}

double grams_of_moles(const Charge& charge, double moles) {
    const Component& component = counted_component(charge);
    if (!component.substance->has_formula())
        throw ChargeError{fmt::format("\"{}\" has no formula and hence no moles: write its mass in g",
                                      component.substance->name)};
    return moles * component.substance->molar_mass / component.mass_fraction;
}

} // namespace

double grams_of(const Charge& charge, double reference) {
    const WrittenQuantity& amount = charge.amount;
    switch (const UnitKind kind = kind_of(charge)) {
    case UnitKind::mass:
        return as_mass(amount).in(unit::g);
    case UnitKind::volume:
        if (!charge.material->density)
            throw ChargeError{fmt::format("the catalogue has no density for \"{}\": write its mass in g",
                                          charge.material->name)};
        return as_volume(amount).in(unit::mL) * *charge.material->density;
    case UnitKind::amount:
        return grams_of_moles(charge, as_amount(amount).in(unit::mol));
    case UnitKind::equivalents:
    case UnitKind::mole_percent: {
        if (!(amount.value >= 0.0)) throw ChargeError{"an amount cannot be negative"};
        if (std::isnan(reference))
            throw ChargeError{
                "eq and mol % need a reference substance charged in g, mL or mol in the same step"};
        const double share = kind == UnitKind::equivalents ? 1.0 : 0.01;
        return grams_of_moles(charge, amount.value * amount.repeat * share * reference);
    }
    case UnitKind::none:
        throw ChargeError{
            fmt::format("\"{:g}\" has no unit; write one of g, mg, kg, mL, L, mol, mmol, eq, mol % behind it",
                        amount.value)};
    default:
        throw ChargeError{fmt::format(
            "\"{}\" is no unit of an amount; use g, mg, kg, mL, L, mol, mmol, eq or mol %", amount.unit)};
    }
}

double reference_moles(const Step& step) {
    double moles = 0.0;
    bool found = false;
    for (const Stage& stage : step.stages)
        for (const Charge& charge : stage.charges) {
            if (step.reference == nullptr || charge.material == nullptr || charge.as_used ||
                is_relative(charge))
                continue;
            const Component* component = charge.material->component_of(*step.reference);
            if (component == nullptr) continue;
            found = true;
            moles += grams_of(charge, std::numeric_limits<double>::quiet_NaN()) * component->mass_fraction /
                     step.reference->molar_mass;
        }
    if (!found) throw ChargeError{"the reference is charged nowhere in this step in g, mL or mol"};
    return moles;
}

} // namespace routeweigh
