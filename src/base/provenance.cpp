// SPDX-License-Identifier: MIT
#include "base/provenance.hpp"

#include <fmt/core.h>

#include <array>

namespace routeweigh {
namespace {

constexpr std::array all_standings{Standing::read, Standing::remembered, Standing::derived,
                                   Standing::judgement, Standing::common_practice};

} // namespace

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

const std::vector<std::string>& standing_words() {
    static const std::vector<std::string> words = [] {
        std::vector<std::string> list;
        for (const Standing standing : all_standings)
            list.emplace_back(words_of(standing));
        return list;
    }();
    return words;
}

Standing standing_of(std::string_view words) {
    for (const Standing standing : all_standings)
        if (words_of(standing) == words) return standing;
    return Standing::judgement;
}

std::string describe(const Provenance& provenance) {
    std::string words{words_of(provenance.standing)};
    if (provenance.source.empty() || provenance.source == words) return words;
    return fmt::format("{} ({})", provenance.source, words);
}

} // namespace routeweigh
