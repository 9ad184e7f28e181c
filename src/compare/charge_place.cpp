// SPDX-License-Identifier: MIT
#include "compare/charge_place.hpp"

#include "base/list.hpp"
#include "base/text.hpp"
#include "route/charge.hpp"

#include <fmt/format.h>

#include <cmath>
#include <limits>

namespace routeweigh {
namespace {

double reference_of(const Step& step) {
    try {
        return reference_moles(step);
    } catch (const ChargeError&) {
        return std::numeric_limits<double>::quiet_NaN(); // nothing is counted in equivalents then
    }
}

/// At most four significant digits, no zeros behind the last.
std::string short_number(double value) {
    std::string text = significant(value, 4);
    if (text.find('.') == std::string::npos || text.find('e') != std::string::npos) return text;
    text.erase(text.find_last_not_of('0') + 1);
    if (text.back() == '.') text.pop_back();
    return text;
}

std::string amount_with(const Charge& charge, const std::string& number) {
    const WrittenQuantity& amount = charge.amount;
    return amount.repeat > 1 ? fmt::format("{} x {} {}", amount.repeat, number, amount.unit)
                             : fmt::format("{} {}", number, amount.unit);
}

} // namespace

std::string ChargePlace::purpose(const Route& route) const {
    return purpose_of({*this}, route);
}

std::string purpose_of(const std::vector<ChargePlace>& places, const Route& route) {
    const ChargePlace& first = places.front();
    std::vector<std::string> titles;
    for (const ChargePlace& place : places)
        add_once(titles, fmt::format("\"{}\"", place.stage->title));
    const std::string where = fmt::format("{}, in the {} {}", first.role(),
                                          titles.size() > 1 ? "stages" : "stage", join(titles, " and "));
    return route.steps.size() > 1 ? fmt::format("{} of {}", where, first.step->id) : where;
}

std::vector<ChargePlace> charge_places(const Assessment& assessment) {
    std::vector<ChargePlace> places;
    const Route& route = assessment.route();
    for (std::size_t s = 0; s < route.steps.size(); ++s) {
        const Step& step = route.steps[s];
        const double reference = reference_of(step);
        for (const Stage& stage : step.stages)
            for (const Charge& charge : stage.charges)
                if (!charge.as_used)
                    places.push_back(
                        {&step, &stage, &charge, static_cast<int>(s), grams_of(charge, reference)});
    }
    return places;
}

double equivalents(const ChargePlace& place) {
    const Component* active = place.charge->material->only_active();
    const double reference = reference_of(*place.step);
    if (active == nullptr || !active->substance->has_formula() || !(reference > 0.0)) return 0.0;
    return place.grams * active->mass_fraction / active->substance->molar_mass / reference;
}

std::string amount_text(const Charge& charge, double factor) {
    return amount_with(charge, short_number(factor * charge.amount.value));
}

std::string amount_json(const Charge& charge, double factor) {
    return json_quoted(amount_with(charge, fmt::format("{}", factor * charge.amount.value)));
}

std::string json_quoted(std::string_view text) {
    std::string result = "\"";
    for (const char c : text) {
        if (c == '"' || c == '\\')
            result += fmt::format("\\{}", c);
        else if (static_cast<unsigned char>(c) < 0x20)
            result += fmt::format("\\u{:04x}", static_cast<int>(c));
        else
            result += c;
    }
    return result + '"';
}

std::string grams_text(double grams) {
    return short_number(grams) + " g";
}

} // namespace routeweigh
