// SPDX-License-Identifier: MIT
#include "assess/assessment.hpp"

#include "input/field.hpp"
#include "route/name_reader.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <limits>
#include <utility>

namespace routeweigh {
namespace {

Figure metric_figure(const Metric& metric, double value) {
    Figure figure{std::string(metric.id),
                  std::string(metric.name),
                  std::string(metric.unit),
                  metric.group,
                  metric.better,
                  value,
                  value,
                  value,
                  {},
                  std::string(metric.boundary),
                  std::string(metric.reference),
                  metric.decimals};
    if (std::isnan(value)) figure.note = metric.missing.empty() ? "cannot be computed" : metric.missing;
    return figure;
}

std::string hazard_note(const EndpointRule& rule, double short_term, double high) {
    std::string note;
    if (short_term > 0.0)
        note = fmt::format("and {:.3g} {} against ceilings or short-term limits, in no order", short_term,
                           rule.unit);
    if (std::isinf(high)) {
        if (!note.empty()) note += "; ";
        note += "no upper bound: unassessed mass or an open band";
    }
    return note;
}

} // namespace

AssessmentRules read_assessment_rules(const Catalogue& catalogue) {
    AssessmentRules rules{read_hazard_schemes(catalogue), {}, &catalogue};
    const Source* benign = catalogue.scheme("benign");
    if (benign == nullptr)
        throw InputError(Problem{Severity::error, "the catalogue has no scheme \"benign\"", {}, {}, {}});
    const Document document = Document::parse(*benign);
    Problems problems;
    const Field root = document.root(problems);
    for (const Field& item : root["substances"].items())
        rules.benign.insert(read_substance(item, catalogue));
    problems.throw_if_error();
    return rules;
}

RouteFigures::RouteFigures(const Route& route, const AssessmentRules& rules)
    : flat_(route), net_(net_equation(route, flat_.scale_plan())), totals_map_(flat_, net_, rules.benign),
      hazard_map_(flat_, rules.hazard.score, rules.first_banding()) {}

template<Number N>
void RouteFigures::evaluate_masses(const InputsOf<N>& inputs, ValuesOf<N>& values) const {
    flat_.evaluate(inputs, values.evaluation);
    if (!values.evaluation.alike) return;
    totals_map_.evaluate(values.evaluation, values.totals);
    values.metrics.resize(all_metrics().size());
    evaluate_metrics<N>(values.totals, values.metrics);
    hazard_map_.evaluate(values.evaluation, values.hazard);
}

void RouteFigures::evaluate(const Inputs& inputs, Values& values) const {
    evaluate_masses(inputs, values);
    values.score = score(hazard_map_.scheme(), values.hazard);
}

bool RouteFigures::evaluate(const InputsOf<Lanes>& inputs, ValuesOf<Lanes>& values) const {
    evaluate_masses(inputs, values);
    if (!values.evaluation.alike) return false;
    values.score = score(hazard_map_.scheme(), values.hazard, values.evaluation.alike);
    return values.evaluation.alike;
}

Assessment::Assessment(Route route, const AssessmentRules& rules)
    : route_(std::move(route)), rules_(&rules), figures_(route_, rules) {
    figures_.evaluate(flat().nominal(), values_);
    if (rules.second_banding() != nullptr) {
        second_map_.emplace_back(flat(), rules.hazard.score, *rules.second_banding());
        second_map_.front().evaluate(values_.evaluation, second_values_);
    }
    scores_ = all_scores(rules.hazard.score, values_.hazard, second_map_.empty() ? nullptr : &second_values_);
}

double Assessment::metric(std::string_view id) const {
    return values_.metrics[static_cast<std::size_t>(metric_index(id))];
}

std::vector<Figure> Assessment::figures() const {
    std::vector<Figure> result;
    const auto metrics = all_metrics();
    for (std::size_t m = 0; m < metrics.size(); ++m)
        result.push_back(metric_figure(*metrics[m], values_.metrics[m]));

    const HazardScheme& scheme = rules_->hazard.score;
    for (std::size_t e = 0; e < scheme.endpoints.size(); ++e)
        for (std::size_t p = 0; p < place_count; ++p) {
            if (!scheme.places[p].scored) continue;
            const EndpointRule& rule = scheme.endpoints[e];
            const std::size_t cell = cell_index(e, static_cast<HazardPlace>(p));
            Figure figure;
            figure.id = fmt::format("{}_{}", rule.id, place_ids[p]);
            figure.name = fmt::format("{}, {}", rule.title, scheme.places[p].title);
            figure.unit = rule.figure_unit();
            figure.group = FigureGroup::hazard;
            figure.better = Better::lower;
            figure.value = values_.hazard.value[cell];
            figure.low = values_.hazard.low[cell];
            figure.high = values_.hazard.high[cell];
            figure.note = hazard_note(rule, values_.hazard.short_term[cell], figure.high);
            figure.boundary =
                "ingredient masses, never the class of a stream; what has no data is unassessed";
            figure.reference = scheme.title;
            figure.decimals = 3;
            result.push_back(std::move(figure));
        }
    Figure total;
    total.id = "hazard_score";
    total.name = "Hazard score";
    total.group = FigureGroup::hazard;
    total.better = Better::lower;
    total.value = scores_.nominal.value;
    total.low = scores_.nominal.low;
    total.high = scores_.nominal.high;
    if (!scores_.nominal.ranked()) total.note = "no upper bound, hence no rank by score";
    total.boundary = "mean decades over endpoints and places; approves nothing and grades nobody";
    total.reference = scheme.title;
    total.decimals = 2;
    result.push_back(std::move(total));
    return result;
}

bool Assessment::yield_assumed() const {
    return std::any_of(route_.steps.begin(), route_.steps.end(),
                       [](const Step& step) { return step.isolated.assumed; });
}

} // namespace routeweigh
