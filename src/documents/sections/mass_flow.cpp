// SPDX-License-Identifier: MIT
// Where one gram of product comes from and goes: bars for all routes, ribbons for each, water apart.
#include "assess/input_class.hpp"
#include "base/index.hpp"
#include "documents/number.hpp"
#include "documents/sections/sections.hpp"
#include "documents/words.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <map>
#include <set>

namespace routeweigh::documents {
namespace {

using Kind = writing::Ribbons::Kind;

writing::Figure inputs_figure(const ReportView& view) {
    writing::StackedBars chart;
    chart.unit = "g per g of product";
    chart.series = {{"reactants, reagents, catalysts"},
                    {"reaction solvent"},
                    {"work-up and purification"},
                    {"water", true}};
    for (const RouteView& route : view.routes)
        chart.bars.push_back(
            {route.id,
             {route.value("pmi_reactants_reagents_catalysts"), route.value("pmi_reaction_solvent"),
              route.value("pmi_workup_and_purification"), route.value("pmi_water")},
             route.baseline});
    double least = 100.0, most = 0.0;
    for (const RouteView& route : view.routes) {
        const double share = route.value("pmi_water") / route.value("process_mass_intensity");
        least = std::min(least, share);
        most = std::max(most, share);
    }
    return {"What goes in for one gram of product, as written. " + view.standing(),
            most > 0.0
                ? fmt::format("Water, hatched, is {} of the mass.",
                              percent(least) == percent(most) ? percent(least)
                                                              : percent(least) + " to " + percent(most))
                : std::string("No water goes in but what reacts."),
            chart};
}

struct Outputs {
    double lost = 0, other = 0, solvent = 0, water = 0;
};

/// What leaves and is not reused, by what it is rather than by where it goes.
Outputs outputs_of(const Assessment& route) {
    std::set<const Substance*> solvents;
    for (const Inflow& inflow : route.flat().inflows())
        if (input_class(inflow) == InputClass::solvent) solvents.insert(inflow.substance);
    Outputs sum;
    for (const LedgerRow& row : route.ledger().rows) {
        if (row.side != LedgerRow::Side::stream) continue;
        const double grams = row.grams / route.evaluation().product;
        if (row.substance == route.route().product)
            sum.lost += grams;
        else if (is_water(*row.substance))
            sum.water += grams;
        else
            (solvents.contains(row.substance) ? sum.solvent : sum.other) += grams;
    }
    return sum;
}

writing::Figure outputs_figure(const ReportView& view) {
    writing::StackedBars chart;
    chart.unit = "g per g of product";
    chart.series = {{"product"},
                    {"product lost"},
                    {"by-products, salts, what is left over"},
                    {"solvent"},
                    {"water", true}};
    for (const RouteView& route : view.routes) {
        const Outputs out = outputs_of(*route.assessment);
        chart.bars.push_back({route.id, {1.0, out.lost, out.other, out.solvent, out.water}, route.baseline});
    }
    return {"What comes out with one gram of product, as written; the loss is read as product lost in the "
            "work-up. " +
                view.standing(),
            "Besides the gram of product everything leaves as waste; water is hatched.", chart};
}

void add_flow(std::vector<writing::Ribbons::Flow>& flows, const std::string& label, double mass, Kind kind) {
    const auto found = std::find_if(flows.begin(), flows.end(), [&](const auto& flow) {
        return flow.label == label && flow.kind == kind;
    });
    if (found == flows.end())
        flows.push_back({label, mass, kind});
    else
        found->mass += mass;
}

/// Heaviest first, water last, nothing that would be drawn as no line.
void tidy(std::vector<writing::Ribbons::Flow>& flows) {
    std::erase_if(flows, [](const auto& flow) { return flow.mass < negligible; });
    std::stable_sort(flows.begin(), flows.end(), [](const auto& a, const auto& b) {
        const bool water_a = a.kind == Kind::water, water_b = b.kind == Kind::water;
        return water_a != water_b ? water_b : a.mass > b.mass;
    });
}

void add_inputs(const Assessment& route, writing::Ribbons& chart) {
    const auto inflows = route.flat().inflows();
    for (std::size_t i = 0; i < inflows.size(); ++i) {
        const Inflow& inflow = inflows[i];
        const Step& step = route.route().steps[at(inflow.step)];
        const Charge& charge = step.stages[at(inflow.stage)].charges[at(inflow.charge)];
        const double grams = route.evaluation().in[i] / route.evaluation().product;
        auto& flows = chart.steps[at(inflow.step)].inputs;
        if (inflow.fed_by >= 0)
            add_flow(flows, inflow.substance->name, grams, Kind::intermediate);
        else if (is_water(*inflow.substance))
            add_flow(flows, "water, with that of solutions", grams, Kind::water);
        else
            add_flow(flows, charge.material->name + (inflow.neat ? "" : ", without its water"), grams,
                     Kind::ordinary);
    }
}

void add_outputs(const Assessment& route, writing::Ribbons& chart) {
    const double product = route.evaluation().product;
    for (std::size_t s = 0; s < route.route().steps.size(); ++s) {
        const Step& step = route.route().steps[s];
        const StepResult& result = route.evaluation().steps[s];
        const bool last = static_cast<int>(s) == route.flat().final_step();
        add_flow(chart.steps[s].outputs, step.product->name,
                 result.isolated * result.scale * step.product->molar_mass / product,
                 last ? Kind::product : Kind::intermediate);
    }
    for (std::size_t r = 0; r < route.route().reuse.size(); ++r) {
        const Reuse& reuse = route.route().reuse[r];
        add_flow(chart.steps[at(reuse.from_step)].outputs, reuse.substance->name + ", fed back",
                 route.evaluation().recovered[r] / product, Kind::recovered);
    }
    for (const FlatStream& stream : route.flat().streams()) {
        const FlatStep& step = route.flat().steps()[at(stream.step)];
        for (std::size_t s = 0; s < step.substances.size(); ++s) {
            const bool water = is_water(*step.substances[s]);
            add_flow(chart.steps[at(stream.step)].outputs,
                     stream.name + (water ? ", water" : ", without its water"),
                     route.evaluation().out[at(stream.first_outflow) + s] / product,
                     water ? Kind::water : Kind::ordinary);
        }
    }
}

writing::Folded ribbons(const RouteView& route) {
    const Assessment& assessment = *route.assessment;
    writing::Ribbons chart;
    chart.unit = "g per g of product";
    for (const Step& step : assessment.route().steps)
        chart.steps.push_back({step.title, {}, {}});
    add_inputs(assessment, chart);
    add_outputs(assessment, chart);
    for (auto& step : chart.steps) {
        tidy(step.inputs);
        tidy(step.outputs);
    }
    return {
        {writing::Run("Mass flow of "), writing::strong(route.id), writing::Run(", " + route.route().title)},
        {writing::Figure{fmt::format("Mass flow of {}. Numbers: {}.", route.id, route.standing),
                         "Inputs on the left, outputs on the right, to one scale; water hatched and apart.",
                         std::move(chart)}},
        "flow-" + route.id,
        route.baseline};
}

} // namespace

void add_mass_flow(const ReportView& view, Blocks& blocks) {
    blocks.push_back(inputs_figure(view));
    blocks.push_back(outputs_figure(view));
    for (const RouteView& route : view.routes)
        blocks.push_back(ribbons(route));
}

} // namespace routeweigh::documents
