// SPDX-License-Identifier: MIT
// Prices of packs: a data file of one house, dated, in one currency, and marked where it is invented.
//
// {"title": "...", "currency": "EUR", "date": "2026-08-15", "source": "...", "invented": true,
//  "packs": [{"material": "acetanilide", "pack": "100 g", "price": 11.80}],
//  "disposal_per_L": {"halogenated": 3.10, "own_bottle": 9.00}, "electricity_per_kWh": 0.30,
//  "water_per_m3": 4.50}
#pragma once

#include "base/quantity_text.hpp"
#include "chemistry/catalogue.hpp"
#include "input/source.hpp"

#include <map>
#include <optional>
#include <string>
#include <vector>

namespace routeweigh::stock {

struct Pack {
    const Material* material = nullptr;
    std::string size; ///< as written: "100 g", "1 L"
    double grams = 0;
    double price = 0; ///< of the pack, in the currency of the file
    std::string note;
};

struct PriceList {
    std::string title, currency, date, source;
    bool invented = false;
    std::vector<Pack> packs; ///< in the order of the file
    std::map<std::string, double>
        disposal; ///< of one litre, by id of the container; "own_bottle" for the rest
    std::optional<double> electricity, water; ///< of a kWh, of a m3

    const double* disposal_of(const std::string& container) const; ///< nullptr where there is no price

    std::vector<const Pack*> packs_of(const Material& material) const;
    /// "prices of 2026-08-15 in EUR, invented for a demonstration"; "" where there are none.
    std::string words() const;
};

/// \throws InputError with every problem of the file: an unknown material, a pack in mL of what has no
/// density, a price below zero, a date that is none
PriceList read_price_list(const SourcePtr& source, const Catalogue& catalogue);

/// Grams of an amount such as "100 g" or "1 L". \throws QuantityError for another kind of quantity, or a
/// volume of what has no density
double grams_of_amount(const WrittenQuantity& amount, const Material& material);

} // namespace routeweigh::stock
