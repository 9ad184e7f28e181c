// SPDX-License-Identifier: MIT
// The charges of a step as a reagent table lists them, and its theoretical yield; for one run of the step as
// it is written, that is for one pot.
#pragma once

#include "route/flat_route.hpp"
#include "route/limiting_reagent.hpp"

#include <optional>
#include <vector>

namespace routeweigh::bench {

struct Reagent {
    int stage = 0, number = 0; ///< of the charge within its stage
    const Charge* charge = nullptr;
    double grams = 0;
    std::optional<double> millilitres;  ///< of a liquid whose density is known
    const Substance* counted = nullptr; ///< whose moles count; nullptr for what dissolves, washes or dries
    double moles = 0;                   ///< of `counted`
    std::optional<double> equivalents;  ///< of `counted`, to the reference of the step
    bool made_before = false;           ///< an earlier step of the route makes it

    const Material& material() const { return *charge->material; }
    /// Comes from a cylinder or under pressure: nothing that is weighed and poured.
    bool is_gas() const;
};

/// In the order of the stages; what is drawn from the air and what is only a trace are left out.
std::vector<Reagent> reagents_of(const FlatRoute& flat, const Inputs& inputs, int step);

/// What is counted in a charge: the component that the file names, else the one that the overall equation
/// uses up, else the only one that is no carrier. nullptr where the role is that of a solvent or an aid.
const Substance* counted_in(const Charge& charge, const SubstanceEquation& overall);

struct Theory {
    std::vector<ReactantSupply> supplies; ///< the limiting one first
    double coefficient = 1;               ///< of the product in the overall equation
    double moles = 0, grams = 0;          ///< of product at full conversion
    int last_stage = 0;                   ///< in which product forms; later charges are no supply
    double isolated = 0;                  ///< g, as the route file states or assumes it
    /// The supplies explain it. False where the reactions of the pot give another amount than the limiting
    /// reactant of the overall equation.
    bool by_supply = true;

    const ReactantSupply& limiting() const { return supplies.front(); }
    /// Reactants that are gone at the same time, as far as a balance tells: one, or several.
    std::vector<ReactantSupply> run_out_first() const;
    double yield() const { return isolated / grams; }
};

/// \param evaluation  of the inputs
Theory theory_of(const FlatRoute& flat, const Inputs& inputs, const Evaluation& evaluation, int step);

} // namespace routeweigh::bench
