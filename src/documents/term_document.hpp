// SPDX-License-Identifier: MIT
// A term of experiments on one page: waste by container, money, power, water, time, hazards, techniques; and
// the same beside another term, or with one experiment replaced.
#pragma once

#include "assess/course/course_use.hpp"
#include "writing/blocks.hpp"

namespace routeweigh {

/// \param before  what the term is held against; nullptr: nothing
/// \param house  of the term; its limits classify the bottles of both
writing::Document term_document(const course::CourseUse& term, const course::CourseUse* before,
                                const course::House& house);

} // namespace routeweigh
