// SPDX-License-Identifier: MIT
#include "route/given_amount.hpp"

#include "base/quantity_text.hpp"
#include "route/charge.hpp"

#include <fmt/format.h>

#include <cmath>
#include <limits>
#include <optional>

namespace routeweigh {
namespace {

constexpr double given_tolerance = 0.01; // share; densities and molar masses of two sources differ by less

/// Empty for what is no mass, volume or amount by itself.
std::optional<double> grams_alone(const Charge& charge) {
    try {
        return grams_of(charge, std::numeric_limits<double>::quiet_NaN());
    } catch (const ChargeError&) {
    } catch (const QuantityError&) {
    }
    return std::nullopt;
}

std::optional<WrittenQuantity> quantity_in(const std::string& text) {
    try {
        return parse_written(text);
    } catch (const QuantityError&) { // a remark
        return std::nullopt;
    }
}

} // namespace

std::string given_amount_fault(const Charge& charge) {
    if (charge.material == nullptr || charge.as_used || charge.given_as.empty()) return {};
    const auto written = quantity_in(charge.given_as);
    if (!written) return {};
    Charge as_given = charge;
    as_given.amount = *written;
    const auto given = grams_alone(as_given), taken = grams_alone(charge);
    if (!given || !taken || std::abs(*given - *taken) <= given_tolerance * std::abs(*taken)) return {};
    return fmt::format("{} is {:.4g} g, and the amount is {:.4g} g", charge.given_as, *given, *taken);
}

} // namespace routeweigh
