// SPDX-License-Identifier: MIT
// Random compositions of catalogue substances, the same for the same seed everywhere.
#pragma once

#include "assess/mixture/mixture.hpp"
#include "chemistry/catalogue.hpp"

#include <cmath>
#include <cstdint>
#include <vector>

namespace routeweigh::test {

// SplitMix64: small, and the same on every platform, which the distributions of <random> are not.
class Dice {
  public:
    explicit Dice(std::uint64_t seed) : state_(seed) {}

    std::uint64_t next() {
        std::uint64_t z = (state_ += 0x9E3779B97F4A7C15U);
        z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9U;
        z = (z ^ (z >> 27)) * 0x94D049BB133111EBU;
        return z ^ (z >> 31);
    }
    double unit() { return static_cast<double>(next() >> 11) * 0x1.0p-53; } // 0 to below 1
    std::size_t below(std::size_t count) { return static_cast<std::size_t>(next() % count); }
    bool one_in(std::size_t count) { return below(count) == 0; }

  private:
    std::uint64_t state_;
};

// One to eight substances with shares over five decades, sometimes with facts. Its
// phase may be left open; gases in it are dissolved.
inline Mixture random_mixture(Dice& dice, const std::vector<const Substance*>& substances) {
    using Phase = Substance::Phase;
    Mixture mixture;
    if (!dice.one_in(3)) mixture.facts.phase = dice.one_in(8) ? Phase::solid : Phase::liquid;
    const std::size_t count = 1 + dice.below(8);
    double sum = 0;
    for (std::size_t i = 0; i < count; ++i) {
        Ingredient ingredient;
        ingredient.substance = substances[dice.below(substances.size())];
        ingredient.mass_fraction = std::pow(10.0, -5 * dice.unit());
        ingredient.dissolved = true;
        if (dice.one_in(20)) ingredient.facts.ph = 16 * dice.unit() - 1;
        if (dice.one_in(20)) ingredient.facts.additive = dice.one_in(2);
        const bool water = ingredient.substance->id == "water"; // is no poison, whatever the dice say
        if (dice.one_in(20) && !water)
            ingredient.facts.aquatic.acute_mg_per_litre = std::pow(10.0, 6 * dice.unit() - 4);
        if (dice.one_in(20) && !water)
            ingredient.facts.aquatic.chronic_mg_per_litre = std::pow(10.0, 6 * dice.unit() - 5);
        sum += ingredient.mass_fraction;
        mixture.ingredients.push_back(std::move(ingredient));
    }
    // Some add up to less than the whole.
    const double whole = dice.one_in(4) ? 0.3 + 0.7 * dice.unit() : 1.0;
    for (Ingredient& ingredient : mixture.ingredients)
        ingredient.mass_fraction *= whole / sum;
    if (dice.one_in(4)) mixture.facts.ph = 16 * dice.unit() - 1;
    if (dice.one_in(6)) mixture.facts.flash_point = 120 * dice.unit() - 20;
    if (dice.one_in(6)) mixture.facts.viscosity = 40 * dice.unit() + 0.1;
    return mixture;
}

} // namespace routeweigh::test
