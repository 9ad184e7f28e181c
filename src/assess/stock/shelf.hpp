// SPDX-License-Identifier: MIT
// What the shelf already holds: a CSV table of materials and amounts, as a stock-taking gives it.
//
//   material;amount;unit;best before
//   acetanilide;250;g;
//   ethanol 95 % by volume;1,5;L;2027-03-31
#pragma once

#include "base/day.hpp"
#include "chemistry/catalogue.hpp"
#include "input/csv_reader.hpp"
#include "input/field.hpp"

#include <optional>
#include <string>
#include <vector>

namespace routeweigh::stock {

struct ShelfItem {
    const Material* material = nullptr;
    double grams = 0;
    std::optional<Day> best_before;
    std::size_t line = 0;
};

struct Shelf {
    std::string name; ///< of the file
    std::vector<ShelfItem> items;

    /// What may still be used on that day; without a day all of it.
    double grams_of(const Material& material, std::optional<Day> on) const;
    /// Is something left out of grams_of() because of its date?
    bool has_expired(const Material& material, std::optional<Day> on) const;
};

/// \param problems  receives a warning for each row of a material that the catalogue does not have; after 20
/// of them one that counts the rest
/// \throws InputError with the faults of the file, at most 50: a column missing, no number, an unknown unit
Shelf read_shelf(CsvReader& rows, const Catalogue& catalogue, Problems& problems);

} // namespace routeweigh::stock
