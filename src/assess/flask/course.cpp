// SPDX-License-Identifier: MIT
#include "assess/flask/course.hpp"

#include "assess/flask/pulse_course.hpp"
#include "base/index.hpp"

#include <algorithm>
#include <cmath>

namespace routeweigh {
namespace {

constexpr int slices = 240; // of an addition drop by drop
constexpr int points = 240; // of a curve

/// mol charged into a stage, for one run of the step.
double charged(const Substance* substance, const FlaskCourse& course, const FlatRoute& flat,
               const Evaluation& evaluation) {
    double grams = 0;
    for (std::size_t i = 0; i < flat.inflows().size(); ++i) {
        const Inflow& inflow = flat.inflows()[i];
        if (inflow.step == course.step && inflow.stage == course.stage && inflow.substance == substance)
            grams += evaluation.in[i];
    }
    return grams / evaluation.steps[at(course.step)].scale / substance->molar_mass;
}

/// mol that the reactions of the stage make.
double made(const Substance* substance, const FlaskCourse& course, const FlatRoute& flat) {
    const Stage& stage = flat.route().steps[at(course.step)].stages[at(course.stage)];
    const std::vector<double> extents = flat.extents(course.step, flat.nominal())[at(course.stage)];
    double moles = 0;
    for (std::size_t r = 0; r < stage.reactions.size(); ++r)
        moles += extents[r] * std::max(0.0, stage.reactions[r].equation.coefficient_of(substance));
    return moles;
}

double ceiling(const FlaskCourse& course, const FlatRoute& flat, const Evaluation& evaluation) {
    const FlatStep& step = flat.steps()[at(course.step)];
    const auto found = std::find(step.substances.begin(), step.substances.end(), course.kinetics->of);
    const auto local = static_cast<std::size_t>(found - step.substances.begin());
    return evaluation.flask[at(step.first_flask) + local] / evaluation.steps[at(course.step)].scale /
           course.kinetics->of->molar_mass;
}

std::vector<FedPortion> portions_of(const FlaskCourse& course, double used) {
    const double over = course.kinetics->over.in(unit::s);
    const bool drops = course.kinetics->portions == 0 && over > 0;
    const int count = drops ? slices : std::max(1, course.kinetics->portions);
    const double each = course.fed / count;
    std::vector<FedPortion> portions;
    for (int i = 0; i < count; ++i) {
        // The first of several portions goes in at once, the last at the end.
        const double from = drops ? over * i / count : count > 1 ? over * i / (count - 1) : 0;
        const double until = drops ? over * (i + 1) / count : from;
        const double before = i * each;
        const double reacts = std::clamp(course.partner - before, 0.0, each);
        const double middle = drops ? before + reacts / 2 : before;
        const double share = course.partner > 0 ? std::max(0.0, 1 - middle / course.partner) : 0;
        if (reacts > 0) portions.push_back({from, until, reacts, used * share});
        if (reacts < each) portions.push_back({from, until, each - reacts, 0});
    }
    return portions;
}

CourseCurve curve_of(const FlaskCourse& course, const RateConstant& used) {
    CourseCurve curve;
    curve.used = &used;
    const std::vector<FedPortion> portions = portions_of(course, used.per_second);
    double made = at_once;
    if (course.kinetics->made) made = course.kinetics->made->per_second;
    std::vector<double> times;
    for (int i = 0; i <= points; ++i)
        times.push_back(course.until * i / points);
    for (const FedPortion& portion : portions) // where a portion goes in, a curve jumps or bends
        if (portion.until <= course.until) times.push_back(portion.until);
    std::sort(times.begin(), times.end());
    times.erase(std::unique(times.begin(), times.end()), times.end());
    for (const double t : times) {
        const CourseCurve::Point point{t, std::min(present(portions, made, t), course.ceiling)};
        if (point.moles > curve.peak.moles) curve.peak = point;
        curve.points.push_back(point);
    }
    return curve;
}

} // namespace

std::vector<FlaskCourse> flask_courses(const FlatRoute& flat, const Evaluation& evaluation) {
    std::vector<FlaskCourse> courses;
    const Route& route = flat.route();
    for (std::size_t s = 0; s < route.steps.size(); ++s)
        for (std::size_t g = 0; g < route.steps[s].stages.size(); ++g) {
            const Stage& stage = route.steps[s].stages[g];
            if (!stage.kinetics) continue;
            FlaskCourse course;
            course.step = static_cast<int>(s);
            course.stage = static_cast<int>(g);
            course.kinetics = &*stage.kinetics;
            course.fed = charged(course.kinetics->of, course, flat, evaluation) +
                         made(course.kinetics->of, course, flat);
            course.partner =
                charged(course.kinetics->with, course, flat, evaluation) / course.kinetics->per_mol;
            course.ceiling = ceiling(course, flat, evaluation);
            const double over = course.kinetics->over.in(unit::s);
            course.until = std::max(stage.time ? stage.time->in(unit::s) : 0.0, over > 0 ? 1.2 * over : 60);
            for (const RateConstant& used : course.kinetics->used)
                course.curves.push_back(curve_of(course, used));
            courses.push_back(std::move(course));
        }
    return courses;
}

} // namespace routeweigh
