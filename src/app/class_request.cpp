// SPDX-License-Identifier: MIT
#include "app/class_request.hpp"

#include "app/session.hpp"
#include "base/quantity_text.hpp"
#include "documents/words.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace routeweigh {

stock::ClassPlan class_plan(const ClassRequest& request) {
    constexpr int most = 100000;
    stock::ClassPlan plan;
    if (request.students < 1 || request.students > most)
        throw CallError(
            fmt::format("--students {}: a section has from 1 to {} students", request.students, most));
    if (request.sections < 1 || request.sections > most)
        throw CallError(
            fmt::format("--sections {}: a class has from 1 to {} sections", request.sections, most));
    plan.students = request.students;
    plan.sections = request.sections;
    try {
        plan.extra = as_fraction(parse_written(request.extra));
    } catch (const QuantityError&) {
        throw CallError(fmt::format("--extra \"{}\" is no percentage from 0 % to 100 %, such as \"10 %\"",
                                    request.extra));
    }
    for (const std::string& text : request.days) {
        const auto day = read_day(text);
        if (!day) throw CallError(fmt::format("--day \"{}\" is no day; write it as 2026-09-14", text));
        plan.days.push_back(*day);
    }
    if (!plan.days.empty() && plan.days.size() != static_cast<std::size_t>(plan.sections))
        throw CallError(
            fmt::format("{} given for {}; give one for each section, or none",
                        documents::counted(plan.days.size(), "day is", "days are"),
                        documents::counted(static_cast<std::size_t>(plan.sections), "section", "sections")));
    if (!std::is_sorted(plan.days.begin(), plan.days.end()))
        throw CallError("the days are not in order; the first section is the one that meets first");
    return plan;
}

} // namespace routeweigh
