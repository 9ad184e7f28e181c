// SPDX-License-Identifier: MIT
#include "cli/results_option.hpp"

#include "app/session.hpp"
#include "base/list.hpp"
#include "base/text.hpp"
#include "cli/files.hpp"

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

std::vector<FoundYields> read_all_found(const std::vector<std::string>& options, const Comparison& as_written,
                                        Problems& problems) {
    std::vector<std::string> ids;
    for (const auto& route : as_written.routes())
        ids.push_back(route->route().id);
    std::vector<FoundYields> found;
    for (const std::string& words : options) {
        const ResultsOption of = read_results_option(words, ids);
        for (const FoundYields& before : found)
            if (before.route == of.route)
                throw CallError(fmt::format(
                    "--results is given twice for {}: put all its results into one file", of.route));
        const std::vector<SourcePtr> results = read_sources({of.file});
        if (results.size() != 1) throw CallError("--results takes a file, not a folder");
        found.push_back(read_found_yields(of.route, results.front(), as_written, problems));
    }
    return found;
}

} // namespace routeweigh::cli
