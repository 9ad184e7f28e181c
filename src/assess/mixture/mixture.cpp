// SPDX-License-Identifier: MIT
#include "assess/mixture/mixture.hpp"

#include "chemistry/catalogue.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace routeweigh {
namespace {

// Mass fractions are written with four digits and more; their sum may miss 1 by their rounding.
constexpr double rounding_of_shares = 1e-6;
// Wet solids drip from about here on.
constexpr double liquid_share = 0.2;

bool in_solution(const Ingredient& ingredient) {
    return ingredient.substance->ghs_solution.has_value() || ingredient.dissolved;
}

void check_ingredient(const Ingredient& ingredient, std::size_t number, Substance::Phase phase,
                      std::vector<Problem>& problems) {
    const auto add = [&](std::string message) {
        problems.push_back({Severity::error, std::move(message), {}, {}, {}});
    };
    if (ingredient.substance == nullptr) {
        add(fmt::format("ingredient {} is unknown", number));
        return;
    }
    const Substance& substance = *ingredient.substance;
    if (!std::isfinite(ingredient.mass_fraction))
        add(fmt::format("the share of \"{}\" is no number", substance.name));
    else if (ingredient.mass_fraction < 0)
        add(fmt::format("the share of \"{}\" is negative: {:g} %", substance.name,
                        100 * ingredient.mass_fraction));
    if (substance.phase == Substance::Phase::gas && phase != Substance::Phase::gas &&
        !in_solution(ingredient))
        add(fmt::format("\"{}\" is a gas and has no entry as a solution, but the mixture is {}; say that it "
                        "is dissolved, or leave it out",
                        substance.name, phase == Substance::Phase::liquid ? "liquid" : "solid"));
}

void check_facts(const MixtureFacts& facts, Substance::Phase phase, std::vector<Problem>& problems) {
    const auto refuse = [&](const std::optional<double>& value, double low, double high, const char* what) {
        if (value && !(*value >= low && *value <= high))
            problems.push_back({Severity::error,
                                fmt::format("a {} of {:g} cannot be; it lies between {:g} and {:g}", what,
                                            *value, low, high),
                                {},
                                {},
                                {}});
    };
    refuse(facts.ph, -2, 16, "pH");
    refuse(facts.flash_point, -200, 1000, "flash point in degC");
    refuse(facts.boiling_point, -273.15, 6000, "boiling point in degC");
    refuse(facts.viscosity, 1e-6, 1e9, "viscosity in mm2/s");
    if (facts.inhaled_form && *facts.inhaled_form != "gases" && *facts.inhaled_form != "vapours" &&
        *facts.inhaled_form != "dusts or mists")
        problems.push_back({Severity::error,
                            fmt::format("\"{}\" is no form in which a mixture is inhaled; there are gases, "
                                        "vapours, and dusts or mists",
                                        *facts.inhaled_form),
                            {},
                            {},
                            {}});
    if (facts.by_volume && phase != Substance::Phase::gas)
        problems.push_back(
            {Severity::error, "shares by volume are for gases; liquids and solids go by mass", {}, {}, {}});
}

} // namespace

Mixture mixture_of(const Material& material) {
    Mixture mixture;
    mixture.name = material.name;
    if (!material.is_neat()) mixture.facts.phase = material.phase;
    // What a supplier has dissolved stays dissolved.
    for (const Component& component : material.components)
        mixture.ingredients.push_back({component.substance, component.mass_fraction, !material.is_neat()});
    return mixture;
}

Mixture mixture_of(const Catalogue& catalogue, std::string name,
                   const std::vector<std::pair<std::string_view, double>>& percent_by_name) {
    Mixture mixture;
    mixture.name = std::move(name);
    std::vector<Problem> problems;
    for (const auto& [ingredient, percent] : percent_by_name) {
        const Substance* substance = catalogue.find_substance(ingredient);
        if (substance == nullptr)
            problems.push_back({Severity::error,
                                fmt::format("no substance \"{}\"", ingredient),
                                {},
                                {},
                                catalogue.nearest_substance(ingredient)});
        mixture.ingredients.push_back({substance, percent / 100});
    }
    if (!problems.empty()) throw InputError(std::move(problems));
    return mixture;
}

Substance::Phase phase_of(const Mixture& mixture) {
    if (mixture.facts.phase) return *mixture.facts.phase;
    double liquid = 0, solid = 0, gas = 0;
    for (const Ingredient& ingredient : mixture.ingredients) {
        if (ingredient.substance == nullptr || !(ingredient.mass_fraction > 0)) continue;
        (ingredient.substance->phase == Substance::Phase::gas      ? gas
         : ingredient.substance->phase == Substance::Phase::liquid ? liquid
                                                                   : solid) += ingredient.mass_fraction;
    }
    if (gas > 0 && liquid == 0 && solid == 0) return Substance::Phase::gas;
    return liquid >= liquid_share * (liquid + solid) ? Substance::Phase::liquid : Substance::Phase::solid;
}

std::vector<Problem> problems_of(const Mixture& mixture) {
    std::vector<Problem> problems;
    const Substance::Phase phase = phase_of(mixture);
    double sum = 0;
    std::size_t number = 0;
    for (const Ingredient& ingredient : mixture.ingredients) {
        check_ingredient(ingredient, ++number, phase, problems);
        sum += ingredient.mass_fraction;
    }
    if (!(sum > 0) && problems.empty())
        problems.push_back({Severity::error, "the mixture has no ingredients", {}, {}, {}});
    if (sum > 1 + rounding_of_shares)
        problems.push_back({Severity::error,
                            fmt::format("the shares sum to {:.6g} %, which is above 100 %", 100 * sum),
                            {},
                            {},
                            {}});
    check_facts(mixture.facts, phase, problems);
    return problems;
}

} // namespace routeweigh
