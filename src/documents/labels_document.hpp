// SPDX-License-Identifier: MIT
// Labels for the bottles and the waste containers of a route, on sheets of a stated size.
#pragma once

#include "assess/assessment.hpp"
#include "assess/mixture/mixture_rules.hpp"
#include "assess/stock/label_sheets.hpp"
#include "assess/streams/container_contents.hpp"
#include "writing/blocks.hpp"

#include <string>
#include <vector>

namespace routeweigh {

struct LabelWords {
    std::string course, contact, date; ///< printed as they are; empty: a line to write on
    int first = 1;                     ///< label of the first sheet that is still free
    int copies = 1;                    ///< of each bottle label
    bool bottles = true, waste = true;
};

writing::Document labels_document(const Assessment& route,
                                  const std::vector<streams::ContainerContents>& contents,
                                  const MixtureRules& rules, const stock::LabelSheetSize& sheet,
                                  const LabelWords& words);

} // namespace routeweigh
