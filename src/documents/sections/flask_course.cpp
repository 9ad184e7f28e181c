// SPDX-License-Identifier: MIT
#include "documents/sections/flask_course.hpp"

#include "assess/flask/course.hpp"
#include "base/index.hpp"
#include "documents/number.hpp"
#include "documents/words.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace routeweigh::documents {
namespace {

/// The courses of one route, with what its report needs beside them.
struct RouteCourses {
    const RouteView* route;
    std::vector<FlaskCourse> courses;
};

bool has_transients(const RouteView& route) {
    return std::any_of(route.graph.substances.begin(), route.graph.substances.end(),
                       [](const GraphSubstance& entry) { return entry.role == GraphRole::transient; });
}

std::string substance_of(const FlaskCourse& course) {
    return course.kinetics->of->name;
}

/// g per g of product, from mol in one pot of the step.
double per_gram(double moles, const FlaskCourse& course, const RouteView& route) {
    const Evaluation& evaluation = route.assessment->evaluation();
    return moles * course.kinetics->of->molar_mass * evaluation.steps[at(course.step)].scale /
           evaluation.product;
}

std::string time_text(double seconds) {
    return seconds < 120 ? digits(seconds, 2) + " s" : digits(seconds / 60, 2) + " min";
}

std::string half_life(const RateConstant& constant) {
    return time_text(std::log(2.0) / constant.per_second);
}

std::string addition_words(const Kinetics& kinetics) {
    const std::string over = time_text(kinetics.over.in(unit::s));
    return kinetics.portions > 0 ? fmt::format("{} portions over {}", kinetics.portions, over)
                                 : "drop by drop over " + over;
}

double milligrams(double moles, const FlaskCourse& course) {
    return 1000 * course.kinetics->of->molar_mass * moles;
}

/// "98.4 to 522", or one value.
std::string range_text(const std::vector<double>& values) {
    const auto [low, high] = std::minmax_element(values.begin(), values.end());
    return *low == *high ? digits(*low) : digits(*low) + " to " + digits(*high);
}

std::string half_lives(const FlaskCourse& course) {
    const auto [first, last] = std::minmax_element(
        course.kinetics->used.begin(), course.kinetics->used.end(),
        [](const RateConstant& a, const RateConstant& b) { return a.per_second < b.per_second; });
    return first->per_second == last->per_second ? half_life(*first)
                                                 : half_life(*last) + " to " + half_life(*first);
}

/// One row a route: the range over every half-life of use that its file gives.
writing::Table courses_table(const std::vector<RouteCourses>& all, const std::string& substance) {
    writing::Table table;
    table.caption = capitalised(substance) + " over time, estimated, in one pot";
    table.columns = {{.heading = "route"},
                     {.heading = "added"},
                     {.heading = "made, half-life"},
                     {.heading = "used, half-life at first"},
                     {.heading = "peak", .align = writing::Align::right, .unit = "mg"},
                     {.heading = "left for the quench", .align = decimal, .unit = "mg"},
                     {.heading = "ceiling", .align = decimal, .unit = "mg"}};
    for (const RouteCourses& one : all)
        for (const FlaskCourse& course : one.courses) {
            if (substance_of(course) != substance) continue;
            std::vector<double> peaks;
            for (const CourseCurve& curve : course.curves)
                peaks.push_back(milligrams(curve.peak.moles, course));
            table.rows.push_back(writing::Row(
                {one.route->head(), addition_words(*course.kinetics),
                 course.kinetics->made ? half_life(*course.kinetics->made) : std::string("at once"),
                 half_lives(course), range_text(peaks), digits_cell(milligrams(course.left(), course)),
                 digits_cell(milligrams(course.ceiling, course))},
                one.route->row_kind()));
        }
    table.remarks = {
        "Each portion follows the closed solution of two first-order reactions in a row, and portions add "
        "up. "
        "Use slows down as its partner runs out; what is fed beyond it stays for the quench. No curve goes "
        "above the ceiling, which rests on no rate. An estimate: stirring, heat, tribromide and vapour are "
        "left out. A range of half-lives is not known better: its peaks are a range too."};
    return table;
}

writing::Table every_peak(const std::vector<RouteCourses>& all) {
    writing::Table table;
    table.caption = "The peak under each half-life of use";
    table.columns = {{.heading = "route"},
                     {.heading = "of"},
                     {.heading = "used, half-life at first"},
                     {.heading = "peak", .align = decimal, .unit = "g/g"},
                     {.heading = "peak in one pot", .align = decimal, .unit = "mg"},
                     {.heading = "at", .align = decimal, .unit = "min"},
                     {.heading = "standing of the use"}};
    for (const RouteCourses& one : all)
        for (const FlaskCourse& course : one.courses)
            for (const CourseCurve& curve : course.curves)
                table.rows.push_back(writing::Row(
                    {one.route->head(), substance_of(course), half_life(*curve.used),
                     digits_cell(per_gram(curve.peak.moles, course, *one.route)),
                     digits_cell(milligrams(curve.peak.moles, course)), digits_cell(curve.peak.seconds / 60),
                     std::string(words_of(curve.used->from.standing))},
                    one.route->row_kind()));
    return table;
}

/// One line a route: the slowest use that its file gives, which leaves the most in the flask.
writing::Figure courses_chart(const std::vector<RouteCourses>& all, const std::string& substance) {
    writing::Curve chart;
    chart.x = {"time", "min"};
    chart.y = {fmt::format("{} in the flask", substance), "g/g"};
    for (const RouteCourses& one : all)
        for (const FlaskCourse& course : one.courses) {
            if (substance_of(course) != substance) continue;
            const auto slowest = std::min_element(course.curves.begin(), course.curves.end(),
                                                  [](const CourseCurve& a, const CourseCurve& b) {
                                                      return a.used->per_second < b.used->per_second;
                                                  });
            writing::Curve::Line line{one.route->id, {}, one.route->baseline};
            for (const CourseCurve::Point& point : slowest->points)
                line.points.push_back({point.seconds / 60, per_gram(point.moles, course, *one.route)});
            chart.lines.push_back(std::move(line));
        }
    return {
        fmt::format("{} over time, under the slowest use that each file gives", capitalised(substance)),
        fmt::format("Lines of {} in the flask against time: it rises while it is added or made, and falls "
                    "to what is fed beyond the need.",
                    substance),
        std::move(chart)};
}

writing::BulletList course_sources(const std::vector<RouteCourses>& all) {
    writing::BulletList list;
    const auto add = [&](const std::string& who, const char* what, const RateConstant& constant) {
        list.items.emplace_back(fmt::format("{}, {}, half-life {}: {}{}{}", who, what, half_life(constant),
                                            describe(constant.from), constant.note.empty() ? "" : "; ",
                                            constant.note));
    };
    for (const RouteCourses& one : all)
        for (const FlaskCourse& course : one.courses) {
            if (course.kinetics->made) add(one.route->id, "made", *course.kinetics->made);
            for (const RateConstant& used : course.kinetics->used)
                add(one.route->id, "used", used);
        }
    return list;
}

} // namespace

void add_flask_courses(const ReportView& view, Blocks& blocks) {
    std::vector<RouteCourses> all;
    std::vector<std::string> silent, substances;
    for (const RouteView& route : view.routes) {
        RouteCourses one{&route, flask_courses(route.assessment->flat(), route.assessment->evaluation())};
        if (!one.courses.empty())
            all.push_back(std::move(one));
        else if (has_transients(route))
            silent.push_back(route.id);
    }
    for (const RouteCourses& one : all)
        for (const FlaskCourse& course : one.courses)
            if (std::find(substances.begin(), substances.end(), substance_of(course)) == substances.end())
                substances.push_back(substance_of(course));
    if (!all.empty()) {
        for (const std::string& substance : substances) {
            blocks.push_back(courses_table(all, substance));
            blocks.push_back(courses_chart(all, substance));
        }
        blocks.push_back(writing::Folded{writing::Text("Every peak, and where the rates come from"),
                                         {every_peak(all), course_sources(all)}});
    }
    if (!silent.empty())
        blocks.push_back(writing::Paragraph{
            fmt::format("{}: the route {} no half-life of what is made and used up in the flask, so only the "
                        "most that "
                        "the charges allow is given here, and not how much of it is there at any time.",
                        listed(silent), silent.size() == 1 ? "file states" : "files state"),
            true});
}

} // namespace routeweigh::documents
