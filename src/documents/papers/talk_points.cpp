// SPDX-License-Identifier: MIT
#include "documents/papers/talk_points.hpp"

#include "assess/hazard/statement.hpp"
#include "documents/number.hpp"
#include "documents/words.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>

namespace routeweigh::documents {
namespace {

struct HazardKind {
    std::string_view id, title, what_to_do;
    std::vector<std::pair<int, int>> statements; ///< first and last number
};

/// What to do is common practice, no source.
const std::vector<HazardKind>& hazard_kinds() {
    static const std::vector<HazardKind> all{
        {"explodes",
         "may explode",
         "No heating to dryness, no scratching, no metal spatula; shield down.",
         {{200, 211}, {240, 242}}},
        {"poison",
         "poisonous in small amounts",
         "Open it only in the hood, with gloves. If anyone breathes it or gets it on the skin: fresh air, "
         "wash, call "
         "for help at once.",
         {{300, 301}, {310, 311}, {330, 331}}},
        {"burns",
         "burns skin or eyes",
         "Goggles on the whole time, gloves while pouring. On skin or in an eye: water at once, a quarter of "
         "an hour, "
         "and somebody calls for help.",
         {{314, 314}, {318, 318}}},
        {"fire",
         "catches fire",
         "No flame anywhere in the room; heat only in a bath or on a closed plate. If it burns: step back, "
         "cover it, "
         "turn the heat off, call.",
         {{220, 228}, {250, 250}, {260, 261}}},
        {"oxidiser",
         "feeds a fire",
         "Keep it off paper, gloves and solvent; it goes into the flask slowly and nowhere else. Wipe spills "
         "with "
         "water, never with dry paper into the bin.",
         {{270, 272}}},
        {"allergy",
         "may make allergic",
         "Gloves, and change them when wet; no dust.",
         {{317, 317}, {334, 334}}},
        {"lasting",
         "may harm for good over time",
         "Hood and gloves; nobody who is or may be pregnant works with it before talking to the instructor.",
         {{340, 373}}}};
    return all;
}

constexpr std::string_view bromine_to_do = "Stay in the hood and keep the quench solution at hand; never "
                                           "stopper the flask tightly. Brown vapour outside the "
                                           "hood: leave, close the door, call.";

bool belongs_to(const HazardKind& kind, const MixtureLabel& label) {
    return std::any_of(label.statements.begin(), label.statements.end(), [&](const std::string& statement) {
        const int number = statement_number(statement);
        return std::any_of(kind.statements.begin(), kind.statements.end(), [number](const auto& range) {
            return number >= range.first && number <= range.second;
        });
    });
}

int most_urgent(const HazardKind& kind, const MixtureLabel& label) {
    int most = 0;
    for (const std::string& statement : label.statements) {
        const int number = statement_number(statement);
        for (const auto& [first, last] : kind.statements)
            if (number >= first && number <= last) most = std::max(most, bench::urgency(statement));
    }
    return most;
}

void add_bottle(TalkHazard& hazard, const std::string& name, double grams, int urgency) {
    hazard.urgency = std::max(hazard.urgency, urgency);
    const auto known = std::find_if(hazard.bottles.begin(), hazard.bottles.end(),
                                    [&](const auto& bottle) { return bottle.name == name; });
    if (known == hazard.bottles.end())
        hazard.bottles.push_back({name, grams, urgency});
    else
        known->grams += grams;
}

/// The first bottle that gives a toxic gas with acid; "" where there is none.
std::string sets_gas_free(const bench::Experiment& experiment) {
    for (const bench::BenchStep& step : experiment.steps())
        for (const bench::Reagent& reagent : step.reagents)
            if (bench::brings(reagent.material(), "EUH032")) return reagent.material().name;
    return {};
}

/// Pots of a step that one pot of the last takes.
double pots_of(const bench::Experiment& experiment, const bench::BenchStep& step) {
    return experiment.assessment().evaluation().steps[static_cast<std::size_t>(step.index)].scale;
}

bool any_stage(const bench::Experiment& experiment, auto test) {
    for (const bench::BenchStep& step : experiment.steps())
        for (const bench::BenchStage& stage : step.stages)
            if (test(stage)) return true;
    return false;
}

} // namespace

double TalkHazard::grams() const {
    double sum = 0;
    for (const Bottle& bottle : bottles)
        sum += bottle.grams;
    return sum;
}

std::vector<TalkHazard> talk_hazards(const bench::Experiment& experiment) {
    std::vector<TalkHazard> hazards;
    for (const HazardKind& kind : hazard_kinds()) {
        TalkHazard hazard{kind.id, kind.title, std::string(kind.what_to_do), 0, {}};
        for (const bench::BenchStep& step : experiment.steps())
            for (const bench::Reagent& reagent : step.reagents) {
                const MixtureLabel& label = experiment.bottle(reagent.material()).label;
                if (!belongs_to(kind, label)) continue;
                add_bottle(hazard, reagent.material().name, reagent.grams * pots_of(experiment, step),
                           most_urgent(kind, label));
            }
        for (const bench::BenchStep& step : experiment.steps()) {
            const MixtureLabel& label = experiment.product(step).label;
            const std::string& name = step.step->product->name; // an intermediate may be a bottle already
            if (belongs_to(kind, label) && std::none_of(hazard.bottles.begin(), hazard.bottles.end(),
                                                        [&](const auto& one) { return one.name == name; }))
                add_bottle(hazard, name, 0.0, most_urgent(kind, label)); // how much is for the key
        }
        if (kind.id == "poison")
            if (const std::string name = sets_gas_free(experiment); !name.empty())
                hazard.what_to_do += fmt::format(" No acid near {}: it sets a toxic gas free.", name);
        if (!hazard.bottles.empty()) hazards.push_back(std::move(hazard));
    }
    double bromine = 0;
    bool poured = false;
    for (const bench::BenchStep& step : experiment.steps()) {
        for (const bench::BenchStage& stage : step.stages)
            bromine = std::max(bromine, stage.facts.bromine);
        for (const bench::Reagent& reagent : step.reagents)
            poured = poured || (reagent.counted != nullptr && reagent.counted->id == "bromine");
    }
    if (bromine >= 0.01 && !poured) // where it is poured, the bottle says it already
        hazards.push_back({"bromine_set_free",
                           "free bromine in the flask",
                           std::string(bromine_to_do),
                           5,
                           {{"bromine that the flask can hold at one time", bromine, 5}}});
    for (TalkHazard& hazard : hazards)
        std::stable_sort(hazard.bottles.begin(), hazard.bottles.end(), [](const auto& a, const auto& b) {
            return a.urgency != b.urgency ? a.urgency > b.urgency : a.grams > b.grams;
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
            fmt::format("Bubbles: {} leaves. The vessel stays open to the hood; slow down when it foams.",
                        listed(gases)));
    if (any_stage(experiment, [](const auto& stage) { return stage.facts.refluxes(); }))
        signs.emplace_back(
            "Condenser: water runs before the heat, and the ring of vapour stays in its lower half.");
    if (any_stage(experiment,
                  [](const auto& stage) { return stage.facts.separates(SeparationMethod::extraction); }))
        signs.emplace_back(
            "Layers: a drop of water shows which one is water; keep both until the product is weighed.");
    const Substance& product = *experiment.route().product;
    if (product.phase == Substance::Phase::solid)
        signs.push_back(
            product.melting_point
                ? fmt::format("Crystals: they come on cooling, and melt sharply near {} °C once dry. Low and "
                              "wide means wet or impure.",
                              digits(*product.melting_point, 3))
                : std::string("Crystals: they come on cooling; dry them to constant mass."));
    return signs;
}

} // namespace routeweigh::documents
