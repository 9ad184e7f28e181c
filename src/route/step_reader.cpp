// SPDX-License-Identifier: MIT
#include "route/step_reader.hpp"

#include "base/text.hpp"
#include "route/equation_reader.hpp"
#include "route/kinetics_reader.hpp"
#include "route/name_reader.hpp"
#include "route/spread.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdint>
#include <utility>

namespace routeweigh {
namespace {

constexpr std::array<std::pair<std::string_view, SeparationMethod>, 7> methods{{
    {"filtration", SeparationMethod::filtration},
    {"decantation", SeparationMethod::decantation},
    {"extraction", SeparationMethod::extraction},
    {"distillation", SeparationMethod::distillation},
    {"evaporation", SeparationMethod::evaporation},
    {"drying", SeparationMethod::drying},
    {"sublimation", SeparationMethod::sublimation},
}};

constexpr std::array<std::pair<std::string_view, Phase>, 3> phases{{
    {"reaction", Phase::reaction},
    {"workup", Phase::workup},
    {"purification", Phase::purification},
}};

/// One word of a fixed vocabulary; an unknown one is a problem and gives the first.
template<typename Table>
auto read_word(const Field& field, const Table& table) {
    std::vector<std::string> words;
    words.reserve(table.size());
    for (const auto& entry : table)
        words.emplace_back(entry.first);
    const std::string word = field.one_of(words);
    const auto found =
        std::find_if(table.begin(), table.end(), [&](const auto& entry) { return entry.first == word; });
    return found == table.end() ? table.front().second : found->second;
}

std::string optional_text(const Field& field, std::string_view key, std::string otherwise = {}) {
    const auto found = field.maybe(key);
    return found ? found->text() : std::move(otherwise);
}

bool optional_flag(const Field& field, std::string_view key) {
    const auto found = field.maybe(key);
    return found && found->boolean();
}

std::vector<Field> optional_items(const Field& field, std::string_view key) {
    const auto found = field.maybe(key);
    return found ? found->items() : std::vector<Field>{};
}

const Role* read_role(const Field& field) {
    std::vector<std::string> names;
    for (const Role& role : all_roles())
        names.emplace_back(role.name);
    const Role* role = find_role(field.one_of(names));
    return role != nullptr ? role : &all_roles().front();
}

Charge read_charge(const Field& field, const Catalogue& catalogue) {
    Charge charge;
    charge.pointer = field.pointer();
    charge.material = read_material(field["material"], catalogue);
    const Field amount = field["amount"];
    charge.as_used = amount.is_text() && fold(amount.text()) == "as used";
    if (!charge.as_used) {
        charge.amount = amount.quantity(PlusMinus::read);
        if (charge.amount.value < 0.0) amount.problem("an amount cannot be negative");
    } else if (charge.material != nullptr && !charge.material->is_neat()) {
        amount.problem("only a pure substance can be taken \"as used\" from the air");
    }
    charge.spread = read_spread(field, amount, charge.amount, not_below_zero);
    if (const auto named = field.maybe("measured_with")) {
        charge.measured_with = {named->text(), named->pointer()};
        if (charge.spread || charge.as_used)
            named->problem("the spread of this amount does not come from an instrument");
    }
    charge.role = read_role(field["role"]);
    if (const auto of = field.maybe("of")) {
        charge.of = read_substance(*of, catalogue);
        if (charge.of != nullptr && charge.material != nullptr &&
            charge.material->component_of(*charge.of) == nullptr)
            of->problem(fmt::format("\"{}\" holds no {}", charge.material->name, charge.of->name));
    }
    charge.bought = optional_flag(field, "bought");
    charge.source = optional_text(field, "source");
    charge.given_as = optional_text(field, "given_as");
    charge.note = optional_text(field, "note");
    field.close();
    return charge;
}

Reaction read_reaction(const Field& field, const Catalogue& catalogue) {
    Reaction reaction;
    reaction.pointer = field.pointer();
    reaction.equation = read_equation(field["equation"], catalogue);
    reaction.title = optional_text(field, "title");
    if (const auto conversion = field.maybe("conversion")) {
        reaction.conversion = conversion->fraction();
        if (reaction.conversion < 1.0 && !field.maybe("of"))
            conversion->problem("say in \"of\" which reactant this conversion counts");
    }
    if (const auto of = field.maybe("of")) {
        reaction.of = read_substance(*of, catalogue);
        if (reaction.of != nullptr && !reaction.equation.parts.empty() &&
            reaction.equation.coefficient_of(reaction.of) >= 0.0)
            of->problem(fmt::format("{} is not used up by this reaction", reaction.of->name));
    }
    const auto priority = field.maybe("priority");
    const auto split = field.maybe("split");
    if (priority) {
        const std::int64_t rank = priority->integer();
        if (rank < 1 || rank > 1000)
            priority->problem("a priority is a whole number from 1 to 1000; 1 goes first");
        reaction.priority = static_cast<int>(std::clamp<std::int64_t>(rank, 1, 1000));
    }
    if (split) {
        reaction.split = split->number();
        if (!(*reaction.split >= 0.001 && *reaction.split <= 1000.0))
            split->problem("a share in a split is a number from 0.001 to 1000");
    }
    if (priority && split) split->contradiction("give a priority or a split, not both", *priority);
    field.close();
    return reaction;
}

std::vector<Separation::Share> read_shares(const Field& field, const Catalogue& catalogue) {
    std::vector<Separation::Share> shares;
    const auto add = [&](const Field& place, std::string_view name, double fraction) {
        const Substance* substance = name.empty() ? nullptr : find_named(place, name, catalogue);
        if (substance == nullptr) return;
        if (std::any_of(shares.begin(), shares.end(),
                        [&](const auto& s) { return s.substance == substance; }))
            place.problem(fmt::format("{} is named twice", substance->name));
        shares.push_back({substance, fraction});
    };
    if (field.is_object()) {
        for (const std::string& key : field.keys())
            add(field[key], key, field[key].fraction());
    } else {
        for (const Field& item : field.items())
            add(item, item.text(), 1.0);
    }
    return shares;
}

Separation read_separation(const Field& field, const Catalogue& catalogue) {
    Separation separation;
    separation.pointer = field.pointer();
    separation.by = read_word(field["by"], methods);
    separation.to = field["to"].text();
    const auto keeps = field.maybe("keeps");
    const auto leaves = field.maybe("leaves");
    if (keeps && leaves) leaves->contradiction("say what leaves or what is kept, not both", *keeps);
    if (!keeps && !leaves) {
        separation.takes_volatiles = separation.gives_vapour();
        if (!separation.takes_volatiles && !field["by"].text().empty()) // else what it is was misspelt
            field.problem("say in \"keeps\" what stays, or in \"leaves\" what goes");
    }
    separation.lists_what_stays = keeps.has_value();
    if (keeps) separation.shares = read_shares(*keeps, catalogue);
    if (leaves) separation.shares = read_shares(*leaves, catalogue);
    if (const auto held = field.maybe("held")) separation.held = held->mass_ratio();
    if (const auto loss = field.maybe("loss")) separation.loss = loss->fraction();
    field.close();
    return separation;
}

Stage read_stage(const Field& field, const Catalogue& catalogue) {
    Stage stage;
    stage.pointer = field.pointer();
    stage.title = field["title"].text();
    stage.phase = read_word(field["phase"], phases);
    if (const auto value = field.maybe("temperature")) stage.temperature = value->temperature();
    if (const auto value = field.maybe("time")) stage.time = value->duration();
    if (const auto value = field.maybe("energy")) stage.energy = value->energy();
    if (const auto value = field.maybe("cooling_water")) stage.cooling_water = value->volume();
    for (const Field& item : optional_items(field, "charges"))
        stage.charges.push_back(read_charge(item, catalogue));
    for (const Field& item : optional_items(field, "reactions"))
        stage.reactions.push_back(read_reaction(item, catalogue));
    for (const Field& item : optional_items(field, "separations"))
        stage.separations.push_back(read_separation(item, catalogue));
    if (const auto kinetics = field.maybe("kinetics"))
        stage.kinetics = read_kinetics(*kinetics, stage, catalogue);
    field.close();
    return stage;
}

/// \param spread  1: as written. A normal distribution has no ends; one draw in 30,000 lies four deviations
/// below.
bool comes_near_zero(const Distribution& spread) {
    const bool open = std::isinf(spread.least());
    return (open ? spread.mean() - 4.0 * spread.deviation() : spread.least()) < 0.01;
}

Isolated read_isolated(const Field& field) {
    Isolated isolated;
    isolated.pointer = field.pointer();
    const auto mass = field.maybe("mass");
    const auto yield = field.maybe("yield");
    if (mass && yield) mass->contradiction("give the isolated mass or the yield, not both", *yield);
    if (!mass && !yield) field.problem("give the isolated \"mass\" or the \"yield\"");
    if (mass) {
        isolated.mass = mass->mass(PlusMinus::read);
        isolated.spread = read_spread(field, *mass, mass->quantity(PlusMinus::read), not_below_zero);
        if (mass->is_text() && !(*isolated.mass > 0.0 * unit::g))
            mass->problem("an isolated mass must be above 0");
    }
    if (yield) {
        const WrittenQuantity written = yield->quantity(PlusMinus::read, "70 %");
        if (written.unit == "%" && written.value > 100.0)
            yield->problem(
                fmt::format("a yield of {:g} % cannot be: look for a wet or impure product, a wrong limiting "
                            "reagent, or a wrong mass",
                            written.value));
        else
            isolated.yield = yield->fraction(PlusMinus::read);
        if (isolated.yield && *isolated.yield <= 0.0) yield->problem("a yield must be above 0");
        isolated.spread = read_spread(field, *yield, written, share_in_percent);
    }
    if (isolated.spread && comes_near_zero(*isolated.spread))
        field["spread"].problem(
            "the spread comes near 0, and what is counted per gram of product would have no "
            "mean: state a range that begins well above 0, such as \"PERT\", or results");
    isolated.assumed = optional_flag(field, "assumed");
    isolated.note = optional_text(field, "note");
    field.close();
    return isolated;
}

} // namespace

Step read_step(const Field& field, const Catalogue& catalogue) {
    Step step;
    step.pointer = field.pointer();
    step.id = field["id"].text();
    step.title = optional_text(field, "title", step.id);
    step.product = read_substance(field["product"], catalogue);
    step.reference = read_substance(field["reference"], catalogue);
    step.overall = read_equation(field["overall"], catalogue);
    step.isolated = read_isolated(field["isolated"]);
    for (const Field& item : optional_items(field, "dissolved"))
        step.dissolved.push_back(read_substance(item, catalogue));
    step.rest = optional_text(field, "rest", step.rest);
    step.gas = optional_text(field, "gas", step.gas);
    for (const Field& item : optional_items(field, "streams")) {
        step.streams.push_back({item["name"].text(), optional_text(item, "container"),
                                optional_text(item, "note"), item.pointer()});
        item.close();
    }
    for (const Field& item : field["stages"].items())
        step.stages.push_back(read_stage(item, catalogue));
    for (const Field& item : optional_items(field, "notes"))
        step.notes.push_back(item.text());
    field.close();
    return step;
}

} // namespace routeweigh
