// SPDX-License-Identifier: MIT
// The usual cautions, worded here and nowhere else.
#pragma once

#include "writing/blocks.hpp"

#include <string_view>

namespace routeweigh::documents {

/// For every document that could lead a hand to a bottle.
writing::Caution usual_cautions();

/// The same for a paper of one page.
writing::Paragraph usual_cautions_in_small_print();

/// What the hazard figures do not look at.
writing::Paragraph not_judged();

/// What the model of a pot leaves out.
writing::Paragraph not_predicted();

/// For what the hazard score must not be used.
std::string_view limits_of_score();

} // namespace routeweigh::documents
