// SPDX-License-Identifier: MIT
#include "app/laid_out.hpp"

#include <fmt/core.h>

namespace routeweigh {

LaidOutRoute::LaidOutRoute(Route route, const AssessmentRules& rules, const Catalogue& catalogue,
                           streams::LocalRules local)
    : assessment_(std::move(route), rules), bench_rules_(catalogue, std::move(local)),
      experiment_(assessment_, bench_rules_) {}

Route read_one_route(const std::vector<SourcePtr>& sources, const Catalogue& catalogue, Problems& problems) {
    std::vector<Route> routes = read_routes(sources, catalogue, problems);
    if (routes.size() != 1)
        throw CallError(fmt::format("this takes one route file, and there are {}", routes.size()));
    return std::move(routes.front());
}

} // namespace routeweigh
