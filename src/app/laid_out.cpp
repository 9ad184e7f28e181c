// SPDX-License-Identifier: MIT
#include "app/laid_out.hpp"

#include "app/waste.hpp"
#include "base/text.hpp"

#include <fmt/core.h>

namespace routeweigh {

LaidOutRoute::LaidOutRoute(Route route, const AssessmentRules& rules, const Catalogue& catalogue,
                           streams::LocalRules local)
    : assessment_(std::move(route), rules), bench_rules_(catalogue, std::move(local)),
      experiment_(assessment_, bench_rules_) {}

std::optional<streams::LocalRules> local_rules(const Catalogue& catalogue, const std::string& jurisdiction) {
    for (const std::string& name : shipped_jurisdictions())
        if (fold(name) == fold(jurisdiction)) return streams::shipped_local_rules(catalogue, name);
    return {};
}

streams::LocalRules local_rules(const Catalogue& catalogue, const Source& house) {
    return streams::read_local_rules(house, catalogue);
}

Route read_one_route(const std::vector<SourcePtr>& sources, const Catalogue& catalogue, Problems& problems) {
    std::vector<Route> routes = read_routes(sources, catalogue, problems);
    if (routes.size() != 1)
        throw CallError(fmt::format("this takes one route file, and there are {}", routes.size()));
    return std::move(routes.front());
}

} // namespace routeweigh
