// SPDX-License-Identifier: MIT
// One page for those who decide whether an experiment of a course gives way to another: what is proposed for
// whom, what it loses and gains, what nobody knows, and who decides.
#pragma once

#include "assess/stock/price_list.hpp"
#include "compare/proposal.hpp"
#include "writing/blocks.hpp"

namespace routeweigh {

writing::Document committee_case(const Proposal& proposal, const stock::PriceList& prices);

} // namespace routeweigh
