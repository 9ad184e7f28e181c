// SPDX-License-Identifier: MIT
// A comparison as the sections of the report read it: what several of them need is worked out once.
#pragma once

#include "assess/classified_route.hpp"
#include "assess/figure_pick.hpp"
#include "compare/comparison.hpp"
#include "compare/uncertainty/certainty.hpp"
#include "route/reaction_graph.hpp"
#include "writing/blocks.hpp"

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace routeweigh::documents {

/// The mass intensity in both boundaries, and without the inputs in which they differ.
inline constexpr std::string_view pmi_as_written = "process_mass_intensity";
inline constexpr std::string_view pmi_same_auxiliaries = same_auxiliaries_id;
inline constexpr std::string_view pmi_without_rinse = "pmi_without_drown_out_and_rinse";

/// Grams per gram of product that print as nothing.
inline constexpr double negligible = 5e-4;

/// Every figure of one route, those that need a baseline among them.
std::vector<Figure> figures_of(const Comparison& comparison, std::size_t route);

/// The figure of this id. \pre there is one
const Figure& figure(const std::vector<Figure>& figures, std::string_view id);

/// The unit as printed.
std::string unit_of(const Figure& figure);

/// A figure in a table: marked as a lower bound where nothing bounds it from above, and as missing, with the
/// reason, where it has no value.
writing::Cell figure_cell(const Figure& figure);

struct RouteView {
    std::string id;
    const Assessment* assessment;
    const RouteComparison* compared;
    bool baseline;
    std::optional<MassVerdict> mass; ///< none for the baseline; knows what was drawn, where something was
    std::string standing;            ///< of its numbers: status and whether a yield is assumed
    std::vector<Figure> figures;
    HazardGrid grid;
    ReactionGraph graph;
    ClassifiedRoute classified; ///< by the rules of the view

    double value(std::string_view figure_id) const { return figure(figures, figure_id).value; }
    const Route& route() const { return assessment->route(); }
    /// Anchors of the folded workings, ledger and sources of this route.
    std::string working_anchor() const { return "working-" + id; }
    std::string ledger_anchor() const { return "ledger-" + id; }
    std::string source_anchor() const { return "source-" + id; }
    /// A column that holds figures of this route, its standing in the legend.
    writing::Column column(std::string unit = {}) const;
    /// The first cell of a row that holds figures of this route.
    writing::Cell head() const;
    writing::RowKind row_kind() const;
};

struct ReportView {
    /// \throws InputError where a table of the classification is missing or faulty
    explicit ReportView(const Comparison& comparison, const Certainty* certainty = nullptr);

    const Comparison* comparison;
    ClassificationRules classification;
    const Certainty* certainty; ///< nullptr: nothing was drawn
    std::vector<RouteView> routes;
    std::size_t baseline_index;

    const RouteView& baseline() const { return routes[baseline_index]; }
    bool single() const { return routes.size() == 1; }
    const Substance& product() const { return *baseline().route().product; }
    /// All routes but the baseline.
    std::vector<const RouteView*> others() const;
    bool several_steps() const;
    /// No route has drown-out or flask rinse, so that both boundaries give the same figures.
    bool one_boundary() const;
    /// Which numbers of which route are what, in one sentence, for pictures.
    std::string standing() const;
};

std::string_view words(MassVerdict verdict);

/// That of the comparison, unless the draws cannot tell the route from the baseline in one of the boundaries.
std::optional<MassVerdict> mass_verdict(const Comparison& compared, const Certainty* drawn,
                                        std::size_t route);

} // namespace routeweigh::documents
