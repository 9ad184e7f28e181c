// SPDX-License-Identifier: MIT
#include "base/quantity_text.hpp"

#include "base/number.hpp"
#include "base/text.hpp"
#include "base/typed.hpp"
#include "base/unit_table.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>

namespace routeweigh {

namespace {

// Takes the first of these that the text starts with, and the space behind it.
template<std::size_t N>
bool take_any(std::string_view& text, const std::array<std::string_view, N>& signs) {
    for (const std::string_view sign : signs) {
        if (!text.starts_with(sign)) continue;
        text = trim(text.substr(sign.size()));
        return true;
    }
    return false;
}

constexpr std::array<std::string_view, 2> times = {"x", "\xC3\x97"};
constexpr std::array<std::string_view, 3> plus_minus = {"+/-", "\xC2\xB1", "+-"};

bool has_digit_other_than_zero(std::string_view text) {
    return std::any_of(text.begin(), text.end(), [](char c) { return c >= '1' && c <= '9'; });
}

// What a laboratory, a plant or a year of either can hold lies well inside these, and products of a few such
// numbers stay numbers.
constexpr double largest = 1e15;
constexpr double smallest = 1e-15;

// Takes a finite number from the start of `rest`, and the space behind it.
ReadNumber take_number(std::string_view& rest, std::string_view whole) {
    const auto found = read_number(rest);
    if (!found) {
        const std::string word = fold(rest.substr(0, rest.find(' ')));
        if (word == "nan" || word == "inf" || word == "infinity" || word == "-inf")
            throw QuantityError(fmt::format("\"{}\" is not a finite number", whole));
        throw QuantityError(fmt::format("\"{}\" does not start with a number", whole));
    }
    const std::string_view written = rest.substr(0, found->length);
    if (!std::isfinite(found->value) || std::abs(found->value) > largest)
        throw QuantityError(fmt::format("\"{}\" is too large a number", whole));
    if (std::abs(found->value) < smallest &&
        has_digit_other_than_zero(written.substr(0, written.find_first_of("eE"))))
        throw QuantityError(fmt::format("\"{}\" is too small a number", whole));
    rest = rest.substr(found->length);
    if (rest.size() > 1 && rest[0] == ',' && rest[1] >= '0' && rest[1] <= '9')
        throw QuantityError(
            fmt::format("\"{}\" has a comma in its number; write a decimal point, and nothing between "
                        "thousands",
                        whole));
    rest = trim(rest);
    return *found;
}

void refuse_second_number(std::string_view rest, std::string_view whole) {
    if (rest.empty()) return;
    if (rest[0] >= '0' && rest[0] <= '9')
        throw QuantityError(
            fmt::format("\"{}\" has two numbers before its unit; write thousands without a space", whole));
    const bool dash = rest[0] == '-' || rest.starts_with("\xE2\x80\x93");
    if (dash || rest.starts_with("to "))
        throw QuantityError(
            fmt::format("\"{}\" is a range; give one value, with its spread as \"+/-\"", whole));
    if (rest.find("+/-") != std::string_view::npos || rest.find("\xC2\xB1") != std::string_view::npos)
        throw QuantityError(fmt::format("\"{}\" has its spread behind the unit; write it before, as in "
                                        "\"2.50 +/- 0.01 g\"",
                                        whole));
}

std::string written_again(const WrittenQuantity& written) {
    std::string result = written.repeat == 1 ? "" : fmt::format("{} x ", written.repeat);
    result += fmt::format("{}", written.value);
    if (!written.unit.empty()) result += ' ' + written.unit;
    return result;
}

// The quantity in the base unit of its kind, all portions together, never negative.
double in_base_units(const WrittenQuantity& written, UnitKind kind, std::string_view example) {
    const UnitSpelling* const unit = find_unit(written.unit);
    if (unit == nullptr || unit->kind != kind) {
        const std::string_view read = unit == nullptr ? "of an unknown unit" : describe(unit->kind);
        throw QuantityError(fmt::format("\"{}\" is {}, expected {} such as \"{}\"", written_again(written),
                                        read, describe(kind), example));
    }
    if (written.value < 0)
        throw QuantityError(
            fmt::format("\"{}\" is negative; {} is not", written_again(written), describe(kind)));
    return written.value * unit->factor * written.repeat;
}

void refuse_portions(const WrittenQuantity& written, UnitKind kind) {
    if (written.repeat != 1)
        throw QuantityError(
            fmt::format("\"{}\": {} does not come in portions", written_again(written), describe(kind)));
}

} // namespace

WrittenQuantity parse_written(std::string_view text) {
    const std::string typed = typed_quantity(text);
    const std::string_view whole = trim(typed);
    std::string_view rest = whole;
    if (rest.empty()) throw QuantityError("an empty text is no quantity");

    WrittenQuantity result;
    ReadNumber number = take_number(rest, whole);
    if (take_any(rest, times)) {
        if (number.value != std::floor(number.value) || number.value < 1 || number.value > 1000)
            throw QuantityError(
                fmt::format("\"{}\": the number of portions must be whole, from 1 to 1000", whole));
        result.repeat = static_cast<int>(number.value);
        number = take_number(rest, whole);
    }
    result.value = number.value;
    result.significant = number.significant;
    if (take_any(rest, plus_minus)) {
        result.spread = take_number(rest, whole).value;
        if (*result.spread < 0) throw QuantityError(fmt::format("\"{}\": a spread is not negative", whole));
    }
    refuse_second_number(rest, whole);
    const UnitSpelling* const unit = find_unit(rest);
    if (unit == nullptr)
        throw QuantityError(fmt::format("unknown unit \"{}\" in \"{}\"", rest, whole), nearest_unit(rest));
    result.unit = unit->unit;
    return result;
}

Mass as_mass(const WrittenQuantity& written) {
    return in_base_units(written, UnitKind::mass, "2.5 g") * unit::g;
}

Volume as_volume(const WrittenQuantity& written) {
    return in_base_units(written, UnitKind::volume, "10 mL") * unit::mL;
}

Amount as_amount(const WrittenQuantity& written) {
    return in_base_units(written, UnitKind::amount, "25 mmol") * unit::mol;
}

Duration as_duration(const WrittenQuantity& written) {
    return in_base_units(written, UnitKind::duration, "30 min") * unit::s;
}

Energy as_energy(const WrittenQuantity& written) {
    return in_base_units(written, UnitKind::energy, "0.1 kWh") * unit::J;
}

Power as_power(const WrittenQuantity& written) {
    return in_base_units(written, UnitKind::power, "300 W") * unit::W;
}

Temperature as_temperature(const WrittenQuantity& written) {
    const UnitSpelling* const unit = find_unit(written.unit);
    if (unit == nullptr || unit->kind != UnitKind::temperature)
        in_base_units(written, UnitKind::temperature, "78 degC");
    refuse_portions(written, UnitKind::temperature);
    const Temperature result = written.unit == "K" ? Temperature::from_kelvin(written.value)
                                                   : Temperature::from_celsius(written.value);
    if (result.kelvin() < 0)
        throw QuantityError(fmt::format("\"{}\" lies below absolute zero", written_again(written)));
    return result;
}

double as_fraction(const WrittenQuantity& written) {
    if (written.unit.empty())
        throw QuantityError(
            fmt::format("\"{}\" has no unit; write a percentage such as \"85 %\"", written_again(written)));
    const double percent = in_base_units(written, UnitKind::percent, "85 %");
    refuse_portions(written, UnitKind::percent);
    if (percent > 100) throw QuantityError(fmt::format("\"{}\" is above 100 %", written_again(written)));
    return percent / 100;
}

double as_mass_ratio(const WrittenQuantity& written) {
    const double ratio = in_base_units(written, UnitKind::mass_ratio, "0.5 g/g");
    refuse_portions(written, UnitKind::mass_ratio);
    return ratio;
}

} // namespace routeweigh
