// SPDX-License-Identifier: MIT
// What stands in a bottle: a mixture of substances by mass fraction, with its own density.
//
// Every substance is also a material of itself, the neat substance.
#pragma once

#include "chemistry/substance.hpp"

#include <map>
#include <optional>
#include <string>
#include <vector>

namespace routeweigh {

struct Component {
    const Substance* substance = nullptr;
    double mass_fraction = 0; // above 0, at most 1
    // What only carries the others: water, and what the file calls a carrier. Never the only component.
    bool carrier = false;
};

struct Material {
    std::string id;
    std::string name;
    std::vector<std::string> synonyms;
    std::vector<Component> components;     // at least one; the fractions sum to 1
    std::optional<Substance::Phase> phase; // at 25 degC; none: as the phases of its components have it
    std::optional<double> density;         // g/mL
    std::optional<double> density_at;      // degC
    std::string basis;                     // what the strength means, in words
    bool typical = false;                  // the composition varies between suppliers
    std::map<std::string, std::string> sources;
    std::string notes;

    bool is_neat() const { return components.size() == 1; }
    // The component of this substance, or nullptr.
    const Component* component_of(const Substance& substance) const;
    // The only component that is no carrier, or nullptr where there are several.
    const Component* only_active() const;
};

} // namespace routeweigh
