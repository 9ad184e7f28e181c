// SPDX-License-Identifier: MIT
#include "compare/numeric_input.hpp"

#include "base/text.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <map>
#include <sstream>

namespace routeweigh {
namespace {

using Kind = NumericInput::Kind;

constexpr double furthest =
    10.0; ///< where nature sets no limit, a search goes up to this many times the value

class Collector {
  public:
    explicit Collector(const Route& route) : route_(route) {}

    std::vector<NumericInput> all() && {
        for (const Step& step : route_.steps) {
            for (const Stage& stage : step.stages)
                add_stage(step, stage);
            add_isolated(step);
        }
        for (const Reuse& reuse : route_.reuse)
            share(Kind::reuse, reuse.pointer + "/fraction", "reuse of " + reuse.substance->name,
                  route_.steps[static_cast<std::size_t>(reuse.to_step)].title, reuse.fraction);
        return std::move(found_);
    }

  private:
    void add_stage(const Step& step, const Stage& stage) {
        const std::string place = step.title + ", " + stage.title;
        for (const Charge& charge : stage.charges)
            if (!charge.as_used)
                open(Kind::amount, charge.pointer + "/amount", charge.material->name, place,
                     charge.amount.value, charge.amount.unit, charge.amount.repeat);
        for (const Reaction& reaction : stage.reactions)
            if (reaction.conversion < 1.0)
                share(Kind::conversion, reaction.pointer + "/conversion",
                      "conversion of " + reaction.of->name, place, reaction.conversion);
        for (const Separation& separation : stage.separations)
            if (separation.held > 0.0)
                open(Kind::held, separation.pointer + "/held", "liquor held", place, separation.held, "g/g");
        if (stage.time)
            open(Kind::time, stage.pointer + "/time", "time", place, stage.time->in(unit::min), "min");
        if (stage.energy)
            open(Kind::energy, stage.pointer + "/energy", "energy", place, stage.energy->in(unit::kJ), "kJ");
        if (stage.cooling_water)
            open(Kind::cooling_water, stage.pointer + "/cooling_water", "cooling water", place,
                 stage.cooling_water->in(unit::mL), "mL");
    }

    void add_isolated(const Step& step) {
        const Isolated& isolated = step.isolated;
        if (isolated.yield)
            share(Kind::yield, isolated.pointer + "/yield", "yield", step.title, *isolated.yield);
        else
            open(Kind::isolated_mass, isolated.pointer + "/mass", "isolated mass", step.title,
                 isolated.mass->in(unit::g), "g");
    }

    void share(Kind kind, std::string pointer, std::string word, std::string place, double fraction) {
        found_.push_back({kind, std::move(pointer), std::move(word), std::move(place), 100.0 * fraction, "%",
                          1, 0.0, 100.0, true});
    }

    void open(Kind kind, std::string pointer, std::string word, std::string place, double value,
              std::string unit, int repeat = 1) {
        found_.push_back({kind, std::move(pointer), std::move(word), std::move(place), value, std::move(unit),
                          repeat, 0.0, furthest * value, false});
    }

    const Route& route_;
    std::vector<NumericInput> found_;
};

std::string known(const std::vector<NumericInput>& inputs) {
    std::vector<std::string> lines;
    for (const NumericInput& input : inputs)
        lines.push_back(fmt::format("\"{}\" at {}", input.name(), input.pointer));
    return join(lines, "; ");
}

/// What a person may have meant: "ethanol 95 % by volume" for "etanol", which is near one word of it only.
std::string nearest_word(const std::vector<NumericInput>& inputs, std::string_view words) {
    NearestSpelling whole(words), part(words);
    std::map<std::string, std::string> of_part; // the first input that has it
    for (const NumericInput& input : inputs) {
        whole.offer(words.starts_with('/') ? input.pointer : input.word);
        std::istringstream parts(input.word);
        for (std::string one; parts >> one;) {
            part.offer(one);
            of_part.try_emplace(one, input.word);
        }
    }
    if (!whole.best().empty()) return whole.best();
    return part.best().empty() ? "" : of_part[part.best()];
}

} // namespace

std::string NumericInput::name() const {
    return place + ": " + word;
}

bool NumericInput::is_named(std::string_view words) const {
    const std::string wanted = fold(words);
    return pointer == words || fold(word) == wanted || fold(name()) == wanted;
}

std::string NumericInput::written(double number) const {
    // Percentages and ratios are read without exponents.
    const bool plain = unit == "%" || unit == "g/g" || kind == Kind::time || kind == Kind::energy ||
                       kind == Kind::cooling_water;
    std::string digits = plain ? fmt::format("{:.15f}", number) : fmt::format("{}", number);
    if (plain) {
        digits.erase(digits.find_last_not_of('0') + 1);
        if (digits.back() == '.') digits.pop_back();
    }
    return repeat > 1 ? fmt::format("{} x {} {}", repeat, digits, unit) : fmt::format("{} {}", digits, unit);
}

std::vector<NumericInput> numeric_inputs(const Route& route) {
    return Collector(route).all();
}

NumericInput find_input(const Route& route, std::string_view words) {
    const std::vector<NumericInput> inputs = numeric_inputs(route);
    std::vector<NumericInput> exact, part;
    const std::string wanted = fold(words);
    for (const NumericInput& input : inputs) {
        if (input.is_named(words))
            exact.push_back(input);
        else if (!wanted.empty() && fold(input.name()).find(wanted) != std::string::npos)
            part.push_back(input);
    }
    const std::vector<NumericInput>& found = exact.empty() ? part : exact;
    if (found.size() == 1) return found.front();
    if (found.size() > 1)
        throw NoSuchInput(
            fmt::format("\"{}\" may be any of {} inputs: {}", words, found.size(), known(found)));
    const std::string near = nearest_word(inputs, words);
    throw NoSuchInput(fmt::format("no numeric input is called \"{}\"{}; there are: {}", words,
                                  near.empty() ? "" : fmt::format("; nearest: \"{}\"", near), known(inputs)));
}

} // namespace routeweigh
