// SPDX-License-Identifier: MIT
#include "app/course_session.hpp"

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
        return load(path);
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

} // namespace

Course::Course(const SourcePtr& source, const LoadFile& load, const Catalogue& catalogue,
               const AssessmentRules& rules, const std::string& replace, Problems& problems) {
    std::optional<Replacement> replacement = read_replacement(replace);
    if (replacement) replaced_week_ = replacement->week;
    const Document document = Document::parse(source);
    Problems found;
    const Field root = document.root(found);
    expect_kind(root, FileKind::course);
    root.maybe("$schema");
    use_.id = root["id"].text();
    use_.title = root["title"].text();
    use_.college = root["college"].text();
    use_.term = root["term"].text();
    stock::ClassPlan plan;
    plan.sections = count_at(root["sections"]);
    plan.students = count_at(root["students"]);
    plan.extra = root.maybe("extra") ? root["extra"].fraction() : 0.0;
    if (root.maybe("session")) plan.session = root["session"].duration().in(unit::min);
    std::string jurisdiction = "EU";
    if (const auto field = root.maybe("jurisdiction"))
        if (const std::string name = field->one_of({"EU", "US"}); !name.empty()) jurisdiction = name;
    SourcePtr prices;
    if (const auto name = root.maybe("prices")) prices = opened(*name, load);
    records_ = std::make_unique<HouseRecords>(catalogue,
                                              streams::shipped_local_rules(catalogue, jurisdiction), prices);

    struct Planned {
        int week;
        SourcePtr route;
        std::vector<std::string> techniques;
        SourcePtr replaced; ///< the route that stood there
    };
    std::vector<Planned> planned;
    std::set<int> weeks;
    for (const Field& item : root["experiments"].items()) {
        Planned experiment{count_at(item["week"]), nullptr, {}, nullptr};
        if (!weeks.insert(experiment.week).second)
            item["week"].problem(fmt::format("week {} has an experiment already", experiment.week));
        const SourcePtr written = opened(item["route"], load);
        if (item.maybe("techniques")) experiment.techniques = item["techniques"].texts();
        item.close();
        if (replacement && replacement->week == experiment.week) {
            experiment.route = load(replacement->route);
            experiment.replaced = written;
        } else {
            experiment.route = written;
        }
        planned.push_back(std::move(experiment));
    }
    root.close();
    found.throw_if_error();
    if (planned.empty()) throw CallError(fmt::format("{}: the course has no experiments", source->name));
    if (replacement && !weeks.contains(replacement->week))
        throw CallError(fmt::format("week {} has no experiment that could be replaced", replacement->week));
    std::stable_sort(planned.begin(), planned.end(),
                     [](const auto& a, const auto& b) { return a.week < b.week; });

    std::vector<SourcePtr> sources;
    for (const Planned& experiment : planned)
        sources.push_back(experiment.route);
    std::vector<Route> routes = read_routes(sources, catalogue, problems);
    for (std::size_t i = 0; i < planned.size(); ++i) {
        // What the file names of a week, such as a melting range, is done with the product: it stays with it.
        Problems ignored;
        if (planned[i].replaced &&
            read_routes({planned[i].replaced}, catalogue, ignored).front().product != routes[i].product)
            planned[i].techniques.clear();
        add_experiment(planned[i].week, std::move(routes[i]), planned[i].techniques, plan, rules);
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
