// SPDX-License-Identifier: MIT
// Statements of the section "In short": sentences that follow from the figures of whatever routes are
// compared.
//
// A statement has a kind, by which tests and later documents know what is claimed without reading the
// sentence. A new finding is a file here and a line in finding_list.cpp.
#pragma once

#include "documents/report_view.hpp"
#include "writing/blocks.hpp"

#include <span>
#include <string>
#include <vector>

namespace routeweigh::documents {

enum class Topic { summary, equation, mass, bromine, moved, hazard, standing };

struct Statement {
    Topic topic;
    std::string kind;                ///< "mass.within_yield"
    std::vector<std::string> routes; ///< of which it is said, in their order
    writing::Text text;
};

/// Points of atom economy that tell routes apart: less is rounding of formulas.
inline constexpr double economy_points = 0.5;

using Statements = std::vector<Statement>;
using Finding = void (*)(const ReportView& view, Statements& statements);

std::span<const Finding> all_findings();

/// Heading of a topic.
std::string_view words(Topic topic);

/// All statements in reading order; none for a single route.
Statements find_statements(const ReportView& view);

// The findings there are, one file each.
void find_summary(const ReportView& view, Statements& statements);
void find_atom_economy(const ReportView& view, Statements& statements);
void find_excess_in_equation(const ReportView& view, Statements& statements);
void find_mass(const ReportView& view, Statements& statements);
void find_greener_sounding(const ReportView& view, Statements& statements);
void find_bromine(const ReportView& view, Statements& statements);
void find_moved(const ReportView& view, Statements& statements);
void find_certainty(const ReportView& view, Statements& statements);
void find_hazard(const ReportView& view, Statements& statements);
void find_standing(const ReportView& view, Statements& statements);

std::vector<std::string> ids(const std::vector<const RouteView*>& routes);

/// "A2, A3 and A4"; "all nine others" where that is meant.
std::string names(const ReportView& view, const std::vector<const RouteView*>& routes);

/// "85.6 %" when all agree as printed, else "67.1 to 85.6 %".
std::string range_text(const std::vector<const RouteView*>& routes, std::string_view figure_id);

} // namespace routeweigh::documents
