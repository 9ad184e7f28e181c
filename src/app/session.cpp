// SPDX-License-Identifier: MIT
#include "app/session.hpp"

#include "base/text.hpp"
#include "route/instrument.hpp"
#include "route/route_checks.hpp"
#include "route/route_reader.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <map>
#include <utility>

namespace routeweigh {

std::vector<Route> read_routes(const std::vector<SourcePtr>& sources, const Catalogue& catalogue,
                               Problems& problems) {
    std::vector<Route> routes;
    Problems errors;
    InstrumentFinder instruments(catalogue);
    for (const SourcePtr& source : sources) {
        try {
            routes.push_back(read_route(source, catalogue, problems));
            instruments.find(routes.back(), errors);
        } catch (const InputError& error) {
            for (const Problem& problem : error.problems)
                errors.add(problem);
        }
    }
    errors.throw_if_error();
    return routes;
}

Comparison compare_routes(std::vector<Route> routes, const std::string& baseline_id,
                          const AssessmentRules& rules) {
    Problems problems;
    std::map<std::string, const Route*> ids;
    for (const Route& route : routes) {
        if (const auto [other, fresh] = ids.try_emplace(route.id, &route); !fresh)
            problems.add({Severity::error,
                          fmt::format("two routes are called \"{}\"", route.id),
                          place_of(route, "/id"),
                          place_of(*other->second, "/id"),
                          {}});
        if (route.product != routes.front().product)
            problems.add(
                {Severity::error,
                 fmt::format(
                     "this route makes {}, the first one {}: only routes to one product can be compared",
                     route.product->name, routes.front().product->name),
                 place_of(route, "/product"),
                 place_of(routes.front(), "/product"),
                 {}});
    }
    problems.throw_if_error();

    std::size_t baseline = 0;
    if (!baseline_id.empty()) {
        const auto found = std::find_if(routes.begin(), routes.end(),
                                        [&](const Route& route) { return route.id == baseline_id; });
        if (found == routes.end()) {
            std::vector<std::string> names;
            names.reserve(routes.size());
            for (const Route& route : routes)
                names.push_back(route.id);
            throw CallError(no_such("route for a baseline", baseline_id, names));
        }
        baseline = static_cast<std::size_t>(found - routes.begin());
    }
    std::vector<std::unique_ptr<Assessment>> assessed;
    assessed.reserve(routes.size());
    for (Route& route : routes)
        assessed.push_back(std::make_unique<Assessment>(std::move(route), rules));
    return {std::move(assessed), baseline};
}

} // namespace routeweigh
