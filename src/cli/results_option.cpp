// SPDX-License-Identifier: MIT
#include "cli/results_option.hpp"

#include "app/session.hpp"
#include "base/list.hpp"
#include "cli/wrong_call.hpp"

#include <fmt/core.h>

namespace routeweigh::cli {

ResultsOption read_results_option(const std::string& words, const std::vector<std::string>& ids) {
    const std::size_t equals = words.find('=');
    if (equals == std::string::npos && ids.size() == 1 && !words.empty()) return {ids.front(), words};
    if (equals == std::string::npos || equals == 0 || equals + 1 == words.size())
        throw CallError(fmt::format("--results takes ID=FILE{}, not \"{}\"",
                                    ids.size() == 1 ? ", or a file" : ", for there are several routes",
                                    words));
    const std::string id = words.substr(0, equals);
    if (!contains(ids, id)) throw CallError("--results: " + no_such("route", id, ids));
    return {id, words.substr(equals + 1)};
}

} // namespace routeweigh::cli
