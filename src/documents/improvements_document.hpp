// SPDX-License-Identifier: MIT
// What would improve a route, ranked; and the same as questions to students, with a worked key.
#pragma once

#include "assess/assessment.hpp"
#include "compare/improvement.hpp"
#include "writing/blocks.hpp"

namespace routeweigh {

/// \param top  how many of the ranked are shown
writing::Document improvements_document(const Assessment& route, const Improvements& improvements,
                                        std::size_t top);

/// Questions without a number; behind them, when asked for, the key with the numbers of this route put in.
writing::Document improvement_questions(const Assessment& route, const Improvements& improvements,
                                        std::size_t top, bool with_key);

} // namespace routeweigh
