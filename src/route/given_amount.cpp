// SPDX-License-Identifier: MIT
#include "route/given_amount.hpp"

#include "base/quantity_text.hpp"
#include "route/charge.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <optional>

namespace routeweigh {
namespace {

constexpr double given_tolerance = 0.01; // share; densities and molar masses of two sources differ by less

/// Empty for what is no amount.
std::optional<double> grams(const Charge& charge, double reference) {
    try {
        const double found = grams_of(charge, reference);
        if (std::isfinite(found)) return found;
    } catch (const ChargeError&) {
    } catch (const QuantityError&) {
    }
    return std::nullopt;
}

/// A share of 1: mostly that of 1 %. Of equivalents and mol % the source often has a digit only.
double tolerance(const WrittenQuantity& given) {
    if ((given.unit != "eq" && given.unit != "mol %") || !(given.value > 0)) return given_tolerance;
    const double last_digit = std::pow(10.0, 1 + std::floor(std::log10(given.value)) - given.significant);
    return std::max(given_tolerance, 0.5 * last_digit / given.value);
}

std::optional<WrittenQuantity> quantity_in(const std::string& text) {
    try {
        return parse_written(text);
    } catch (const QuantityError&) { // a remark
        return std::nullopt;
    }
}

} // namespace

std::string given_amount_fault(const Charge& charge, double reference) {
    if (charge.material == nullptr || charge.as_used || charge.given_as.empty()) return {};
    const auto written = quantity_in(charge.given_as);
    if (!written) return {};
    Charge as_given = charge;
    as_given.amount = *written;
    const auto given = grams(as_given, reference), taken = grams(charge, reference);
    if (!given || !taken || std::abs(*given - *taken) <= tolerance(*written) * std::abs(*given)) return {};
    return fmt::format("{} is {:.4g} g, and the amount is {:.4g} g", charge.given_as, *given, *taken);
}

} // namespace routeweigh
