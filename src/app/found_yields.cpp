// SPDX-License-Identifier: MIT
#include "app/found_yields.hpp"

#include "app/results_session.hpp"
#include "app/session.hpp"
#include "app/stale_statements.hpp"
#include "assess/results/yield_tally.hpp"
#include "base/index.hpp"
#include "base/text.hpp"
#include "input/patch.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <numeric>

namespace routeweigh {
namespace {

const Assessment& route_called(const std::string& id, const Comparison& comparison) {
    std::vector<std::string> ids;
    for (const auto& route : comparison.routes()) {
        if (route->route().id == id) return *route;
        ids.push_back(route->route().id);
    }
    throw CallError("results are given, and " + no_such("route", id, ids));
}

/// The headings of a class table are words between separators; a list begins with a number.
bool is_class_table(std::string_view text) {
    if (text.starts_with("\xEF\xBB\xBF")) text.remove_prefix(3);
    while (!text.empty()) {
        const std::size_t end = std::min(text.find_first_of("\r\n"), text.size());
        const std::string_view line = trim(text.substr(0, end));
        text.remove_prefix(std::min(end + 1, text.size()));
        if (line.empty() || line.front() == '#') continue;
        return line.find_first_of(",;\t") != std::string_view::npos &&
               std::string_view("0123456789+-.").find(line.front()) == std::string_view::npos;
    }
    return false;
}

/// Shares of 1 of the rows that are possible.
std::vector<double> yields_of_class(const Assessment& route, const SourcePtr& source, Problems& problems) {
    Problems found;
    const results::ClassResults results =
        read_results(route, "", source->name, bytes_of(source->text), found);
    found.throw_if_error(); // a row less would change what is drawn, and nobody would see it
    for (Problem& problem : found.all)
        problems.add(std::move(problem));
    std::vector<double> yields = results.yields();
    const Place place{.source = source->name, .pointer = {}, .excerpt = {}};
    if (yields.empty())
        throw InputError(
            Problem{Severity::error, "no row of this class has a yield that is possible", place, {}, {}});
    if (results.all.count < results.rows)
        problems.add({Severity::warning,
                      fmt::format("{} of {} rows give a yield to draw from; \"routeweigh results\" says what "
                                  "is wrong with the others",
                                  results.all.count, results.rows),
                      place,
                      {},
                      {}});
    for (double& yield : yields) // above by no more than the balance reads: the rest was refused
        yield = std::min(yield, 1.0);
    return yields;
}

/// Shares of 1, of a yield or a mass a line. \param theory  g
std::vector<double> yields_of_list(const SourcePtr& source, double theory) {
    check_source(*source);
    std::vector<double> yields;
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
            if (written.unit.empty()) {
                fault(fmt::format("\"{}\" has no unit: write \"71 %\" for a yield, \"1.52 g\" for a mass",
                                  line));
                continue;
            }
            const double yield =
                written.unit == "%" ? written.value / 100.0 : as_mass(written).in(unit::g) / theory;
            if (!(yield > 0.0))
                fault(fmt::format("\"{}\" is no yield: it must lie above 0", line));
            else if (yield > 1.0)
                fault(fmt::format("\"{}\" is a yield of {:.1f} %: look for a wet or impure product, a wrong "
                                  "limiting reagent, or a wrong mass",
                                  line, 100.0 * yield));
            else
                yields.push_back(yield);
        } catch (const QuantityError& error) {
            fault(error.what(), error.nearest);
        }
    }
    if (yields.empty() && problems.all.empty())
        problems.add({Severity::error, "there are no results in this file", place_at(*source, 0), {}, {}});
    problems.throw_if_error();
    return yields;
}

} // namespace

FoundYields read_found_yields(const std::string& route_id, const SourcePtr& source,
                              const Comparison& comparison, Problems& problems) {
    const Assessment& route = route_called(route_id, comparison);
    const int step = route.flat().final_step();
    const FlatStep& flat = route.flat().steps()[at(step)];
    const double theory = route.evaluation().steps[at(step)].theory * flat.molar_mass[at(flat.product)]; // g
    FoundYields result{route_id, step,
                       is_class_table(source->text) ? yields_of_class(route, source, problems)
                                                    : yields_of_list(source, theory)};
    if (result.yields.size() == 1)
        throw InputError(
            Problem{Severity::error,
                    "one result says nothing of how results scatter: give those of two benches or more, "
                    "or write the yield into the route file",
                    place_at(*source, 0),
                    {},
                    {}});
    return result;
}

double upper_quartile(const FoundYields& found) {
    results::YieldTally tally;
    tally.add_section();
    for (const double yield : found.yields)
        tally.add(100.0 * yield, 0);
    return tally.spread(tally.levels()).quartile3 / 100.0;
}

std::vector<SourcePtr> with_found_yields(const Comparison& comparison,
                                         const std::vector<FoundYields>& found) {
    std::vector<SourcePtr> sources;
    for (const auto& route : comparison.routes()) {
        SourcePtr source = route->route().source;
        for (const FoundYields& entry : found) {
            if (entry.route != route->route().id) continue;
            const Isolated& isolated = route->route().steps[at(entry.step)].isolated;
            const double mean = std::accumulate(entry.yields.begin(), entry.yields.end(), 0.0) /
                                static_cast<double>(entry.yields.size());
            const std::string note =
                fmt::format("mean of {} results; the file says {}", entry.yields.size(),
                            isolated.mass ? fmt::format("{:g} g", isolated.mass->in(unit::g))
                                          : fmt::format("{:g} %", 100.0 * *isolated.yield));
            std::vector<Assignment> changes{
                {isolated.pointer,
                 fmt::format(R"({{"yield": {}, "note": {}}})", json_text(fmt::format("{} %", 100.0 * mean)),
                             json_text(note))}};
            if (route->route().status == status::never_run)
                changes.push_back({"/status", json_text(status::run_since)});
            const std::string exact = assign(source->text, stale_spreads(route->route(), changes));
            source = make_source(source->name, assign(exact, changes));
        }
        sources.push_back(source);
    }
    return sources;
}

} // namespace routeweigh
