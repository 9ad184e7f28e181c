// SPDX-License-Identifier: MIT
#include "base/unit_table.hpp"

#include "base/text.hpp"

#include <algorithm>
#include <iterator>
#include <utility>

namespace routeweigh {

namespace {

using Kind = UnitKind;

// Spellings beyond ASCII are given byte by byte: C2 B5 and CE BC are the micro sign and mu, C2 B0 the degree
// sign, C2 BA the raised o that some keyboards give for it, E2 84 83 the one character for degC.
constexpr UnitSpelling table[] = {
    {"", "", Kind::none, 1},

    {"g", "g", Kind::mass, 1},
    {"mg", "mg", Kind::mass, 1e-3},
    {"ug", "ug", Kind::mass, 1e-6},
    {"\xC2\xB5g", "ug", Kind::mass, 1e-6},
    {"\xCE\xBCg", "ug", Kind::mass, 1e-6},
    {"kg", "kg", Kind::mass, 1e3},
    {"t", "t", Kind::mass, 1e6},

    {"mL", "mL", Kind::volume, 1},
    {"ml", "mL", Kind::volume, 1},
    {"cm3", "mL", Kind::volume, 1},
    {"uL", "uL", Kind::volume, 1e-3},
    {"ul", "uL", Kind::volume, 1e-3},
    {"\xC2\xB5L", "uL", Kind::volume, 1e-3},
    {"\xC2\xB5l", "uL", Kind::volume, 1e-3},
    {"\xCE\xBCL", "uL", Kind::volume, 1e-3},
    {"\xCE\xBCl", "uL", Kind::volume, 1e-3},
    {"cL", "cL", Kind::volume, 10},
    {"cl", "cL", Kind::volume, 10},
    {"dL", "dL", Kind::volume, 100},
    {"dl", "dL", Kind::volume, 100},
    {"L", "L", Kind::volume, 1e3},
    {"l", "L", Kind::volume, 1e3},
    {"dm3", "L", Kind::volume, 1e3},
    {"m3", "m3", Kind::volume, 1e6},

    {"mol", "mol", Kind::amount, 1},
    {"mmol", "mmol", Kind::amount, 1e-3},
    {"umol", "umol", Kind::amount, 1e-6},
    {"\xC2\xB5mol", "umol", Kind::amount, 1e-6},
    {"\xCE\xBCmol", "umol", Kind::amount, 1e-6},
    {"kmol", "kmol", Kind::amount, 1e3},

    {"s", "s", Kind::duration, 1},
    {"sec", "s", Kind::duration, 1},
    {"min", "min", Kind::duration, 60},
    {"h", "h", Kind::duration, 3600},
    {"hour", "h", Kind::duration, 3600},
    {"hours", "h", Kind::duration, 3600},
    {"d", "d", Kind::duration, 86400},
    {"day", "d", Kind::duration, 86400},
    {"days", "d", Kind::duration, 86400},

    {"J", "J", Kind::energy, 1},
    {"kJ", "kJ", Kind::energy, 1e3},
    {"MJ", "MJ", Kind::energy, 1e6},
    {"Wh", "Wh", Kind::energy, 3600},
    {"kWh", "kWh", Kind::energy, 3.6e6},

    {"W", "W", Kind::power, 1},
    {"mW", "mW", Kind::power, 1e-3},
    {"kW", "kW", Kind::power, 1e3},

    {"degC", "degC", Kind::temperature, 1},
    {"deg C", "degC", Kind::temperature, 1},
    {"C", "degC", Kind::temperature, 1},
    {"\xC2\xB0"
     "C",
     "degC", Kind::temperature, 1},
    {"\xC2\xBA"
     "C",
     "degC", Kind::temperature, 1},
    {"\xE2\x84\x83", "degC", Kind::temperature, 1},
    {"K", "K", Kind::temperature, 1},

    {"%", "%", Kind::percent, 1},
    {"mol %", "mol %", Kind::mole_percent, 1},
    {"mol%", "mol %", Kind::mole_percent, 1},
    {"% w/w", "% w/w", Kind::strength, 1},
    {"% (w/w)", "% w/w", Kind::strength, 1},
    {"wt %", "% w/w", Kind::strength, 1},
    {"wt%", "% w/w", Kind::strength, 1},
    {"% by mass", "% w/w", Kind::strength, 1},
    {"% w/v", "% w/v", Kind::strength, 1},
    {"% (w/v)", "% w/v", Kind::strength, 1},
    {"% v/v", "% v/v", Kind::strength, 1},
    {"% (v/v)", "% v/v", Kind::strength, 1},
    {"vol %", "% v/v", Kind::strength, 1},
    {"vol%", "% v/v", Kind::strength, 1},
    {"% by volume", "% v/v", Kind::strength, 1},

    {"eq", "eq", Kind::equivalents, 1},
    {"eq.", "eq", Kind::equivalents, 1},
    {"equiv", "eq", Kind::equivalents, 1},
    {"equiv.", "eq", Kind::equivalents, 1},
    {"equivalent", "eq", Kind::equivalents, 1},
    {"equivalents", "eq", Kind::equivalents, 1},

    {"g/g", "g/g", Kind::mass_ratio, 1},
    {"kg/kg", "g/g", Kind::mass_ratio, 1},
    {"mL/g", "mL/g", Kind::volume_per_mass, 1},
    {"ml/g", "mL/g", Kind::volume_per_mass, 1},
    {"g/mL", "g/mL", Kind::density, 1},
    {"g/ml", "g/mL", Kind::density, 1},
    {"g/cm3", "g/mL", Kind::density, 1},
    {"kg/L", "g/mL", Kind::density, 1},
    {"g/L", "g/L", Kind::density, 1e-3},
    {"g/l", "g/L", Kind::density, 1e-3},
    {"g/mol", "g/mol", Kind::molar_mass, 1},
    {"mol/L", "mol/L", Kind::concentration, 1e-3},
    {"mol/l", "mol/L", Kind::concentration, 1e-3},
    {"M", "mol/L", Kind::concentration, 1e-3},

    {"/s", "/s", Kind::rate, 1},
    {"/min", "/min", Kind::rate, 1.0 / 60},
    {"/h", "/h", Kind::rate, 1.0 / 3600},
};

// What is written on benches and is no unit here, with the unit that is meant; letters alone would lead
// astray from "mcg" to "mg" and from "cc" to "cL".
constexpr std::pair<std::string_view, std::string_view> habits[] = {
    {"gr", "g"},
    {"gram", "g"},
    {"grams", "g"},
    {"gm", "g"},
    {"gms", "g"},
    {"mcg", "ug"},
    {"milligram", "mg"},
    {"milligrams", "mg"},
    {"cc", "mL"},
    {"ccm", "mL"},
    {"cm\xC2\xB3", "mL"},
    {"dm\xC2\xB3", "L"},
    {"millilitre", "mL"},
    {"litre", "L"},
    {"mole", "mol"},
    {"moles", "mol"},
    {"mmole", "mmol"},
    {"mmoles", "mmol"},
    {"minute", "min"},
    {"minutes", "min"},
    {"mins", "min"},
    {"hr", "h"},
    {"hrs", "h"},
    {"second", "s"},
    {"seconds", "s"},
    {"secs", "s"},
    {"celsius", "degC"},
    {"degrees c", "degC"},
    {"oc", "degC"},
    {"\xC2\xB0 c", "degC"},
    {"\xCB\x9A"
     "c",
     "degC"},
    {"\xE2\x88\x98"
     "c",
     "degC"},
    {"deg.c", "degC"},
    {"equivs", "eq"},
    {"percent", "%"},
};

} // namespace

const UnitSpelling* find_unit(std::string_view spelling) {
    const auto* const found = std::find_if(std::begin(table), std::end(table),
                                           [&](const UnitSpelling& row) { return row.spelling == spelling; });
    return found == std::end(table) ? nullptr : found;
}

std::string nearest_unit(std::string_view spelling) {
    const std::string folded = fold(spelling);
    for (const auto& [written, meant] : habits)
        if (folded == written) return std::string(meant);
    NearestSpelling search(spelling);
    for (const UnitSpelling& row : table)
        if (row.spelling == row.unit) search.offer(row.unit);
    // Of two letters one is no likeness: "lb" is no "L", and "m" may be minutes.
    const std::string& best = search.best();
    return folded.size() > 2 || fold(best) == folded ? best : std::string();
}

std::string_view describe(UnitKind kind) {
    switch (kind) {
    case Kind::none:
        return "a number without a unit";
    case Kind::mass:
        return "a mass";
    case Kind::volume:
        return "a volume";
    case Kind::amount:
        return "an amount of substance";
    case Kind::duration:
        return "a time";
    case Kind::energy:
        return "an energy";
    case Kind::power:
        return "a power";
    case Kind::temperature:
        return "a temperature";
    case Kind::percent:
        return "a percentage";
    case Kind::mole_percent:
        return "a share in mol %";
    case Kind::strength:
        return "the strength of a solution";
    case Kind::equivalents:
        return "a number of equivalents";
    case Kind::mass_ratio:
        return "a ratio of masses";
    case Kind::volume_per_mass:
        return "a volume per mass";
    case Kind::density:
        return "a density";
    case Kind::molar_mass:
        return "a molar mass";
    case Kind::concentration:
        return "a concentration";
    case Kind::rate:
        return "a rate constant";
    }
    return "a quantity";
}

} // namespace routeweigh
