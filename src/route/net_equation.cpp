// SPDX-License-Identifier: MIT
#include "route/net_equation.hpp"

#include "base/index.hpp"

#include <algorithm>
#include <cstddef>
#include <map>
#include <set>
#include <utility>

namespace routeweigh {
namespace {

using Parts = std::vector<NetEquation::Part>;

Parts summed(const std::map<std::pair<int, const Substance*>, double>& by_step) {
    std::map<const Substance*, double> by_substance;
    for (const auto& [key, moles] : by_step)
        if (moles > 1e-12) by_substance[key.second] += moles;
    Parts parts;
    for (const auto& [substance, moles] : by_substance)
        parts.push_back({substance, moles});
    std::sort(parts.begin(), parts.end(),
              [](const auto& a, const auto& b) { return a.substance->id < b.substance->id; });
    return parts;
}

} // namespace

NetEquation net_equation(const Route& route, const ScalePlan& plan) {
    NetEquation net;
    const auto feeds = plan.feeds();
    std::set<std::pair<int, const Substance*>> fed; // step that uses it, intermediate
    std::vector<double> ratios;
    for (const ScalePlan::Feed& feed : feeds) {
        const Step& from = route.steps[at(feed.from)];
        fed.emplace(feed.to, from.product);
        const double used = -route.steps[at(feed.to)].overall.coefficient_of(from.product);
        ratios.push_back(std::max(0.0, used) / from.overall.coefficient_of(from.product));
    }
    net.runs.resize(route.steps.size());
    plan.solve(ratios, net.runs);
    const Step& last = route.steps[at(plan.final_step())];
    for (double& runs : net.runs)
        runs /= last.overall.coefficient_of(last.product);

    std::map<std::pair<int, const Substance*>, double> used, made;
    for (std::size_t s = 0; s < route.steps.size(); ++s)
        for (const auto& part : route.steps[s].overall.parts) {
            const std::pair<int, const Substance*> key{static_cast<int>(s), part.substance};
            if (part.coefficient < 0.0 && !fed.contains(key)) used[key] -= part.coefficient * net.runs[s];
            if (part.coefficient > 0.0 && part.substance != route.steps[s].product)
                made[key] += part.coefficient * net.runs[s];
        }
    net.gross_inputs = summed(used);
    for (const Reuse& reuse : route.reuse) {
        if (reuse.from_step == reuse.to_step)
            continue; // a solvent won back in its own step is in no equation
        const auto source = made.find({reuse.from_step, reuse.substance});
        const auto target = used.find({reuse.to_step, reuse.substance});
        if (source == made.end() || target == used.end()) continue;
        const double cancelled = std::min(source->second, target->second);
        source->second -= cancelled;
        target->second -= cancelled;
    }
    net.inputs = summed(used);
    net.outputs = summed(made);
    return net;
}

} // namespace routeweigh
