// SPDX-License-Identifier: MIT
#include "documents/papers/talk_points.hpp"

#include "assess/hazard/statement.hpp"
#include "documents/bench.hpp"
#include "documents/number.hpp"
#include "documents/words.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <optional>

namespace routeweigh::documents {
namespace {

struct TalkKind {
    BenchHazard kind;
    std::string_view id, title, what_to_do;
};

/// What to do is common practice, no source.
constexpr std::array talk_kinds{
    TalkKind{BenchHazard::explosive, "explodes", "may explode",
             "No heating to dryness, no scratching, no metal spatula; shield down."},
    TalkKind{
        BenchHazard::toxic, "poison", "poisonous in small amounts",
        "Open it only in the hood, with gloves. If anyone breathes it or gets it on the skin: fresh air, "
        "wash, call for help at once."},
    TalkKind{
        BenchHazard::corrosive, "burns", "burns skin, eyes or metal",
        "Goggles on the whole time, gloves while pouring. On skin or in an eye: water at once, a quarter of "
        "an hour, and somebody calls for help."},
    TalkKind{
        BenchHazard::flammable, "fire", "catches fire",
        "No flame anywhere in the room; heat only in a bath or on a closed plate. If it burns: step back, "
        "cover it, turn the heat off, call."},
    TalkKind{
        BenchHazard::oxidising, "oxidiser", "feeds a fire",
        "Keep it off paper, gloves and solvent; it goes into the flask slowly and nowhere else. Wipe spills "
        "with water, never with dry paper into the bin."},
    TalkKind{
        BenchHazard::pressure, "pressure", "gas under pressure",
        "Only with equipment made for it, by trained people with permission; chained, and no heat near it."},
    TalkKind{BenchHazard::sensitising, "allergy", "may make allergic",
             "Gloves, and change them when wet; no dust."},
    TalkKind{
        BenchHazard::long_term, "lasting", "may harm for good",
        "Hood and gloves; nobody who is or may be pregnant works with it before talking to the instructor."},
    TalkKind{BenchHazard::aspiration, "lungs", "harms the lungs when swallowed",
             "Nothing is drawn up by mouth. If anyone swallows it: do not make them vomit; call for help at "
             "once."},
    TalkKind{BenchHazard::harmful, "harmful", "harmful or irritating",
             "Goggles; keep it off the skin, make no dust, and wash your hands."},
    TalkKind{BenchHazard::aquatic, "water", "harms water life",
             "Nothing of it into the sink; what is wiped up goes into the container too."},
    TalkKind{BenchHazard::ozone, "ozone", "harms the ozone layer",
             "Keep it closed and cold; nothing of it evaporates to be rid of it."},
    TalkKind{BenchHazard::other, "other", "another hazard", "Read its label and data sheet."}};

constexpr std::string_view bromine_to_do = "Stay in the hood and keep the quench solution at hand; never "
                                           "stopper the flask tightly. Brown vapour outside the "
                                           "hood: leave, close the door, call.";

/// Of the statements of that kind on a label; none where it has no such statement.
std::optional<int> most_urgent(BenchHazard kind, const MixtureLabel& label) {
    std::optional<int> most;
    for (const std::string& statement : label.statements)
        if (kind_of(statement_number(statement)) == kind)
            most = std::max(most.value_or(0), bench::urgency(statement));
    return most;
}

TalkHazard::Bottle& bottle_of(TalkHazard& hazard, const std::string& name, int urgency) {
    hazard.urgency = std::max(hazard.urgency, urgency);
    const auto known = std::find_if(hazard.bottles.begin(), hazard.bottles.end(),
                                    [&](const auto& bottle) { return bottle.name == name; });
    return known != hazard.bottles.end() ? *known
                                         : hazard.bottles.emplace_back(TalkHazard::Bottle{name, {}, urgency});
}

void add_amount(TalkHazard::Bottle& bottle, int step, double grams) {
    if (bottle.amounts.empty() || bottle.amounts.back().step != step) bottle.amounts.push_back({step, 0});
    bottle.amounts.back().grams += grams;
}

/// The first bottle that gives a toxic gas with acid; "" where there is none.
std::string sets_gas_free(const bench::Experiment& experiment) {
    for (const bench::BenchStep& step : experiment.steps())
        for (const bench::Reagent& reagent : step.reagents)
            if (bench::brings(reagent.material(), "EUH032")) return reagent.material().name;
    return {};
}

/// Some charge is a gas that is poisonous to breathe.
bool poisonous_gas(const bench::Experiment& experiment) {
    for (const bench::BenchStep& step : experiment.steps())
        for (const bench::Reagent& reagent : step.reagents)
            if (reagent.is_gas() &&
                most_urgent(BenchHazard::toxic, experiment.bottle(reagent.material()).label))
                return true;
    return false;
}

bool any_stage(const bench::Experiment& experiment, auto test) {
    for (const bench::BenchStep& step : experiment.steps())
        for (const bench::BenchStage& stage : step.stages)
            if (test(stage)) return true;
    return false;
}

} // namespace

double TalkHazard::Bottle::grams() const {
    double sum = 0;
    for (const Amount& amount : amounts)
        sum += amount.grams;
    return sum;
}

double TalkHazard::grams() const {
    double sum = 0;
    for (const Bottle& bottle : bottles)
        sum += bottle.grams();
    return sum;
}

std::vector<TalkHazard> talk_hazards(const bench::Experiment& experiment) {
    std::vector<TalkHazard> hazards;
    for (const TalkKind& kind : talk_kinds) {
        TalkHazard hazard{kind.id, kind.title, std::string(kind.what_to_do), 0, {}};
        for (const bench::BenchStep& step : experiment.steps())
            for (const bench::Reagent& reagent : step.reagents)
                if (const auto urgency = most_urgent(kind.kind, experiment.bottle(reagent.material()).label))
                    add_amount(bottle_of(hazard, reagent.material().name, *urgency), step.index,
                               reagent.grams);
        for (const bench::BenchStep& step : experiment.steps())
            // An intermediate may be a bottle already; how much comes out is for the key.
            if (const auto urgency = most_urgent(kind.kind, experiment.product(step).label))
                bottle_of(hazard, step.step->product->name, *urgency);
        if (kind.kind == BenchHazard::toxic && poisonous_gas(experiment))
            hazard.what_to_do +=
                " A gas gives no warning by its smell: a detector runs before the valve is opened. "
                "If it sounds or anybody feels ill: out, close the door, call.";
        if (kind.kind == BenchHazard::toxic)
            if (const std::string name = sets_gas_free(experiment); !name.empty())
                hazard.what_to_do += fmt::format(" No acid near {}: it sets a toxic gas free.", name);
        if (!hazard.bottles.empty()) hazards.push_back(std::move(hazard));
    }
    TalkHazard::Amount bromine;
    bool poured = false;
    for (const bench::BenchStep& step : experiment.steps()) {
        for (const bench::BenchStage& stage : step.stages)
            if (stage.facts.bromine > bromine.grams) bromine = {step.index, stage.facts.bromine};
        for (const bench::Reagent& reagent : step.reagents)
            poured = poured || (reagent.counted != nullptr && reagent.counted->id == "bromine");
    }
    if (bromine.grams >= 0.01 && !poured) // where it is poured, the bottle says it already
        hazards.push_back({"bromine_set_free",
                           "free bromine in the flask",
                           std::string(bromine_to_do),
                           5,
                           {{"bromine that the flask can hold at one time", {bromine}, 5}}});
    for (TalkHazard& hazard : hazards)
        std::stable_sort(hazard.bottles.begin(), hazard.bottles.end(), [](const auto& a, const auto& b) {
            return a.urgency != b.urgency ? a.urgency > b.urgency : a.grams() > b.grams();
        });
    // A burn is felt at once and a poison is not: it is named even where three others are as urgent.
    std::stable_sort(hazards.begin(), hazards.end(), [](const TalkHazard& a, const TalkHazard& b) {
        if ((a.id == "poison") != (b.id == "poison")) return a.id == "poison";
        return a.urgency != b.urgency ? a.urgency > b.urgency : a.grams() > b.grams();
    });
    return hazards;
}

std::vector<std::string> talk_signs(const bench::Experiment& experiment) {
    std::vector<std::string> signs;
    if (any_stage(experiment, [](const auto& stage) { return stage.facts.bromine >= 0.01; }))
        signs.emplace_back(
            "Colour: yellow to orange is free bromine. It fades while the substrate takes it up; where "
            "it stays before all is added, stop adding and call.");
    if (std::any_of(experiment.steps().begin(), experiment.steps().end(), [](const bench::BenchStep& step) {
            return step.quench->has_oxidiser() &&
                   std::any_of(step.stages.begin(), step.stages.end(),
                               [](const auto& stage) { return stage.facts.has_role("quench"); });
        }))
        signs.emplace_back(
            "After the quench: no colour, and starch-iodide paper stays white. Only then filter.");
    if (std::any_of(experiment.steps().begin(), experiment.steps().end(),
                    [](const bench::BenchStep& step) { return step.quench->may_boil; }))
        signs.emplace_back(
            "Quench: its heat may boil the liquor. Ask before anybody quenches it; ice-water first.");
    any_stage(experiment, [&](const bench::BenchStage& stage) {
        const Substance* anhydride = stage.facts.anhydride_for_water;
        if (anhydride != nullptr)
            signs.push_back(fmt::format("Water on {}: it warms up, can boil up and smells of acid; each drop "
                                        "after the last has calmed, in the hood.",
                                        anhydride->name));
        return anhydride != nullptr;
    });
    std::vector<std::string> gases;
    any_stage(experiment, [&](const bench::BenchStage& stage) {
        for (const bench::StageGas& gas : stage.facts.gases)
            if (gas.litres >= 0.02 &&
                std::find(gases.begin(), gases.end(), gas.substance->name) == gases.end())
                gases.push_back(gas.substance->name);
        return false;
    });
    if (!gases.empty())
        signs.push_back(
            fmt::format("Bubbles: {} {}. The vessel stays open to the hood; slow down when it foams.",
                        listed(gases), verb(gases.size(), "leaves", "leave")));
    if (any_stage(experiment, [](const auto& stage) { return stage.facts.refluxes(); }))
        signs.emplace_back(
            "Condenser: water runs before the heat, and the ring of vapour stays in its lower half.");
    if (any_stage(experiment,
                  [](const auto& stage) { return stage.facts.separates(SeparationMethod::extraction); }))
        signs.emplace_back(
            "Layers: a drop of water shows which one is water; keep both until the product is weighed.");
    const Substance& product = *experiment.route().product;
    if (product.phase == Substance::Phase::solid) {
        const bool filtered = any_stage(experiment, [](const auto& stage) {
            return stage.facts.separates(SeparationMethod::filtration);
        });
        const std::string come =
            filtered ? "Crystals: they come on cooling, and" : "Product: a solid; once dry it";
        if (product.melting_point)
            signs.push_back(fmt::format("{} {} sharply near {} °C{}. Low and wide means wet or impure.", come,
                                        filtered ? "melt" : "melts", digits(*product.melting_point, 3),
                                        filtered ? " once dry" : ""));
        else if (filtered)
            signs.emplace_back("Crystals: they come on cooling; dry them to constant mass.");
    }
    return signs;
}

} // namespace routeweigh::documents
