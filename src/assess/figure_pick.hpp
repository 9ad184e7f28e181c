// SPDX-License-Identifier: MIT
// One figure of a route picked out by its id, to be read again and again from fresh evaluations.
#pragma once

#include "assess/assessment.hpp"
#include "assess/same_auxiliaries.hpp"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace routeweigh {

class FigurePick {
  public:
    /// Empty when no figure has this id. The scheme is that of the rules with which routes are evaluated.
    static std::optional<FigurePick> find(std::string_view id, const HazardScheme& scheme);

    /// Process mass intensity of a route, and of what it is changed into, with the auxiliaries of a baseline.
    /// \pre both make the same product
    static FigurePick same_auxiliaries(const FlatRoute& route, const Assessment& baseline);

    /// NaN when the figure has no value.
    double value(const RouteFigures::Values& values) const;

    /// The sums above and below the line of a plain ratio of totals; empty for any other figure.
    struct Ratio {
        double factor, above, below;
    };
    std::optional<Ratio> ratio(const Totals& totals) const;

    const std::string& id() const { return id_; }
    const std::string& name() const { return name_; }
    const std::string& unit() const { return unit_; }
    Better better() const { return better_; }
    int decimals() const { return decimals_; }

  private:
    enum class Source { metric, cell, score, same_auxiliaries };
    FigurePick() = default;

    Source source_ = Source::score;
    std::size_t index_ = 0; ///< of the metric or the cell
    std::string id_, name_, unit_;
    Better better_ = Better::lower;
    int decimals_ = 2;
    Auxiliaries baseline_{}; ///< with Source::same_auxiliaries
    int final_step_ = 0;     ///< of the route, likewise
};

/// Ids of all figures of a route, in the order of Assessment::figures().
std::vector<std::string> figure_ids(const HazardScheme& scheme);

} // namespace routeweigh
