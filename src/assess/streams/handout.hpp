// SPDX-License-Identifier: MIT
// What the handout says about a stream's container, held against what was computed.
#pragma once

#include "assess/streams/container_decision.hpp"

#include <string>
#include <vector>

namespace routeweigh::streams {

struct HandoutFinding {
    enum class Verdict { none_named, not_understood, agrees, agrees_after_treatment, differs };
    Verdict verdict = Verdict::none_named;
    std::string said;
    std::vector<std::string> understood; ///< ids of containers, "air", "trap", "drain", "own_bottle"
    std::string words;                   ///< one line, composition first, reason last
};

HandoutFinding compare_with_handout(const RouteStream& stream, const Decision& decision,
                                    const LocalRules& local);

} // namespace routeweigh::streams
