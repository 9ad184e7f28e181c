// SPDX-License-Identifier: MIT
#include "assess/streams/amounts_in_words.hpp"

#include "base/text.hpp"

#include <fmt/format.h>

namespace routeweigh::streams {
namespace {

std::string scaled(double value, const char* unit, const char* thousandth) {
    return value == 0 || value >= 0.1 ? fmt::format("{} {}", significant(value, 2), unit)
                                      : fmt::format("{} {}", significant(1000 * value, 2), thousandth);
}

} // namespace

std::string percent_words(double share) {
    const double percent = 100 * share;
    if (percent == 0) return "0 %";
    if (percent >= 9.95) return fmt::format("{:.0f} %", percent);
    return fmt::format("{} %", significant(percent, 2));
}

std::string gram_words(double grams) {
    return scaled(grams, "g", "mg");
}

std::string millimole_words(double moles) {
    return scaled(1000 * moles, "mmol", "µmol");
}

std::string gas_words(double litres) {
    return litres < 1 ? significant(1000 * litres, 2) + " mL" : significant(litres, 2) + " L";
}

std::string liquid_words(double millilitres) {
    return millilitres < 1000 ? significant(millilitres, 2) + " mL"
                              : significant(millilitres / 1000, 3) + " L";
}

std::string names_of(const std::vector<const Substance*>& substances) {
    std::vector<std::string> list;
    for (const Substance* substance : substances)
        list.push_back(substance->name);
    return join(list, " and ");
}

} // namespace routeweigh::streams
