// SPDX-License-Identifier: MIT
// What is in the pot of a stage before and after its reactions, and which of it asks for a condenser.
//
// A reading with nothing lost, for volumes, cautions and cooling water; the ledger has its own.
#pragma once

#include "assess/streams/composition.hpp"
#include "route/flat_route.hpp"

#include <vector>

namespace routeweigh {

struct PotContents {
    streams::Composition before, after; ///< the reactions; in both before anything leaves
};

/// One entry a stage. \param extents  mol, by stage and reaction: FlatRoute::extents of the step
std::vector<PotContents> contents_of(const FlatRoute& flat, const Inputs& inputs, int step,
                                     const std::vector<std::vector<double>>& extents);

/// Liquids that are a twentieth of the pot by volume or more, before or after its reactions; our line.
std::vector<const Substance*> main_liquids(const PotContents& pot);

/// The liquid whose vapour is to be caught at the temperature of the stage; nullptr where nothing boils. An
/// open flask does for recrystallising from water. Bench sheet, cooling water and techniques all ask here.
/// \param within  K below a boiling point from which a condenser is needed
const Substance* needs_condenser(const Stage& stage, const PotContents& pot, double within);

/// Grams of bromine that can be free at one time in the step, per run of it as written, where this stage
/// brings or makes it; else 0.
double free_bromine_grams(const FlatRoute& flat, const Evaluation& evaluation, int step, const Stage& stage);

/// What boils is taken off and not led back.
bool boils_off(const Separation& separation);
bool boils_off(const Stage& stage);

} // namespace routeweigh
