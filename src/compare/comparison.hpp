// SPDX-License-Identifier: MIT
// Routes to one product side by side, each against one baseline.
#pragma once

#include "assess/assessment.hpp"
#include "assess/hazard/dominance.hpp"
#include "assess/same_auxiliaries.hpp"

#include <cstddef>
#include <memory>
#include <optional>
#include <span>
#include <vector>

namespace routeweigh {

/// What the same-auxiliaries boundary does to one route: its drown-out and flask rinse are replaced by the
/// baseline's, scaled by theoretical moles of product.
struct SameAuxiliaries {
    double process_mass_intensity = 0; ///< g/g
    bool inserted = false;             ///< the route as written has none of this class
};

/// The yield at which a route's mass intensity equals that of the baseline at its own yield. With fixed
/// inputs the intensity goes as 1/yield, so this is yield x intensity / intensity of the baseline.
struct BreakEven {
    double as_written = 0; ///< 0 to 1, or above 1: not to be reached
    double same_auxiliaries = 0;
};

/// How sure a difference in mass intensity is when yields are assumed.
enum class MassVerdict {
    lower,        ///< in both boundaries, and no plausible yields of the two turn it round
    higher,       ///< likewise
    depends,      ///< on the boundary
    within_yield, ///< plausible yields turn it round
    within_draws, ///< what is not known exactly may turn it round; found by drawing alone
    equal
};

/// A difference in yield that a change of hands or of batch can make, in fractions of 1.
/// Common practice, no source: printed yields of one bromination range over ten points and more.
inline constexpr double plausible_yield_difference = 0.10;

/// Overall yields that far from this one, least and most; 0 to 1.
std::pair<double, double> plausible_yields(double yield);

/// One route against the baseline.
struct RouteComparison {
    SameAuxiliaries same_auxiliaries;
    std::optional<BreakEven> break_even;    ///< none for the baseline itself
    std::optional<MassVerdict> mass;        ///< none for the baseline itself
    std::optional<HazardComparison> hazard; ///< none for the baseline itself
};

class Comparison {
  public:
    /// \pre at least one route, all make the same product, baseline < routes.size()
    Comparison(std::vector<std::unique_ptr<Assessment>> routes, std::size_t baseline);

    std::span<const std::unique_ptr<Assessment>> routes() const { return routes_; }
    const Assessment& route(std::size_t index) const { return *routes_[index]; }
    std::size_t baseline_index() const { return baseline_; }
    const Assessment& baseline() const { return *routes_[baseline_]; }
    const RouteComparison& against_baseline(std::size_t index) const { return compared_[index]; }

    /// Kendall's tau-b between the orders by score on the first and on the second banding; empty for fewer
    /// than four routes or without a second banding.
    std::optional<double> banding_agreement() const { return banding_agreement_; }

  private:
    std::vector<std::unique_ptr<Assessment>> routes_;
    std::size_t baseline_;
    std::vector<RouteComparison> compared_;
    std::optional<double> banding_agreement_;
};

} // namespace routeweigh
