// SPDX-License-Identifier: MIT
#include "documents/number.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <utility>

namespace routeweigh::documents {
namespace {

constexpr std::string_view minus = "\xE2\x88\x92";

/// The power of ten of the first digit, after rounding to `significant` digits.
int exponent_of(double value, int significant) {
    const std::string scientific = fmt::format("{:.{}e}", value, significant - 1);
    return std::stoi(scientific.substr(scientific.find('e') + 1));
}

std::string with_true_minus(std::string text) {
    if (text.empty() || text.front() != '-') return text;
    text.erase(0, 1);
    // "-0.0" is no negative number.
    return text.find_first_of("123456789") == std::string::npos ? text : std::string(minus) + text;
}

/// "1.2 x 10^-5" with superscript digits.
std::string scientific_text(double value, int significant, int exponent) {
    static constexpr std::string_view superscripts[] = {"\u2070", "\u00B9", "\u00B2", "\u00B3", "\u2074",
                                                        "\u2075", "\u2076", "\u2077", "\u2078", "\u2079"};
    std::string power = exponent < 0 ? "\u207B" : "";
    for (const char digit : std::to_string(std::abs(exponent)))
        power += superscripts[digit - '0'];
    return with_true_minus(fmt::format("{:.{}f}", value / std::pow(10.0, exponent), significant - 1)) +
           " \u00D7 10" + power;
}

} // namespace

std::string fixed(double value, int decimals) {
    if (!std::isfinite(value)) return std::isnan(value) ? "-" : "no bound";
    return with_true_minus(fmt::format("{:.{}f}", value, decimals));
}

std::string digits(double value, int significant) {
    if (value == 0.0) return "0";
    if (!std::isfinite(value)) return fixed(value, 0);
    const int exponent = exponent_of(value, significant);
    if (exponent < -4 || exponent >= 6) return scientific_text(value, significant, exponent);
    // "1690" and not "1692": digits before the point that are not significant are rounded away.
    if (exponent >= significant) {
        const double unit = std::pow(10.0, exponent - significant + 1);
        value = std::round(value / unit) * unit;
    }
    return fixed(value, std::max(0, significant - 1 - exponent));
}

std::string figure_text(double value, int decimals) {
    if (value == 0.0) return "0";
    if (!std::isfinite(value)) return fixed(value, 0);
    const int exponent = exponent_of(value, 2);
    // What is far below the last decimal is there, and that is all there is to say.
    if (exponent < -decimals - 1) return "< " + fixed(std::pow(10.0, -decimals - 1), decimals + 1);
    if (exponent < -decimals || (exponent == -decimals && decimals > 0)) return digits(value, 2);
    if (exponent + decimals + 1 > 4) return digits(value, std::max(4 - decimals, 3));
    return fixed(value, decimals);
}

std::string difference_text(double value, int decimals) {
    const std::string text = fixed(value, decimals);
    const bool nothing = text.find_first_of("123456789") == std::string::npos;
    return value > 0.0 && !nothing && std::isfinite(value) ? "+" + text : text;
}

std::string difference_text(double value, double baseline, int decimals) {
    const auto shown = [decimals](double figure) {
        const std::string text = figure_text(figure, decimals);
        const std::size_t point = text.find('.');
        return point == std::string::npos ? 0 : static_cast<int>(text.size() - point - 1);
    };
    // A plain 0 is exact and sets no limit.
    const int limit =
        std::min(value == 0.0 ? decimals : shown(value), baseline == 0.0 ? decimals : shown(baseline));
    return difference_text(value - baseline, limit);
}

std::string percent(double share, int decimals) {
    return fixed(100.0 * share, decimals) + "\u00A0%";
}

std::string unit_text(std::string_view unit) {
    std::string text(unit);
    for (std::size_t at = text.find("m3"); at != std::string::npos; at = text.find("m3", at + 1))
        text.replace(at, 2, "m\u00B3");
    return text;
}

writing::Run quantity(double value, int decimals, std::string_view unit) {
    return writing::number(figure_text(value, decimals) + (unit.empty() ? "" : "\u00A0") + unit_text(unit));
}

std::string value_text(const FigurePick& figure, double value) {
    const std::string text = figure_text(value, figure.decimals());
    return figure.unit().empty() ? text : text + " " + unit_text(figure.unit());
}

writing::Cell number_cell(double value, int decimals) {
    return std::isfinite(value) ? writing::Cell(figure_text(value, decimals), value) : writing::Cell("-");
}

writing::Cell digits_cell(double value, int significant) {
    return std::isfinite(value) ? writing::Cell(digits(value, significant), value) : writing::Cell("-");
}

} // namespace routeweigh::documents
