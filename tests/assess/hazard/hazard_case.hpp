// SPDX-License-Identifier: MIT
// What the hazard tests share: the shipped schemes, substances made by hand, and small routes weighed at
// once.
#pragma once

#include "assess/hazard/hazard_grid.hpp"
#include "assess/hazard/hazard_map.hpp"
#include "assess/hazard/scheme_reader.hpp"
#include "assess/hazard/score.hpp"
#include "chemistry/catalogue.hpp"
#include "route/flat_route.hpp"
#include "route/route_reader.hpp"

#include <fstream>
#include <memory>
#include <sstream>
#include <stdexcept>
#include <string>
#include <utility>
#include <vector>

namespace routeweigh::test {

inline Source file(const std::string& path) {
    std::ifstream stream(std::string(ROUTEWEIGH_ROOT "/") + path);
    if (!stream) throw std::runtime_error("cannot read " + path);
    std::ostringstream text;
    text << stream.rdbuf();
    return {path, text.str()};
}

// The scheme and the bandings as they are shipped.
inline const HazardSchemes& schemes() {
    static const HazardSchemes read{read_hazard_scheme(file("hazard-data/schemes/hazard_score.json")),
                                    {read_banding(file("hazard-data/schemes/niosh_2019_132.json")),
                                     read_banding(file("hazard-data/schemes/hse_ilo.json"))}};
    return read;
}

inline GhsEntry entry(std::string hazard_class, std::string category, std::string statement) {
    GhsEntry made;
    made.hazard_class = std::move(hazard_class);
    made.category = std::move(category);
    made.statement = std::move(statement);
    return made;
}

inline Substance substance(std::string name, Substance::Phase phase, double molar_mass,
                           std::vector<GhsEntry> ghs) {
    Substance made;
    made.id = made.name = std::move(name);
    made.phase = phase;
    made.molar_mass = molar_mass;
    made.assessed = true;
    made.ghs = std::move(ghs);
    return made;
}

inline ExposureLimit limit(double value, std::string unit, ExposureLimit::Kind kind) {
    ExposureLimit made;
    made.value = value;
    made.unit = std::move(unit);
    made.kind = kind;
    return made;
}

// The number of an endpoint of the shipped scheme.
inline std::size_t endpoint(std::string_view id) {
    const std::vector<EndpointRule>& all = schemes().score.endpoints;
    for (std::size_t e = 0; e < all.size(); ++e)
        if (all[e].id == id) return e;
    throw std::runtime_error("no endpoint " + std::string(id));
}

inline HazardContribution per_gram(std::string_view endpoint_id, const HazardEntry& met,
                                   std::size_t banding = 0) {
    const EndpointRule& rule = schemes().score.endpoints[endpoint(endpoint_id)];
    return rule.family->contribution(rule, met, schemes().score, schemes().bandings[banding]);
}

// A route, compiled and evaluated at its nominal amounts.
class WeighedRoute {
  public:
    WeighedRoute(const Source& source, const Catalogue& catalogue)
        : route_(read(source, catalogue)), flat_(*route_), evaluation_(flat_.evaluate(flat_.nominal())) {
        for (const Banding& banding : schemes().bandings) {
            maps_.emplace_back(flat_, schemes().score, banding);
            values_.push_back(maps_.back().evaluate(evaluation_));
        }
    }

    const FlatRoute& flat() const { return flat_; }
    const Evaluation& evaluation() const { return evaluation_; }
    const HazardMap& map(std::size_t banding = 0) const { return maps_[banding]; }
    const HazardValues& values(std::size_t banding = 0) const { return values_[banding]; }
    HazardGrid grid(std::size_t banding = 0) const { return explain(maps_[banding], evaluation_); }

  private:
    static std::unique_ptr<Route> read(const Source& source, const Catalogue& catalogue) {
        Problems problems;
        return std::make_unique<Route>(
            read_route(make_source(source.name, source.text), catalogue, problems));
    }

    std::unique_ptr<Route> route_;
    FlatRoute flat_;
    Evaluation evaluation_;
    std::vector<HazardMap> maps_;
    std::vector<HazardValues> values_;
};

// The substances of the hand-worked cases; see the head of the file.
inline const Catalogue& small_catalogue() {
    static const Catalogue catalogue = Catalogue::from_sources(
        {file("tests/assess/hazard/data/substances.json"), file("tests/assess/hazard/data/materials.json")});
    return catalogue;
}

// One of the hand-worked routes, with some texts of its file changed.
inline WeighedRoute small_route(const std::string& name,
                                const std::vector<std::pair<std::string, std::string>>& changes = {}) {
    Source source = file("tests/assess/hazard/data/" + name + ".json");
    for (const auto& [from, to] : changes) {
        const std::size_t at = source.text.find(from);
        if (at == std::string::npos) throw std::runtime_error("not in the route: " + from);
        source.text.replace(at, from.size(), to);
    }
    return {source, small_catalogue()};
}

} // namespace routeweigh::test
