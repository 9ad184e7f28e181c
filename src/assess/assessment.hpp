// SPDX-License-Identifier: MIT
// All that is known of one route: its compiled form, one evaluation at the amounts as written, and every
// figure.
#pragma once

#include "assess/hazard/hazard_grid.hpp"
#include "assess/hazard/hazard_map.hpp"
#include "assess/hazard/scheme_reader.hpp"
#include "assess/hazard/score.hpp"
#include "assess/metric_list.hpp"
#include "assess/mixture/jurisdiction.hpp"
#include "assess/totals.hpp"
#include "chemistry/catalogue.hpp"
#include "route/ledger.hpp"
#include "route/net_equation.hpp"

#include <set>
#include <string>
#include <vector>

namespace routeweigh {

/// What the figures of all routes have in common: schemes and lists of the catalogue.
struct AssessmentRules {
    HazardSchemes hazard;
    std::set<const Substance*> benign;
    const Catalogue* catalogue = nullptr; ///< they were read from
    Jurisdiction classified_by = {};      ///< bottles and streams, in reports

    const Banding& first_banding() const { return hazard.bandings.front(); }
    const Banding* second_banding() const {
        return hazard.bandings.size() > 1 ? &hazard.bandings[1] : nullptr;
    }
};

/// \throws InputError when a scheme is missing or faulty
AssessmentRules read_assessment_rules(const Catalogue& catalogue);

/// One number of one route, ready to be shown.
struct Figure {
    std::string id, name, unit;
    FigureGroup group = FigureGroup::yield;
    Better better = Better::neither;
    double value = 0, low = 0, high = 0; ///< NaN: missing; high may be infinite: nothing bounds it
    std::string note;                    ///< why it is missing, or what to know about it
    std::string boundary, reference;
    int decimals = 1;
};

/// Compiled once, evaluated as often as wanted; no allocation after the first time. The route and the rules
/// must outlive it.
class RouteFigures {
  public:
    RouteFigures(const Route& route, const AssessmentRules& rules);

    template<Number N>
    struct ValuesOf {
        EvaluationOf<N> evaluation;
        TotalsOf<N> totals;
        std::vector<N> metrics; ///< in the order of all_metrics()
        HazardValuesOf<N> hazard;
        HazardScoreOf<N> score;
    };
    using Values = ValuesOf<double>;
    void evaluate(const Inputs& inputs, Values& values) const;
    /// Of several draws at once. \return false where they are not alike; the values then mean nothing
    bool evaluate(const InputsOf<Lanes>& inputs, ValuesOf<Lanes>& values) const;

    const FlatRoute& flat() const { return flat_; }
    const NetEquation& net() const { return net_; }
    const TotalsMap& totals_map() const { return totals_map_; }
    const HazardMap& hazard_map() const { return hazard_map_; }

  private:
    template<Number N>
    void evaluate_masses(const InputsOf<N>& inputs, ValuesOf<N>& values) const;

    FlatRoute flat_;
    NetEquation net_;
    TotalsMap totals_map_;
    HazardMap hazard_map_;
};

/// A route with its figures. Stays where it was made, for its parts point at each other.
class Assessment {
  public:
    Assessment(Route route, const AssessmentRules& rules);
    Assessment(const Assessment&) = delete;
    Assessment& operator=(const Assessment&) = delete;

    const Route& route() const { return route_; }
    const AssessmentRules& rules() const { return *rules_; }
    const RouteFigures& compiled() const { return figures_; }
    const FlatRoute& flat() const { return figures_.flat(); }
    const RouteFigures::Values& values() const { return values_; }
    const Evaluation& evaluation() const { return values_.evaluation; }
    const Totals& totals() const { return values_.totals; }
    const HazardScores& scores() const { return scores_; }
    /// On the second banding; nullptr when the scheme names only one.
    const HazardMap* second_hazard_map() const {
        return second_map_.empty() ? nullptr : &second_map_.front();
    }

    /// Value of a metric; NaN when it has none. \pre the id exists
    double metric(std::string_view id) const;

    /// Every figure in reading order: metrics, hazard by endpoint and place, hazard score.
    std::vector<Figure> figures() const;

    Ledger ledger(bool unreacted = false) const { return make_ledger(flat(), evaluation(), unreacted); }
    HazardGrid hazard_grid() const { return explain(figures_.hazard_map(), evaluation()); }

    /// True when the yield of some step is assumed and not measured.
    bool yield_assumed() const;

  private:
    Route route_;
    const AssessmentRules* rules_;
    RouteFigures figures_;
    RouteFigures::Values values_;
    std::vector<HazardMap> second_map_; ///< none or one
    HazardValues second_values_;
    HazardScores scores_;
};

} // namespace routeweigh
