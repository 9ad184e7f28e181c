// SPDX-License-Identifier: MIT
#include "app/laid_out.hpp"

#include "base/text.hpp"

#include <fmt/core.h>

namespace routeweigh {
namespace {

streams::LocalRules rules_of(const Catalogue& catalogue, const std::string& jurisdiction) {
    const std::vector<std::string> shipped{"US", "EU"};
    for (const std::string& name : shipped)
        if (fold(name) == fold(jurisdiction)) return streams::shipped_local_rules(catalogue, name);
    throw CallError(
        fmt::format("no rules are shipped for \"{}\"; there are: {}", jurisdiction, join(shipped, ", ")));
}

} // namespace

LaidOutRoute::LaidOutRoute(Route route, const AssessmentRules& rules, const Catalogue& catalogue,
                           const std::string& jurisdiction)
    : assessment_(std::move(route), rules), bench_rules_(catalogue, rules_of(catalogue, jurisdiction)),
      experiment_(assessment_, bench_rules_) {}

Route read_one_route(const std::vector<SourcePtr>& sources, const Catalogue& catalogue, Problems& problems) {
    std::vector<Route> routes = read_routes(sources, catalogue, problems);
    if (routes.size() != 1)
        throw CallError(fmt::format("this takes one route file, and there are {}", routes.size()));
    return std::move(routes.front());
}

} // namespace routeweigh
