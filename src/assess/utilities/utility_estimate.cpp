// SPDX-License-Identifier: MIT
#include "assess/utilities/utility_estimate.hpp"

#include "assess/pot_contents.hpp"
#include "base/index.hpp"

#include <algorithm>
#include <array>
#include <map>
#include <string_view>

namespace routeweigh::utilities {
namespace {

struct ById {
    bool operator()(const Substance* a, const Substance* b) const { return a->id < b->id; }
};

/// What was charged to the pot since it was last emptied: g of each substance.
using Content = std::map<const Substance*, double, ById>;

/// Statements that send a stage into the hood, where what carries them is liquid or gas; the worst to breathe
/// first. Common practice, no source.
constexpr std::array<std::string_view, 8> hood_statements{"H330", "H331", "H334", "H314",
                                                          "H332", "H335", "H224", "H225"};
constexpr double least_free_bromine = 0.01; ///< g; our line

/// Place of its worst statement in the list; the length of the list where it has none of them.
std::size_t hood_rank(const Substance& substance) {
    std::size_t rank = hood_statements.size();
    for (const GhsEntry& entry : substance.ghs)
        for (std::size_t i = 0; i < rank; ++i)
            if (entry.statement.substr(0, 4) == hood_statements[i]) rank = i;
    return rank;
}

/// Bromine that reactions set free was charged by nobody and goes before all that was; of the rest the worst.
/// \param bromine  g free at one time
std::string hood_reason(const Content& content, double bromine) {
    if (bromine >= least_free_bromine) return "bromine";
    const Substance* worst = nullptr;
    for (const auto& [substance, grams] : content)
        if (grams > 0.0 && substance->phase != Substance::Phase::solid &&
            hood_rank(*substance) < (worst != nullptr ? hood_rank(*worst) : hood_statements.size()))
            worst = substance;
    return worst != nullptr ? worst->name : std::string();
}

/// kJ to bring the content and its glass from the temperature of the room to that of the stage.
double sensible_heat(const Content& content, double rise, const UtilityData& data) {
    double joules_per_kelvin = 0.0, millilitres = 0.0;
    for (const auto& [substance, grams] : content) {
        joules_per_kelvin += grams * data.heat_capacity(*substance);
        if (substance->phase == Substance::Phase::liquid)
            millilitres += grams / substance->density.value_or(1.0);
    }
    joules_per_kelvin += millilitres * data.glass_mass.value * data.glass_heat.value;
    return joules_per_kelvin * rise / 1000.0;
}

bool is_suction(const Separation& separation) {
    return separation.by == SeparationMethod::filtration;
}

/// kJ to boil off what a heated stage sends away as vapour or distillate; its streams must be fed by it
/// alone.
double latent_heat(const FlatRoute& flat, const Evaluation& evaluation, int step, const Stage& stage,
                   const UtilityData& data) {
    double heat = 0.0;
    for (const Separation& separation : stage.separations) {
        if (!boils_off(separation)) continue;
        for (const FlatStream& stream : flat.streams()) {
            if (stream.step != step || stream.name != separation.to) continue;
            const FlatStep& pot = flat.steps()[at(step)];
            for (std::size_t s = 0; s < pot.substances.size(); ++s)
                if (const LiquidHeat* liquid = data.find(*pot.substances[s]))
                    heat += evaluation.out[at(stream.first_outflow) + s] / evaluation.steps[at(step)].scale *
                            liquid->vaporisation / 1000.0;
        }
    }
    return heat;
}

double kilojoules(const Sourced<double>& watts, double minutes) {
    return watts.value * minutes * 60.0 / 1000.0;
}

Estimate stated(double value) {
    return {value, value, value, true};
}

Estimate flow(const Flow& flow, double minutes) {
    return {flow.usual.value * minutes, flow.low * minutes, flow.high * minutes, false};
}

StageUse use_of(const FlatRoute& flat, const Evaluation& evaluation, int step, int index,
                const Content& content, const PotContents& pot, const UtilityData& data) {
    const Stage& stage = flat.route().steps[at(step)].stages[at(index)];
    StageUse use;
    use.step = step;
    use.stage = index;
    if (stage.time) use.minutes = stage.time->in(unit::min);
    use.hood_because = hood_reason(content, free_bromine_grams(flat, evaluation, step, stage));
    use.hood = !use.hood_because.empty();
    const double minutes = use.minutes.value_or(0.0);
    const double temperature = stage.temperature ? stage.temperature->celsius() : data.room.value;
    use.heated = temperature > data.heated_above.value;
    if (use.heated) {
        use.floor = sensible_heat(content, temperature - data.room.value, data) +
                    latent_heat(flat, evaluation, step, stage, data);
        const double drawn = kilojoules(data.hot_plate, minutes);
        use.socket = {drawn, drawn * (1.0 - data.band.value), drawn * (1.0 + data.band.value), false};
        use.raised = use.socket.low < use.floor;
        for (double* energy : {&use.socket.usual, &use.socket.low, &use.socket.high})
            *energy = std::max(*energy, use.floor);
    }
    if (const Substance* liquid = needs_condenser(stage, pot, data.reflux_within.value)) {
        use.condenses = liquid->name;
        use.reflux = !boils_off(stage);
        use.cooling = flow(data.cooling, minutes);
        use.circulation_pump = kilojoules(data.circulation_pump, minutes);
    }
    if (stage.energy) {
        use.socket = stated(stage.energy->in(unit::kJ));
        use.raised = false;
        use.below_floor = use.socket.usual < use.floor;
    }
    if (stage.cooling_water) use.cooling = stated(stage.cooling_water->in(unit::L));
    const auto filtrations = std::count_if(stage.separations.begin(), stage.separations.end(), is_suction);
    const double suction_minutes = data.suction_minutes.value * static_cast<double>(filtrations);
    use.suction = flow(data.suction, suction_minutes);
    use.diaphragm_pump = kilojoules(data.diaphragm_pump, suction_minutes);
    return use;
}

} // namespace

Estimate& Estimate::operator+=(const Estimate& other) {
    usual += other.usual;
    low += other.low;
    high += other.high;
    return *this;
}

Estimate Estimate::times(double factor) const {
    return {usual * factor, low * factor, high * factor, stated};
}

RouteUse estimate_use(const FlatRoute& flat, const Evaluation& evaluation, const UtilityData& data) {
    RouteUse whole;
    for (std::size_t s = 0; s < flat.steps().size(); ++s) {
        const int step = static_cast<int>(s);
        const double scale = evaluation.steps[s].scale;
        const std::vector<Stage>& stages = flat.route().steps[s].stages;
        const std::vector<PotContents> pots =
            contents_of(flat, flat.nominal(), step, flat.extents(step, flat.nominal()));
        Content content;
        for (std::size_t g = 0; g < stages.size(); ++g) {
            for (const Inflow& inflow : flat.inflows())
                if (inflow.step == step && inflow.stage == static_cast<int>(g) && !inflow.as_used)
                    content[inflow.substance] += flat.nominal().charged[at(inflow.slot)] * inflow.fraction;
            StageUse use = use_of(flat, evaluation, step, static_cast<int>(g), content, pots[g], data);
            whole.floor += use.floor * scale;
            whole.socket += use.socket.times(scale);
            whole.cooling += use.cooling.times(scale);
            whole.suction += use.suction.times(scale);
            whole.circulation_pump += use.circulation_pump * scale;
            whole.diaphragm_pump += use.diaphragm_pump * scale;
            whole.minutes += use.minutes.value_or(0.0);
            if (use.hood) whole.hood_minutes += use.minutes.value_or(0.0);
            if (!use.minutes) ++whole.silent_stages;
            whole.stages.push_back(std::move(use));
            if (std::any_of(stages[g].separations.begin(), stages[g].separations.end(),
                            [](const Separation& separation) { return !separation.gives_vapour(); }))
                content.clear();
        }
    }
    return whole;
}

} // namespace routeweigh::utilities
