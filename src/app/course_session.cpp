// SPDX-License-Identifier: MIT
#include "app/course_session.hpp"

#include "app/waste.hpp"
#include "input/file_kind.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <set>
#include <utility>

namespace routeweigh {
namespace {

struct Replacement {
    int week = 0;
    std::string route;
};

std::optional<Replacement> read_replacement(const std::string& text) {
    if (text.empty()) return std::nullopt;
    const std::size_t sign = text.find('=');
    Replacement replacement;
    const std::string week = text.substr(0, sign);
    const bool digits = !week.empty() && week.size() < 4 &&
                        std::all_of(week.begin(), week.end(), [](char c) { return c >= '0' && c <= '9'; });
    if (sign == std::string::npos || !digits || sign + 1 == text.size())
        throw CallError(
            fmt::format("\"{}\" replaces nothing; write the week and the route file as 5=other.json", text));
    return Replacement{std::stoi(week), text.substr(sign + 1)};
}

/// The file that a field names; nullptr where it names none or it cannot be read, which is a problem of the
/// field.
SourcePtr opened(const Field& field, const LoadFile& load) {
    const std::string path = field.text();
    if (path.empty()) return nullptr;
    try {
        return load(path, NamedBy::file);
    } catch (const InputError& error) {
        field.problem(error.problems.front().message, error.problems.front().nearest);
    }
    return nullptr;
}

int count_at(const Field& field) {
    const std::int64_t count = field.integer();
    if (count < 1 || count > 100000) field.problem(fmt::format("{} is no count from 1 to 100000", count));
    return static_cast<int>(std::clamp<std::int64_t>(count, 1, 100000));
}

struct PlannedExperiment {
    int week = 0;
    SourcePtr route;
    SourcePtr replaced; ///< the route that stood there; nullptr where the file's own stands
    std::vector<std::string> techniques;
};

/// What a course file says, before any of its routes is read.
struct CoursePlan {
    stock::ClassPlan group;
    std::string jurisdiction = usual_local_rules;
    SourcePtr prices;
    std::vector<PlannedExperiment> experiments; ///< by week
};

PlannedExperiment read_experiment(const Field& item, const LoadFile& load,
                                  const std::optional<Replacement>& replacement) {
    PlannedExperiment experiment;
    experiment.week = count_at(item["week"]);
    experiment.route = opened(item["route"], load);
    if (item.maybe("techniques")) experiment.techniques = item["techniques"].texts();
    item.close();
    if (replacement && replacement->week == experiment.week) {
        experiment.replaced = experiment.route;
        experiment.route = load(replacement->route, NamedBy::call);
    }
    return experiment;
}

/// \param use  receives what the course is called
/// \throws InputError, CallError
CoursePlan read_plan(const SourcePtr& source, const LoadFile& load,
                     const std::optional<Replacement>& replacement, course::CourseUse& use) {
    const Document document = Document::parse(source);
    Problems found;
    const Field root = document.root(found);
    expect_kind(root, FileKind::course);
    root.maybe("$schema");
    use.id = root["id"].text();
    use.title = root["title"].text();
    use.college = root["college"].text();
    use.term = root["term"].text();
    CoursePlan plan;
    plan.group.sections = count_at(root["sections"]);
    plan.group.students = count_at(root["students"]);
    plan.group.extra = root.maybe("extra") ? root["extra"].fraction() : 0.0;
    if (root.maybe("session")) plan.group.session = root["session"].duration().in(unit::min);
    if (const auto field = root.maybe("jurisdiction"))
        if (const std::string name = field->one_of({"EU", "US"}); !name.empty()) plan.jurisdiction = name;
    if (const auto name = root.maybe("prices")) plan.prices = opened(*name, load);

    std::set<int> weeks;
    for (const Field& item : root["experiments"].items()) {
        plan.experiments.push_back(read_experiment(item, load, replacement));
        const int week = plan.experiments.back().week;
        if (!weeks.insert(week).second)
            item["week"].problem(fmt::format("week {} has an experiment already", week));
    }
    root.close();
    found.throw_if_error();
    if (plan.experiments.empty())
        throw CallError(fmt::format("{}: the course has no experiments", source->name));
    if (replacement && !weeks.contains(replacement->week))
        throw CallError(fmt::format("week {} has no experiment that could be replaced", replacement->week));
    std::stable_sort(plan.experiments.begin(), plan.experiments.end(),
                     [](const auto& a, const auto& b) { return a.week < b.week; });
    return plan;
}

} // namespace

Course::Course(const SourcePtr& source, const LoadFile& load, const Catalogue& catalogue,
               const AssessmentRules& rules, const std::string& replace, Problems& problems) {
    const std::optional<Replacement> replacement = read_replacement(replace);
    if (replacement) replaced_week_ = replacement->week;
    CoursePlan plan = read_plan(source, load, replacement, use_);
    records_ = std::make_unique<HouseRecords>(
        catalogue, streams::shipped_local_rules(catalogue, plan.jurisdiction), plan.prices);

    std::vector<SourcePtr> sources;
    for (const PlannedExperiment& experiment : plan.experiments)
        sources.push_back(experiment.route);
    std::vector<Route> routes = read_routes(sources, catalogue, problems);
    for (std::size_t i = 0; i < routes.size(); ++i) {
        PlannedExperiment& experiment = plan.experiments[i];
        // What the file names of a week, such as a melting range, is done with the product: it stays with it.
        Problems ignored;
        if (experiment.replaced &&
            read_routes({experiment.replaced}, catalogue, ignored).front().product != routes[i].product)
            experiment.techniques.clear();
        add_experiment(experiment.week, std::move(routes[i]), experiment.techniques, plan.group, rules);
    }
}

Course::Course(Route route, const CostsRequest& request, const Catalogue& catalogue,
               const AssessmentRules& rules)
    : records_(std::make_unique<HouseRecords>(catalogue, request.local, request.prices)) {
    use_.id = route.id;
    use_.title = route.title;
    add_experiment(0, std::move(route), {}, class_plan(request), rules);
}

void Course::add_experiment(int week, Route route, const std::vector<std::string>& techniques,
                            const stock::ClassPlan& plan, const AssessmentRules& rules) {
    std::string source = route.source->name;
    routes_.push_back(std::make_unique<Assessment>(std::move(route), rules));
    course::Experiment experiment{
        week, std::move(source), {}, course::use_of_class(*routes_.back(), plan, house())};
    experiment.techniques = course::techniques_of(*routes_.back(), experiment.use.one);
    for (const std::string& technique : techniques)
        if (std::find(experiment.techniques.begin(), experiment.techniques.end(), technique) ==
            experiment.techniques.end())
            experiment.techniques.push_back(technique);
    use_.experiments.push_back(std::move(experiment));
}

Proposal proposal_of(const Course& before, const Course& after) {
    return make_proposal(before.use(), after.use(), after.replaced_week().value(), after.house());
}

} // namespace routeweigh
