// SPDX-License-Identifier: MIT
#include "route/kinetics_reader.hpp"

#include "route/name_reader.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>

namespace routeweigh {
namespace {

constexpr int most_portions = 1000;

/// "0.02 /s".
double read_per_second(const Field& field) {
    const WrittenQuantity written = field.quantity();
    const double value = written.value;
    if (written.unit == "/s") return value;
    if (written.unit == "/min") return value / 60;
    if (written.unit == "/h") return value / 3600;
    field.problem("a first-order rate constant is given in /s, /min or /h");
    return 0;
}

RateConstant read_constant(const Field& field) {
    RateConstant constant;
    const auto half_life = field.maybe("half_life");
    const auto rate = field.maybe("rate_constant");
    if (half_life && rate)
        rate->contradiction("give the half-life or the rate constant, not both", *half_life);
    if (!half_life && !rate) field.problem("give the \"half_life\" or the \"rate_constant\"");
    if (half_life) {
        const double seconds = half_life->duration().in(unit::s);
        if (half_life->is_text() && !(seconds > 0)) half_life->problem("a half-life must be above 0");
        constant.per_second = seconds > 0 ? std::log(2.0) / seconds : 0;
    } else if (rate) {
        constant.per_second = read_per_second(*rate);
        if (rate->is_text() && !(constant.per_second > 0)) rate->problem("a rate constant must be above 0");
    }
    constant.from = {standing_of(field["standing"].one_of(standing_words())), field["source"].text()};
    if (const auto note = field.maybe("note")) constant.note = note->text();
    field.close();
    return constant;
}

void read_addition(const Field& field, Kinetics& kinetics) {
    kinetics.over = field["over"].duration();
    if (const auto portions = field.maybe("portions")) {
        const std::int64_t count = portions->integer();
        if (count < 1 || count > most_portions)
            portions->problem(fmt::format("portions are a whole number from 1 to {}", most_portions));
        kinetics.portions = static_cast<int>(std::clamp<std::int64_t>(count, 1, most_portions));
    }
    field.close();
}

bool is_charged(const Substance* substance, const Stage& stage) {
    return std::any_of(stage.charges.begin(), stage.charges.end(), [&](const Charge& charge) {
        return charge.material != nullptr && charge.material->component_of(*substance) != nullptr;
    });
}

bool is_made(const Substance* substance, const Stage& stage) {
    return std::any_of(stage.reactions.begin(), stage.reactions.end(), [&](const Reaction& reaction) {
        return reaction.equation.coefficient_of(substance) > 0;
    });
}

} // namespace

Kinetics read_kinetics(const Field& field, const Stage& stage, const Catalogue& catalogue) {
    Kinetics kinetics;
    kinetics.pointer = field.pointer();
    kinetics.of = read_substance(field["of"], catalogue);
    kinetics.with = read_substance(field["with"], catalogue);
    read_addition(field["addition"], kinetics);
    if (const auto made = field.maybe("made")) kinetics.made = read_constant(*made);
    for (const Field& item : field["used"].items())
        kinetics.used.push_back(read_constant(item));
    if (field["used"].is_array() && kinetics.used.empty())
        field["used"].problem("give at least one constant; without one the ceiling alone is known");
    if (kinetics.of != nullptr && !is_charged(kinetics.of, stage) && !is_made(kinetics.of, stage))
        field["of"].problem(fmt::format("{} is neither charged nor made in this stage", kinetics.of->name));
    if (kinetics.with != nullptr && !is_charged(kinetics.with, stage))
        field["with"].problem(fmt::format("{} is not charged in this stage", kinetics.with->name));
    if (kinetics.of != nullptr && kinetics.with != nullptr) {
        const auto joint =
            std::find_if(stage.reactions.begin(), stage.reactions.end(), [&](const Reaction& reaction) {
                return reaction.equation.coefficient_of(kinetics.of) < 0 &&
                       reaction.equation.coefficient_of(kinetics.with) < 0;
            });
        if (joint == stage.reactions.end())
            field["with"].problem(fmt::format("no reaction of this stage uses up {} with {}",
                                              kinetics.of->name, kinetics.with->name));
        else
            kinetics.per_mol =
                joint->equation.coefficient_of(kinetics.with) / joint->equation.coefficient_of(kinetics.of);
    }
    field.close();
    return kinetics;
}

} // namespace routeweigh
