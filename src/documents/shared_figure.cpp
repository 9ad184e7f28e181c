// SPDX-License-Identifier: MIT
#include "documents/shared_figure.hpp"

#include "documents/number.hpp"

#include <fmt/format.h>

#include <utility>

namespace routeweigh::documents {
namespace {

/// "A3/bromination/1.2/mass": step by id, stage and charge by number from 1.
std::string charge_id(const Route& route, const bench::BenchStep& step, const bench::Reagent& reagent,
                      std::string_view what) {
    return fmt::format("{}/{}/{}.{}/{}", route.id, step.step->id, reagent.stage + 1, reagent.number + 1,
                       what);
}

std::string step_id(const Route& route, const bench::BenchStep& step, std::string_view what) {
    return fmt::format("{}/{}/{}", route.id, step.step->id, what);
}

} // namespace

writing::MachineTree machine_of(const SharedFigure& figure, Edition edition) {
    writing::MachineObject object{{"figure", figure.id}, {"label", figure.label}};
    if (!figure.known || (figure.to_work_out && edition == Edition::student)) {
        object.push_back({"value", {}});
        object.push_back({"unit", figure.unit});
        object.push_back({"text", {}});
    } else {
        object.push_back({"value", figure.value});
        object.push_back({"unit", figure.unit});
        object.push_back({"text", figure.text});
    }
    return object;
}

writing::Cell cell_of(const SharedFigure& figure, Edition edition) {
    if (figure.to_work_out && edition == Edition::student) return std::string(blank);
    return {figure.text, figure.value};
}

writing::Run text_of(const SharedFigure& figure, Edition edition) {
    if (figure.to_work_out && edition == Edition::student)
        return writing::number(std::string(blank) + "\u00A0" + figure.unit);
    return writing::number(figure.with_unit());
}

SharedFigure mass_of(const Route& route, const bench::BenchStep& step, const bench::Reagent& reagent) {
    return {charge_id(route, step, reagent, "mass"), "mass of " + reagent.material().name, reagent.grams, "g",
            balance_text(reagent.grams)};
}

SharedFigure volume_of(const Route& route, const bench::BenchStep& step, const bench::Reagent& reagent) {
    return {charge_id(route, step, reagent, "volume"), "volume of " + reagent.material().name,
            *reagent.millilitres, "mL", cylinder_text(*reagent.millilitres)};
}

SharedFigure amount_of(const Route& route, const bench::BenchStep& step, const bench::Reagent& reagent) {
    return {charge_id(route, step, reagent, "amount"),
            "amount of " + reagent.counted->name,
            1000 * reagent.moles,
            "mmol",
            digits(1000 * reagent.moles, 4),
            true};
}

SharedFigure equivalents_of(const Route& route, const bench::BenchStep& step, const bench::Reagent& reagent) {
    return {charge_id(route, step, reagent, "equivalents"),
            "equivalents of " + reagent.counted->name,
            *reagent.equivalents,
            "eq",
            digits(*reagent.equivalents, 3),
            true};
}

SharedFigure theoretical_amount(const Route& route, const bench::BenchStep& step) {
    return {step_id(route, step, "theoretical_amount"),
            "theoretical yield of " + step.step->product->name,
            1000 * step.theory.moles,
            "mmol",
            digits(1000 * step.theory.moles, 4),
            true};
}

SharedFigure theoretical_mass(const Route& route, const bench::BenchStep& step) {
    return {step_id(route, step, "theoretical_yield"),
            "theoretical yield of " + step.step->product->name,
            step.theory.grams,
            "g",
            balance_text(step.theory.grams),
            true};
}

SharedFigure isolated_mass(const Route& route, const bench::BenchStep& step) {
    return {step_id(route, step, "isolated_mass"),
            "isolated " + step.step->product->name,
            step.theory.isolated,
            "g",
            balance_text(step.theory.isolated),
            true};
}

SharedFigure base_mass(const Route& route, const bench::BenchStep& step,
                       const streams::StreamToNeutralise& one) {
    const streams::BaseNeeded& base = *one.usual_base();
    return {step_id(route, step, one.stream + "/base"),
            base.base->name + " for " + one.stream,
            base.grams,
            "g",
            digits(base.grams, 2),
            true};
}

SharedFigure isolated_yield(const Route& route, const bench::BenchStep& step) {
    return {step_id(route, step, "isolated_yield"),
            "isolated yield of " + step.step->product->name,
            100 * step.theory.yield(),
            "%",
            fixed(100 * step.theory.yield(), 1),
            true};
}

SharedFigure stream_volume(const Route& route, const streams::StreamAdvice& advice) {
    return {fmt::format("{}/{}/stream {}/volume", route.id, advice.stream.step_id, advice.stream.name),
            "volume of " + advice.stream.name, advice.largest_volume(), "mL",
            stream_volume_text(advice.largest_volume())};
}

std::string stream_volume_text(double millilitres) {
    return digits(millilitres, 2);
}

SharedFigure figure_of_class(const Route& route, const stock::ClassPlan& plan, std::string_view what,
                             std::string label, double value, std::string unit, int decimals) {
    const std::string extra = plan.extra > 0.0 ? fmt::format(" + {:g} %", 100.0 * plan.extra) : "";
    return {fmt::format("{}/{} x {}{}/{}", route.id, plan.sections, plan.students, extra, what),
            std::move(label), value, std::move(unit), fixed(value, decimals)};
}

SharedFigure packs_of_class(const Route& route, const stock::StockList& list,
                            const stock::PriceList& prices) {
    SharedFigure figure =
        figure_of_class(route, list.plan, "packs", "packs to buy", list.cost, prices.currency, 2);
    figure.known = list.cost > 0.0 || list.unpriced.empty();
    return figure;
}

std::string balance_text(double grams) {
    return grams >= 1000   ? digits(grams, 4)
           : grams >= 100  ? fixed(grams, 1)
           : grams >= 10   ? fixed(grams, 2)
           : grams >= 0.01 ? fixed(grams, 3)
                           : digits(grams, 2);
}

std::string cylinder_text(double millilitres) {
    return millilitres >= 1000  ? digits(millilitres, 4)
           : millilitres >= 10  ? fixed(millilitres, 1)
           : millilitres >= 0.1 ? fixed(millilitres, 2)
                                : digits(millilitres, 2);
}

} // namespace routeweigh::documents
