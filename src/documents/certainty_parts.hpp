// SPDX-License-Identifier: MIT
// Tables and pictures about uncertainty that the report and the document on uncertainty share.
#pragma once

#include "compare/uncertainty/certainty.hpp"
#include "documents/report_view.hpp"

namespace routeweigh::documents {

/// "10 000".
std::string whole(std::size_t number);

/// With the decimals that show two digits of the deviation (JCGM 100:2008, 7.2.6); `otherwise`: without one.
writing::Cell at_precision(double value, double deviation, int otherwise);

/// "95 %", with the digits that were asked for.
std::string coverage_words(const Certainty& certainty);

/// What varies, how it was drawn, and where the numbers could not be kept within their range.
std::vector<writing::Text> sampling_remarks(const Certainty& certainty);

/// Every figure of one route that varies: value as written, mean and standard uncertainty of the draws,
/// interval, linear standard uncertainty, and the input that contributes most.
writing::Table interval_table(const Certainty& certainty, const ReportView& view, std::size_t route);

/// The uncertainty budget of one figure of one route (JCGM 100:2008, 5.1), largest contribution first. \param
/// most  rows; what else there is is summed in a last one
writing::Table budget_table(const Certainty& certainty, const ReportView& view, std::size_t route,
                            std::size_t figure, std::size_t most);

} // namespace routeweigh::documents
