// SPDX-License-Identifier: MIT
// What the pot holds and does in one stage, as far as the route tells; cautions and glassware follow from it.
#pragma once

#include "assess/bench/bench_rules.hpp"
#include "assess/bench/bottles.hpp"
#include "assess/bench/reagents.hpp"
#include "assess/pot_contents.hpp"

#include <vector>

namespace routeweigh::bench {

/// A gas that the reactions of a stage set free.
struct StageGas {
    const Substance* substance;
    double litres; ///< at 25 degC and 1 atm, at most: what dissolves is not taken off
};

struct StageFacts {
    const Step* step = nullptr;
    const Stage* stage = nullptr;
    int index = 0;
    std::vector<const Reagent*> charged; ///< in this stage
    PotContents pot;
    double volume = 0; ///< mL of the pot at its fullest, volumes added
    std::vector<const Substance*>
        flammable; ///< liquids that flash below 60 degC, a twentieth of the pot or more
    const Substance* condenses = nullptr; ///< needs_condenser()
    std::vector<StageGas> gases;
    /// An acid anhydride in the pot that water of this stage destroys; nullptr where there is none.
    const Substance* anhydride_for_water = nullptr;
    double bromine = 0;              ///< g free at most in this step, 0 where this stage makes none
    bool warm = false;               ///< 40 degC or more
    bool on_filter = false;          ///< nothing but washing on a filter
    bool wet_with_flammable = false; ///< dried from a flammable liquid

    bool is(Phase phase) const { return stage->phase == phase; }
    /// Boils, and a condenser leads the vapour back.
    bool refluxes() const { return condenses != nullptr && !boils_off(*stage); }
    bool separates(SeparationMethod method) const;
    bool has_role(std::string_view role) const;
    /// A gas is charged: for that no glass of the list is right.
    bool takes_in_gas() const;
    /// Crystals of the product are to come from the warm pot before it is filtered.
    bool cools_before_filtering() const;
};

/// One entry a stage. \param reagents  of the step; must outlive the result
std::vector<StageFacts> stages_of(const FlatRoute& flat, const Inputs& inputs, const Evaluation& evaluation,
                                  int step, const std::vector<Reagent>& reagents, const BenchRules& rules);

} // namespace routeweigh::bench
