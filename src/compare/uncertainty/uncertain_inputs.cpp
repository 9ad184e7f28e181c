// SPDX-License-Identifier: MIT
#include "compare/uncertainty/uncertain_inputs.hpp"

#include "base/index.hpp"
#include "base/text.hpp"
#include "route/instrument.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>
#include <map>
#include <utility>

namespace routeweigh {
namespace {

using Target = InputEffect::Target;

class Compiler {
  public:
    Compiler(const std::vector<const Assessment*>& routes, const UncertaintyOptions& options)
        : routes_(routes), options_(options) {}

    UncertainInputs run() {
        for (const Assessment* route : routes_) {
            effects_ = &result_.effects.emplace_back();
            assumed_ = &result_.assumed_steps.emplace_back();
            route_ = route;
            prefix_ = routes_.size() > 1 ? route->route().id + ": " : "";
            add_charges();
            add_bottles();
            add_isolated();
            add_reuse();
        }
        add_elements();
        return std::move(result_);
    }

  private:
    std::size_t add_input(std::string name, Distribution distribution) {
        result_.inputs.push_back({std::move(name), std::move(distribution)});
        return result_.inputs.size() - 1;
    }

    /// One quantity for all that name it by the same key.
    std::size_t shared_input(const std::string& key, const std::string& name,
                             const Distribution& distribution) {
        const auto [found, fresh] = shared_.try_emplace(key, result_.inputs.size());
        return fresh ? add_input(name, distribution) : found->second;
    }

    void add_effect(std::size_t input, Target target, std::size_t index, double factor, double origin) {
        effects_->push_back({input, target, index, factor, origin});
    }

    /// "water (wash)", or "water (wash, 2 of 3)" where the route charges it so several times.
    std::string name_of(const Charge& charge) const {
        std::size_t all = 0, number = 0;
        for (const Step& step : route_->route().steps)
            for (const Stage& stage : step.stages)
                for (const Charge& other : stage.charges)
                    if (other.material == charge.material && other.role == charge.role) {
                        ++all;
                        if (&other == &charge) number = all;
                    }
        return all == 1
                   ? fmt::format("{} ({})", charge.material->name, charge.role->name)
                   : fmt::format("{} ({}, {} of {})", charge.material->name, charge.role->name, number, all);
    }

    /// Of charges and isolated products, by their pointers.
    std::vector<std::string> names_of(const std::vector<std::string>& pointers) const {
        std::vector<std::string> names;
        for (const std::string& pointer : pointers)
            for (const Step& step : route_->route().steps) {
                if (step.isolated.pointer == pointer) names.push_back("yield of " + step.id);
                for (const Stage& stage : step.stages)
                    for (const Charge& charge : stage.charges)
                        if (charge.pointer == pointer) names.push_back(name_of(charge));
            }
        return names;
    }

    void add_charges() {
        const FlatRoute& flat = route_->flat();
        int slot = -1;
        for (const Inflow& inflow : flat.inflows()) {
            if (inflow.slot == slot) continue; // a further component of the same charge
            slot = inflow.slot;
            const Step& step = route_->route().steps[at(inflow.step)];
            const Charge& charge = step.stages[at(inflow.stage)].charges[at(inflow.charge)];
            const double grams = flat.nominal().charged[at(slot)];
            const std::string what = name_of(charge);
            if (charge.spread)
                add_stated(what, *charge.spread, charge.pointer, Target::charged, at(slot), grams);
            else if (charge.instrument && grams > 0.0)
                add_measured(*charge.instrument, Target::charged, at(slot), grams,
                             charge.instrument->weighs ? 1.0 : *charge.material->density,
                             charge.amount.repeat, what);
        }
    }

    /// A spread over the value as written. Correlated ones are mixed from independent quantities.
    void add_stated(const std::string& what, const Distribution& spread, const std::string& pointer,
                    Target target, std::size_t index, double nominal) {
        const CorrelatedInputs& correlated = route_->route().correlated;
        const auto found = std::find(correlated.pointers.begin(), correlated.pointers.end(), pointer);
        if (found == correlated.pointers.end()) {
            add_effect(add_input(prefix_ + what, spread), target, index, nominal, 1.0);
            return;
        }
        const auto row = static_cast<std::size_t>(found - correlated.pointers.begin());
        for (std::size_t k = 0; k <= row; ++k) {
            const double part = correlated.factor[row][k];
            if (part == 0.0) continue;
            const std::string name =
                fmt::format("{}{}, correlated: part {} of {}", prefix_, listed(names_of(correlated.pointers)),
                            k + 1, correlated.pointers.size());
            const std::string key = fmt::format("{} correlated {}", route_->route().id, k);
            add_effect(shared_input(key, name, Normal{0.0, 1.0}), target, index,
                       nominal * spread.deviation() * part, 0.0);
        }
    }

    /// \param density  g for one unit of what the instrument measures
    void add_measured(const Instrument& instrument, Target target, std::size_t index, double grams,
                      double density, int portions, const std::string& what) {
        const double measured = grams / density;
        const double fillings =
            std::max(static_cast<double>(portions), std::ceil(measured / instrument.capacity));
        if (const double deviation = instrument.reading_deviation(); deviation > 0.0)
            add_effect(
                add_input(fmt::format("{}{}, {}", prefix_, what, instrument.weighs ? "weighing" : "reading"),
                          Normal{0.0, std::sqrt(fillings) * deviation}),
                target, index, density, 0.0);
        const std::string own = instrument.name + ", its own error";
        if (const double tolerance = instrument.tolerance; tolerance > 0.0)
            add_effect(shared_input(instrument.id, own, Rectangular{-tolerance, tolerance}), target, index,
                       fillings * density, 0.0);
        if (const double share = instrument.relative_tolerance; share > 0.0)
            add_effect(shared_input(instrument.id + " %", own, Rectangular{-share, share}), target, index,
                       grams, 0.0);
    }

    void add_bottles() {
        for (const Bottle& bottle : route_->route().bottles) {
            if (!bottle.spread) continue;
            const double nominal = bottle.material->component_of(*bottle.of)->mass_fraction;
            const std::size_t input = shared_input(
                fmt::format("{} {} {} {} {}", bottle.material->id, bottle.of->id, bottle.spread->name(),
                            bottle.spread->mean(), bottle.spread->deviation()),
                fmt::format("strength of {}", bottle.material->name), *bottle.spread);
            const auto inflows = route_->flat().inflows();
            for (std::size_t i = 0; i < inflows.size(); ++i) {
                const Charge& charge = route_->route()
                                           .steps[at(inflows[i].step)]
                                           .stages[at(inflows[i].stage)]
                                           .charges[at(inflows[i].charge)];
                if (charge.material != bottle.material) continue;
                // What the component gains the others lose, in proportion.
                const double factor = inflows[i].substance == bottle.of
                                          ? nominal
                                          : -nominal * inflows[i].fraction / (1.0 - nominal);
                add_effect(input, Target::fraction, i, factor, 1.0);
            }
        }
    }

    const FoundYields* found_for(int step) const {
        const auto found =
            std::find_if(options_.found.begin(), options_.found.end(), [&](const FoundYields& entry) {
                return entry.route == route_->route().id &&
                       (entry.step < 0 ? route_->flat().final_step() : entry.step) == step;
            });
        return found == options_.found.end() ? nullptr : &*found;
    }

    void add_isolated() {
        const Route& route = route_->route();
        for (std::size_t s = 0; s < route.steps.size(); ++s) {
            const Isolated& isolated = route.steps[s].isolated;
            const double nominal = route_->flat().nominal().isolated[s];
            const std::string what = route.steps.size() > 1 ? fmt::format("yield of {}", route.steps[s].id)
                                                            : std::string("isolated yield");
            if (const FoundYields* found = found_for(static_cast<int>(s))) {
                add_effect(add_input(prefix_ + what, Empirical{found->yields}), Target::isolated, s, 1.0,
                           nominal);
                continue;
            }
            if (isolated.spread)
                add_stated(what, *isolated.spread, isolated.pointer, Target::isolated, s, nominal);
            else if (isolated.instrument)
                add_measured(*isolated.instrument, Target::isolated, s, nominal, 1.0, 1, "product");
            else if (isolated.assumed && options_.assumed_yield_half_width > 0.0 && isolated.yield) {
                const double half = options_.assumed_yield_half_width;
                const double low = std::max(std::min(0.01, nominal), nominal - half),
                             high = std::min(1.0, nominal + half);
                add_effect(add_input(fmt::format("{}{}, assumed, {:.4g} to {:.4g} %", prefix_, what,
                                                 100.0 * low, 100.0 * high),
                                     Rectangular{low, high}),
                           Target::isolated, s, 1.0, nominal);
            }
            if (isolated.assumed) assumed_->push_back(static_cast<int>(s));
        }
    }

    void add_reuse() {
        const Route& route = route_->route();
        for (std::size_t r = 0; r < route.reuse.size(); ++r)
            if (const auto& spread = route.reuse[r].spread)
                add_effect(add_input(fmt::format("{}recovery of {}", prefix_, route.reuse[r].substance->name),
                                     *spread),
                           Target::reused, r, route.reuse[r].fraction, 1.0);
    }

    /// The tables state an interval; where in it the weight lies nobody knows, hence rectangular
    /// (EURACHEM/CITAC CG 4, example A2).
    void add_elements() {
        result_.elements = options_.elements;
        result_.first_element = result_.inputs.size();
        for (const ElementEffect& effect : options_.elements) {
            const double half = element_weight_uncertainty(effect.element);
            add_input(fmt::format("atomic weight of {}", element_name(effect.element)),
                      Rectangular{-half, half});
        }
    }

    const std::vector<const Assessment*>& routes_;
    const UncertaintyOptions& options_;
    UncertainInputs result_;
    std::map<std::string, std::size_t> shared_;
    // of the route that is being compiled
    const Assessment* route_ = nullptr;
    std::vector<InputEffect>* effects_ = nullptr;
    std::vector<int>* assumed_ = nullptr;
    std::string prefix_;
};

Problem wrong(std::string message) {
    return {Severity::error, std::move(message), {}, {}, {}};
}

void check_found(const std::vector<const Assessment*>& routes, const FoundYields& found) {
    const auto route = std::find_if(routes.begin(), routes.end(), [&](const Assessment* candidate) {
        return candidate->route().id == found.route;
    });
    if (route == routes.end())
        throw InputError(
            wrong(fmt::format("results are given for \"{}\", and no route is called so", found.route)));
    if (found.yields.empty())
        throw InputError(wrong(fmt::format("there are no results for \"{}\"", found.route)));
    const FlatRoute& flat = (*route)->flat();
    const int step = found.step < 0 ? flat.final_step() : found.step;
    const bool mass = flat.steps()[at(step)].isolated_is_mass;
    for (const double yield : found.yields)
        if (!(yield > 0.0) || (!mass && yield > 1.0))
            throw InputError(wrong(fmt::format(
                "a result for \"{}\" is {:g} {}: it must lie above 0{}", found.route,
                mass ? yield : 100.0 * yield, mass ? "g" : "%",
                mass ? "" : " and not above 100 %; look for a wet or impure product, or a wrong mass")));
}

} // namespace

UncertainInputs uncertain_inputs(const std::vector<const Assessment*>& routes,
                                 const UncertaintyOptions& options) {
    for (const FoundYields& found : options.found)
        check_found(routes, found);
    return Compiler(routes, options).run();
}

template<Number N>
N apply(const std::vector<InputEffect>& effects, const InputsOf<N>& nominal, std::span<const N> x,
        const FlatRoute& route, InputsOf<N>& inputs) {
    inputs = nominal; // the same sizes each time, so nothing is allocated
    const auto array = [&](Target target) -> std::vector<N>& {
        switch (target) {
        case Target::charged:
            return inputs.charged;
        case Target::fraction:
            return inputs.fractions;
        case Target::isolated:
            return inputs.isolated;
        case Target::reused:
            break;
        }
        return inputs.reused;
    };
    for (const InputEffect& effect : effects)
        array(effect.target)[effect.index] += effect.factor * (x[effect.input] - effect.origin);
    N held = 0.0;
    for (const InputEffect& effect : effects) {
        N& value = array(effect.target)[effect.index];
        // A pot without any product has no figure per gram of it, hence not quite nothing.
        const N least = effect.target == Target::isolated ? 1e-6 * nominal.isolated[effect.index] : N(0.0);
        const bool share =
            effect.target == Target::fraction || effect.target == Target::reused ||
            (effect.target == Target::isolated && !route.steps()[effect.index].isolated_is_mass);
        N kept = greater(value, least);
        if (share) kept = lesser(kept, N(1.0));
        held += choose(kept == value, N(0.0), N(1.0));
        value = kept;
    }
    return held;
}

template double apply(const std::vector<InputEffect>&, const InputsOf<double>&, std::span<const double>,
                      const FlatRoute&, InputsOf<double>&);
template Lanes apply(const std::vector<InputEffect>&, const InputsOf<Lanes>&, std::span<const Lanes>,
                     const FlatRoute&, InputsOf<Lanes>&);

} // namespace routeweigh
