// SPDX-License-Identifier: MIT
#include "app/waste.hpp"

#include "input/field.hpp"

#include <fmt/core.h>

#include <algorithm>

namespace routeweigh {

const std::vector<std::string>& shipped_jurisdictions() {
    static const std::vector<std::string> names{"US", "EU"};
    return names;
}

std::vector<streams::ContainerLog> read_container_logs(const std::vector<SourcePtr>& sources,
                                                       const streams::StreamRules& rules,
                                                       Problems& problems) {
    std::vector<streams::ContainerLog> logs;
    for (const SourcePtr& source : sources) {
        try {
            streams::ContainerLog log = streams::read_container_log(*source, rules.catalogue,
                                                                    rules.compatibility.groups, rules.local);
            const auto other =
                std::find_if(logs.begin(), logs.end(), [&](const streams::ContainerLog& known) {
                    return known.container == log.container;
                });
            if (other != logs.end()) {
                Problem problem;
                problem.message = fmt::format("{} is the log of \"{}\" too; give one log a container",
                                              other->file, log.name);
                problem.place.source = source->name;
                problem.place.pointer = "/container";
                problems.add(std::move(problem));
            }
            for (const Problem& warning : log.warnings)
                problems.add(warning);
            logs.push_back(std::move(log));
        } catch (const InputError& error) {
            for (const Problem& problem : error.problems)
                problems.add(problem);
        }
    }
    problems.throw_if_error();
    return logs;
}

} // namespace routeweigh
