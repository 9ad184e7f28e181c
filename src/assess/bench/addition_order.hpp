// SPDX-License-Identifier: MIT
// What two have to be brought together in portions, and which of them comes last. Common practice, no source.
#pragma once

#include "assess/bench/stage_facts.hpp"

#include <vector>

namespace routeweigh::bench {

struct AdditionOrder {
    std::vector<const Reagent*> oxidisers; ///< empty: no order to keep
    std::vector<const Reagent*> substrates;
    /// Nothing thins the oxidiser and most of the flask is it: the substrate is dropped into that. Else the
    /// oxidiser goes to the rest.
    bool into_oxidiser = false;

    const std::vector<const Reagent*>& last() const { return into_oxidiser ? substrates : oxidisers; }
};

/// Of a stage of reaction with two charges or more; of another stage none.
AdditionOrder addition_order(const StageFacts& facts, Bottles& bottles);

/// Puts the charges of a reaction into that order, so that a checklist says what its caution says; what ends
/// the reaction stays behind them.
void put_in_order(StageFacts& facts, Bottles& bottles);

} // namespace routeweigh::bench
