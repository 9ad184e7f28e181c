// SPDX-License-Identifier: MIT
#include "route/overall_equation.hpp"

#include "base/index.hpp"
#include "route/linear_programme.hpp"

#include <algorithm>
#include <cmath>
#include <cstddef>

namespace routeweigh {
namespace {

/// The reactions of all stages as columns over the substances that occur in them or in the overall equation.
class Reactions {
  public:
    explicit Reactions(const Step& step) {
        for (const Stage& stage : step.stages)
            for (const Reaction& reaction : stage.reactions)
                columns_.push_back(&reaction.equation);
        for (const SubstanceEquation* equation : columns_)
            for (const auto& part : equation->parts)
                add(part.substance);
        for (const auto& part : step.overall.parts)
            add(part.substance);
    }
    int substance_count() const { return static_cast<int>(substances_.size()); }
    int reaction_count() const { return static_cast<int>(columns_.size()); }
    const Substance* substance(int index) const { return substances_[at(index)]; }
    double coefficient(int substance, int reaction) const {
        return columns_[at(reaction)]->coefficient_of(substances_[at(substance)]);
    }

  private:
    void add(const Substance* substance) {
        if (std::find(substances_.begin(), substances_.end(), substance) == substances_.end())
            substances_.push_back(substance);
    }
    std::vector<const SubstanceEquation*> columns_;
    std::vector<const Substance*> substances_;
};

/// N x = o with x >= 0. Rows are turned so that o >= 0; then N x <= o with the sum of all rows as large as it
/// can be reaches the sum of o exactly when the equations hold.
Combination solve_exactly(const Reactions& reactions, const SubstanceEquation& overall) {
    LinearProgramme programme(reactions.substance_count(), reactions.reaction_count());
    std::vector<double> b(at(programme.rows)), objective(at(programme.columns), 0.0);
    double target = 0.0;
    for (int s = 0; s < programme.rows; ++s) {
        const double wanted = overall.coefficient_of(reactions.substance(s));
        const double sign = wanted < 0.0 ? -1.0 : 1.0;
        b[at(s)] = sign * wanted;
        target += b[at(s)];
        for (int r = 0; r < programme.columns; ++r) {
            programme.at(s, r) = sign * reactions.coefficient(s, r);
            objective[at(r)] += programme.at(s, r);
        }
    }
    programme.objectives = {objective};
    const Optimum optimum = maximise(programme, b);
    if (!optimum.bounded) return {};
    double reached = 0.0;
    for (int r = 0; r < programme.columns; ++r)
        reached += objective[at(r)] * optimum.x[at(r)];
    return std::abs(reached - target) <= 1e-9 * target ? optimum.x : Combination{};
}

/// What may be put in: the left of the overall equation and all that is charged as a reactant.
bool may_be_put_in(const Step& step, const Substance* substance) {
    if (step.overall.coefficient_of(substance) < 0.0) return true;
    for (const Stage& stage : step.stages)
        for (const Charge& charge : stage.charges)
            if (charge.role->reactant && charge.material->component_of(*substance) != nullptr &&
                !charge.material->component_of(*substance)->carrier)
                return true;
    return false;
}

/// The most product from one gram of input: runs of the reactions and mol of each input are the unknowns.
void find_best(const Step& step, const Reactions& reactions, OverallProof& proof) {
    const int runs = reactions.reaction_count(), substances = reactions.substance_count();
    LinearProgramme programme(substances + 1, runs + substances);
    std::vector<double> objective(at(programme.columns), 0.0), b(at(programme.rows), 0.0);
    for (int s = 0; s < substances; ++s) {
        for (int r = 0; r < runs; ++r) {
            programme.at(s, r) = -reactions.coefficient(s, r);
            if (reactions.substance(s) == step.product) objective[at(r)] = reactions.coefficient(s, r);
        }
        if (may_be_put_in(step, reactions.substance(s)) && reactions.substance(s) != step.product) {
            programme.at(s, runs + s) = -1.0;
            programme.at(substances, runs + s) = reactions.substance(s)->molar_mass;
        }
    }
    b.back() = 1.0;
    programme.objectives = {objective};
    const Optimum optimum = maximise(programme, b);
    if (!optimum.bounded) return;
    double moles = 0.0;
    for (int r = 0; r < runs; ++r)
        moles += objective[at(r)] * optimum.x[at(r)];
    if (moles <= 0.0) return;
    proof.best_atom_economy = moles * step.product->molar_mass;
    for (int s = 0; s < substances; ++s) {
        double net = 0.0;
        for (int r = 0; r < runs; ++r)
            net += reactions.coefficient(s, r) * optimum.x[at(r)];
        if (std::abs(net) > 1e-9 * moles) proof.best.push_back({reactions.substance(s), net / moles});
    }
}

} // namespace

double atom_economy_of(const SubstanceEquation& equation, const Substance* product) {
    double input = 0.0;
    for (const auto& part : equation.parts)
        if (part.coefficient < 0.0) input -= part.coefficient * part.substance->molar_mass;
    return input > 0.0 ? equation.coefficient_of(product) * product->molar_mass / input : 0.0;
}

OverallProof prove_overall(const Step& step) {
    OverallProof proof;
    const Reactions reactions(step);
    proof.atom_economy = atom_economy_of(step.overall, step.product);
    proof.combination = solve_exactly(reactions, step.overall);
    proof.proved = !proof.combination.empty();
    find_best(step, reactions, proof);
    return proof;
}

} // namespace routeweigh
