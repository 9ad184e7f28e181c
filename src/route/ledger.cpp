// SPDX-License-Identifier: MIT
#include "route/ledger.hpp"

#include "base/index.hpp"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <limits>
#include <map>

namespace routeweigh {
namespace {

/// Elements of what goes in and out. A mixture without a formula counts as an element of its own, numbered
/// below 0.
class ElementBook {
  public:
    explicit ElementBook(const AtomicWeights& weights) : weights_(weights) {}

    void add(const Substance* substance, double grams, bool in) {
        if (!substance->has_formula()) {
            const auto [entry, fresh] =
                mixtures_.try_emplace(substance, -1 - static_cast<int>(mixtures_.size()));
            book(entry->second, grams, in);
            return;
        }
        const double moles = grams / substance->molar_mass;
        for (const auto& [element, count] : substance->formula.atoms)
            book(element, moles * count * weights_.of(element), in);
    }
    std::vector<ElementBalance> take() const {
        std::vector<ElementBalance> result;
        for (const auto& [element, balance] : balances_)
            result.push_back(balance);
        return result;
    }

  private:
    void book(int element, double grams, bool in) {
        ElementBalance& balance = balances_[element];
        balance.element = element;
        (in ? balance.in : balance.out) += grams;
    }
    const AtomicWeights& weights_;
    std::map<int, ElementBalance> balances_;
    std::map<const Substance*, int> mixtures_;
};

} // namespace

double Ledger::closure_error() const {
    double worst = 0.0;
    const auto compare = [&](double one, double other) {
        const double error = std::abs(one - other) / std::max({one, other, 1e-300});
        worst = std::isnan(error) ? std::numeric_limits<double>::infinity() : std::max(worst, error);
    };
    for (const ElementBalance& balance : elements)
        compare(balance.in, balance.out);
    compare(in, product + recovered + streams);
    return worst;
}

Ledger make_ledger(const FlatRoute& flat, const Evaluation& evaluation, bool unreacted) {
    Ledger ledger;
    const Route& route = flat.route();
    ElementBook book(route.weights);
    const auto add = [&](LedgerRow row) {
        const bool in = row.side == LedgerRow::Side::in;
        book.add(row.substance, row.grams, in);
        double& total = in                                       ? ledger.in
                        : row.side == LedgerRow::Side::product   ? ledger.product
                        : row.side == LedgerRow::Side::recovered ? ledger.recovered
                                                                 : ledger.streams;
        total += row.grams;
        ledger.rows.push_back(std::move(row));
    };

    const auto inflows = flat.inflows();
    for (std::size_t i = 0; i < inflows.size(); ++i) {
        if (inflows[i].fed_by >= 0 || evaluation.in[i] == 0.0) continue;
        const Charge& charge =
            route.steps[at(inflows[i].step)].stages[at(inflows[i].stage)].charges[at(inflows[i].charge)];
        add({LedgerRow::Side::in, inflows[i].step, charge.material->name, inflows[i].substance,
             evaluation.in[i], charge.pointer});
    }
    add({LedgerRow::Side::product, flat.final_step(), "product", route.product, evaluation.product, {}});
    for (std::size_t r = 0; r < route.reuse.size(); ++r)
        if (evaluation.recovered[r] != 0.0)
            add({LedgerRow::Side::recovered, route.reuse[r].from_step, route.reuse[r].from_stream,
                 route.reuse[r].substance, evaluation.recovered[r], route.reuse[r].pointer});
    const std::vector<double>& out = unreacted ? evaluation.out_unreacted : evaluation.out;
    for (const FlatStream& stream : flat.streams()) {
        const FlatStep& step = flat.steps()[at(stream.step)];
        for (std::size_t s = 0; s < step.substances.size(); ++s) {
            const double grams = out[at(stream.first_outflow) + s];
            if (grams != 0.0)
                add({LedgerRow::Side::stream, stream.step, stream.name, step.substances[s], grams, {}});
        }
    }
    ledger.elements = book.take();
    return ledger;
}

} // namespace routeweigh
