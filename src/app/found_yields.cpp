// SPDX-License-Identifier: MIT
#include "app/found_yields.hpp"

#include "app/session.hpp"
#include "base/index.hpp"
#include "base/text.hpp"

#include <fmt/core.h>

#include <algorithm>

namespace routeweigh {
namespace {

const Assessment& route_called(const std::string& id, const Comparison& comparison) {
    std::vector<std::string> ids;
    for (const auto& route : comparison.routes()) {
        if (route->route().id == id) return *route;
        ids.push_back(route->route().id);
    }
    const std::string near = nearest(id, ids);
    throw CallError(fmt::format("results are given for \"{}\", and no route is called so; there are: {}{}",
                                id, join(ids, ", "),
                                near.empty() ? "" : fmt::format("; nearest: \"{}\"", near)));
}

} // namespace

FoundYields read_found_yields(const std::string& route_id, const SourcePtr& source,
                              const Comparison& comparison) {
    const Assessment& route = route_called(route_id, comparison);
    const int step = route.flat().final_step();
    const FlatStep& flat = route.flat().steps()[at(step)];
    const double theory = route.evaluation().steps[at(step)].theory * flat.molar_mass[at(flat.product)]; // g
    check_source(*source);
    FoundYields result{route_id, step, {}};
    Problems problems;
    const std::string& text = source->text;
    for (std::size_t begin = 0; begin < text.size();) {
        const std::size_t end = std::min(text.find('\n', begin), text.size());
        std::string_view line(text.data() + begin, end - begin);
        line = trim(line.substr(0, line.find('#')));
        const std::size_t place = begin;
        begin = end + 1;
        if (line.empty()) continue;
        const auto fault = [&](std::string message, std::string near = {}) {
            if (problems.all.size() < 20)
                problems.add(
                    {Severity::error, std::move(message), place_at(*source, place), {}, std::move(near)});
        };
        try {
            const WrittenQuantity written = parse_written(line);
            const double yield =
                written.unit == "%" ? written.value / 100.0 : as_mass(written).in(unit::g) / theory;
            if (!(yield > 0.0))
                fault(fmt::format("\"{}\" is no yield: it must lie above 0", line));
            else if (yield > 1.0)
                fault(fmt::format("\"{}\" is a yield of {:.1f} %: look for a wet or impure product, a wrong "
                                  "limiting reagent, or a wrong mass",
                                  line, 100.0 * yield));
            else
                result.yields.push_back(flat.isolated_is_mass ? yield * theory : yield);
        } catch (const QuantityError& error) {
            fault(error.what(), error.nearest);
        }
    }
    if (result.yields.empty() && problems.all.empty())
        problems.add({Severity::error, "there are no results in this file", place_at(*source, 0), {}, {}});
    problems.throw_if_error();
    return result;
}

} // namespace routeweigh
