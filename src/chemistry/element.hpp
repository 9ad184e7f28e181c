// SPDX-License-Identifier: MIT
// The chemical elements with their standard atomic weights, abridged to five digits (IUPAC 2021).
//
// Prohaska et al., Pure Appl. Chem. 2022, 94, 573, doi:10.1515/pac-2019-0603. An element is its atomic
// number.
#pragma once

#include <map>
#include <optional>
#include <string_view>

namespace routeweigh {

inline constexpr int element_count = 118;

// The atomic number, 1..118; symbols are case-sensitive. Empty for a symbol that does not exist.
std::optional<int> element_by_symbol(std::string_view symbol);

// All of these take 1..118 and throw std::out_of_range otherwise.
std::string_view element_symbol(int element);
std::string_view element_name(int element);
// False for the elements that have no stable isotope mixture to weigh (technetium, radium, ...).
bool element_has_weight(int element);
// Standard atomic weight and its uncertainty, g/mol; std::domain_error where there is none.
double element_weight(int element);
double element_weight_uncertainty(int element);

/// The atomic weights that molar masses are computed with: the standard ones, some of them moved.
class AtomicWeights {
  public:
    /// g/mol; throws as element_weight() does
    double of(int element) const {
        const auto moved = moved_.find(element);
        return element_weight(element) + (moved == moved_.end() ? 0.0 : moved->second);
    }
    /// \param by  g/mol, on top of the standard weight
    void move(int element, double by) { moved_[element] = by; }

  private:
    std::map<int, double> moved_;
};

} // namespace routeweigh
