// SPDX-License-Identifier: MIT
#include "assess/streams/provenance.hpp"

#include <fmt/core.h>

namespace routeweigh::streams {

std::string_view words_of(Standing standing) {
    switch (standing) {
    case Standing::read:
        return "read";
    case Standing::remembered:
        return "remembered";
    case Standing::derived:
        return "derived";
    case Standing::judgement:
        return "judgement";
    case Standing::common_practice:
        return "common practice, no source";
    }
    return "";
}

std::string describe(const Provenance& provenance) {
    const std::string words{words_of(provenance.standing)};
    if (provenance.source.empty() || provenance.source == words) return words;
    return fmt::format("{} ({})", provenance.source, words);
}

} // namespace routeweigh::streams
