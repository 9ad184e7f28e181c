// SPDX-License-Identifier: MIT
// The printed working of a figure: formula, the sums that go in with their parts, the numbers put in.
#pragma once

#include "assess/assessment.hpp"
#include "writing/blocks.hpp"

#include <string>
#include <string_view>
#include <vector>

namespace routeweigh::documents {

/// One total of a formula with all it is made of.
struct WorkingSum {
    double Totals::*total;
    std::string name; ///< as the formula calls it
    std::string unit;
    double value = 0;
    std::string text;                ///< the value at the precision of its parts
    std::vector<Contribution> parts; ///< empty where the total is no sum
    std::vector<std::string> part_texts;
    std::string rule; ///< what the total counts, or how it comes about
};

struct Working {
    std::string formula; ///< in words: "isolated product / theoretical yield"
    std::string numbers; ///< the same with the numbers put in
    std::string result;  ///< with its unit, as the tables print it
    std::vector<WorkingSum> sums;
    std::vector<std::string_view> from; ///< figures that a derived figure goes back to
};

/// \pre the figure is one of all_metrics()
Working working_of(const Assessment& route, const Metric& metric);

/// "g", "mol", "h"; "" of a share.
std::string_view unit_of_total(double Totals::*total);

/// One total of the route with its parts.
WorkingSum working_sum(const Assessment& route, double Totals::*total, std::string_view name);

/// Parts, places in the route file with their lines, sum.
writing::Table sum_table(const Assessment& route, const WorkingSum& sum);

/// How every input of a route is counted: class, stage, drown-out, benign, and its place in the route file.
writing::Table counted_inputs_table(const Assessment& route);

/// What the net equation takes and leaves for one mol of product.
writing::Table net_equation_table(const Assessment& route);

} // namespace routeweigh::documents
