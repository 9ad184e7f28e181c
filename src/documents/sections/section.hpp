// SPDX-License-Identifier: MIT
// The sections of the comparison report. A new one is a file here and a line in section_list.cpp.
#pragma once

#include "documents/report_view.hpp"
#include "writing/blocks.hpp"

#include <span>
#include <string_view>
#include <vector>

namespace routeweigh::documents {

using Blocks = std::vector<writing::Block>;

struct Section {
    std::string_view id; ///< anchor
    std::string_view title;
    void (*add)(const ReportView& view, Blocks& blocks);
    bool (*applies)(const ReportView& view) = nullptr; ///< nullptr: always
};

/// In reading order.
std::span<const Section> all_sections();

} // namespace routeweigh::documents
