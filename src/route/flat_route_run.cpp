// SPDX-License-Identifier: MIT
#include "route/flat_route.hpp"

#include "base/index.hpp"

#include <algorithm>
#include <cmath>
#include <cstddef>

namespace routeweigh {
namespace {

/// What an evaluation works with; a thread keeps its own so that evaluation does not allocate.
template<Number N>
struct Pot {
    std::vector<N> amounts, before;
};
template<Number N>
Pot<N>& pot_of_this_thread(std::size_t size) {
    thread_local Pot<N> pot;
    pot.amounts.assign(size, N(0.0));
    pot.before.resize(size);
    return pot;
}

} // namespace

template<Number N>
N FlatSeparation::share_leaving(std::span<const N> amounts, std::span<const double> molar_mass) const {
    if (held == 0.0) return 1.0;
    N liquor = 0.0, kept = 0.0;
    for (std::size_t s = 0; s < leaves.size(); ++s) {
        const N mass = amounts[s] * molar_mass[s];
        liquor += mass * leaves[s];
        kept += mass * (1.0 - leaves[s]);
    }
    return choose(liquor > N(0.0), greater(N(0.0), 1.0 - held * kept / liquor), N(0.0));
}

template<Number N>
void FlatRoute::evaluate(const InputsOf<N>& inputs, EvaluationOf<N>& result) const {
    result.alike = true;
    result.steps.assign(steps_.size(), {});
    result.in.resize(inflows_.size());
    result.credit.assign(inflows_.size(), N(0.0));
    result.out.assign(at(outflow_count_), N(0.0));
    result.out_unreacted.assign(at(outflow_count_), N(0.0));
    result.flask.assign(at(flask_count_), N(0.0));
    result.recovered.assign(reuse_.size(), N(0.0));
    for (std::size_t i = 0; i < inflows_.size(); ++i)
        result.in[i] = inputs.charged[at(inflows_[i].slot)] * inputs.fractions[i];
    for (std::size_t step = 0; step < steps_.size(); ++step)
        run_step(static_cast<int>(step), inputs, result);
    scale_and_reuse(inputs, result);
}

template<Number N>
void FlatRoute::run_step(int index, const InputsOf<N>& inputs, EvaluationOf<N>& result) const {
    const FlatStep& step = steps_[at(index)];
    StepResultOf<N>& numbers = result.steps[at(index)];
    bool& alike = result.alike;
    if (step.partial_conversion || step.product_reacts)
        numbers.theory = run_pot<N>(index, inputs, Reading::theory, {}, nullptr, alike);
    Limits<N> limits;
    // The loss is needed while the pot is carried through, so what forms is found before, or on the way.
    if (!step.made_in_one) {
        limits.lost = isolate<N>(index, inputs,
                                 run_pot<N>(index, inputs, Reading::formation, {}, nullptr, alike), numbers);
        if (step.forms_after_loss && agree(limits.lost > N(0.0), alike)) {
            if constexpr (std::same_as<N, double>)
                limits.lost = search(index, inputs, limits, &Limits<double>::lost, -1.0, numbers.isolated);
            else
                alike = false; // every draw searches its own way
            numbers.made = numbers.isolated + limits.lost;
        }
    }
    run_pot<N>(index, inputs, Reading::nominal, limits, &result, alike);

    if (agree(numbers.isolated < numbers.made, alike)) {
        limits = {.product_cap = numbers.isolated};
        if (step.product_reacts) {
            if constexpr (std::same_as<N, double>)
                limits.product_cap =
                    search(index, inputs, limits, &Limits<double>::product_cap, 1.0, numbers.isolated);
            else
                alike = false;
        }
        run_pot<N>(index, inputs, Reading::unreacted, limits, &result, alike);
    } else {
        const auto first = static_cast<std::ptrdiff_t>(streams_[at(step.first_stream)].first_outflow);
        const auto count = static_cast<std::ptrdiff_t>(at(step.stream_count) * step.substances.size());
        std::copy_n(result.out.begin() + first, count, result.out_unreacted.begin() + first);
    }
}

/// Notes what forms and what of it is isolated. \return mol product lost
template<Number N>
N FlatRoute::isolate(int index, const InputsOf<N>& inputs, const N& made, StepResultOf<N>& numbers) const {
    const FlatStep& step = steps_[at(index)];
    const N given = inputs.isolated[at(index)];
    numbers.made = made;
    if (!step.partial_conversion && !step.product_reacts) numbers.theory = made;
    numbers.isolated =
        step.isolated_is_mass ? given / step.molar_mass[at(step.product)] : given * numbers.theory;
    return numbers.made - numbers.isolated;
}

/// The limit with which the isolated amount is left in the end, where some product reacts on, was there
/// before, or forms after a loss. What is left changes with the limit piece by piece along straight lines, so
/// a secant finds it. \param slope  of what is left over the limit, to begin with
double FlatRoute::search(int index, const Inputs& inputs, Limits<double> limits,
                         double Limits<double>::*member, double slope, double isolated) const {
    bool alike = true;
    const auto excess = [&](double value) {
        limits.*member = value;
        return run_pot<double>(index, inputs, Reading::formation, limits, nullptr, alike) - isolated;
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
template<Number N>
// NOLINTNEXTLINE(readability-function-cognitive-complexity)
N FlatRoute::run_pot(int index, const InputsOf<N>& inputs, Reading reading, Limits<N> limits,
                     EvaluationOf<N>* record, bool& alike, std::vector<std::vector<N>>* extents) const {
    const N none = 0.0;
    const FlatStep& step = steps_[at(index)];
    const std::size_t size = step.substances.size();
    Pot<N>& mine = pot_of_this_thread<N>(size);
    std::vector<N>&pot = mine.amounts, &before = mine.before;
    N* out = nullptr; // of this step
    if (record != nullptr)
        out = (reading == Reading::unreacted ? record->out_unreacted : record->out).data() +
              streams_[at(step.first_stream)].first_outflow;
    const auto leave = [&](int stream, std::size_t local, N moles) { // a copy: it may be that amount itself
        pot[local] -= moles;
        if (out != nullptr) out[at(stream) * size + local] += moles * step.molar_mass[local];
    };
    const std::size_t product = at(step.product);
    N formed = 0.0, theory = 0.0, unlost = limits.lost;
    // No stream takes more product than has formed by then.
    const auto lose = [&](int stream, N moles) {
        const N most = lesser(lesser(moles, unlost), greater(none, pot[product]));
        moles = choose(moles > none, most, moles);
        leave(stream, product, moles);
        unlost -= moles;
    };

    // The most of a substance (mol) rises only when it is charged or made.
    N* const flask = reading == Reading::nominal ? record->flask.data() + step.first_flask : nullptr;
    const auto held_now = [&](int substance) {
        if (flask != nullptr) flask[substance] = greater(flask[substance], pot[at(substance)]);
    };

    // Where only the product is asked for, nothing that comes after its last change matters.
    const bool product_only = record == nullptr && extents == nullptr && agree(limits.lost == none, alike);
    const std::size_t stages = product_only ? step.stages_to_product : step.stages.size();
    for (std::size_t number = 0; number < stages; ++number) {
        const FlatStage& stage = step.stages[number];
        for (int i = stage.first_inflow; i < stage.last_inflow; ++i) {
            const Inflow& inflow = inflows_[at(i)];
            if (inflow.as_used) continue;
            pot[at(inflow.local)] +=
                inputs.charged[at(inflow.slot)] * inputs.fractions[at(i)] * inflow.moles_per_gram;
            held_now(inflow.local);
        }
        if (reading == Reading::nominal) {
            for (const FlaskCeiling& entry : stage.ceilings)
                flask[entry.local] =
                    greater(flask[entry.local], stage.extents.evaluate<N>(entry.ceiling, pot));
            N& bromine = record->steps[at(index)].bromine;
            for (const Extents::Ceiling& held : stage.bromine)
                bromine = greater(bromine, stage.extents.evaluate<N>(held, pot));
        }

        const N product_before = pot[product];
        for (const int gas : stage.forming_gases)
            before[at(gas)] = pot[at(gas)];
        const Extents& reactions =
            reading == Reading::theory && step.partial_conversion ? stage.full.front() : stage.extents;
        const N cap = choose(limits.product_cap < none, N(-1.0), greater(none, limits.product_cap - formed));
        theory +=
            reactions.react<N>(pot, cap, extents ? std::span<N>((*extents)[number]) : std::span<N>(), alike);
        formed += pot[product] - product_before;
        if (reading == Reading::nominal && step.made_in_one && number + 1 == step.stages_to_product)
            limits.lost = unlost = isolate<N>(index, inputs, pot[product], record->steps[at(index)]);

        for (const int substance : stage.made)
            held_now(substance);
        for (int i = stage.first_inflow; i < stage.last_inflow; ++i) {
            const Inflow& inflow = inflows_[at(i)];
            if (!inflow.as_used) continue; // the air gave what the reactions took
            N& amount = pot[at(inflow.local)];
            if (reading == Reading::nominal) record->in[at(i)] = -amount * step.molar_mass[at(inflow.local)];
            // What was drawn does not depend on how the loss is read: the rest leaves as it came.
            if (reading == Reading::unreacted) {
                const N grams = amount * step.molar_mass[at(inflow.local)]; // below 0: used
                const N more = greater(none, -grams - record->in[at(i)]);
                record->in[at(i)] += more;
                record->out[at(streams_[at(step.first_stream + step.gas_stream)].first_outflow +
                               inflow.local)] += more;
                amount += record->in[at(i)] / step.molar_mass[at(inflow.local)];
                leave(step.gas_stream, at(inflow.local), amount);
            }
            amount = none;
        }
        for (const int gas : stage.forming_gases)
            leave(step.gas_stream, at(gas), greater(none, pot[at(gas)] - before[at(gas)]));

        for (const FlatSeparation& separation : stage.separations) {
            if (separation.loss > 0.0) lose(separation.stream, limits.lost * separation.loss);
            const N share = separation.share_leaving<N>(pot, step.molar_mass);
            for (std::size_t s = 0; s < size; ++s)
                if (separation.leaves[s] > 0.0)
                    leave(separation.stream, s, pot[s] * separation.leaves[s] * share);
        }
    }
    if (reading == Reading::theory) return theory;
    leave(step.rest_stream, product, choose(absolute(unlost) > 1e-12 * absolute(limits.lost), unlost, none));
    // Seeds beyond what is isolated, and the rounding of a search.
    if (record != nullptr && (step.product_reacts || step.forms_after_loss))
        leave(step.rest_stream, product, pot[product] - record->steps[at(index)].isolated);
    for (std::size_t s = 0; s < size; ++s)
        if (s != product) leave(step.rest_stream, s, pot[s]);
    if (flask != nullptr)
        for (std::size_t s = 0; s < size; ++s)
            flask[s] *= step.molar_mass[s];
    return pot[product];
}

template void FlatRoute::evaluate(const InputsOf<double>&, EvaluationOf<double>&) const;
template void FlatRoute::evaluate(const InputsOf<Lanes>&, EvaluationOf<Lanes>&) const;
template double FlatRoute::run_pot(int, const InputsOf<double>&, Reading, Limits<double>,
                                   EvaluationOf<double>*, bool&, std::vector<std::vector<double>>*) const;
template double FlatSeparation::share_leaving(std::span<const double>, std::span<const double>) const;

} // namespace routeweigh
