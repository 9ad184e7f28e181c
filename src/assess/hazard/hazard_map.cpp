// SPDX-License-Identifier: MIT
#include "assess/hazard/hazard_map.hpp"

#include <algorithm>

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
    std::size_t carrier(const HazardEntry& entry) {
        const auto found = std::find(map_.carriers_.begin(), map_.carriers_.end(), entry);
        if (found != map_.carriers_.end()) return static_cast<std::size_t>(found - map_.carriers_.begin());
        map_.carriers_.push_back(entry);
        return map_.carriers_.size() - 1;
    }

    // What another step makes was in no bottle, nor what the air gave.
    void add_bottles() {
        const auto inflows = route_.inflows();
        for (std::size_t i = 0; i < inflows.size(); ++i) {
            const Inflow& inflow = inflows[i];
            if (inflow.fed_by >= 0 || inflow.as_used) continue;
            map_.bottle_.push_back({i, carrier(inflow.neat ? entry_neat(*inflow.substance)
                                                           : entry_in_solution(*inflow.substance))});
        }
    }

    void add_flasks() {
        for (const FlatStep& step : route_.steps())
            for (std::size_t s = 0; s < step.substances.size(); ++s)
                map_.flask_.push_back({static_cast<std::size_t>(step.first_flask) + s,
                                       carrier(entry_in_solution(*step.substances[s]))});
    }

    void add_streams() {
        for (const FlatStream& stream : route_.streams()) {
            const bool gas = stream.kind == StreamKind::gas || stream.kind == StreamKind::vapour;
            const FlatStep& step = route_.steps()[static_cast<std::size_t>(stream.step)];
            for (std::size_t s = 0; s < step.substances.size(); ++s)
                map_.waste_.push_back({static_cast<std::size_t>(stream.first_outflow) + s,
                                       carrier(gas ? entry_neat(*step.substances[s])
                                                   : entry_in_solution(*step.substances[s]))});
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
                cell = endpoints[e].family->contribution(endpoints[e], map_.carriers_[c], *map_.scheme_,
                                                         *map_.banding_);
                counts = counts || cell.counts();
            }
            if (!counts) continue;
            renumbered[c] = kept.size();
            kept.push_back(map_.carriers_[c]);
        }
        for (std::size_t e = 0; e < endpoints.size(); ++e) {
            map_.first_term_.push_back(map_.terms_.size());
            for (std::size_t c = 0; c < all; ++c) {
                if (renumbered[c] == dropped) continue;
                const HazardContribution& cell = found[e * all + c];
                map_.contributions_.push_back(cell);
                if (cell.high > 0 || cell.short_term > 0)
                    map_.terms_.push_back({renumbered[c], cell.low, cell.high - cell.low, cell.short_term});
            }
        }
        map_.first_term_.push_back(map_.terms_.size());
        map_.carriers_ = std::move(kept);
        map_.product_ =
            renumbered[map_.product_] == dropped ? map_.carriers_.size() : renumbered[map_.product_];
        for (std::vector<HazardMap::Pick>* list : {&map_.bottle_, &map_.flask_, &map_.waste_}) {
            for (HazardMap::Pick& pick : *list)
                pick.carrier = renumbered[pick.carrier];
            std::erase_if(*list, [](const HazardMap::Pick& pick) { return pick.carrier == dropped; });
        }
    }

    static constexpr std::size_t dropped = static_cast<std::size_t>(-1);

    HazardMap& map_;
    const FlatRoute& route_;
};

HazardMap::HazardMap(const FlatRoute& route, const HazardScheme& scheme, const Banding& banding)
    : scheme_(&scheme), banding_(&banding) {
    HazardMapCompiler(*this, route);
}

void HazardMap::gather(const Evaluation& evaluation, std::vector<double>& grams) const {
    const std::size_t count = carriers_.size();
    grams.assign(column_count * count, 0.0);
    const auto column = [&](HazardColumn which) {
        return grams.data() + static_cast<std::size_t>(which) * count;
    };
    double* const bottle = column(HazardColumn::bottle);
    double* const flask = column(HazardColumn::flask);
    double* const waste = column(HazardColumn::waste);
    double* const unreacted = column(HazardColumn::waste_unreacted);
    for (const Pick& pick : bottle_)
        bottle[pick.carrier] += evaluation.in[pick.from];
    // Of all steps the one that holds most of the substance: the pots need not stand there at the same time.
    for (const Pick& pick : flask_)
        flask[pick.carrier] = std::max(flask[pick.carrier], evaluation.flask[pick.from]);
    for (const Pick& pick : waste_) {
        waste[pick.carrier] += evaluation.out[pick.from];
        unreacted[pick.carrier] += evaluation.out_unreacted[pick.from];
    }
    const double per_gram = 1.0 / evaluation.product;
    for (double& value : grams) {
        value *= per_gram;
        if (value <= absent_below) value = 0.0;
    }
    if (product_ < count) column(HazardColumn::product)[product_] = 1.0;
}

void HazardMap::evaluate(const Evaluation& evaluation, HazardValues& values) const {
    gather(evaluation, values.grams);
    const std::size_t cells = scheme_->cell_count();
    for (std::vector<double>* array : {&values.value, &values.low, &values.high, &values.short_term})
        array->resize(cells);
    const std::size_t count = carriers_.size();
    for (std::size_t e = 0; e < scheme_->endpoints.size(); ++e) {
        double low[column_count] = {}, high[column_count] = {}, short_term[column_count] = {};
        for (std::size_t t = first_term_[e]; t < first_term_[e + 1]; ++t) {
            const Term& term = terms_[t];
            for (std::size_t c = 0; c < column_count; ++c) {
                const double mass = values.grams[c * count + term.carrier];
                if (mass == 0.0) continue; // also keeps nothing of an unbounded substance from becoming NaN
                low[c] += mass * term.low;
                high[c] += mass * term.extra;
                short_term[c] += mass * term.short_term;
            }
        }
        for (std::size_t p = 0; p < place_count; ++p) {
            const HazardPlace place = static_cast<HazardPlace>(p);
            const std::size_t cell = cell_index(e, place);
            const std::size_t c = static_cast<std::size_t>(column_of(place));
            values.value[cell] = values.low[cell] = low[c];
            values.high[cell] = low[c] + high[c];
            values.short_term[cell] = short_term[c];
            if (place == HazardPlace::waste) {
                const std::size_t other = static_cast<std::size_t>(HazardColumn::waste_unreacted);
                values.low[cell] = std::min(low[c], low[other]);
                values.high[cell] = std::max(low[c] + high[c], low[other] + high[other]);
            }
        }
    }
}

HazardValues HazardMap::evaluate(const Evaluation& evaluation) const {
    HazardValues values;
    evaluate(evaluation, values);
    return values;
}

} // namespace routeweigh
