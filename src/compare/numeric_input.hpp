// SPDX-License-Identifier: MIT
// The numbers of a route file that its figures depend on, each with its place, its unit and the range in
// which it makes sense.
#pragma once

#include "route/route.hpp"

#include <stdexcept>
#include <string>
#include <string_view>
#include <vector>

namespace routeweigh {

struct NumericInput {
    enum class Kind { amount, yield, isolated_mass, conversion, reuse, held, time, energy, cooling_water };
    Kind kind = Kind::amount;
    std::string pointer; ///< of the value in the file
    std::string word;    ///< what a person calls it: the material, "yield", "reuse of ethanol"
    std::string place;   ///< step and stage
    double value = 0;    ///< in `unit`; of one portion where there are several
    std::string unit;
    int repeat = 1;       ///< portions
    double low = 0;       ///< what it cannot be below; never itself possible for an amount or a yield
    double high = 0;      ///< what it cannot be above, or up to where one looks
    bool bounded = false; ///< `high` is a limit of nature and not where a search ends

    /// "bromination, reaction: acetanilide".
    std::string name() const;
    /// By its pointer, its word or its whole name, and not only by a part of it.
    bool is_named(std::string_view words) const;
    /// As the file would say it, without quotes: "3 x 2.5 mL". All digits are kept.
    std::string written(double number) const;
};

/// In the order of the file.
std::vector<NumericInput> numeric_inputs(const Route& route);

/// The input at a JSON pointer, or the only one whose name has these words in it. \throws NoSuchInput
NumericInput find_input(const Route& route, std::string_view words);

class NoSuchInput : public std::runtime_error {
  public:
    using std::runtime_error::runtime_error;
};

} // namespace routeweigh
