// SPDX-License-Identifier: MIT
#include "documents/destination.hpp"

#include "base/text.hpp"

#include <fmt/format.h>

#include <vector>

namespace routeweigh::documents {

std::string destination(const streams::Decision& decision) {
    return decision.outcome == streams::Decision::Outcome::own_bottle
               ? fmt::format("STOP: {}; ask {}", decision.goes_to, decision.ask)
               : decision.goes_to;
}

std::string first_words(const streams::Decision& decision, bool with_amounts) {
    std::vector<std::string> list;
    for (const streams::Treatment& treatment : decision.first)
        list.push_back(with_amounts ? treatment.words : treatment.without_amounts);
    return join(list, "; ");
}

} // namespace routeweigh::documents
