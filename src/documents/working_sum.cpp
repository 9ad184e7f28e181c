// SPDX-License-Identifier: MIT
// Totals with their parts, each printed as precisely as the route file states it and no further.
#include "base/index.hpp"
#include "documents/number.hpp"
#include "documents/words.hpp"
#include "documents/working.hpp"
#include "route/route_checks.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <set>
#include <utility>

namespace routeweigh::documents {
std::string_view unit_of_total(double Totals::*total) {
    static constexpr std::pair<double Totals::*, std::string_view> units[] = {
        {&Totals::formula_product, "g/mol"},
        {&Totals::formula_inputs, "g/mol"},
        {&Totals::formula_inputs_gross, "g/mol"},
        {&Totals::formula_coproducts, "g/mol"},
        {&Totals::carbon_product, "atoms"},
        {&Totals::carbon_inputs, "atoms"},
        {&Totals::bromine_product, "atoms"},
        {&Totals::bromine_inputs, "atoms"},
        {&Totals::nitrogen_product, "atoms"},
        {&Totals::nitrogen_inputs, "atoms"},
        {&Totals::chlorine_product, "atoms"},
        {&Totals::chlorine_inputs, "atoms"},
        {&Totals::energy, "kJ"},
        {&Totals::cooling_water, "mL"},
        {&Totals::time, "h"},
        {&Totals::volume_hours, "L h"},
        {&Totals::catalyst_hours, "mol h"},
        {&Totals::largest_volume, "L"},
        {&Totals::product_moles, "mol"},
        {&Totals::catalyst_moles, "mol"},
        {&Totals::yield, ""},
    };
    for (const auto& [member, unit] : units)
        if (member == total) return unit;
    return "g";
}

namespace {

/// Significant digits that a charge was written with; an amount such as "1 mol" is taken to be exact.
int digits_written(const Route& route, const std::string& pointer) {
    for (const Step& step : route.steps)
        for (const Stage& stage : step.stages)
            for (const Charge& charge : stage.charges)
                if (charge.pointer == pointer) return std::clamp(charge.amount.significant, 3, 5);
    return pointer.ends_with("/time") ? 3 : 4;
}

/// Decimals at which so many significant digits end.
int decimals_at(double value, int significant) {
    if (value == 0.0 || !std::isfinite(value)) return 0;
    return std::max(0, significant - 1 - static_cast<int>(std::floor(std::log10(std::abs(value)))));
}

/// The reactants that the theoretical yield of every step needs, as TotalsMap counts them.
std::vector<Contribution> needed_parts(const Assessment& route) {
    std::set<std::pair<int, const Substance*>> fed;
    for (const Inflow& inflow : route.flat().inflows())
        if (inflow.fed_by >= 0) fed.emplace(inflow.step, inflow.substance);
    std::vector<Contribution> parts;
    for (std::size_t s = 0; s < route.route().steps.size(); ++s) {
        const Step& step = route.route().steps[s];
        const StepResult& result = route.evaluation().steps[s];
        for (const auto& part : step.overall.parts)
            if (part.coefficient < 0.0 && !fed.contains({static_cast<int>(s), part.substance}))
                parts.push_back(
                    {fmt::format("{} for the theoretical yield of step {}", part.substance->name, step.id),
                     step.overall.pointer,
                     -part.coefficient / step.overall.coefficient_of(step.product) * result.theory *
                         result.scale * part.substance->molar_mass});
    }
    return parts;
}

std::vector<Contribution> effluent_parts(const Assessment& route) {
    std::vector<Contribution> parts;
    for (const FlatStream& stream : route.flat().streams()) {
        if (stream.kind != StreamKind::liquid && stream.kind != StreamKind::residue) continue;
        const FlatStep& step = route.flat().steps()[at(stream.step)];
        double mass = 0.0, water = 0.0;
        for (std::size_t s = 0; s < step.substances.size(); ++s) {
            const double grams = route.evaluation().out[at(stream.first_outflow) + s];
            mass += grams;
            if (step.substances[s]->id == "water") water += grams;
        }
        if (water > 0.5 * mass) parts.push_back({stream.name, {}, mass});
    }
    return parts;
}

std::vector<Contribution> stage_parts(const Route& route, double Totals::*total) {
    std::vector<Contribution> parts;
    for (const Step& step : route.steps)
        for (const Stage& stage : step.stages) {
            const std::string words = fmt::format("{}: {}", step.id, stage.title);
            if (total == &Totals::time && stage.time)
                parts.push_back({words, stage.pointer + "/time", stage.time->in(unit::h)});
            if (total == &Totals::energy && stage.energy)
                parts.push_back({words, stage.pointer + "/energy", stage.energy->in(unit::kJ)});
            if (total == &Totals::cooling_water && stage.cooling_water)
                parts.push_back({words, stage.pointer + "/cooling_water", stage.cooling_water->in(unit::mL)});
        }
    return parts;
}

std::vector<Contribution> parts_of(const Assessment& route, double Totals::*total) {
    if (total == &Totals::reactants_needed) return needed_parts(route);
    if (total == &Totals::aqueous_effluent) return effluent_parts(route);
    if (total == &Totals::time || total == &Totals::energy || total == &Totals::cooling_water)
        return stage_parts(route.route(), total);
    return route.compiled().totals_map().contributions(total, route.evaluation());
}

std::string isolated_words(const Step& step) {
    const Isolated& isolated = step.isolated;
    std::string text = isolated.mass ? digits(isolated.mass->in(unit::g), 4) + " g as weighed"
                                     : percent(*isolated.yield) + " of the theoretical yield";
    return text + (isolated.assumed ? ", assumed" : "") + " (" + isolated.pointer + ")";
}

/// Which inputs a total counts, in the words of the table that says how every input is counted.
std::string_view selection_of(double Totals::*total) {
    static constexpr std::pair<double Totals::*, std::string_view> selections[] = {
        {&Totals::inputs, "every input, less what is fed back"},
        {&Totals::inputs_gross, "every input"},
        {&Totals::reactants_gross, "inputs that count as reactant"},
        {&Totals::reactants_and_aids, "inputs that count as reactant or aid"},
        {&Totals::solvents, "inputs that count as solvent"},
        {&Totals::water, "inputs that count as water"},
        {&Totals::benign, "inputs on the benign list"},
        {&Totals::part_reactants, "reactants, and aids of reaction stages"},
        {&Totals::part_reaction_solvent, "solvents of reaction stages"},
        {&Totals::part_workup, "solvents and aids of work-up and purification stages"},
        {&Totals::reaction_stages, "every input of a reaction stage"},
        {&Totals::workup_stages, "every input of a work-up stage"},
        {&Totals::purification_stages, "every input of a purification stage"},
        {&Totals::drown_out, "inputs that are drown-out or flask rinse"},
        {&Totals::reactant_carbon, "inputs that count as reactant, by their share of carbon"},
        {&Totals::bromine_handled, "bromine charged as such"},
        {&Totals::bromine_carried, "reagents that carry oxidising bromine, as Br2"},
        {&Totals::waste, "every stream of the ledger"},
        {&Totals::formula_inputs, "inputs of the net equation, by molar mass"},
        {&Totals::formula_inputs_gross, "inputs of all equations, by molar mass"},
        {&Totals::reactants_needed,
         "left side of every overall equation, for the theoretical yield of its step"},
        {&Totals::aqueous_effluent, "liquid streams of which more than half is water"},
        {&Totals::time, "times of the stages"},
        {&Totals::energy, "energy of the stages"},
        {&Totals::cooling_water, "cooling water of the stages"},
    };
    for (const auto& [member, words] : selections)
        if (member == total) return words;
    return {};
}

/// In words, how a total comes about.
std::string rule_of(const Assessment& route, double Totals::*total) {
    if (const std::string_view words = selection_of(total); !words.empty()) return std::string(words);
    const Route& file = route.route();
    const std::size_t last = at(route.flat().final_step());
    const StepResult& result = route.evaluation().steps[last];
    const double molar_mass = file.product->molar_mass;
    if (total == &Totals::product) return isolated_words(file.steps[last]);
    if (total == &Totals::theoretical_product)
        return file.steps.size() == 1
                   ? fmt::format("the reactions at full conversion make {} mmol \u00D7 {} g/mol",
                                 digits(1000.0 * result.theory, 4), digits(molar_mass, 5))
                   : "isolated product over the yields of the longest linear sequence, multiplied; the bench "
                     "sheet "
                     "has the theoretical yield of the last step alone";
    if (total == &Totals::formula_product) return "molar mass of " + file.product->name;
    if (total == &Totals::formula_coproducts)
        return "co-products that the route file declares (/coproducts), in the net equation";
    if (total == &Totals::product_carbon)
        return "share of carbon in " + file.product->name + " \u00D7 isolated product";
    if (total == &Totals::product_moles) return "isolated product / " + digits(molar_mass, 5) + " g/mol";
    if (total == &Totals::bromine_ceiling)
        return "the most that can be there at once, found over all extents that the charges allow; the "
               "largest of all "
               "stages";
    if (total == &Totals::largest_volume || total == &Totals::volume_hours)
        return "liquids and solutions charged, each by its density; solids and gases add no volume";
    if (total == &Totals::catalyst_moles || total == &Totals::catalyst_hours)
        return "charges with the role catalyst";
    if (total == &Totals::carbon_product || total == &Totals::bromine_product ||
        total == &Totals::nitrogen_product || total == &Totals::chlorine_product)
        return "in one formula of " + file.product->name;
    if (total == &Totals::carbon_inputs || total == &Totals::bromine_inputs ||
        total == &Totals::nitrogen_inputs || total == &Totals::chlorine_inputs)
        return "in the inputs of the net equation, per mol of product";
    return {};
}

/// Parts that print as nothing beside the sum become one.
void merge_small(WorkingSum& sum) {
    const auto small = [&](const Contribution& part) {
        return std::abs(part.value) < 5e-5 * std::abs(sum.value);
    };
    double together = 0.0;
    std::size_t count = 0;
    for (const Contribution& part : sum.parts)
        if (small(part)) {
            together += part.value;
            ++count;
        }
    if (count < 2) return;
    std::erase_if(sum.parts, small);
    if (std::abs(together) > 1e-9 * std::abs(sum.value))
        sum.parts.push_back({fmt::format("{} smaller parts", count), {}, together});
}

} // namespace

WorkingSum working_sum(const Assessment& route, double Totals::*total, std::string_view name) {
    WorkingSum sum{
        total, std::string(name), std::string(unit_of_total(total)), route.totals().*total, {}, {}, {}, {}};
    sum.parts = parts_of(route, total);
    merge_small(sum);
    sum.rule = rule_of(route, total);
    if (sum.parts.empty()) {
        const bool whole = sum.unit == "atoms" && std::abs(sum.value - std::round(sum.value)) < 1e-9;
        sum.text = fixed(sum.value, whole ? 0 : decimals_at(sum.value, 4));
        return sum;
    }
    // The last place of a sum is that of its coarsest part; whole counts of atoms have none.
    const bool counts = sum.unit == "atoms" && std::abs(sum.value - std::round(sum.value)) < 1e-9;
    int coarsest = 6;
    std::vector<int> decimals;
    for (const Contribution& part : sum.parts) {
        decimals.push_back(counts ? 0 : decimals_at(part.value, digits_written(route.route(), part.pointer)));
        if (std::abs(part.value) > 1e-3 * std::abs(sum.value)) coarsest = std::min(coarsest, decimals.back());
    }
    const int last = counts ? 0 : std::max(coarsest, std::min(decimals_at(sum.value, 3), 2));
    for (std::size_t i = 0; i < sum.parts.size(); ++i)
        sum.part_texts.push_back(fixed(sum.parts[i].value, std::min(decimals[i], last + 2)));
    sum.text = fixed(sum.value, last);
    return sum;
}

} // namespace routeweigh::documents
