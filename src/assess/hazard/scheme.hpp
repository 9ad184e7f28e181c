// SPDX-License-Identifier: MIT
// The scheme of the hazard figures as its data file states it: endpoints with their levels and limits,
// places, and the scale x0 on which each figure is turned into decades.
#pragma once

#include "assess/hazard/banding.hpp"

#include <array>
#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace routeweigh {

struct EndpointFamily; // endpoint.hpp

// Where a hazard can sit.
enum class HazardPlace { bottle, flask, waste, product };
inline constexpr std::size_t place_count = 4;
inline constexpr std::array<std::string_view, place_count> place_ids{"bottle", "flask", "waste", "product"};
inline constexpr std::size_t index_of(HazardPlace place) {
    return static_cast<std::size_t>(place);
}

// One level of severity of an endpoint and what it is worth there.
struct HazardLevel {
    std::string name;            // "H400", "category 1", "serious"
    std::vector<int> statements; // numbers, see statement_number()
    std::string category;        // "": any
    double limit = 0;            // g/m3 of water or mg/kg of body mass; 0 where the endpoint has no limits
    bool divided_by_m_factor = false;
};

struct EndpointRule {
    std::string id;
    std::string title;
    std::string unit; // of what the grams are turned into: "m3 air"
    const EndpointFamily* family = nullptr;
    double x0 = 1;
    double weight = 1;
    double worst = 0;                // figure of 1 g that nobody has assessed, at most; may be infinite
    std::vector<HazardLevel> levels; // worst first; empty where the bands are the levels
    std::vector<int> without_limit;  // statements that have no limit: such mass counts as unassessed
    std::string source;              // of the limits

    // Of the figure: "m3 air per g" of product.
    std::string figure_unit() const { return unit + " per g"; }
};

struct PlaceRule {
    std::string title;
    bool scored = false;
};

struct HazardScheme {
    std::string id;
    std::string title;
    std::vector<EndpointRule> endpoints;
    std::array<PlaceRule, place_count> places;
    double air_molar_volume = 0;          // L/mol, turns ppm into mg/m3
    std::vector<double> x0_factors;       // with which the score is repeated
    std::vector<std::string> banding_ids; // the first counts, the second is the check

    const EndpointRule* endpoint(std::string_view endpoint_id) const;
    std::size_t cell_count() const { return endpoints.size() * place_count; }
};

// A cell of the grid of endpoints by places, in the arrays of HazardValues.
inline constexpr std::size_t cell_index(std::size_t endpoint, HazardPlace place) {
    return endpoint * place_count + index_of(place);
}

} // namespace routeweigh
