// SPDX-License-Identifier: MIT
// One page for those who decide whether an experiment of a course gives way to another: what is proposed for
// whom, what it loses and gains, what nobody knows, and who decides.
#pragma once

#include "assess/course/class_use.hpp"
#include "compare/proposal.hpp"
#include "writing/blocks.hpp"

namespace routeweigh {

/// \param house  of the course: its prices, and the rules by which bottles are classified
/// \throws InputError where a table of the classification is missing or faulty
writing::Document committee_case(const Proposal& proposal, const course::House& house);

} // namespace routeweigh
