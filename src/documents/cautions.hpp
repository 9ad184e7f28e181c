// SPDX-License-Identifier: MIT
// The usual cautions, worded here and nowhere else.
#pragma once

#include "assess/assessment.hpp"
#include "writing/blocks.hpp"

#include <string_view>
#include <vector>

namespace routeweigh::documents {

/// For every document that could lead a hand to a bottle.
writing::Caution usual_cautions();

/// The same for a paper of one page.
writing::Paragraph usual_cautions_in_small_print();

/// Where the numbers of a route come from, and how far they can be trusted; goes wherever its figures are
/// shown.
writing::Paragraph numbers_of(const Assessment& route);

/// Added where nothing bounds a figure of the route from above, so that what is shown of it is its least
/// value.
void tell_open_end(const Assessment& route, std::string_view figure_id, std::vector<writing::Block>& blocks);

/// What the hazard figures do not look at.
writing::Paragraph not_judged();

/// Of which run the amounts are in changes of a route of several steps.
writing::Paragraph amounts_of_steps();

/// What the model of a pot leaves out.
writing::Paragraph not_predicted();

/// For what the hazard score must not be used.
std::string_view limits_of_score();

} // namespace routeweigh::documents
