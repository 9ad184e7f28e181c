// SPDX-License-Identifier: MIT
// A term as programs read it.
#pragma once

#include "assess/course/course_use.hpp"
#include "assess/stock/price_list.hpp"
#include "documents/term_hazards.hpp"
#include "writing/blocks.hpp"

#include <vector>

namespace routeweigh::documents {

/// A figure, or a hazard statement, of one week a row.
/// \param hazards  of the term, one entry for each experiment
writing::DataRows term_rows(const course::CourseUse& term, const stock::PriceList& prices,
                            const std::vector<WeekHazards>& hazards);

/// Likewise.
writing::MachineObject term_tree(const course::CourseUse& term, const stock::PriceList& prices,
                                 const std::vector<WeekHazards>& hazards);

} // namespace routeweigh::documents
