// SPDX-License-Identifier: MIT
#include "assess/streams/decider.hpp"

#include "assess/streams/amounts_in_words.hpp"
#include "base/text.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <initializer_list>
#include <string_view>

namespace routeweigh::streams {
namespace {

constexpr double worth_naming = 0.001;  // g of a vapour
constexpr double much_vapour = 10;      // g of organic vapour from one pot
constexpr double washed_off_from = 0.1; // g of a toxic or corrosive vapour from one pot; our line

bool has_statement(const Substance& substance, std::initializer_list<std::string_view> codes) {
    return std::any_of(substance.ghs.begin(), substance.ghs.end(), [&](const GhsEntry& entry) {
        return std::any_of(codes.begin(), codes.end(),
                           [&](std::string_view code) { return entry.statement.starts_with(code); });
    });
}

/// A gas that a hood alone does not answer.
bool needs_a_trap(const Substance& substance) {
    return has_statement(substance, {"H330", "H331", "H314"});
}

/// "toxic, flammable", by its classification; "" for none of these.
std::string gas_hazards(const Substance& gas) {
    std::vector<std::string> hazards;
    if (has_statement(gas, {"H330", "H331"})) hazards.emplace_back("toxic");
    if (has_statement(gas, {"H314"})) hazards.emplace_back("corrosive");
    if (has_statement(gas, {"H220", "H221"})) hazards.emplace_back("flammable");
    if (has_statement(gas, {"H270"})) hazards.emplace_back("oxidising");
    return join(hazards, ", ");
}

} // namespace

Decision Decider::run() {
    if (stream_.form == StreamForm::nothing) {
        decision_.goes_to = "nothing is left in it";
        return std::move(decision_);
    }
    if (stream_.form == StreamForm::gas || stream_.form == StreamForm::vapour)
        decide_gas();
    else {
        let_gases_leave();
        if (!stop_at_list() && !stop_at_unknown()) {
            look_for_oxidants();
            if (!decide_metal()) decide_by_form();
        }
    }
    return std::move(decision_);
}

Decision Decider::run_on_product() {
    if (stream_.form == StreamForm::nothing) return run();
    if (stop_at_list()) { // it cannot be poured off a crystal
        decision_.goes_to =
            "wash it off the product until a test finds none, before that is used or handed in; "
            "the washings: " +
            decision_.goes_to;
        return std::move(decision_);
    }
    look_for_oxidants();
    decision_.outcome = Decision::Outcome::on_product;
    decision_.goes_to = "stays on the product, an impurity of what is handed in";
    decision_.summary = gram_words(stream_.grams);
    because("on the product", fmt::format("{} beside the product, by what the route file takes away",
                                          gram_words(stream_.grams)));
    for (const MetalLeft& metal : stream_.metals)
        because("metal", fmt::format("{} {} with it", gram_words(metal.grams), metal.symbol));
    return std::move(decision_);
}

void Decider::stop(std::string where, std::string summary) {
    decision_.outcome = Decision::Outcome::own_bottle;
    decision_.kind.reset();
    decision_.waste_code.clear();
    decision_.bottle = where;
    decision_.goes_to = std::move(where);
    decision_.summary = std::move(summary);
    decision_.ask = local_.contact;
}

void Decider::put(ContainerKind kind) {
    const Container* container = local_.container(kind);
    decision_.outcome = Decision::Outcome::container;
    decision_.kind = kind;
    decision_.goes_to = container->name;
    decision_.waste_code = container->waste_code;
}

void Decider::decide_gas() {
    bool trap = false;
    double organic = 0;
    std::vector<std::string> parts, washed_off;
    for (const Portion& portion : stream_.as_left.portions()) {
        if (portion.grams >= worth_naming)
            parts.push_back(fmt::format("{} {}", portion.substance->name, gram_words(portion.grams)));
        if (is_organic(*portion.substance)) organic += portion.grams;
        if (!needs_a_trap(*portion.substance)) continue;
        if (stream_.form == StreamForm::gas) trap = true;
        if (stream_.form == StreamForm::vapour && portion.grams >= washed_off_from)
            washed_off.push_back(portion.substance->name);
    }
    decision_.summary = parts.empty() ? "less than 1 mg" : join(parts, ", ");
    because("form", fmt::format("{}: {}", words_of(stream_.form), decision_.summary));
    decision_.outcome = trap ? Decision::Outcome::trap : Decision::Outcome::air;
    decision_.goes_to = trap ? "hood and trap, no container" : "hood air, no container";
    if (trap) because("gas hazard", "toxic or corrosive by its classification");
    if (!washed_off.empty()) {
        decision_.goes_to += fmt::format("; wash {} off before drying", join(washed_off, ", "));
        because("vapour hazard",
                fmt::format("{}: toxic or corrosive by its classification; no oven", join(washed_off, ", ")));
    }
    if (stream_.form == StreamForm::vapour)
        because("vapour", "leaves while drying; waste solvent is never evaporated to be rid of it");
    if (stream_.form == StreamForm::vapour && organic > much_vapour)
        because("much vapour", "so much is better condensed", organic, much_vapour, "g",
                "our line (judgement)");
}

/// What is still in a liquid by pressure or in solution comes out in the bottle.
void Decider::let_gases_leave() {
    for (const Portion& gas : stream_.gases) {
        if (gas.grams < worth_naming) continue;
        const Substance& substance = *gas.substance;
        const std::string hazards = gas_hazards(substance);
        const std::string how =
            needs_a_trap(substance)
                ? fmt::format("in the hood and through a trap or scrubber that takes it, ask {}",
                              local_.contact)
            : has_statement(substance, {"H220", "H221"}) ? "in the hood, away from any spark or flame"
                                                         : "in the hood";
        first(
            Treatment::Kind::let_gas_leave, gram_words(gas.grams),
            [&](const std::string& amount) {
                return fmt::format("let the {}{} leave first{}: {}", amount, substance.name,
                                   hazards.empty() ? "" : fmt::format(" ({})", hazards), how);
            },
            gas.moles(), substance.name);
        because("gas", fmt::format("{} {}, a gas at 25 degC, leaves before the container",
                                   gram_words(gas.grams), substance.name));
        decision_.vent.push_back(fmt::format("{} may still come out of it", substance.name));
    }
}

bool Decider::stop_at_list() {
    const StopHit* worst = nullptr;
    for (const StopHit& hit : stream_.stops) {
        because("stop list",
                fmt::format("{} ({}, {}): {}: {}", hit.substance->name, gram_words(hit.grams),
                            percent_words(hit.share), hit.rule->what, hit.rule->why),
                100 * hit.share, 100 * hit.rule->set.from_share, "% by mass", describe(hit.rule->from));
        if (hit.rule->destroy) {
            first(
                Treatment::Kind::destroy, gram_words(hit.grams),
                [&](const std::string& amount) {
                    return fmt::format("{}: {}{}", hit.rule->bottle, amount, hit.substance->name);
                },
                hit.grams / hit.substance->molar_mass, hit.substance->name);
        } else if (worst == nullptr) {
            worst = &hit;
        }
        if (hit.rule->vented) decision_.vent.push_back(fmt::format("{}: {}", hit.rule->what, hit.rule->why));
    }
    if (stream_.stops.empty()) because("stop list", "nothing of the stop list is in it");
    if (worst == nullptr) return false;
    stop(worst->rule->bottle, fmt::format("{} {}", worst->substance->name, gram_words(worst->grams)));
    return true;
}

bool Decider::stop_at_unknown() {
    if (stream_.not_assigned.empty()) return false;
    const std::string list = join(stream_.not_assigned, ", ");
    because("not assessed", fmt::format("nobody assigned a reactivity group to {}", list));
    stop("own bottle, labelled", fmt::format("not assessed: {}", list));
    return true;
}

void Decider::look_for_oxidants() {
    const double line = local_.oxidant_from.value;
    std::vector<std::string> found, names;
    double moles = 0;
    for (const LeftToDestroy& oxidant : stream_.oxidants) {
        if (oxidant.moles * oxidant.substance->molar_mass < line * stream_.grams) continue;
        found.push_back(fmt::format("{} {}", oxidant.row->name, millimole_words(oxidant.moles)));
        names.push_back(oxidant.row->name);
        moles += oxidant.moles;
        acid_from_quench_ += oxidant.acid;
        if (oxidant.quencher != nullptr && oxidant.quencher->sulfur_dioxide > 0)
            quench_leaves_ = oxidant.quencher->is_thiosulfate() ? "thiosulfate" : "sulfite";
    }
    if (found.empty()) {
        because("oxidiser", fmt::format("no oxidiser that test papers show, from {} on", percent_words(line)),
                0.0, 100 * line, "% by mass", describe(local_.oxidant_from.from));
    } else {
        const std::string list = join(found, ", ");
        const auto words = [&](const std::string& of_it) {
            return fmt::format("quench first ({}); until then into the container for {}", of_it,
                               local_.container(ContainerKind::oxidiser)->name);
        };
        decision_.first.push_back({Treatment::Kind::quench, words(list), words(join(names, ", ")), moles});
        because("oxidiser", fmt::format("still oxidises: {}", list), 1000 * moles, {}, "mmol",
                describe(local_.oxidant_from.from));
        decision_.vent.push_back("oxidiser left or just quenched: gas may still form");
    }
    for (const LeftToDestroy& reducer : stream_.strong_reducers) {
        const std::string words = fmt::format("destroy the {} first", reducer.row->name);
        decision_.first.push_back({Treatment::Kind::destroy,
                                   fmt::format("{} ({})", words, millimole_words(reducer.moles)), words,
                                   reducer.moles, reducer.row->name});
        decision_.vent.push_back(fmt::format("{}: hydrogen with water and acid", reducer.row->name));
    }
}

bool Decider::decide_metal() {
    const double line = local_.metal_from.value;
    const std::string source = describe(local_.metal_from.from);
    if (stream_.metals.empty()) {
        because("metal", fmt::format("no toxic metal from {} on", percent_words(line)), 0.0, 100 * line,
                "% by mass", source);
        return false;
    }
    std::vector<std::string> list;
    for (const MetalLeft& metal : stream_.metals) {
        list.push_back(fmt::format("{} {}", percent_words(metal.share), metal.symbol));
        because(
            "metal",
            fmt::format("{} of {} (in {})", percent_words(metal.share), metal.symbol, join(metal.in, ", ")),
            100 * metal.share, 100 * line, "% by mass", source);
    }
    const std::string metals = join(list, ", ");
    if (stream_.form == StreamForm::organic) {
        decide_by_form();
        decision_.goes_to += fmt::format(", marked \"metal\" ({})", metals);
        return true;
    }
    put(ContainerKind::metal);
    decision_.summary = fmt::format("{} by mass", metals);
    correct_acid(true);
    return true;
}

void Decider::decide_by_form() {
    because("form",
            fmt::format("{}: {} water by mass", words_of(stream_.form), percent_words(stream_.water_share)),
            100 * stream_.water_share, 100 * local_.aqueous_from.value, "% by mass",
            describe(local_.aqueous_from.from));
    if (stream_.form == StreamForm::solid)
        decide_solid();
    else if (stream_.form == StreamForm::organic)
        decide_organic();
    else
        decide_aqueous();
}

void Decider::decide_solid() {
    std::vector<std::string> wet;
    for (const Portion& portion : stream_.as_left.portions())
        if (portion.substance->phase == Substance::Phase::liquid && portion.grams > 0.001 * stream_.grams)
            wet.push_back(portion.substance->name);
    decision_.summary = wet.empty() ? "dry solid" : fmt::format("solid wet with {}", join(wet, ", "));
    because("wet with", decision_.summary);
    put(ContainerKind::solids);
}

bool Decider::is_halogenated() {
    const double line = local_.halogenated_from.value;
    because("halogenated",
            stream_.halogenated.empty()
                ? std::string("no halogenated organic compound")
                : fmt::format("{} by mass halogenated organic ({})", percent_words(stream_.halogenated_share),
                              names_of(stream_.halogenated)),
            100 * stream_.halogenated_share, 100 * line, "% by mass", describe(local_.halogenated_from.from));
    return stream_.halogenated_share >= line;
}

void Decider::decide_organic() {
    const bool halogenated = is_halogenated();
    decision_.summary =
        halogenated ? fmt::format("{} by mass {}", percent_words(stream_.halogenated_share),
                                  names_of(stream_.halogenated))
                    : fmt::format("{} organic by mass, {} halogenated", percent_words(stream_.organic_share),
                                  percent_words(stream_.halogenated_share));
    put(halogenated ? ContainerKind::halogenated : ContainerKind::flammable);
    correct_acid(false);
}

} // namespace routeweigh::streams
