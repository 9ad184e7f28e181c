// SPDX-License-Identifier: MIT
#include "app/what_if.hpp"

#include "app/session.hpp"
#include "app/stale_statements.hpp"
#include "base/text.hpp"
#include "route/route_reader.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>
#include <memory>
#include <utility>

namespace routeweigh {
namespace {

[[noreturn]] void refuse(const PointerError& error) {
    throw CallError(error.nearest.empty() ? std::string(error.what())
                                          : fmt::format("{}; nearest: \"{}\"", error.what(), error.nearest));
}

/// The same texts and problems, worded for a file that only exists in memory.
std::string changed_name(const Source& source) {
    return source.name + ", changed";
}

bool touches(const std::vector<Difference>& differences, const std::string& place) {
    return std::any_of(differences.begin(), differences.end(), [&](const Difference& difference) {
        const std::string& at = difference.pointer;
        return place == at || place.starts_with(at + '/') || at.starts_with(place + '/');
    });
}

/// A step was added, taken out, or put in place of another.
bool steps_differ(const std::vector<Difference>& differences) {
    return std::any_of(differences.begin(), differences.end(), [](const Difference& difference) {
        const std::string& at = difference.pointer;
        return at.starts_with("/steps") && std::count(at.begin(), at.end(), '/') < 3;
    });
}

std::string record(const Route& parent, const std::vector<Difference>& differences) {
    std::string changes;
    for (const Difference& difference : differences) {
        if (!changes.empty()) changes += ", ";
        changes += fmt::format(R"({{"at": {})", json_text(difference.pointer));
        if (!difference.before.empty()) changes += ", \"before\": " + difference.before;
        if (!difference.after.empty()) changes += ", \"after\": " + difference.after;
        changes += '}';
    }
    return fmt::format(R"({{"id": {}, "changes": [{}]}})", json_text(parent.id), changes);
}

/// What holds of the parent and no longer of the changed route.
std::vector<Assignment> consequences(const Route& parent, const std::vector<Difference>& differences,
                                     const RouteChange& change) {
    std::vector<Assignment> result{{"/parent", record(parent, differences)}};
    if (!change.schema.empty() && !touches(differences, "/$schema"))
        result.push_back({"/$schema", json_text(change.schema)});
    if (!change.id.empty())
        result.push_back({"/id", json_text(change.id)});
    else if (!touches(differences, "/id"))
        result.push_back({"/id", json_text(parent.id + "-changed")});
    if (differences.empty()) return result;
    if (!touches(differences, "/title") && !parent.title.ends_with(", changed"))
        result.push_back({"/title", json_text(parent.title + ", changed")});
    if (!touches(differences, "/status") && parent.was_run())
        result.push_back({"/status", json_text(status::never_run)});
    return result;
}

} // namespace

NumericInput input_named(const Route& route, const std::string& words, Problems& problems) {
    try {
        NumericInput input = find_input(route, words);
        if (!input.is_named(words)) {
            Problem taken;
            taken.severity = Severity::warning;
            taken.message =
                fmt::format("\"{}\" is taken as \"{}\", the only input with these letters in its name", words,
                            input.name());
            taken.place.source = route.source->name;
            taken.place.pointer = input.pointer;
            problems.add(std::move(taken));
        }
        return input;
    } catch (const NoSuchInput& error) {
        throw CallError(error.what());
    }
}

FigurePick figure_named(const std::string& id, const AssessmentRules& rules) {
    if (auto figure = FigurePick::find(id, rules.hazard.score)) return *std::move(figure);
    throw CallError(no_such("figure", id, figure_ids(rules.hazard.score)));
}

Assignment read_assignment(const std::string& words, const Route& parent, Problems& problems) {
    const std::size_t sign = words.find('=');
    if (sign == std::string::npos || sign == 0)
        throw CallError(fmt::format("--set takes PLACE=VALUE, unlike \"{}\"", words));
    const std::string place = words.substr(0, sign), value = words.substr(sign + 1);
    for (const std::string& part : {place, value}) // neither too deep nor anything but UTF-8
        check_source({"--set", part});
    return {place.front() == '/' ? place : input_named(parent, place, problems).pointer, json_value(value)};
}

SourcePtr changed_source(const Route& parent, const RouteChange& change) {
    try {
        const auto sets = [&](const std::string& place) {
            return std::any_of(change.places.begin(), change.places.end(), [&](const Assignment& assignment) {
                return assignment.pointer == place || assignment.pointer.starts_with(place + '/');
            });
        };
        if (sets("/parent")) throw CallError("--set /parent: what a route comes from is recorded, not set");
        if (sets("/id") && !change.id.empty()) throw CallError("the id is given twice: by --set and by --id");
        const std::string& before = parent.source->text;
        std::string text = assign(before, stale_spreads(parent, change.places));
        text = assign(assign(text, stale_words(parent, change.places)), change.places);
        if (change.patch != nullptr) {
            if (Problems problems; !Document::parse(change.patch).root(problems).is_object())
                throw CallError(fmt::format("{}: a merge patch is an object of the places to change, such as "
                                            "{{\"steps\": ...}}",
                                            change.patch->name));
            text = merge_patch(text, change.patch->text);
        }
        const std::vector<Difference> found = differences(before, text, {"parent"});
        text = assign(text, consequences(parent, found, change));
        // A yield that was measured on other amounts is assumed from now on. A step that is no longer there,
        // or no longer a step, is the reader's to judge.
        for (const Step& step : parent.steps) {
            const std::string isolated = step.isolated.pointer;
            if (!step.isolated.assumed && !found.empty() && !touches(found, isolated) && !steps_differ(found))
                text = assign(text, {{isolated + "/assumed", "true"}});
        }
        return make_source(changed_name(*parent.source), std::move(text));
    } catch (const PointerError& error) {
        refuse(error);
    }
}

Route read_changed(const SourcePtr& changed, const Catalogue& catalogue, Problems& problems) {
    const auto without_lines = [](std::vector<Problem>& all) {
        for (Problem& problem : all) {
            problem.place.line = 0;
            if (problem.second) problem.second->line = 0;
        }
    };
    Problems found;
    try {
        Route route = read_route(changed, catalogue, found);
        without_lines(found.all);
        for (Problem& problem : found.all)
            problems.add(std::move(problem));
        return route;
    } catch (InputError& error) {
        without_lines(error.problems);
        throw InputError(std::move(error.problems));
    }
}

Apply apply_to(const Route& parent, const Catalogue& catalogue, const AssessmentRules& rules) {
    return [&](const std::vector<Assignment>& changes) -> Outcome {
        try {
            Problems warnings;
            std::vector<Assignment> all = stale_spreads(parent, changes);
            all.insert(all.end(), changes.begin(), changes.end());
            return {std::make_unique<Trial>(read_route(make_source(changed_name(*parent.source),
                                                                   assign(parent.source->text, all)),
                                                       catalogue, warnings),
                                            rules),
                    {}};
        } catch (const InputError& error) {
            const auto first = std::find_if(error.problems.begin(), error.problems.end(),
                                            [](const Problem& p) { return p.severity == Severity::error; });
            return {nullptr, first->message};
        } catch (const PointerError& error) {
            return {nullptr, error.what()};
        }
    };
}

std::vector<Improvements> improvements_of(const Comparison& comparison, const Catalogue& catalogue,
                                          const AssessmentRules& rules) {
    const FigurePick mass = figure_named("process_mass_intensity", rules);
    const SolventRules solvents = read_solvent_rules(catalogue);
    const ImprovementLimits limits;
    std::vector<Improvements> result;
    for (const auto& route : comparison.routes())
        result.push_back(find_improvements(
            {*route, solvents, limits, apply_to(route->route(), catalogue, rules)}, mass, 0));
    return result;
}

std::optional<Improvements> waste_improvements_of(const Assessment& route) {
    const FigurePick waste = figure_named("complete_e_factor", route.rules());
    if (!std::isfinite(waste.value(route.values()))) return std::nullopt;
    const Catalogue& catalogue = *route.rules().catalogue;
    const SolventRules solvents = read_solvent_rules(catalogue);
    const ImprovementLimits limits;
    return find_improvements({route, solvents, limits, apply_to(route.route(), catalogue, route.rules())},
                             waste, 0);
}

} // namespace routeweigh
