// SPDX-License-Identifier: MIT
#include "assess/bench/caution_list.hpp"

#include "assess/bench/addition_order.hpp"
#include "assess/hazard/statement.hpp"
#include "assess/streams/quench_words.hpp"
#include "base/list.hpp"
#include "base/text.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <array>

namespace routeweigh::bench {
namespace {

using Words = std::string; // empty: the rule has nothing to say

/// Names of the bottles of this stage that pass a test, each once.
std::vector<std::string> bottles_that(const StageFacts& facts, auto test) {
    std::vector<std::string> names;
    for (const Reagent* reagent : facts.charged)
        if (test(*reagent)) add_once(names, reagent->material().name);
    return names;
}

std::vector<std::string> names_of(const std::vector<const Reagent*>& reagents) {
    std::vector<std::string> names;
    for (const Reagent* reagent : reagents)
        add_once(names, reagent->material().name);
    return names;
}

/// Names of the bottles of this stage that carry one of the statements.
std::vector<std::string> bottles_with(const StageView& view, std::initializer_list<int> numbers) {
    return bottles_that(view.facts, [&](const Reagent& reagent) {
        return carries(view.bottles.of(reagent.material()), numbers);
    });
}

std::string flammables(const StageFacts& facts) {
    std::vector<std::string> names;
    for (const Substance* liquid : facts.flammable)
        names.push_back(liquid->name);
    return listed(names);
}

Words charged_gas(const StageView& view) {
    if (!view.facts.takes_in_gas()) return {};
    const auto gases_with = [&](std::initializer_list<int> numbers) {
        return listed(bottles_that(view.facts, [&](const Reagent& reagent) {
            return reagent.is_gas() && carries(view.bottles.of(reagent.material()), numbers);
        }));
    };
    Words words =
        "Gas from a cylinder or under pressure is never weighed and poured: only with equipment made "
        "for it, by trained people with permission, as local codes and licensed practice ask.";
    if (const std::string names = gases_with({330, 331}); !names.empty())
        words +=
            fmt::format(" {}: poisonous, and no smell may warn of it: a detector runs before the valve is "
                        "opened. If it sounds or anybody feels ill: out, close the door, call.",
                        capitalised(names));
    if (const std::string names = gases_with({220, 221}); !names.empty())
        words += fmt::format(" {}: flammable gas: no flame, spark or hot surface in the room, and nothing in "
                             "which it gathers.",
                             capitalised(names));
    return words;
}

Words toxic(const StageView& view) {
    const auto names = bottles_that(view.facts, [&](const Reagent& reagent) {
        return !reagent.is_gas() &&
               carries(view.bottles.of(reagent.material()), {300, 310, 330, 301, 311, 331});
    });
    if (names.empty()) return {};
    return fmt::format("{}: poisonous in small amounts. Weigh and pour only in the hood, with gloves; know "
                       "before you start who helps and what the data sheet says to do.",
                       capitalised(listed(names)));
}

Words no_acid(const StageView& view) {
    for (const Reagent* reagent : view.facts.charged)
        if (brings(reagent->material(), "EUH032"))
            return fmt::format("Never let acid near {}: it sets a toxic gas free. No acid bottle stands at "
                               "this bench while it is open.",
                               reagent->material().name);
    return {};
}

Words gas_with_acid(const StageView& view) {
    for (const Reagent* reagent : view.facts.charged)
        if (brings(reagent->material(), "EUH031"))
            return fmt::format(
                "{} gives a toxic gas with acid: add it in the hood, cold and slowly, and never "
                "rinse both into one sink or bottle.",
                capitalised(reagent->material().name));
    return {};
}

Words burns(const StageView& view) {
    const auto names = bottles_with(view, {314});
    if (names.empty()) return {};
    return fmt::format("{}: burn{} skin and eyes for good. Goggles and gloves; rinse at once with much water "
                       "and call somebody.",
                       capitalised(listed(names)), names.size() == 1 ? "s" : "");
}

Words eyes(const StageView& view) {
    const auto names = bottles_with(view, {318});
    if (names.empty()) return {};
    return fmt::format("{}: harm{} eyes for good. Goggles stay on; rinse an eye at once and call somebody.",
                       capitalised(listed(names)), names.size() == 1 ? "s" : "");
}

Words free_bromine(const StageView& view) {
    const double grams = view.facts.bromine;
    if (grams < 0.01 || !view.facts.is(Phase::reaction)) return {}; // our line
    return fmt::format("Up to {} g of bromine can be free in this flask at one time. Stay in the hood, keep "
                       "the quench solution within reach, and never stopper the flask tightly.",
                       significant(grams, 2));
}

Words water_reactive(const StageView& view) {
    for (const Reagent* reagent : view.facts.charged)
        if (brings(reagent->material(), "EUH014") ||
            carries(view.bottles.of(reagent->material()), {260, 261}))
            return fmt::format("{} reacts violently with water: dry glass, dry spatula, and no water in the "
                               "pot before the written stage.",
                               capitalised(reagent->material().name));
    return {};
}

Words no_flames(const StageView& view) {
    const StageFacts& facts = view.facts;
    if (facts.flammable.empty() || facts.wet_with_flammable) return {};
    if (facts.warm)
        return fmt::format("No flames with {}: heat in a bath or on a closed plate, never over a burner, and "
                           "look for burners on the neighbours' benches.",
                           flammables(facts));
    if (facts.charged.empty()) return {};
    const bool brought = std::any_of(facts.charged.begin(), facts.charged.end(), [&](const Reagent* reagent) {
        return carries(view.bottles.of(reagent->material()), {224, 225, 226});
    });
    return brought ? fmt::format("No flames with {}.", flammables(facts)) : Words();
}

Words condenser(const StageView& view) {
    if (view.facts.condenses == nullptr || view.facts.separates(SeparationMethod::evaporation)) return {};
    const std::string water =
        "Condenser: water in at the bottom, out at the top, and running before the heat goes on.";
    return view.facts.refluxes() ? water + " Keep the vapour no higher than half-way up the condenser."
                                 : water + " The receiver is vented, and the flask never boils dry.";
}

Words portions(const StageView& view) {
    const StageFacts& facts = view.facts;
    if (!facts.is(Phase::reaction) || facts.charged.size() < 2) return {};
    const AdditionOrder order = addition_order(facts, view.bottles);
    const char* through = "What is added while the flask boils goes down through the condenser, in portions, "
                          "each after the last has calmed.";
    if (order.oxidisers.empty()) return facts.refluxes() ? through : Words();
    std::string words = fmt::format("Add {} last, in portions or dropwise, ", listed(names_of(order.last())));
    words +=
        order.into_oxidiser
            ? fmt::format("stirred{}, each after the last has calmed: it gets hot, and what piles up reacts "
                          "all at once. ",
                          facts.refluxes() ? " and with the condenser in place" : "")
            : "and hold the temperature of the sheet; ";
    words += fmt::format("{} {} away from paper and from solvent that is not in the flask.",
                         order.into_oxidiser ? "Keep" : "keep",
                         order.into_oxidiser ? listed(names_of(order.oxidisers)) : "it");
    return facts.refluxes() ? fmt::format("{} {}", words, through) : words;
}

Words hot_crystals(const StageView& view) {
    if (!view.facts.has_role("recrystallisation solvent") || !view.facts.warm) return {};
    if (view.facts.refluxes())
        return "Boiling stone or stirrer in before the heat. What solvent is still missing goes down through "
               "the condenser, a little at a time, with the bath taken away.";
    return "Boiling stone or stirrer in before the heat. Add solvent to the hot flask only away from the "
           "source of heat, a little at a time.";
}

Words gas(const StageView& view) {
    std::vector<std::string> names;
    double litres = 0;
    for (const StageGas& gas : view.facts.gases) {
        if (gas.litres < 0.02) continue; // our line: 20 mL pass unnoticed
        names.push_back(gas.substance->name);
        litres += gas.litres;
    }
    if (names.empty()) return {};
    const bool funnel = view.facts.separates(SeparationMethod::extraction);
    return fmt::format("Gas forms, up to {} L: {}. {}", significant(litres, 2), listed(names),
                       funnel ? "Swirl the open funnel until the fizzing stops, then vent after every turn."
                              : "The vessel stays open to the hood; no stopper, no tight joint.");
}

/// Whatever equation the route writes: common practice, no source.
Words nitrogen_oxides(const StageView& view) {
    constexpr double concentrated = 0.2; // by mass, of the pot; our line
    const streams::Composition& pot = view.facts.pot.before;
    if (!view.facts.warm || pot.share(pot.grams("nitric-acid")) < concentrated) return {};
    return "Hot concentrated nitric acid gives brown nitrogen oxides, poisonous to breathe: only in a hood "
           "that "
           "draws. Harm to the lungs may show hours later, so whoever has breathed them sees a doctor at "
           "once.";
}

Words anhydride(const StageView& view) {
    const Substance* found = view.facts.anhydride_for_water;
    if (found == nullptr) return {};
    return fmt::format("{} meets water here, and that destroys it: in the hood, water or mixture dropwise at "
                       "first, each drop after the last has calmed. It heats up, can boil up and gives off "
                       "acid vapour.",
                       capitalised(found->name));
}

Words quench_order(const StageView& view) {
    if (!view.facts.has_role("quench")) return {};
    if (!view.quench.has_oxidiser())
        return view.facts.anhydride_for_water != nullptr
                   ? Words()
                   : "Quench: add it slowly to the cold stirred mixture, each portion after the last has "
                     "calmed.";
    std::string words =
        "Quench: slowly into the cold, stirred mixture, until the colour is gone and test paper "
        "(starch and iodide) stays white; only then filter. No tight cap on what was just "
        "quenched.";
    for (const std::string& line : streams::heat_words(view.quench, false))
        words += fmt::format(" {}.", capitalised(line));
    return words;
}

/// Liquids that burn are more than a fiftieth of it; our line.
bool is_acid(const streams::Composition& pot) {
    double acid = 0;
    for (const streams::Portion& portion : pot.portions())
        if (portion.substance->phase == Substance::Phase::liquid &&
            std::any_of(portion.substance->ghs.begin(), portion.substance->ghs.end(),
                        [](const GhsEntry& entry) { return statement_number(entry.statement) == 314; }))
            acid += portion.grams;
    return acid > 0 && acid >= 0.02 * pot.total();
}

Words pour(const StageView& view) {
    if (!view.facts.has_role("drown-out") || view.facts.index == 0) return {};
    if (!is_acid(view.facts.pot.before) && !is_acid(view.facts.pot.after)) return {};
    // Water that quenches first goes into the mixture, as its line of the checklist says.
    const auto with_role = [&](std::string_view role) {
        return std::find_if(view.facts.charged.begin(), view.facts.charged.end(),
                            [role](const Reagent* reagent) { return reagent->charge->role->name == role; });
    };
    const bool quenched = with_role("quench") < with_role("drown-out");
    return fmt::format("{} into {}, in a thin stream with stirring, and not the water into it.",
                       quenched ? "Once the quench has calmed, pour the mixture" : "Pour the mixture",
                       quenched ? "the rest of the water" : "the water");
}

Words drying(const StageView& view) {
    if (!view.facts.wet_with_flammable) return {};
    return fmt::format("Dry in air until the smell of {} is gone, and only then, if at all, in an oven.",
                       flammables(view.facts));
}

struct Rule {
    std::string_view id;
    Words (*says)(const StageView&);
};

/// In order of urgency.
constexpr std::array rules{Rule{"charged_gas", charged_gas},
                           Rule{"no_acid", no_acid},
                           Rule{"gas_with_acid", gas_with_acid},
                           Rule{"toxic", toxic},
                           Rule{"bromine", free_bromine},
                           Rule{"burns", burns},
                           Rule{"eyes", eyes},
                           Rule{"water_reactive", water_reactive},
                           Rule{"no_flames", no_flames},
                           Rule{"condenser", condenser},
                           Rule{"portions", portions},
                           Rule{"gas", gas},
                           Rule{"nitrogen_oxides", nitrogen_oxides},
                           Rule{"anhydride", anhydride},
                           Rule{"pour", pour},
                           Rule{"quench", quench_order},
                           Rule{"hot_crystals", hot_crystals},
                           Rule{"drying", drying}};

} // namespace

std::vector<StageCaution> cautions_of(const StageView& view) {
    std::vector<StageCaution> found;
    for (const Rule& rule : rules) {
        std::string words = rule.says(view);
        if (!words.empty()) found.push_back({rule.id, std::move(words)});
    }
    return found;
}

} // namespace routeweigh::bench
