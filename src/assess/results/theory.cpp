// SPDX-License-Identifier: MIT
#include "assess/results/theory.hpp"

#include "base/index.hpp"
#include "chemistry/crystal_water.hpp"
#include "route/charge.hpp"
#include "route/limiting_reagent.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <limits>

namespace routeweigh::results {
namespace {

/// One charge that brings a substance.
struct Source {
    const Charge* charge;
    double grams;      ///< of the material
    double pure_grams; ///< of the substance in it
};

std::vector<Source> sources_of(const Assessment& route, std::size_t step, const Substance* substance) {
    std::vector<Source> sources;
    for (const Inflow& inflow : route.flat().inflows()) {
        if (at(inflow.step) != step || inflow.substance != substance || inflow.fed_by >= 0) continue;
        const double grams = route.flat().nominal().charged[at(inflow.slot)];
        sources.push_back({&route.route().steps[step].stages[at(inflow.stage)].charges[at(inflow.charge)],
                           grams, grams * inflow.fraction});
    }
    return sources;
}

class MistakeList {
  public:
    /// \param varies  the number goes with the substrate that was weighed in
    void add(double value, bool varies, std::string mistake) {
        if (!std::isfinite(value) || !(value > 0)) return;
        found.push_back({varies ? 0 : value, varies ? value : 0, std::move(mistake)});
    }
    std::vector<WrongNumber> found;
};

/// Mistakes with one bottle: its grams of solution, hydrate or volume put through the wrong molar mass.
void add_bottle_mistakes(MistakeList& list, const Source& source, const Substance& limiting, double factor,
                         bool varies) {
    const Material& material = *source.charge->material;
    if (!material.is_neat())
        list.add(factor * source.grams / limiting.molar_mass, varies,
                 fmt::format("{} is taken as pure {}", material.name, limiting.name));
    if (const double dry = anhydrous_molar_mass(limiting); dry < limiting.molar_mass)
        list.add(factor * source.pure_grams / dry, varies,
                 fmt::format("the crystal water of {} is left out of its molar mass", limiting.name));
    if (material.density && std::abs(*material.density - 1) > 0.005) {
        const double taken = source.grams / *material.density;
        list.add(factor * taken / limiting.molar_mass, varies,
                 fmt::format("millilitres of {} are taken as grams", material.name));
    }
}

/// What the usual mistakes make of amount and theoretical yield, put into a theory that has all else.
/// \param supplies  the limiting one first
void add_wrong_numbers(Theory& theory, const Assessment& route, std::size_t index,
                       const std::vector<ReactantSupply>& supplies, double product_coefficient) {
    const ReactantSupply& least = supplies.front();
    const double product_mass = theory.product->molar_mass;
    const bool varies = theory.substrate_limits;
    MistakeList amounts, theories;
    for (const Source& source : sources_of(route, index, least.substance)) {
        amounts.add(source.grams, varies,
                    fmt::format("grams of {} are written as mmol", source.charge->material->name));
        add_bottle_mistakes(amounts, source, *least.substance, 1000, varies);
        add_bottle_mistakes(theories, source, *least.substance, theory.product_per_limiting * product_mass,
                            varies);
    }
    for (const ReactantSupply& other : supplies) {
        if (&other == &least) continue;
        const bool moves = other.substance == theory.reference;
        amounts.add(
            1000 * other.moles, moves,
            fmt::format("this is the amount of {}, which does not run out first", other.substance->name));
        theories.add(other.runs * product_coefficient * product_mass, moves,
                     fmt::format("{} is taken as the limiting reagent", other.substance->name));
        theories.add(
            theory.limiting_mmol / 1000 * theory.product_per_limiting * other.substance->molar_mass, varies,
            fmt::format("the molar mass of {} stands for that of the product", other.substance->name));
    }
    amounts.add(theory.limiting_grams / product_mass * 1000, varies,
                "the molar mass of the product stands for that of the reagent");
    amounts.add(theory.limiting_mmol / 1000, varies, "the amount is in mol, not in mmol");
    if (std::abs(theory.product_per_limiting - 1) > 1e-9) {
        theories.add(theory.limiting_mmol / 1000 * product_mass, varies,
                     "the coefficients of the equation are left out");
        amounts.add(theory.limiting_mmol * theory.product_per_limiting, varies,
                    "this is the amount of product that it gives");
    }
    theories.add(
        theory.limiting_grams, varies,
        fmt::format("the mass of {} is taken over: masses stand for mole ratios", least.substance->name));
    theories.add(1000 * theory.grams, varies, "the mass is in mg, not in g");
    theories.add(theory.limiting_mmol * product_mass, varies, "mmol are taken as mol");

    theory.wrong_amounts = std::move(amounts.found);
    theory.wrong_theories = std::move(theories.found);
}

} // namespace

double Theory::grams_at(double share) const {
    return grams * std::min(substrate_limit * share, next_limit);
}

Theory theory_of(const Assessment& route, std::size_t index) {
    const Step& step = route.route().steps[index];
    const StepResult& result = route.evaluation().steps[index];
    Theory theory;
    theory.product = step.product;
    theory.reference = step.reference;
    theory.grams = result.theory * step.product->molar_mass;
    theory.next_limit = std::numeric_limits<double>::infinity();
    theory.substrate_limit = std::numeric_limits<double>::infinity();

    const auto supplies = reactant_supplies(route.flat(), static_cast<int>(index), route.flat().nominal());
    const double product_coefficient = std::abs(step.overall.coefficient_of(step.product));
    if (supplies.empty()) {
        theory.next_limit = 1;
        return theory;
    }
    const ReactantSupply& least = supplies.front();
    theory.limiting = least.substance;
    theory.limiting_mmol = 1000 * least.moles;
    theory.limiting_grams = least.moles * least.substance->molar_mass;
    theory.product_per_limiting = product_coefficient / least.coefficient;
    theory.substrate_limits = least.substance == step.reference;
    for (const ReactantSupply& supply : supplies) {
        double& limit = supply.substance == step.reference ? theory.substrate_limit : theory.next_limit;
        limit = std::min(limit, supply.runs / least.runs);
    }
    for (const Source& source : sources_of(route, index, step.reference)) {
        theory.substrate_grams += source.grams;
        theory.substrate = source.charge->material->name;
    }

    add_wrong_numbers(theory, route, index, supplies, product_coefficient);
    return theory;
}

} // namespace routeweigh::results
