// SPDX-License-Identifier: MIT
// The limits by which a jurisdiction classifies mixtures, as its data file states them.
//
// Limits of shares are per cent by mass (by volume in gases). Categories stand most severe first.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace routeweigh {

struct AcuteCategory {
    std::string category;
    double upper = 0;   // highest estimate of the category
    double point = 0;   // that stands for the category where no estimate is known
    double cut_off = 0; // an ingredient of the category counts from this share on
    std::string statement;
};

struct AcuteRoute {
    std::string endpoint; // "acute_oral"
    std::string route;    // "oral"
    std::string form;     // "vapours"; "" where the route has one only
    std::string unit;     // "mg/kg", "mg/L", "ppmV"
    std::vector<AcuteCategory> categories;
    std::string source;
};

struct AcuteLimits {
    std::vector<AcuteRoute> routes;
    double unknown_corrected_above = 0; // share of unknown ingredients above which the estimate is corrected
    std::string unknown_source;
};

// Skin corrosion and irritation, or eye damage and irritation: sums of shares, each over its limit.
struct ContactLimits {
    double cut_off = 0;
    double severe = 0;              // corrosive or damaging ingredients
    double severe_as_irritant = 0;  // the same ones, counted as irritants
    double irritant = 0;            // irritating ingredients
    double not_additive_severe = 0; // one such ingredient alone
    double not_additive_irritant = 0;
    std::optional<double> mild;           // mild irritants (skin category 3), added to all others
    std::optional<double> mild_irritant;  // the others alone make a mild irritant from this weighted sum on
    bool two_irritant_categories = false; // 2A and 2B (eye)
    std::string source;
};

struct PhLimits {
    double acid = 0, base = 0;
    std::string source;
};

// An ingredient of category `from` gives the mixture category `to` from this share on.
struct ThresholdRow {
    std::string from;
    std::string to;
    double percent = 0;
    std::optional<double> gas_percent; // where a gas has another limit
    std::string statement;             // of category `to`
    std::string source;
};

// A hazard for which each ingredient counts by itself.
struct ThresholdEndpoint {
    std::string id;
    std::string title;
    std::string hazard_class;
    std::vector<std::string> categories; // of the mixture, most severe first
    std::vector<ThresholdRow> rows;
};

struct ThresholdLimits {
    std::vector<ThresholdEndpoint> endpoints;
    // False: a specific limit above the general one does not lift it.
    bool specific_limits_may_lift = true;

    const ThresholdEndpoint* endpoint(std::string_view id) const;
};

// Irritation of the airways, and drowsiness: each summed by itself.
struct TransientEffectLimits {
    double cut_off = 0;
    double sum = 0;
    std::string source;
};

struct AspirationCategory {
    std::string category;
    double sum = 0;
    double cut_off = 0;   // of an ingredient
    double viscosity = 0; // mm2/s at 40 degC, at most
    std::string statement;
    std::string source;
};

// A sum over the categories of the ingredients: each share times the weight of its category.
struct AquaticCategory {
    std::string category;
    std::vector<double> weights; // of ingredients of category 1, 2, ...; that of 1 is multiplied by M
    bool with_m_factor = true;
    std::string statement;
};

struct AquaticLimits {
    bool covered = false;
    double sum = 0;
    double cut_off_1 = 0; // of category 1, divided by M
    double cut_off_other = 0;
    std::vector<AquaticCategory> acute, chronic;
    std::string source;
};

struct FlammableCategory {
    std::string category;
    double flash_point = 0;              // degC
    bool included = false;               // the limit belongs to the category
    std::optional<double> boiling_point; // degC, at most
    std::string statement;
};

struct FlammableLimits {
    std::vector<FlammableCategory> categories;
    double margin = 0; // K that a calculated flash point keeps from a limit, else a test decides
    std::string source;
};

// A part of the harmonised system that a jurisdiction may take or leave.
struct BuildingBlock {
    std::string id;
    std::string title;
    bool on = false;
};

struct MixtureLimits {
    std::string id;
    std::string title;
    std::string source;
    std::vector<BuildingBlock> blocks;
    bool supplemental_statements = false;    // EUH statements belong to the label
    std::optional<double> elicitation_share; // of a sensitiser's limit
    std::string elicitation_source;
    std::vector<std::string> not_covered; // endpoint ids
    AcuteLimits acute;
    ContactLimits skin, eye;
    PhLimits ph;
    ThresholdLimits thresholds;
    TransientEffectLimits transient;
    std::vector<AspirationCategory> aspiration;
    AquaticLimits aquatic;
    FlammableLimits flammable;

    bool covers(std::string_view endpoint) const;
};

// Limits are written in round numbers, sums are not exact in binary: 1.5 / 0.30 is at most 5.0.
inline constexpr double limit_tolerance = 1e-9;
inline bool reaches(double value, double limit) {
    return value >= limit * (1 - limit_tolerance);
}
inline bool is_above(double value, double limit) {
    return value > limit * (1 + limit_tolerance);
}

} // namespace routeweigh
