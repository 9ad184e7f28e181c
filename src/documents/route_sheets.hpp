// SPDX-License-Identifier: MIT
// The sheets of a route's workbook. Each starts with a title and a line of headings; what stands below is
// found by the index of its inflow, step or total.
#pragma once

#include "assess/assessment.hpp"
#include "writing/workbook.hpp"

#include <string>
#include <vector>

namespace routeweigh::documents {

inline constexpr int first_data_row = 4; ///< of every sheet, counted from 1

/// What all sheets of a workbook agree on.
struct BookPlan {
    explicit BookPlan(const Assessment& assessment);

    const Assessment& assessment;
    std::vector<bool>
        free_charges;         ///< by slot: no theoretical yield depends on it and nothing of it is reused
    bool free_yields = false; ///< no step is fed back, and nothing is reused over several steps
    std::vector<double Totals::*> totals;  ///< all that metrics name, each once
    std::vector<double Totals::*> counted; ///< those of them that are sums of inflows
};

/// Every component of every charge: "Amounts". One column a total on the right says how it is counted.
writing::Sheet amounts_sheet(const BookPlan& plan);
/// Theory, yield and runs of every step: "Steps".
writing::Sheet steps_sheet(const BookPlan& plan);
/// The sums that figures are made of: "Totals".
writing::Sheet totals_sheet(const BookPlan& plan);
/// Every metric, live where all its totals are: "Figures".
writing::Sheet figures_sheet(const BookPlan& plan);

/// In the order in which metrics name them; what waste is the rest of stands first.
std::vector<double Totals::*> named_totals();
std::string total_name(double Totals::*total);

/// Cells of these sheets as formulas of other sheets name them.
namespace cells {
std::string grams_in(const FlatRoute& flat);                   ///< range over the inflows
std::string reused(const FlatRoute& flat);                     ///< range
std::string weights(const FlatRoute& flat, int counted_index); ///< range
std::string material_names(const FlatRoute& flat);             ///< range
std::string bought(const FlatRoute& flat);                     ///< range, filled once a charge
std::string isolated(int step);
std::string yield(int step);
std::string runs(int step);
std::string total(int index);
} // namespace cells

} // namespace routeweigh::documents
