// SPDX-License-Identifier: MIT
#include "support/random_route.hpp"

#include "base/index.hpp"
#include "chemistry/formula.hpp"
#include "route/flat_route.hpp"

#include <algorithm>
#include <cstddef>
#include <limits>
#include <map>
#include <numeric>
#include <string>
#include <utility>
#include <vector>

namespace routeweigh::test {
namespace {

using Atoms = std::map<int, int>; // atomic number, count
struct ById {
    bool operator()(const Substance* a, const Substance* b) const { return a->id < b->id; }
};
using Sum = std::map<const Substance*, double, ById>; // by id, so that a seed always gives the same route

Atoms atoms_of(const Substance& substance) {
    return {substance.formula.atoms.begin(), substance.formula.atoms.end()};
}

void add(Atoms& sum, const Atoms& more, int times) {
    for (const auto& [element, count] : more)
        sum[element] += times * count;
}

class Maker {
  public:
    Maker(std::mt19937& draw, const RandomRouteOptions& options, RandomRoute& result)
        : draw_(draw), options_(options), result_(result), route_(result.route) {}

    void make() {
        water_ = invent({{1, 2}, {8, 1}}, Substance::Phase::liquid, "water");
        for (int i = 0; i < 2; ++i)
            solvents_.push_back(invent(random_atoms(), Substance::Phase::liquid, "solvent"));
        if (chance(0.2)) { // a boiling range without a formula, as petroleum ether
            Substance& range = result_.substances.emplace_back();
            range.id = range.name = "light petroleum";
            range.is_mixture = true;
            range.phase = Substance::Phase::liquid;
            range.molar_mass = std::numeric_limits<double>::quiet_NaN();
            solvents_.push_back(&range);
        }
        const int count = whole(1, options_.most_steps);
        for (int s = 0; s < count; ++s) {
            route_.steps.emplace_back();
            inputs_.emplace_back();
        }
        for (int s = 0; s + 1 < count; ++s) {
            const int user = whole(s + 1, count - 1);
            inputs_[at(user)].push_back(s);
            if (user + 1 < count && chance(0.3)) inputs_[at(whole(user + 1, count - 1))].push_back(s);
        }
        for (int s = 0; s < count; ++s)
            make_step(s);
        route_.product = route_.steps.back().product;
        route_.id = "random";
        set_yields();
        if (count > 1 && chance(0.35)) add_loop();
        if (options_.reuse && chance(0.5)) add_reuse();
    }

  private:
    // ---- dice
    // -------------------------------------------------------------------------------------------------
    int whole(int low, int high) { return std::uniform_int_distribution<int>(low, high)(draw_); }
    double real(double low, double high) { return std::uniform_real_distribution<double>(low, high)(draw_); }
    bool chance(double p) { return std::bernoulli_distribution(p)(draw_); }
    template<typename T>
    const T& one_of(const std::vector<T>& items) {
        return items[at(whole(0, static_cast<int>(items.size()) - 1))];
    }

    // ---- substances and materials
    // -----------------------------------------------------------------------------
    Atoms random_atoms() {
        Atoms atoms{{6, whole(1, 8)}, {1, whole(1, 16)}};
        for (const int element : {7, 8, 16, 17, 35})
            if (chance(0.3)) atoms[element] = whole(1, 3);
        return atoms;
    }
    const Substance* invent(const Atoms& atoms, Substance::Phase phase, const std::string& kind) {
        Substance& made = result_.substances.emplace_back();
        made.id = kind == "water" ? kind : kind + std::to_string(result_.substances.size());
        made.name = made.id;
        made.phase = phase;
        for (const auto& [element, count] : atoms)
            if (count > 0) made.formula.atoms.emplace_back(element, count);
        made.molar_mass = molar_mass(made.formula);
        return &made;
    }
    Substance::Phase any_phase(double gas) {
        return chance(gas)   ? Substance::Phase::gas
               : chance(0.5) ? Substance::Phase::liquid
                             : Substance::Phase::solid;
    }
    const Material* neat(const Substance* substance) {
        Material& made = result_.materials.emplace_back();
        made.id = made.name = substance->name;
        made.components.push_back({substance, 1.0, false});
        if (substance->phase == Substance::Phase::liquid) made.density = real(0.7, 1.6);
        return &made;
    }
    const Material* solution(const Substance* substance, const Substance* carrier) {
        Material& made = result_.materials.emplace_back();
        made.id = made.name = substance->name + " in " + carrier->name;
        const double strength = real(0.05, 0.9);
        made.components.push_back({substance, strength, false});
        made.components.push_back({carrier, 1.0 - strength, true});
        made.density = real(0.7, 1.6);
        return &made;
    }

    // ---- charges
    // ----------------------------------------------------------------------------------------------
    /// Writes the moles in one of the units that a bench sheet may use.
    Charge charge_of(const Substance* substance, double moles, std::string_view role, bool fed = false) {
        Charge charge;
        const bool dissolved = !fed && substance != water_ && chance(0.3);
        // Where water reacts, it does not come in by the way as the water of some other reagent.
        const bool aqueous = step_->overall.coefficient_of(water_) >= 0.0 && chance(0.6);
        charge.material =
            dissolved ? solution(substance, aqueous ? water_ : one_of(solvents_)) : neat(substance);
        charge.role = find_role(role);
        const double grams =
            moles * substance->molar_mass / charge.material->components.front().mass_fraction;
        charge.amount.significant = 4;
        switch (whole(0, 3)) {
        case 0:
            charge.amount.value = 1000 * moles;
            charge.amount.unit = "mmol";
            break;
        case 1:
            charge.amount.value = moles / reference_;
            charge.amount.unit = "eq";
            break;
        case 2:
            if (charge.material->density) {
                charge.amount.value = grams / *charge.material->density;
                charge.amount.unit = "mL";
                break;
            }
            [[fallthrough]];
        default:
            charge.amount.value = grams;
            charge.amount.unit = "g";
        }
        if (charge.amount.unit == "eq" && moles == reference_) { // the reference itself needs an amount
            charge.amount.value = grams;
            charge.amount.unit = "g";
        }
        return charge;
    }
    Charge liquid(std::string_view role) {
        Charge charge;
        const Substance* substance = chance(0.5) ? water_ : one_of(solvents_);
        charge.material = neat(substance);
        const bool reacts = step_->overall.coefficient_of(substance) < 0.0;
        charge.role = find_role(reacts && role == "solvent" ? "reacting solvent" : role);
        charge.amount.value = real(0.5, 40.0);
        charge.amount.unit = "g";
        charge.amount.significant = 3;
        return charge;
    }

    // ---- reactions
    // --------------------------------------------------------------------------------------------
    Reaction reaction_of(const Sum& change) {
        Reaction reaction;
        for (const auto& [substance, coefficient] : change)
            if (coefficient != 0.0) reaction.equation.parts.push_back({substance, coefficient});
        reaction.equation.text = "invented";
        return reaction;
    }
    void limit(Reaction& reaction, double low) {
        std::vector<const Substance*> used;
        for (const auto& part : reaction.equation.parts)
            if (part.coefficient < 0.0 && part.substance->id.find("oxygen") != 0)
                used.push_back(part.substance);
        reaction.conversion = real(low, 0.99);
        reaction.of = one_of(used);
    }
    /// Splits off by-products and returns what is left, made of whole molecules of the product.
    Atoms split_off(Atoms total, int molecules, Sum& change) {
        Atoms taken;
        for (auto& [element, count] : total) {
            int gone = count % molecules;
            const int spare = (count - gone) / molecules;
            if (spare > 1 || element != 6) gone += molecules * whole(0, std::min(spare / 2, 3));
            if (gone > 0) taken[element] = gone;
            count = (count - gone) / molecules;
        }
        if (taken[1] >= 2 && taken[8] >= 1 && chance(0.5)) {
            change[water_] += 1;
            taken[1] -= 2;
            taken[8] -= 1;
        }
        Atoms second;
        for (auto& [element, count] : taken)
            if (count > 0 && chance(0.25)) {
                second[element] = count;
                count = 0;
            }
        for (const Atoms& atoms : {taken, second})
            if (std::any_of(atoms.begin(), atoms.end(), [](const auto& entry) { return entry.second > 0; })) {
                const Substance* made = invent(atoms, any_phase(0.3), "by-product");
                change[made] += 1;
                if (made->phase == Substance::Phase::gas && chance(0.5)) step_->dissolved.push_back(made);
            }
        return total;
    }

    void make_step(int number) {
        step_ = &route_.steps[at(number)];
        step_->id = "s" + std::to_string(number);
        step_->title = step_->id;
        Stage& pot = step_->stages.emplace_back();
        pot.title = "reaction";
        Sum main, overall;
        Atoms total;
        as_used_ = false;
        const Substance* reference = nullptr;
        const auto put_left = [&](const Substance* substance, int coefficient) {
            if (reference == nullptr) reference = substance;
            main[substance] -= coefficient;
            add(total, atoms_of(*substance), coefficient);
        };
        for (const int source : inputs_[at(number)])
            if (!main.contains(route_.steps[at(source)].product))
                put_left(route_.steps[at(source)].product, whole(1, 3));
        const int bought = whole(main.empty() ? 1 : 0, 2);
        for (int i = 0; i < bought; ++i)
            put_left(invent(random_atoms(), any_phase(0.1), "reagent"), whole(1, 3));
        if (chance(0.1)) put_left(water_, 1);
        const double base = real(0.001, 0.05); // mol
        step_->reference = reference;
        reference_ = -main[reference] * base;

        // A transient: something made in the pot from a source of it, which may be set free again.
        const Substance *source = nullptr, *oxidant = nullptr, *transient = nullptr;
        Sum first;
        int returned = 0;
        if (chance(0.35)) {
            const int needed = whole(1, 3);
            source = invent(random_atoms(), any_phase(0.1), "source");
            const bool air = options_.air && chance(0.25);
            oxidant = air ? invent({{8, 2}}, Substance::Phase::gas, "oxygen")
                          : invent(random_atoms(), any_phase(0.0), "oxidant");
            first[oxidant] = -1;
            first[source] = -needed;
            Atoms rest = air ? atoms_of(*oxidant) : split_off(atoms_of(*oxidant), 1, first);
            add(rest, atoms_of(*source), needed);
            transient = invent(rest, any_phase(0.0), "transient");
            first[transient] = 1;
            put_left(transient, 1);
            if (chance(0.6)) {
                returned = whole(1, needed);
                main[source] += returned;
                add(total, atoms_of(*source), -returned);
                if (source->phase == Substance::Phase::gas) step_->dissolved.push_back(source);
            }
            as_used_ = air;
        }
        const int molecules = total[6] >= 2 && chance(0.2) ? 2 : 1;
        const Substance* product = invent(split_off(total, molecules, main), any_phase(0.0), "product");
        step_->product = product;
        main[product] = molecules;
        for (const Sum* part : {&first, &main})
            for (const auto& [substance, coefficient] : *part)
                overall[substance] += coefficient;
        step_->overall = reaction_of(overall).equation;

        for (const auto& term : main) {
            const Substance* const substance = term.first;
            const double coefficient = term.second;
            if (coefficient >= 0.0 || substance == transient) continue;
            const bool is_reference = substance == reference;
            const bool fed = std::any_of(inputs_[at(number)].begin(), inputs_[at(number)].end(),
                                         [&](int i) { return route_.steps[at(i)].product == substance; });
            Charge charge = charge_of(substance, -coefficient * base * (is_reference ? 1.0 : real(0.8, 2.0)),
                                      is_reference ? "substrate" : "reagent", fed);
            pot.charges.push_back(std::move(charge));
        }
        if (transient != nullptr) {
            const double share =
                returned == static_cast<int>(-first[source]) ? real(0.01, 0.3) : real(0.5, 2.0);
            const bool on_left = overall[source] < 0.0;
            pot.charges.push_back(
                charge_of(source, -first[source] * base * share, on_left ? "reagent" : "trace"));
            Charge charge = charge_of(oxidant, base * real(0.8, 2.0), "oxidant", as_used_);
            charge.as_used = as_used_;
            pot.charges.push_back(std::move(charge));
            pot.reactions.push_back(reaction_of(first));
            if (chance(0.2)) limit(pot.reactions.back(), 0.5);
        }
        if (chance(0.8)) pot.charges.push_back(liquid("solvent"));
        pot.reactions.push_back(reaction_of(main));
        if (chance(0.3)) limit(pot.reactions.back(), 0.3);
        if (chance(0.1)) add_side_reaction(pot);
        if (chance(0.2)) repeat_reaction_stage();
        if (chance(0.7)) add_workup();
        if (chance(0.4)) {
            Stage& stage = step_->stages.emplace_back();
            stage.phase = Phase::purification;
            stage.charges.push_back(liquid("recrystallisation solvent"));
            stage.separations.push_back(separation("mother liquor"));
        }
        if (chance(0.5)) {
            Stage& stage = step_->stages.emplace_back();
            stage.phase = Phase::purification;
            Separation& drying = stage.separations.emplace_back();
            drying.by = chance(0.5) ? SeparationMethod::drying : SeparationMethod::evaporation;
            drying.to = "vapour";
            drying.takes_volatiles = true;
        }
        if (options_.seeds && chance(0.05)) {
            Charge seeds;
            seeds.material = neat(product);
            seeds.role = find_role("trace");
            seeds.amount.value = 0.01 * base * product->molar_mass;
            seeds.amount.unit = "g";
            seeds.bought = true;
            step_->stages.front().charges.push_back(seeds);
        }
        if (chance(0.3)) share_loss();
    }

    void add_side_reaction(Stage& stage) {
        const Substance* isomer = invent(atoms_of(*step_->product), any_phase(0.0), "isomer");
        Reaction side = reaction_of({{step_->product, -1}, {isomer, 1}});
        side.conversion = real(0.01, 0.2);
        side.of = step_->product;
        stage.reactions.push_back(std::move(side));
    }

    /// The same reactions once more after a second portion of everything.
    void repeat_reaction_stage() {
        Stage second = step_->stages.front();
        for (Charge& charge : second.charges)
            if (charge.amount.unit != "eq") charge.amount.value *= real(0.2, 1.0);
        if (chance(0.3)) step_->stages.front().separations.push_back(separation("first liquor"));
        step_->stages.push_back(std::move(second));
    }

    void add_workup() {
        Stage& stage = step_->stages.emplace_back();
        stage.title = "workup";
        stage.phase = Phase::workup;
        for (int i = whole(1, 3); i > 0; --i)
            stage.charges.push_back(liquid(
                one_of(std::vector<std::string_view>{"wash", "drown-out", "extraction", "flask rinse"})));
        if (chance(0.5)) { // a quench binds what is left of one reactant
            const auto& parts = step_->overall.parts;
            std::vector<const Substance*> used;
            for (const auto& part : parts)
                if (part.coefficient < 0.0) used.push_back(part.substance);
            const Substance* rest = one_of(used);
            const Substance* quench = invent(random_atoms(), any_phase(0.0), "quench");
            Atoms both = atoms_of(*rest);
            add(both, atoms_of(*quench), 1);
            const Substance* adduct = invent(both, any_phase(0.0), "adduct");
            stage.charges.push_back(charge_of(quench, reference_ * real(0.01, 0.5), "quench"));
            stage.reactions.push_back(reaction_of({{rest, -1}, {quench, -1}, {adduct, 1}}));
            if (chance(0.3)) limit(stage.reactions.back(), 0.5);
        } else if (chance(0.1)) {
            add_side_reaction(stage);
        }
        for (int i = whole(1, 2); i > 0; --i)
            stage.separations.push_back(separation(chance(0.5) ? "filtrate" : "washes"));
    }

    std::vector<const Substance*> in_pot() const {
        std::vector<const Substance*> found;
        for (const Stage& stage : step_->stages) {
            for (const Charge& charge : stage.charges)
                for (const Component& component : charge.material->components)
                    found.push_back(component.substance);
            for (const Reaction& reaction : stage.reactions)
                for (const auto& part : reaction.equation.parts)
                    found.push_back(part.substance);
        }
        std::sort(found.begin(), found.end(), [](const auto* a, const auto* b) { return a->id < b->id; });
        found.erase(std::unique(found.begin(), found.end()), found.end());
        found.erase(std::remove(found.begin(), found.end(), step_->product), found.end());
        return found;
    }
    Separation separation(const std::string& stream) {
        Separation made;
        made.by = one_of(
            std::vector<SeparationMethod>{SeparationMethod::filtration, SeparationMethod::decantation,
                                          SeparationMethod::extraction, SeparationMethod::distillation});
        made.to = stream;
        made.lists_what_stays = chance(0.6);
        for (const Substance* substance : in_pot())
            if (chance(0.3)) made.shares.push_back({substance, chance(0.5) ? 1.0 : real(0.0, 1.0)});
        if (chance(0.5)) made.held = chance(0.1) ? 50.0 : real(0.05, 1.5);
        return made;
    }
    /// Declares shares of the loss for separations behind the last reaction.
    void share_loss() {
        std::vector<Separation*> late;
        for (Stage& stage : step_->stages)
            if (stage.phase != Phase::reaction)
                for (Separation& separation : stage.separations)
                    late.push_back(&separation);
        if (late.empty()) return;
        double left = 1.0;
        for (std::size_t i = 0; i + 1 < late.size(); ++i) {
            const double share = chance(0.3) ? 0.0 : real(0.0, left);
            late[i]->loss = share;
            left -= share;
        }
        late.back()->loss = left;
    }

    // ---- what needs numbers of the whole
    // -----------------------------------------------------------------------
    /// No step may isolate more than it makes.
    void set_yields() {
        for (Step& step : route_.steps)
            step.isolated.yield = 1.0;
        const FlatRoute flat(route_);
        const Evaluation trial = flat.evaluate(flat.nominal());
        for (std::size_t s = 0; s < route_.steps.size(); ++s) {
            const StepResult& result = trial.steps[s];
            const double most = std::min(1.0, result.made / result.theory);
            const double yield = chance(0.1) ? most : most * real(0.3, 1.0);
            if (chance(0.3)) {
                route_.steps[s].isolated.mass =
                    yield * result.theory * route_.steps[s].product->molar_mass * unit::g;
                route_.steps[s].isolated.yield.reset();
            } else {
                route_.steps[s].isolated.yield = yield;
            }
        }
    }

    /// A later step gives some of its product to an earlier one, less than the earlier one helps it to make.
    void add_loop() {
        const FlatRoute flat(route_);
        const Evaluation trial = flat.evaluate(flat.nominal());
        const int late = whole(1, static_cast<int>(route_.steps.size()) - 1);
        const int early = whole(0, late - 1);
        const StepResult &giving = trial.steps[at(late)], &taking = trial.steps[at(early)];
        step_ = &route_.steps[at(early)];
        const Substance* given = route_.steps[at(late)].product;
        Charge charge;
        charge.material = neat(given);
        charge.amount.unit = "g";
        charge.amount.value =
            real(0.02, 0.4) * giving.isolated * given->molar_mass * giving.scale / taking.scale;
        Stage& stage = step_->stages.back();
        if (chance(0.5)) {
            charge.role = find_role("solvent");
        } else { // it reacts with something fresh
            const Substance* partner = invent(random_atoms(), any_phase(0.0), "partner");
            Atoms both = atoms_of(*given);
            add(both, atoms_of(*partner), 1);
            const Substance* adduct = invent(both, any_phase(0.0), "adduct");
            Charge second;
            second.material = neat(partner);
            second.role = find_role("neutraliser");
            second.amount.value = real(0.1, 5.0);
            second.amount.unit = "mmol";
            charge.role = find_role("quench");
            stage.charges.push_back(std::move(second));
            stage.reactions.push_back(reaction_of({{given, -1}, {partner, -1}, {adduct, 1}}));
        }
        stage.charges.push_back(std::move(charge));
    }

    void add_reuse() {
        for (int i = whole(1, 3); i > 0; --i) {
            Reuse reuse;
            reuse.from_step = whole(0, static_cast<int>(route_.steps.size()) - 1);
            reuse.to_step = whole(0, static_cast<int>(route_.steps.size()) - 1);
            step_ = &route_.steps[at(reuse.from_step)];
            std::vector<std::string> streams{step_->rest, step_->gas};
            for (const Stage& stage : step_->stages)
                for (const Separation& separation : stage.separations)
                    streams.push_back(separation.to);
            const std::vector<const Substance*> here = in_pot();
            step_ = &route_.steps[at(reuse.to_step)];
            std::vector<const Substance*> shared;
            for (const Stage& stage : step_->stages)
                for (const Charge& charge : stage.charges)
                    for (const Component& component : charge.material->components) {
                        const bool made =
                            std::any_of(route_.steps.begin(), route_.steps.end(), [&](const Step& step) {
                                return step.product == component.substance;
                            });
                        if (!made && std::find(here.begin(), here.end(), component.substance) != here.end())
                            shared.push_back(component.substance);
                    }
            if (shared.empty()) continue;
            reuse.substance = one_of(shared);
            reuse.from_stream = one_of(streams);
            reuse.fraction = chance(0.3) ? 1.0 : real(0.0, 1.0);
            route_.reuse.push_back(std::move(reuse));
        }
    }

    std::mt19937& draw_;
    const RandomRouteOptions& options_;
    RandomRoute& result_;
    Route& route_;
    std::vector<std::vector<int>> inputs_; ///< by step: steps that feed it
    std::vector<const Substance*> solvents_;
    const Substance* water_ = nullptr;
    Step* step_ = nullptr;
    double reference_ = 0.0; ///< mol
    bool as_used_ = false;
};

} // namespace

std::unique_ptr<RandomRoute> random_route(std::mt19937& draw, const RandomRouteOptions& options) {
    auto result = std::make_unique<RandomRoute>();
    Maker(draw, options, *result).make();
    return result;
}

void resize_steps(Route& route, std::mt19937& draw) {
    std::uniform_real_distribution<double> factor(0.01, 100.0);
    for (Step& step : route.steps) {
        const double times = factor(draw);
        if (step.isolated.mass) *step.isolated.mass *= times;
        for (Stage& stage : step.stages)
            for (Charge& charge : stage.charges)
                if (!charge.as_used && charge.amount.unit != "eq") charge.amount.value *= times;
    }
}

void shuffle_listing(Route& route, std::mt19937& draw) {
    for (Step& step : route.steps)
        for (Stage& stage : step.stages) {
            std::shuffle(stage.reactions.begin(), stage.reactions.end(), draw);
            std::shuffle(stage.charges.begin(), stage.charges.end(), draw);
        }
    std::vector<int> order(route.steps.size());
    std::iota(order.begin(), order.end(), 0);
    std::shuffle(order.begin(), order.end(), draw);
    std::vector<Step> steps;
    std::vector<int> now(route.steps.size());
    for (std::size_t i = 0; i < order.size(); ++i) {
        steps.push_back(std::move(route.steps[at(order[i])]));
        now[at(order[i])] = static_cast<int>(i);
    }
    route.steps = std::move(steps);
    for (Reuse& reuse : route.reuse) {
        reuse.from_step = now[at(reuse.from_step)];
        reuse.to_step = now[at(reuse.to_step)];
    }
}

} // namespace routeweigh::test
