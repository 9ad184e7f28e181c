// SPDX-License-Identifier: MIT
#include "assess/bench/addition_order.hpp"

#include <algorithm>
#include <string_view>

namespace routeweigh::bench {
namespace {

/// Bromine and tribromides are no oxidisers by their labels, and react as such.
bool holds_bromine(const Material& material) {
    return std::any_of(material.components.begin(), material.components.end(),
                       [](const Component& part) { return part.substance->free_bromine > 0; });
}

bool oxidises(const Reagent& reagent, Bottles& bottles) {
    return reagent.charge->role->name == "oxidant" || holds_bromine(reagent.material()) ||
           carries(bottles.of(reagent.material()), {270, 271, 272});
}

bool is_substrate(const Reagent& reagent) {
    return reagent.charge->role->name == "substrate";
}

} // namespace

AdditionOrder addition_order(const StageFacts& facts, Bottles& bottles) {
    AdditionOrder order;
    if (!facts.is(Phase::reaction) || facts.charged.size() < 2) return order;
    bool thinned = false;
    const Reagent* heaviest = facts.charged.front();
    for (const Reagent* reagent : facts.charged) {
        if (oxidises(*reagent, bottles)) order.oxidisers.push_back(reagent);
        if (is_substrate(*reagent)) order.substrates.push_back(reagent);
        thinned = thinned || reagent->charge->role->solvent;
        if (reagent->grams > heaviest->grams) heaviest = reagent;
    }
    order.into_oxidiser = !order.substrates.empty() && !thinned && oxidises(*heaviest, bottles);
    return order;
}

void put_in_order(StageFacts& facts, Bottles& bottles) {
    const AdditionOrder order = addition_order(facts, bottles);
    if (order.oxidisers.empty()) return;
    const auto reaction_ends =
        std::find_if(facts.charged.begin(), facts.charged.end(), [](const Reagent* reagent) {
            const std::string_view role = reagent->charge->role->name;
            return role == "quench" || role == "neutraliser" || role == "drown-out";
        });
    const auto turn = [&](const Reagent* reagent) {
        if (order.into_oxidiser && is_substrate(*reagent)) return 2;
        return oxidises(*reagent, bottles) ? 1 : 0;
    };
    std::stable_sort(facts.charged.begin(), reaction_ends,
                     [&](const Reagent* a, const Reagent* b) { return turn(a) < turn(b); });
}

} // namespace routeweigh::bench
