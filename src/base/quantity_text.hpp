// SPDX-License-Identifier: MIT
// Quantities as people write them ("2.50 +/- 0.01 g", "3 x 5 mL", "85 %"), read into a value and a unit.
//
// A decimal comma, a number that is not finite, an unknown unit and a percentage of unsaid meaning are
// refused with advice; nothing is guessed. Messages start lower-case and name what was read.
#pragma once

#include "base/quantity.hpp"

#include <optional>
#include <stdexcept>
#include <string>
#include <string_view>
#include <utility>

namespace routeweigh {

// The text is no quantity, or a quantity of another kind than the one asked for.
class QuantityError : public std::runtime_error {
  public:
    explicit QuantityError(const std::string& message, std::string nearest_ = {})
        : std::runtime_error(message), nearest(std::move(nearest_)) {}

    std::string nearest; // a valid unit close to the one read; "" for none
};

struct WrittenQuantity {
    double value = 0;             // of one portion, in `unit`
    std::optional<double> spread; // half width as written after "+/-", in `unit`, never negative
    std::string unit; // one spelling a unit: "degC" for the degree sign, "uL" for the micro sign; "" for none
    int repeat = 1;   // "3 x 5 mL" has 3
    int significant = 0; // digits of the value as written
};

// Reads "VALUE [+/- SPREAD] UNIT", with "N x" before it where portions are meant. Units: ug mg g kg t; umol
// mmol mol kmol; uL mL cL dL L m3 cm3 dm3; s min h d; J kJ MJ Wh kWh; mW W kW; degC K; %, mol %, % w/w, %
// w/v, % v/v; eq; g/g mL/g g/mL g/L g/mol mol/L; /s /min /h; or none. Throws QuantityError.
WrittenQuantity parse_written(std::string_view text);

// The whole quantity, all portions together, with the dimension asked for. They throw QuantityError where the
// unit is of another kind or the value is negative (a temperature: below absolute zero).
Mass as_mass(const WrittenQuantity& written);
Volume as_volume(const WrittenQuantity& written);
Amount as_amount(const WrittenQuantity& written);
Duration as_duration(const WrittenQuantity& written);
Energy as_energy(const WrittenQuantity& written);
Power as_power(const WrittenQuantity& written);
Temperature as_temperature(const WrittenQuantity& written);

// 0..1 from "85 %". A bare number ("0.85"), "% w/w" and the like, and what lies outside 0..100 % are refused.
double as_fraction(const WrittenQuantity& written);

// Grams per gram, from "0.5 g/g"; not negative.
double as_mass_ratio(const WrittenQuantity& written);

} // namespace routeweigh
