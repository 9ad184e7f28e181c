// SPDX-License-Identifier: MIT
#include "documents/term_data.hpp"

#include "documents/term_figures.hpp"

#include <string>
#include <utility>

namespace routeweigh::documents {
namespace {

using course::CourseUse;

writing::MachineList experiments_tree(const CourseUse& term, const stock::PriceList& prices,
                                      const std::vector<WeekHazards>& hazards) {
    writing::MachineList experiments;
    for (std::size_t i = 0; i < term.experiments.size(); ++i) {
        const course::Experiment& experiment = term.experiments[i];
        writing::MachineList figures;
        for (const TermFigure& figure : term_figures())
            if (is_shown(figure, term.plan(), prices))
                figures.push_back(machine_of(figure_of(figure, experiment.use, prices), Edition::key));
        const Route& route = experiment.use.route->route();
        experiments.emplace_back(
            writing::MachineObject{{"week", experiment.week},
                                   {"route", route.id},
                                   {"product", route.product->name},
                                   {"status", route.status},
                                   {"yield_assumed", experiment.use.route->yield_assumed()},
                                   {"techniques", writing::text_list(experiment.techniques)},
                                   {"hazards", hazards_tree(hazards[i])},
                                   {"figures", std::move(figures)}});
    }
    return experiments;
}

} // namespace

writing::DataRows term_rows(const CourseUse& term, const stock::PriceList& prices,
                            const std::vector<WeekHazards>& hazards) {
    writing::DataRows rows;
    rows.columns = {"course", "week", "route", "product", "figure", "value", "unit"};
    for (std::size_t i = 0; i < term.experiments.size(); ++i) {
        const course::Experiment& experiment = term.experiments[i];
        const Route& route = experiment.use.route->route();
        const auto add = [&](std::string figure, writing::DataCell value, std::string unit) {
            rows.rows.push_back({term.id, static_cast<double>(experiment.week), route.id, route.product->name,
                                 std::move(figure), std::move(value), std::move(unit)});
        };
        for (const TermFigure& figure : term_figures())
            if (is_shown(figure, term.plan(), prices))
                add(std::string(figure.id), figure.of(experiment.use), unit_of(figure, prices));
        for (const auto& [statement, bottles] : hazards[i].statements)
            add("hazard_statement", statement, "");
    }
    return rows;
}

writing::MachineObject term_tree(const CourseUse& term, const stock::PriceList& prices,
                                 const std::vector<WeekHazards>& hazards) {
    writing::MachineList totals, containers;
    for (const TermFigure& figure : term_figures())
        if (is_shown(figure, term.plan(), prices))
            totals.emplace_back(writing::MachineObject{{"of", std::string(figure.id)},
                                                       {"value", of_term(figure, term, prices)},
                                                       {"unit", unit_of(figure, prices)}});
    for (const course::ContainerTotal& total : term.containers())
        if (total.volume > 0.0)
            containers.emplace_back(writing::MachineObject{
                {"container", total.name}, {"millilitres", total.volume}, {"containers", total.containers}});
    const stock::ClassPlan& plan = term.plan();
    return {
        {"id", term.id},
        {"title", term.title},
        {"term", term.term},
        {"sections", plan.sections},
        {"students", plan.students},
        {"extra", plan.extra},
        {"session_minutes", plan.session > 0.0 ? writing::MachineTree(plan.session) : writing::MachineTree()},
        {"experiments", experiments_tree(term, prices, hazards)},
        {"totals", std::move(totals)},
        {"containers", std::move(containers)}};
}

} // namespace routeweigh::documents
