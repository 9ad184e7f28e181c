// SPDX-License-Identifier: MIT
// What the pot holds and does in one stage, as far as the route tells; cautions and glassware follow from it.
#pragma once

#include "assess/bench/bottles.hpp"
#include "assess/bench/reagents.hpp"
#include "assess/streams/composition.hpp"

#include <optional>
#include <string>
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
    streams::Composition pot;            ///< when its reactions are done, before anything leaves
    double volume = 0;                   ///< mL of the pot, volumes added
    std::vector<const Substance*>
        flammable; ///< liquids that flash below 60 degC, a twentieth of the pot or more
    const Substance* first_to_boil = nullptr; ///< of the liquids that are a twentieth of the pot or more
    std::vector<StageGas> gases;
    double bromine = 0;              ///< g free at most in this step, 0 where this stage makes none
    bool warm = false;               ///< 40 degC or more
    std::optional<double> to_boil;   ///< degC between the temperature and the first boiling point
    bool on_filter = false;          ///< nothing but washing on a filter
    bool wet_with_flammable = false; ///< dried from a flammable liquid

    bool is(Phase phase) const { return stage->phase == phase; }
    bool boils() const { return to_boil && *to_boil <= boiling_margin; }
    bool separates(SeparationMethod method) const;
    bool has_role(std::string_view role) const;

    /// degC below the boiling point from which a pot is kept under a condenser; common practice, no source.
    static constexpr double boiling_margin = 8;
};

/// One entry a stage. \param reagents  of the step; must outlive the result
std::vector<StageFacts> stages_of(const FlatRoute& flat, const Inputs& inputs, const Evaluation& evaluation,
                                  int step, const std::vector<Reagent>& reagents);

} // namespace routeweigh::bench
