// SPDX-License-Identifier: MIT
// The mass figures of a route without its hazards.
#pragma once

#include "assess/metric_list.hpp"
#include "assess/totals.hpp"
#include "route/net_equation.hpp"

#include <limits>
#include <set>
#include <string_view>
#include <vector>

namespace routeweigh::test {

struct MassFigures {
    explicit MassFigures(const Route& route, const std::set<const Substance*>& benign = {})
        : flat(route), evaluation(flat.evaluate(flat.nominal())), net(net_equation(route, flat.scale_plan())),
          map(flat, net, benign), values(all_metrics().size()) {
        map.evaluate(evaluation, totals);
        evaluate_metrics<double>(totals, values);
    }
    MassFigures(const MassFigures&) = delete;
    MassFigures& operator=(const MassFigures&) = delete;

    double operator[](std::string_view id) const {
        const int index = metric_index(id);
        return index < 0 ? std::numeric_limits<double>::infinity() : values[static_cast<std::size_t>(index)];
    }

    FlatRoute flat;
    Evaluation evaluation;
    NetEquation net;
    TotalsMap map;
    Totals totals;
    std::vector<double> values;
};

} // namespace routeweigh::test
