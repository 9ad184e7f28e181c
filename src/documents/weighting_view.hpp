// SPDX-License-Identifier: MIT
// What all weightings of the hazard score say of the routes of a report, and how shares are put in words.
#pragma once

#include "documents/report_view.hpp"

namespace routeweigh::documents {

/// By route.
struct WeightingView {
    static constexpr std::size_t draws = 50'000;

    explicit WeightingView(const ReportView& view);

    std::vector<double> first, below_baseline, best_lead;
};

/// "97 %", "more than 99 %".
std::string share_words(double share);

} // namespace routeweigh::documents
