// SPDX-License-Identifier: MIT
#include "assess/hazard/dominance.hpp"

#include <algorithm>
#include <cmath>
#include <map>
#include <utility>

namespace routeweigh {
namespace {

constexpr double rounding = 1e-9; // relative; below it two figures are the same figure

// One substance at one endpoint, with its place in each route; `none` where a route has it not.
struct Counted {
    static constexpr std::size_t none = static_cast<std::size_t>(-1);

    HazardContribution per_gram;
    std::size_t first, second;
};

// One substance in one cell of both routes; grams per gram of product.
struct Shared {
    const HazardContribution* per_gram;
    double first, second;
};

// The union of what both routes carry.
class Union {
  public:
    Union(const HazardSide& first, const HazardSide& second) : first_(first), second_(second) {
        std::map<std::pair<const Substance*, bool>, std::size_t> places;
        for (const HazardEntry& entry : first.map.carriers()) {
            places.try_emplace({entry.substance, entry.solution}, pairs_.size());
            pairs_.emplace_back(pairs_.size(), Counted::none);
        }
        for (std::size_t i = 0; i < second.map.carriers().size(); ++i) {
            const HazardEntry& entry = second.map.carriers()[i];
            const auto found = places.find({entry.substance, entry.solution});
            if (found == places.end())
                pairs_.emplace_back(Counted::none, i);
            else
                pairs_[found->second].second = i;
        }
    }

    std::vector<Counted> at(std::size_t endpoint) const {
        std::vector<Counted> result;
        for (const auto& [i, j] : pairs_) {
            const HazardContribution per_gram = i != Counted::none ? first_.map.contribution(endpoint, i)
                                                                   : second_.map.contribution(endpoint, j);
            if (per_gram.counts()) result.push_back({per_gram, i, j});
        }
        return result;
    }

    std::vector<Shared> cell(const std::vector<Counted>& counted, HazardColumn ours,
                             HazardColumn theirs) const {
        std::vector<Shared> result;
        result.reserve(counted.size());
        for (const Counted& item : counted)
            result.push_back(
                {&item.per_gram,
                 item.first != Counted::none ? first_.map.grams(first_.values, ours, item.first) : 0.0,
                 item.second != Counted::none ? second_.map.grams(second_.values, theirs, item.second)
                                              : 0.0});
        return result;
    }

  private:
    const HazardSide& first_;
    const HazardSide& second_;
    std::vector<std::pair<std::size_t, std::size_t>> pairs_;
};

bool same(double a, double b) {
    return std::abs(a - b) <= rounding * std::max(std::abs(a), std::abs(b));
}

HazardOrder order_of(double first, double second) {
    if (same(first, second)) return HazardOrder::equal;
    return first < second ? HazardOrder::less : HazardOrder::more;
}

HazardOrder order_within(double least, double greatest) {
    if (least == 0.0 && greatest == 0.0) return HazardOrder::equal;
    if (greatest < 0.0) return HazardOrder::less;
    if (least > 0.0) return HazardOrder::more;
    if (greatest == 0.0) return HazardOrder::no_more;
    if (least == 0.0) return HazardOrder::no_less;
    return HazardOrder::depends;
}

// The difference of the figures is linear in each unknown, so that its extremes lie at the corners: a
// substance of which the first route has more adds least at its low end, one of which it has less at its high
// end.
std::pair<double, double> extremes(const std::vector<Shared>& cell) {
    double least = 0.0, greatest = 0.0, size = 0.0;
    for (const Shared& item : cell) {
        if (same(item.first, item.second)) continue;
        const double more = item.first - item.second;
        const double low = item.per_gram->low, high = item.per_gram->high;
        if (high <= 0.0) continue;
        least += more * (more > 0.0 ? low : high);
        greatest += more * (more > 0.0 ? high : low);
        size += (item.first + item.second) * low;
    }
    if (std::abs(least) <= rounding * size) least = 0.0;
    if (std::abs(greatest) <= rounding * size) greatest = 0.0;
    return {least, greatest};
}

// Grams at each level or worse. `against` counts what is unassessed as worst in the route that it speaks
// against: +1 the first, -1 the second, 0 neither. What both routes hold of a substance cancels, whatever its
// level.
void add_up(const std::vector<Shared>& cell, int against, std::vector<double>& first,
            std::vector<double>& second) {
    std::fill(first.begin(), first.end(), 0.0);
    std::fill(second.begin(), second.end(), 0.0);
    for (const Shared& item : cell) {
        if (item.per_gram->level >= 0)
            for (auto l = static_cast<std::size_t>(item.per_gram->level); l < first.size(); ++l) {
                first[l] += item.first;
                second[l] += item.second;
            }
        else if (item.per_gram->unassessed && against != 0) {
            const double more = item.first - item.second;
            std::vector<double>& loser = against > 0 ? first : second;
            const double grams = std::max(0.0, against > 0 ? more : -more);
            for (double& level : loser)
                level += grams;
        }
    }
}

HazardOrder order_of_curves(const std::vector<double>& first, const std::vector<double>& second,
                            std::size_t* crossing = nullptr) {
    bool below = false, above = false;
    for (std::size_t l = 0; l < first.size(); ++l) {
        const HazardOrder order = order_of(first[l], second[l]);
        below = below || order == HazardOrder::less;
        above = above || order == HazardOrder::more;
        if (below && above) {
            if (crossing != nullptr) *crossing = l;
            return HazardOrder::depends;
        }
    }
    return below ? HazardOrder::less : above ? HazardOrder::more : HazardOrder::equal;
}

std::vector<HazardColumn> readings(HazardPlace place) {
    if (place == HazardPlace::waste) return {HazardColumn::waste, HazardColumn::waste_unreacted};
    return {column_of(place)};
}

SeverityCurves severity_curves(const Union& both, const std::vector<Counted>& counted,
                               const std::vector<std::string>& levels, HazardPlace place) {
    SeverityCurves curves;
    curves.levels = levels;
    curves.first.resize(curves.levels.size());
    curves.second.resize(curves.levels.size());
    std::size_t crossing = 0;
    const HazardColumn nominal = column_of(place);
    add_up(both.cell(counted, nominal, nominal), 0, curves.first, curves.second);
    curves.order = order_of_curves(curves.first, curves.second, &crossing);
    if (curves.order == HazardOrder::depends) {
        curves.crossing = curves.levels[crossing];
        return curves;
    }
    curves.firm = true;
    std::vector<double> first(curves.levels.size()), second(curves.levels.size());
    for (const HazardColumn ours : readings(place))
        for (const HazardColumn theirs : readings(place)) {
            const std::vector<Shared> cell = both.cell(counted, ours, theirs);
            // Equal curves must stay equal against either route.
            for (const int against : {+1, -1}) {
                if (curves.order == HazardOrder::less && against < 0) continue;
                if (curves.order == HazardOrder::more && against > 0) continue;
                add_up(cell, against, first, second);
                curves.firm = curves.firm && order_of_curves(first, second) == curves.order;
            }
        }
    return curves;
}

} // namespace

std::string_view words(HazardOrder order) {
    switch (order) {
    case HazardOrder::less:
        return "less";
    case HazardOrder::no_more:
        return "no more";
    case HazardOrder::equal:
        return "equal";
    case HazardOrder::no_less:
        return "no less";
    case HazardOrder::more:
        return "more";
    case HazardOrder::depends:
        break;
    }
    return "depends";
}

HazardOrder combine(const std::vector<HazardOrder>& orders) {
    bool may_be_less = false, may_be_more = false, less = false, more = false;
    for (const HazardOrder order : orders) {
        if (order == HazardOrder::depends) return HazardOrder::depends;
        less = less || order == HazardOrder::less;
        more = more || order == HazardOrder::more;
        may_be_less = may_be_less || order == HazardOrder::less || order == HazardOrder::no_more;
        may_be_more = may_be_more || order == HazardOrder::more || order == HazardOrder::no_less;
    }
    if (may_be_less && may_be_more) return HazardOrder::depends;
    if (may_be_less) return less ? HazardOrder::less : HazardOrder::no_more;
    if (may_be_more) return more ? HazardOrder::more : HazardOrder::no_less;
    return HazardOrder::equal;
}

HazardComparison compare_hazards(const HazardSide& first, const HazardSide& second) {
    const HazardScheme& scheme = first.map.scheme();
    const Union both(first, second);
    HazardComparison comparison;
    std::vector<HazardOrder> by_value, by_interval;
    for (std::size_t e = 0; e < scheme.endpoints.size(); ++e) {
        const std::vector<Counted> counted = both.at(e);
        const std::vector<std::string> levels = level_names(scheme.endpoints[e], first.map.banding());
        for (std::size_t p = 0; p < place_count; ++p) {
            if (!scheme.places[p].scored) continue;
            HazardPairCell cell;
            cell.endpoint = e;
            cell.place = static_cast<HazardPlace>(p);
            cell.first = first.values.value[cell_index(e, cell.place)];
            cell.second = second.values.value[cell_index(e, cell.place)];
            cell.by_value = order_of(cell.first, cell.second);
            bool begun = false;
            for (const HazardColumn ours : readings(cell.place))
                for (const HazardColumn theirs : readings(cell.place)) {
                    const auto [least, greatest] = extremes(both.cell(counted, ours, theirs));
                    cell.least = begun ? std::min(cell.least, least) : least;
                    cell.greatest = begun ? std::max(cell.greatest, greatest) : greatest;
                    begun = true;
                }
            cell.by_interval = order_within(cell.least, cell.greatest);
            cell.severity = severity_curves(both, counted, levels, cell.place);
            by_value.push_back(cell.by_value);
            by_interval.push_back(cell.by_interval);
            comparison.cells.push_back(std::move(cell));
        }
    }
    comparison.by_value = combine(by_value);
    comparison.by_interval = combine(by_interval);
    return comparison;
}

} // namespace routeweigh
