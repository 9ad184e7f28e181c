// SPDX-License-Identifier: MIT
#include "assess/hazard/hazard_map.hpp"

#include "assess/aqueous_entry.hpp"

#include "assess/input_class.hpp"

#include <algorithm>
#include <array>
#include <map>
#include <set>
#include <utility>

namespace routeweigh {

HazardColumn column_of(HazardPlace place) {
    switch (place) {
    case HazardPlace::bottle:
        return HazardColumn::bottle;
    case HazardPlace::flask:
        return HazardColumn::flask;
    case HazardPlace::waste:
        return HazardColumn::waste;
    case HazardPlace::product:
        break;
    }
    return HazardColumn::product;
}

bool holds_water(const FlatStep& step) {
    return std::any_of(step.substances.begin(), step.substances.end(),
                       [](const Substance* substance) { return is_water(*substance); });
}

std::set<const Substance*> substances_beside_water(const FlatRoute& route) {
    std::set<const Substance*> result;
    for (const FlatStep& step : route.steps())
        if (holds_water(step)) result.insert(step.substances.begin(), step.substances.end());
    return result;
}

// Finds where each substance is met, and keeps only those that add something somewhere.
class HazardMapCompiler {
  public:
    HazardMapCompiler(HazardMap& map, const FlatRoute& route) : map_(map), route_(route) {
        add_bottles();
        add_flasks();
        add_streams();
        const FlatStep& last = route.steps()[static_cast<std::size_t>(route.final_step())];
        map_.product_ = carrier(entry_neat(*last.substances[static_cast<std::size_t>(last.product)]));
        compile();
    }

  private:
    static HazardEntry entry_beside(const Substance& substance, bool water) {
        return water ? entry_in_water(substance) : entry_neat(substance);
    }

    /// As the label of the bottle has it.
    bool in_water(const Inflow& inflow) const {
        const auto at = [](int index) { return static_cast<std::size_t>(index); };
        const Step& step = route_.route().steps[at(inflow.step)];
        const Charge& charge = step.stages[at(inflow.stage)].charges[at(inflow.charge)];
        double water = 0.0;
        for (const Component& part : charge.material->components)
            if (is_water(*part.substance)) water += part.mass_fraction;
        return dissolves_in(water, *inflow.substance, inflow.fraction);
    }

    std::size_t carrier(const HazardEntry& entry) {
        const auto [found, fresh] =
            numbers_.try_emplace({entry.substance, entry.solution}, map_.carriers_.size());
        if (fresh) map_.carriers_.push_back(entry);
        return found->second;
    }

    // What another step makes was in no bottle, nor what the air gave.
    void add_bottles() {
        const auto inflows = route_.inflows();
        for (std::size_t i = 0; i < inflows.size(); ++i) {
            const Inflow& inflow = inflows[i];
            if (inflow.fed_by >= 0 || inflow.as_used) continue;
            map_.bottle_.push_back({i, carrier(entry_beside(*inflow.substance, in_water(inflow)))});
        }
    }

    // The flask counts the most of a substance over all pots, so it has one entry: that of its solution where
    // one of these pots has water in it.
    void add_flasks() {
        const std::set<const Substance*> beside_water = substances_beside_water(route_);
        for (const FlatStep& step : route_.steps())
            for (std::size_t s = 0; s < step.substances.size(); ++s)
                map_.flask_.push_back(
                    {static_cast<std::size_t>(step.first_flask) + s,
                     carrier(entry_beside(*step.substances[s], beside_water.contains(step.substances[s])))});
    }

    void add_streams() {
        for (const FlatStream& stream : route_.streams()) {
            const bool gas = stream.kind == StreamKind::gas || stream.kind == StreamKind::vapour;
            const FlatStep& step = route_.steps()[static_cast<std::size_t>(stream.step)];
            for (std::size_t s = 0; s < step.substances.size(); ++s)
                map_.waste_.push_back(
                    {static_cast<std::size_t>(stream.first_outflow) + s,
                     carrier(entry_beside(*step.substances[s], !gas && holds_water(step)))});
        }
    }

    void compile() {
        const std::vector<EndpointRule>& endpoints = map_.scheme_->endpoints;
        const std::size_t all = map_.carriers_.size();
        std::vector<HazardContribution> found(endpoints.size() * all);
        std::vector<std::size_t> renumbered(all, dropped);
        std::vector<HazardEntry> kept;
        for (std::size_t c = 0; c < all; ++c) {
            bool counts = false;
            for (std::size_t e = 0; e < endpoints.size(); ++e) {
                HazardContribution& cell = found[e * all + c];
                cell = map_.contribution(e, c);
                counts = counts || cell.counts();
            }
            if (!counts) continue;
            renumbered[c] = kept.size();
            kept.push_back(map_.carriers_[c]);
        }
        for (std::size_t e = 0; e < endpoints.size(); ++e) {
            for (std::size_t c = 0; c < all; ++c) {
                if (renumbered[c] == dropped) continue;
                const HazardContribution& cell = found[e * all + c];
                add_term(map_.low_, renumbered[c], cell.low);
                add_term(map_.extra_, renumbered[c], cell.high - cell.low);
                add_term(map_.short_term_, renumbered[c], cell.short_term);
            }
            for (HazardMap::Rows* rows : {&map_.low_, &map_.extra_, &map_.short_term_})
                rows->first.push_back(rows->terms.size());
        }
        for (std::size_t e = 0; e < endpoints.size(); ++e)
            map_.of_product_.push_back(found[e * all + map_.product_]);
        map_.product_ = renumbered[map_.product_] == dropped ? kept.size() : renumbered[map_.product_];
        map_.carriers_ = std::move(kept);
        for (std::vector<HazardMap::Pick>* list : {&map_.bottle_, &map_.flask_, &map_.waste_}) {
            for (HazardMap::Pick& pick : *list)
                pick.carrier = renumbered[pick.carrier];
            std::erase_if(*list, [](const HazardMap::Pick& pick) { return pick.carrier == dropped; });
        }
    }

    static void add_term(HazardMap::Rows& rows, std::size_t carrier, double per_gram) {
        if (per_gram > 0.0) rows.terms.push_back({carrier, per_gram});
    }

    static constexpr std::size_t dropped = static_cast<std::size_t>(-1);

    HazardMap& map_;
    const FlatRoute& route_;
    std::map<std::pair<const Substance*, bool>, std::size_t> numbers_; // of carriers, by entry
};

HazardMap::HazardMap(const FlatRoute& route, const HazardScheme& scheme, const Banding& banding)
    : scheme_(&scheme), banding_(&banding) {
    HazardMapCompiler(*this, route);
}

HazardContribution HazardMap::contribution(std::size_t endpoint, std::size_t carrier) const {
    const EndpointRule& rule = scheme_->endpoints[endpoint];
    return rule.family->contribution(rule, carriers_[carrier], *scheme_, *banding_);
}

template<Number N>
void HazardMap::gather(const EvaluationOf<N>& evaluation, std::vector<N>& grams) const {
    grams.assign(carriers_.size() * varying_columns, N(0.0));
    const auto column = [](HazardColumn which) { return static_cast<std::size_t>(which); };
    for (const Pick& pick : bottle_)
        grams[pick.carrier * varying_columns + column(HazardColumn::bottle)] += evaluation.in[pick.from];
    // Of all steps the one that holds most of the substance: the pots need not stand there at the same time.
    for (const Pick& pick : flask_) {
        N& most = grams[pick.carrier * varying_columns + column(HazardColumn::flask)];
        most = greater(most, evaluation.flask[pick.from]);
    }
    for (const Pick& pick : waste_) {
        N* const carrier = grams.data() + pick.carrier * varying_columns;
        carrier[column(HazardColumn::waste)] += evaluation.out[pick.from];
        carrier[column(HazardColumn::waste_unreacted)] += evaluation.out_unreacted[pick.from];
    }
    const N per_gram = 1.0 / evaluation.product;
    for (N& value : grams) {
        value *= per_gram;
        value = choose(value <= N(absent_below), N(0.0), value);
    }
}

template<Number N>
void HazardMap::evaluate(const EvaluationOf<N>& evaluation, HazardValuesOf<N>& values) const {
    gather(evaluation, values.grams);
    const std::size_t cells = scheme_->cell_count();
    for (std::vector<N>* array : {&values.value, &values.low, &values.high, &values.short_term})
        array->resize(cells);

    using Columns = std::array<N, varying_columns>;
    // An unbounded figure times no grams is nothing, not a number that is none.
    const auto sum = [&](const Rows& rows, std::size_t e, bool may_be_infinite) {
        Columns total;
        total.fill(0.0);
        for (std::size_t t = rows.first[e]; t < rows.first[e + 1]; ++t) {
            const Rows::Term& term = rows.terms[t];
            const N* const grams = values.grams.data() + term.carrier * varying_columns;
            for (std::size_t c = 0; c < varying_columns; ++c)
                total[c] += may_be_infinite ? choose(grams[c] > N(0.0), grams[c] * term.per_gram, N(0.0))
                                            : grams[c] * term.per_gram;
        }
        return total;
    };
    const auto set = [&](std::size_t cell, const N& low, const N& high, const N& short_term) {
        values.value[cell] = values.low[cell] = low;
        values.high[cell] = high;
        values.short_term[cell] = short_term;
    };
    constexpr auto other = static_cast<std::size_t>(HazardColumn::waste_unreacted);
    for (std::size_t e = 0; e < scheme_->endpoints.size(); ++e) {
        const Columns low = sum(low_, e, false), extra = sum(extra_, e, true),
                      labelled = sum(short_term_, e, false);
        for (const HazardPlace place : {HazardPlace::bottle, HazardPlace::flask, HazardPlace::waste}) {
            const auto c = static_cast<std::size_t>(column_of(place));
            set(cell_index(e, place), low[c], low[c] + extra[c], labelled[c]);
        }
        const std::size_t waste = cell_index(e, HazardPlace::waste);
        values.low[waste] = lesser(values.low[waste], low[other]);
        values.high[waste] = greater(values.high[waste], low[other] + extra[other]);

        const HazardContribution& product = of_product_[e];
        set(cell_index(e, HazardPlace::product), product.low, product.high, product.short_term);
    }
}

template void HazardMap::evaluate(const EvaluationOf<double>&, HazardValuesOf<double>&) const;
template void HazardMap::evaluate(const EvaluationOf<Lanes>&, HazardValuesOf<Lanes>&) const;

HazardValues HazardMap::evaluate(const Evaluation& evaluation) const {
    HazardValues values;
    evaluate(evaluation, values);
    return values;
}

} // namespace routeweigh
