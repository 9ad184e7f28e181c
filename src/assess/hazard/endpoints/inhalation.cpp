// SPDX-License-Identifier: MIT
// Inhalation: m3 of air that dilute the substance to its exposure limit, or to the edges of its band.
//
//   demand = 1000 mg/g / L          L in mg/m3
//   L      = L_ppm x M / V          M in g/mol, V = 24.45 L/mol at 25 degC and 101.3 kPa
//
// A limit comes before a band, for a band is a decade of policy and a limit is somebody's decision on this
// substance. Ceilings and short-term limits stay out of the figure; they speak of minutes, not of a working
// day.
#include "assess/hazard/endpoint_list.hpp"

#include "input/field.hpp"

#include <cmath>
#include <limits>

namespace routeweigh {
namespace {

void read_air_rules(const Field& field, EndpointRule& rule) {
    field["unassessed"].one_of({"unbounded"});
    if (field["short_term_scored"].boolean())
        field["short_term_scored"].problem(
            "short-term limits cannot be scored: they stay out of any ordering");
    rule.worst = std::numeric_limits<double>::infinity();
}

// NaN where a molar mass is needed and there is none.
double in_mg_per_m3(double value, bool is_ppm, const Substance& substance, const HazardScheme& scheme) {
    return is_ppm ? value * substance.molar_mass / scheme.air_molar_volume : value;
}

int severity(int band, const Banding& banding) {
    return static_cast<int>(banding.bands.size()) - 1 - band;
}

HazardContribution by_limit(const ExposureLimit& limit, double mg_per_m3, const Substance& substance,
                            const HazardScheme& scheme, const Banding& banding) {
    HazardContribution result;
    if (limit.kind != ExposureLimit::Kind::time_weighted) {
        result.basis = HazardBasis::short_term_limit;
        result.short_term = mg_per_g / mg_per_m3;
        return result;
    }
    result.basis = HazardBasis::limit;
    result.low = result.high = mg_per_g / mg_per_m3;
    const bool particle = substance.phase == Substance::Phase::solid;
    const double ppm =
        limit.unit == "ppm" ? limit.value : mg_per_m3 * scheme.air_molar_volume / substance.molar_mass;
    result.level = severity(banding.band_holding(particle ? mg_per_m3 : ppm, particle), banding);
    return result;
}

HazardContribution air_contribution(const EndpointRule& rule, const HazardEntry& entry,
                                    const HazardScheme& scheme, const Banding& banding) {
    const Substance& substance = *entry.substance;
    if (substance.exposure_limit) {
        const ExposureLimit& limit = *substance.exposure_limit;
        const double mg_per_m3 = in_mg_per_m3(limit.value, limit.unit == "ppm", substance, scheme);
        if (std::isfinite(mg_per_m3)) return by_limit(limit, mg_per_m3, substance, scheme, banding);
    }
    if (!entry.assessed()) return unassessed_contribution(rule);

    const Banding::Match match = banding.worst(entry.ghs());
    if (match.row == nullptr) return {};
    const bool particle = substance.phase == Substance::Phase::solid;
    if (!particle && !std::isfinite(substance.molar_mass)) return unassessed_contribution(rule);

    const Band& band = banding.bands[static_cast<std::size_t>(match.row->band)];
    const BandEdges& edges = particle ? band.particle : band.gas;
    const auto demand = [&](double edge) {
        return mg_per_g / in_mg_per_m3(edge, !particle, substance, scheme);
    };
    HazardContribution result;
    result.basis = HazardBasis::band;
    result.entry = match.entry;
    result.row = match.row;
    result.low = edges.upper ? demand(*edges.upper) : 0.0;
    result.high = edges.lower ? demand(*edges.lower) : rule.worst;
    result.level = severity(match.row->band, banding);
    return result;
}

} // namespace

const EndpointFamily inhalation_family{"exposure limit", read_air_rules, air_contribution};

} // namespace routeweigh
