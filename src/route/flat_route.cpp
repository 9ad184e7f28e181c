// SPDX-License-Identifier: MIT
#include "route/flat_route.hpp"

#include "base/index.hpp"

#include <algorithm>
#include <cmath>
#include <cstddef>

namespace routeweigh {
namespace {

/// What an evaluation works with; a thread keeps its own so that evaluation does not allocate.
struct Pot {
    std::vector<double> amounts, before;
};
struct Scale {
    std::vector<double> ratios, runs;
};

Pot& pot_of_this_thread(std::size_t size) {
    thread_local Pot pot;
    pot.amounts.assign(size, 0.0);
    pot.before.resize(size);
    return pot;
}

} // namespace

double FlatSeparation::share_leaving(std::span<const double> amounts,
                                     std::span<const double> molar_mass) const {
    if (held == 0.0) return 1.0;
    double liquor = 0.0, kept = 0.0;
    for (std::size_t s = 0; s < leaves.size(); ++s) {
        const double mass = amounts[s] * molar_mass[s];
        liquor += mass * leaves[s];
        kept += mass * (1.0 - leaves[s]);
    }
    return liquor > 0.0 ? std::max(0.0, 1.0 - held * kept / liquor) : 0.0;
}

std::span<const Inflow> FlatRoute::inflows_of(int step) const {
    const std::vector<FlatStage>& stages = steps_[at(step)].stages;
    return inflows().subspan(at(stages.front().first_inflow),
                             at(stages.back().last_inflow - stages.front().first_inflow));
}

Evaluation FlatRoute::evaluate(const Inputs& inputs) const {
    Evaluation result;
    evaluate(inputs, result);
    return result;
}

void FlatRoute::evaluate(const Inputs& inputs, Evaluation& result) const {
    result.steps.assign(steps_.size(), {});
    result.in.resize(inflows_.size());
    result.credit.assign(inflows_.size(), 0.0);
    result.out.assign(at(outflow_count_), 0.0);
    result.out_unreacted.assign(at(outflow_count_), 0.0);
    result.flask.assign(at(flask_count_), 0.0);
    result.recovered.assign(reuse_.size(), 0.0);
    for (std::size_t i = 0; i < inflows_.size(); ++i)
        result.in[i] = inputs.charged[at(inflows_[i].slot)] * inputs.fractions[i];
    for (std::size_t step = 0; step < steps_.size(); ++step)
        run_step(static_cast<int>(step), inputs, result);
    scale_and_reuse(inputs, result);
}

void FlatRoute::run_step(int index, const Inputs& inputs, Evaluation& result) const {
    const FlatStep& step = steps_[at(index)];
    StepResult& numbers = result.steps[at(index)];
    if (step.partial_conversion || step.product_reacts)
        numbers.theory = run_pot(index, inputs, Reading::theory, {}, nullptr);
    Limits limits;
    // The loss is needed while the pot is carried through, so what forms is found before, or on the way.
    if (!step.made_in_one) {
        limits.lost =
            isolate(index, inputs, run_pot(index, inputs, Reading::formation, {}, nullptr), numbers);
        if (step.forms_after_loss && limits.lost > 0.0) {
            limits.lost = search(index, inputs, limits, &Limits::lost, -1.0, numbers.isolated);
            numbers.made = numbers.isolated + limits.lost;
        }
    }
    run_pot(index, inputs, Reading::nominal, limits, &result);

    if (numbers.isolated < numbers.made) {
        limits = {.product_cap = numbers.isolated};
        if (step.product_reacts)
            limits.product_cap = search(index, inputs, limits, &Limits::product_cap, 1.0, numbers.isolated);
        run_pot(index, inputs, Reading::unreacted, limits, &result);
    } else {
        const auto first = static_cast<std::ptrdiff_t>(streams_[at(step.first_stream)].first_outflow);
        const auto count = static_cast<std::ptrdiff_t>(at(step.stream_count) * step.substances.size());
        std::copy_n(result.out.begin() + first, count, result.out_unreacted.begin() + first);
    }
}

/// Notes what forms and what of it is isolated. \return mol product lost
double FlatRoute::isolate(int index, const Inputs& inputs, double made, StepResult& numbers) const {
    const FlatStep& step = steps_[at(index)];
    const double given = inputs.isolated[at(index)];
    numbers.made = made;
    if (!step.partial_conversion && !step.product_reacts) numbers.theory = made;
    numbers.isolated =
        step.isolated_is_mass ? given / step.molar_mass[at(step.product)] : given * numbers.theory;
    return numbers.made - numbers.isolated;
}

/// The limit with which the isolated amount is left in the end, where some product reacts on, was there
/// before, or forms after a loss. What is left changes with the limit piece by piece along straight lines, so
/// a secant finds it. \param slope  of what is left over the limit, to begin with
double FlatRoute::search(int index, const Inputs& inputs, Limits limits, double Limits::*member, double slope,
                         double isolated) const {
    const auto excess = [&](double value) {
        limits.*member = value;
        return run_pot(index, inputs, Reading::formation, limits, nullptr) - isolated;
    };
    double value = limits.*member, miss = excess(value);
    for (int round = 0; round < 50 && std::abs(miss) > 1e-14 * isolated; ++round) {
        const double next = std::max(0.0, value - miss / slope);
        if (next == value) break;
        const double next_miss = excess(next);
        if (next_miss != miss) slope = (next_miss - miss) / (next - value);
        value = next;
        miss = next_miss;
    }
    return value;
}

// One walk through the stages, told in the order in which things happen at the bench.
// NOLINTNEXTLINE(readability-function-cognitive-complexity)
double FlatRoute::run_pot(int index, const Inputs& inputs, Reading reading, Limits limits, Evaluation* record,
                          std::vector<std::vector<double>>* extents) const {
    const FlatStep& step = steps_[at(index)];
    const std::size_t size = step.substances.size();
    Pot& pot = pot_of_this_thread(size);
    double* out = nullptr; // of this step
    if (record != nullptr)
        out = (reading == Reading::unreacted ? record->out_unreacted : record->out).data() +
              streams_[at(step.first_stream)].first_outflow;
    const auto leave = [&](int stream, std::size_t local, double moles) {
        pot.amounts[local] -= moles;
        if (out != nullptr) out[at(stream) * size + local] += moles * step.molar_mass[local];
    };
    const std::size_t product = at(step.product);
    double formed = 0.0, theory = 0.0, unlost = limits.lost;
    // No stream takes more product than has formed by then.
    const auto lose = [&](int stream, double moles) {
        if (moles > 0.0) moles = std::min({moles, unlost, std::max(0.0, pot.amounts[product])});
        leave(stream, product, moles);
        unlost -= moles;
    };

    // Where only the product is asked for, nothing that comes after its last change matters.
    const bool product_only = record == nullptr && extents == nullptr && limits.lost == 0.0;
    const std::size_t stages = product_only ? step.stages_to_product : step.stages.size();
    for (std::size_t number = 0; number < stages; ++number) {
        const FlatStage& stage = step.stages[number];
        for (int i = stage.first_inflow; i < stage.last_inflow; ++i) {
            const Inflow& inflow = inflows_[at(i)];
            if (inflow.as_used) continue;
            pot.amounts[at(inflow.local)] +=
                inputs.charged[at(inflow.slot)] * inputs.fractions[at(i)] / step.molar_mass[at(inflow.local)];
        }
        if (reading == Reading::nominal) {
            double* flask = record->flask.data() + step.first_flask;
            for (std::size_t s = 0; s < size; ++s)
                flask[s] = std::max(flask[s], pot.amounts[s] * step.molar_mass[s]);
            for (const FlaskCeiling& entry : stage.ceilings)
                flask[entry.local] =
                    std::max(flask[entry.local], stage.extents.evaluate(entry.ceiling, pot.amounts) *
                                                     step.molar_mass[at(entry.local)]);
            double& bromine = record->steps[at(index)].bromine;
            for (const Extents::Ceiling& held : stage.bromine)
                bromine = std::max(bromine, stage.extents.evaluate(held, pot.amounts));
        }

        const double product_before = pot.amounts[product];
        for (const int gas : stage.forming_gases)
            pot.before[at(gas)] = pot.amounts[at(gas)];
        const Extents& reactions =
            reading == Reading::theory && step.partial_conversion ? stage.full.front() : stage.extents;
        theory += reactions.react(
            pot.amounts, limits.product_cap < 0.0 ? -1.0 : std::max(0.0, limits.product_cap - formed),
            extents ? std::span<double>((*extents)[number]) : std::span<double>());
        formed += pot.amounts[product] - product_before;
        if (reading == Reading::nominal && step.made_in_one && number + 1 == step.stages_to_product)
            limits.lost = unlost = isolate(index, inputs, pot.amounts[product], record->steps[at(index)]);

        if (reading == Reading::nominal) {
            double* flask = record->flask.data() + step.first_flask;
            for (std::size_t s = 0; s < size; ++s)
                flask[s] = std::max(flask[s], pot.amounts[s] * step.molar_mass[s]);
        }
        for (int i = stage.first_inflow; i < stage.last_inflow; ++i) {
            const Inflow& inflow = inflows_[at(i)];
            if (!inflow.as_used) continue; // the air gave what the reactions took
            double& amount = pot.amounts[at(inflow.local)];
            if (reading == Reading::nominal) record->in[at(i)] = -amount * step.molar_mass[at(inflow.local)];
            // What was drawn does not depend on how the loss is read: the rest leaves as it came.
            if (reading == Reading::unreacted) {
                const double grams = amount * step.molar_mass[at(inflow.local)]; // below 0: used
                const double more = std::max(0.0, -grams - record->in[at(i)]);
                record->in[at(i)] += more;
                record->out[at(streams_[at(step.first_stream + step.gas_stream)].first_outflow +
                               inflow.local)] += more;
                amount += record->in[at(i)] / step.molar_mass[at(inflow.local)];
                leave(step.gas_stream, at(inflow.local), amount);
            }
            amount = 0.0;
        }
        for (const int gas : stage.forming_gases)
            leave(step.gas_stream, at(gas), std::max(0.0, pot.amounts[at(gas)] - pot.before[at(gas)]));

        for (const FlatSeparation& separation : stage.separations) {
            if (separation.loss > 0.0) lose(separation.stream, limits.lost * separation.loss);
            const double share = separation.share_leaving(pot.amounts, step.molar_mass);
            for (std::size_t s = 0; s < size; ++s)
                if (separation.leaves[s] > 0.0 && pot.amounts[s] != 0.0)
                    leave(separation.stream, s, pot.amounts[s] * separation.leaves[s] * share);
        }
    }
    if (reading == Reading::theory) return theory;
    if (std::abs(unlost) > 1e-12 * std::abs(limits.lost)) leave(step.rest_stream, product, unlost);
    // Seeds beyond what is isolated, and the rounding of a search.
    if (record != nullptr && (step.product_reacts || step.forms_after_loss))
        leave(step.rest_stream, product, pot.amounts[product] - record->steps[at(index)].isolated);
    for (std::size_t s = 0; s < size; ++s)
        if (s != product && pot.amounts[s] != 0.0) leave(step.rest_stream, s, pot.amounts[s]);
    return pot.amounts[product];
}

void FlatRoute::scale_and_reuse(const Inputs& inputs, Evaluation& result) const {
    if (steps_.size() > 1) {
        const auto feeds = scale_.feeds();
        thread_local Scale scale;
        auto& [ratios, runs] = scale;
        ratios.assign(feeds.size(), 0.0);
        runs.assign(steps_.size(), 0.0);
        for (std::size_t i = 0; i < inflows_.size(); ++i)
            if (const Inflow& inflow = inflows_[i]; inflow.fed_by >= 0) {
                const StepResult& maker = result.steps[at(inflow.fed_by)];
                const double grams =
                    maker.isolated *
                    steps_[at(inflow.fed_by)].molar_mass[at(steps_[at(inflow.fed_by)].product)];
                ratios[at(inflow.feed)] += inputs.charged[at(inflow.slot)] * inputs.fractions[i] / grams;
            }
        scale_.solve(ratios, runs);
        for (std::size_t step = 0; step < steps_.size(); ++step)
            result.steps[step].scale = runs[step];
        for (std::size_t i = 0; i < inflows_.size(); ++i)
            result.in[i] *= runs[at(inflows_[i].step)];
        for (std::size_t step = 0; step < steps_.size(); ++step) {
            const FlatStep& flat = steps_[step];
            const std::size_t size = flat.substances.size(),
                              first = at(streams_[at(flat.first_stream)].first_outflow);
            for (std::size_t k = first; k < first + at(flat.stream_count) * size; ++k) {
                result.out[k] *= runs[step];
                result.out_unreacted[k] *= runs[step];
            }
            for (std::size_t s = 0; s < size; ++s)
                result.flask[at(flat.first_flask) + s] *= runs[step];
        }
    }
    const FlatStep& last = steps_[at(scale_.final_step())];
    result.product = result.steps[at(scale_.final_step())].isolated * last.molar_mass[at(last.product)];

    for (std::size_t r = 0; r < reuse_.size(); ++r) {
        const FlatReuse& reuse = reuse_[r];
        double left = inputs.reused[r] * result.out[at(reuse.outflow)];
        // Both readings give back the same mass, so that what is bought does not depend on how the loss is
        // read.
        left = std::min(left, result.out_unreacted[at(reuse.outflow)]);
        double charged = 0.0;
        for (const int inflow : reuse.inflows)
            charged += result.in[at(inflow)] - result.credit[at(inflow)];
        if (charged <= 0.0) continue;
        const double share = std::min(1.0, left / charged); // of every charge, so that all stay in proportion
        for (const int inflow : reuse.inflows) {
            const double credit = share * (result.in[at(inflow)] - result.credit[at(inflow)]);
            result.credit[at(inflow)] += credit;
            result.recovered[r] += credit;
        }
        result.out[at(reuse.outflow)] -= result.recovered[r];
        result.out_unreacted[at(reuse.outflow)] -= result.recovered[r];
    }
}

std::vector<std::vector<double>> FlatRoute::extents(int index, const Inputs& inputs) const {
    std::vector<std::vector<double>> result;
    for (const Stage& stage : route_->steps[at(index)].stages)
        result.emplace_back(stage.reactions.size(), 0.0);
    run_pot(index, inputs, Reading::formation, {}, nullptr, &result);
    return result;
}

} // namespace routeweigh
