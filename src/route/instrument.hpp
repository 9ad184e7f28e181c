// SPDX-License-Identifier: MIT
// Balances, cylinders, pipettes, burettes and flasks by name, with what they may be off by.
//
// An instrument errs in two ways. Each reading scatters on its own; and the instrument itself is off by the
// same, within its tolerance, in all that is measured with it. So charges that share a cylinder share its
// error.
#pragma once

#include "chemistry/catalogue.hpp"
#include "input/field.hpp"

#include <map>
#include <memory>
#include <string>
#include <vector>

namespace routeweigh {

struct Route;

struct Instrument {
    std::string id, name;
    bool weighs = false;           ///< a balance; else it measures a volume
    double capacity = 0;           ///< g or mL
    double division = 0;           ///< g or mL between two marks; 0 where there is one mark only
    double repeatability = 0;      ///< g or mL: standard deviation of filling or weighing once
    double tolerance = 0;          ///< g or mL: limit of error of the instrument, the same each time
    double relative_tolerance = 0; ///< of what is measured, likewise
    std::string source;

    /// Standard deviation (g or mL) of one measurement, without what the instrument itself is off by. A
    /// weighing is the difference of two readings, each rounded to a division; a meniscus is read once, to a
    /// quarter of a division (common practice, no source).
    double reading_deviation() const;
};

using InstrumentPtr = std::shared_ptr<const Instrument>;

/// The scheme "instruments" of the catalogue. \throws InputError where it is missing or faulty
std::vector<InstrumentPtr> read_instruments(const Catalogue& catalogue);

/// Finds the instruments that a route names; reads the list when the first name is met.
class InstrumentFinder {
  public:
    explicit InstrumentFinder(const Catalogue& catalogue) : catalogue_(&catalogue) {}

    /// Sets Charge::instrument and Isolated::instrument. Problems: no such instrument, a balance for a
    /// volume, a volume without density, more than a balance carries.
    void find(Route& route, Problems& problems);

  private:
    InstrumentPtr by_name(const std::string& name);
    std::string nearest_name(const std::string& name) const;

    const Catalogue* catalogue_;
    std::vector<InstrumentPtr> list_;
    std::map<std::string, InstrumentPtr> by_folded_name_; // and by folded id
};

} // namespace routeweigh
