// SPDX-License-Identifier: MIT
#include "documents/term_figures.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>

namespace routeweigh::documents {
namespace {

using course::ClassUse;

bool lacks_price(const ClassUse& use) {
    return !use.money.unpriced.empty();
}

bool lacks_time(const ClassUse& use) {
    return use.one.silent_stages > 0;
}

/// A route of equations alone: nothing is said of how long anything is heated or cooled.
bool lacks_every_time(const ClassUse& use) {
    return lacks_time(use) && use.one.minutes == 0.0;
}

/// Heat without a time draws no power in the estimate.
bool lacks_heating_time(const ClassUse& use) {
    return lacks_every_time(use) ||
           std::any_of(use.one.stages.begin(), use.one.stages.end(), [](const auto& stage) {
               return stage.heated && !stage.minutes && !stage.socket.stated;
           });
}

bool lacks_cooling_time(const ClassUse& use) {
    return lacks_every_time(use) ||
           std::any_of(use.one.stages.begin(), use.one.stages.end(), [](const auto& stage) {
               return !stage.condenses.empty() && !stage.minutes && !stage.cooling.stated;
           });
}

constexpr std::array figures_of_term{
    TermFigure{"waste_kg", "waste, water and gas with it", "kg", 2, false,
               [](const ClassUse& use) { return use.waste_grams / 1000.0; }},
    TermFigure{"waste_without_water_kg", "waste without water", "kg", 2, false,
               [](const ClassUse& use) {
                   const Totals& totals = use.route->totals();
                   return (totals.inputs - totals.water - totals.product) * use.runs() / 1000.0;
               }},
    TermFigure{"collected_l", "collected in containers", "L", 1, false,
               [](const ClassUse& use) {
                   double volume = 0.0;
                   for (const auto& fit : use.waste.fits)
                       volume += fit.volume;
                   for (const auto& bottle : use.waste.own_bottles)
                       volume += bottle.volume;
                   return volume / 1000.0;
               }},
    TermFigure{"consumed", "chemicals used, disposal, power, water", "", 2, true,
               [](const ClassUse& use) { return use.money.consumed(); },
               [](const ClassUse& use) { return lacks_price(use) || lacks_heating_time(use); }},
    TermFigure{"packs", "packs to buy", "", 2, true, [](const ClassUse& use) { return use.money.packs; },
               lacks_price, true},
    TermFigure{"power_kwh", "drawn from the socket", "kWh", 1, false,
               [](const ClassUse& use) { return use.one.socket.usual * use.runs() / 3600.0; },
               lacks_heating_time},
    TermFigure{
        "water_l", "tap water for cooling and suction", "L", 0, false,
        [](const ClassUse& use) { return (use.one.cooling.usual + use.one.suction.usual) * use.runs(); },
        lacks_cooling_time},
    TermFigure{"bench_h", "time at the bench, a student", "h", 1, false,
               [](const ClassUse& use) { return use.one.minutes / 60.0; }, lacks_time},
    TermFigure{"hood_h", "of it in a hood", "h", 1, false,
               [](const ClassUse& use) { return use.one.hood_minutes / 60.0; }, lacks_time},
    TermFigure{"lacking_min", "time lacking in the session, a student", "min", 0, false, minutes_lacking,
               lacks_time},
};

} // namespace

std::span<const TermFigure> term_figures() {
    return figures_of_term;
}

std::string unit_of(const TermFigure& figure, const stock::PriceList& prices) {
    return figure.money ? prices.currency : std::string(figure.unit);
}

bool is_shown(const TermFigure& figure, const stock::ClassPlan& plan, const stock::PriceList& prices) {
    if (figure.of == minutes_lacking) return plan.session > 0.0;
    return !figure.money || !prices.packs.empty();
}

double of_term(const TermFigure& figure, const course::CourseUse& term, const stock::PriceList& prices) {
    return figure.id == "packs" ? term.cost_of_packs(prices) : term.total(figure.of);
}

double minutes_lacking(const ClassUse& use) {
    return use.plan.session > 0.0 ? std::max(0.0, use.one.minutes - use.plan.session) : 0.0;
}

std::string extra_words(const stock::ClassPlan& plan) {
    if (!(plan.extra > 0.0)) return "";
    return fmt::format("The {:g} % extra is spare stock, made ready for spills and repeats: stock list and "
                       "packs hold it, all other "
                       "figures are those of the {:g} runs planned. Spare that keeps stays in the stockroom; "
                       "spare that does not "
                       "keep is unreacted waste beside the streams counted here: ask where it goes. A repeat "
                       "adds its share to "
                       "waste, containers, disposal, power and water.",
                       100.0 * plan.extra, plan.runs());
}

SharedFigure figure_of(const TermFigure& figure, const ClassUse& use, const stock::PriceList& prices) {
    stock::ClassPlan plan = use.plan;
    if (!figure.spare) plan.extra = 0.0; // its name may not claim what the figure does not hold
    SharedFigure shared = figure_of_class(use.route->route(), plan, figure.id, std::string(figure.name),
                                          figure.of(use), unit_of(figure, prices), figure.decimals);
    shared.known = !is_missing(figure, shared.value, figure.lacks != nullptr && figure.lacks(use));
    return shared;
}

bool is_missing(const TermFigure& figure, double value, bool lacking) {
    return figure.money && lacking && value == 0.0;
}

int printed_sign(double difference, int decimals) {
    const double seen = 0.5 * std::pow(10.0, -decimals);
    return difference >= seen ? 1 : difference <= -seen ? -1 : 0;
}

} // namespace routeweigh::documents
