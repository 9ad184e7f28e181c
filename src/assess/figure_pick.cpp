// SPDX-License-Identifier: MIT
#include "assess/figure_pick.hpp"

#include <fmt/format.h>

namespace routeweigh {
namespace {

constexpr std::string_view score_id = "hazard_score";

std::string cell_id(const EndpointRule& rule, std::size_t place) {
    return fmt::format("{}_{}", rule.id, place_ids[place]);
}

} // namespace

std::optional<FigurePick> FigurePick::find(std::string_view id, const HazardScheme& scheme) {
    FigurePick pick;
    pick.id_ = id;
    if (const int index = metric_index(id); index >= 0) {
        const Metric& metric = *all_metrics()[static_cast<std::size_t>(index)];
        pick.source_ = Source::metric;
        pick.index_ = static_cast<std::size_t>(index);
        pick.name_ = metric.name;
        pick.unit_ = metric.unit;
        pick.better_ = metric.better;
        pick.decimals_ = metric.decimals;
        return pick;
    }
    for (std::size_t e = 0; e < scheme.endpoints.size(); ++e)
        for (std::size_t p = 0; p < place_count; ++p) {
            if (!scheme.places[p].scored || cell_id(scheme.endpoints[e], p) != id) continue;
            pick.source_ = Source::cell;
            pick.index_ = cell_index(e, static_cast<HazardPlace>(p));
            pick.name_ = fmt::format("{}, {}", scheme.endpoints[e].title, scheme.places[p].title);
            pick.unit_ = scheme.endpoints[e].figure_unit();
            pick.decimals_ = 3;
            return pick;
        }
    if (id != score_id) return {};
    pick.name_ = "Hazard score";
    return pick;
}

FigurePick FigurePick::same_auxiliaries(const FlatRoute& route, const Assessment& baseline) {
    FigurePick pick;
    pick.source_ = Source::same_auxiliaries;
    pick.id_ = same_auxiliaries_id;
    pick.name_ = "Process mass intensity, same auxiliaries";
    pick.unit_ = "g/g";
    pick.decimals_ = 1;
    pick.baseline_ = auxiliaries_of(baseline.values(), baseline.flat());
    pick.final_step_ = route.final_step();
    return pick;
}

double FigurePick::value(const RouteFigures::Values& values) const {
    switch (source_) {
    case Source::metric:
        return values.metrics[index_];
    case Source::cell:
        return values.hazard.value[index_];
    case Source::same_auxiliaries:
        return intensity_with_same_auxiliaries(auxiliaries_of(values, final_step_), baseline_);
    case Source::score:
        break;
    }
    return values.score.value;
}

std::optional<FigurePick::Ratio> FigurePick::ratio(const Totals& totals) const {
    if (source_ != Source::metric || all_metrics()[index_]->derive != nullptr) return {};
    const Metric& metric = *all_metrics()[index_];
    const auto sum = [&](std::span<const Term> terms) {
        double total = 0.0;
        for (const Term& term : terms)
            total += term.sign * totals.*term.total;
        return total;
    };
    return Ratio{metric.factor, sum(metric.above), sum(metric.below)};
}

std::vector<std::string> figure_ids(const HazardScheme& scheme) {
    std::vector<std::string> ids;
    for (const Metric* metric : all_metrics())
        ids.emplace_back(metric->id);
    for (const EndpointRule& rule : scheme.endpoints)
        for (std::size_t p = 0; p < place_count; ++p)
            if (scheme.places[p].scored) ids.push_back(cell_id(rule, p));
    ids.emplace_back(score_id);
    return ids;
}

} // namespace routeweigh
