// SPDX-License-Identifier: MIT
// The course of bromine in shipped routes, against the second-order rate law that the estimate stands for,
// integrated here step by step.
#include "assess/flask/course.hpp"
#include "chemistry/catalogue.hpp"
#include "route/route_reader.hpp"

#include <doctest/doctest.h>

#include <cmath>
#include <fstream>
#include <sstream>

using namespace routeweigh;

namespace {

struct Made {
    explicit Made(const std::string& id) {
        const std::string path = "/routes/4-bromoacetanilide/" + id + ".json";
        std::ifstream stream(ROUTEWEIGH_ROOT + path);
        std::ostringstream text;
        text << stream.rdbuf();
        Problems problems;
        route = std::make_unique<Route>(
            read_route(make_source(path, text.str()), Catalogue::embedded(), problems));
        flat = std::make_unique<FlatRoute>(*route);
        evaluation = flat->evaluate(flat->nominal());
        courses = flask_courses(*flat, evaluation);
    }
    std::unique_ptr<Route> route;
    std::unique_ptr<FlatRoute> flat;
    Evaluation evaluation;
    std::vector<FlaskCourse> courses;
};

/// Bromine fed evenly, used with its partner by second order; the most that is there, mol.
double greatest_by_second_order(const FlaskCourse& course, double k_at_first) {
    const double over = course.kinetics->over.in(unit::s), step = 0.01;
    const double k = k_at_first / course.partner; // 1/(mol s)
    double bromine = 0, partner = course.partner, most = 0;
    for (double t = 0; t < course.until; t += step) {
        const double feed = t < over ? course.fed / over : 0;
        const auto use = [&](double b, double p) { return k * b * p; };
        // Midpoint rule.
        const double half = use(bromine, partner) * step / 2;
        const double used = use(bromine + feed * step / 2 - half, partner - half) * step;
        bromine += feed * step - used;
        partner -= used;
        most = std::max(most, bromine);
    }
    return most;
}

} // namespace

TEST_CASE("A1: what is fed, what stays for the quench, and the ceiling") {
    const Made a1("A1");
    REQUIRE(a1.courses.size() == 1);
    const FlaskCourse& course = a1.courses[0];
    CHECK(course.fed == doctest::Approx(10.6e-3).epsilon(1e-3));
    CHECK(course.partner == doctest::Approx(10.0e-3).epsilon(1e-3));
    CHECK(159.808 * 1000 * course.left() == doctest::Approx(95.9).epsilon(0.01)); // 0.6 mmol
    CHECK(course.ceiling == doctest::Approx(10.6e-3).epsilon(1e-3));
    REQUIRE(course.curves.size() == 4);
}

TEST_CASE("the estimate is not below the full rate law by more than a tenth, nor twice it") {
    const Made a1("A1");
    for (const CourseCurve& curve : a1.courses[0].curves) {
        const double full = greatest_by_second_order(a1.courses[0], curve.used->per_second);
        INFO(curve.used->note << ": " << curve.peak.moles << " against " << full);
        CHECK(curve.peak.moles > 0.9 * full);
        CHECK(curve.peak.moles < 2.0 * full);
    }
}

TEST_CASE("every curve stays between nothing and the ceiling, and slower use leaves more") {
    for (const char* id : {"A1", "A2", "A2b", "A3", "A3w"}) {
        INFO(id);
        const Made made(id);
        REQUIRE(made.courses.size() == 1);
        const FlaskCourse& course = made.courses[0];
        for (std::size_t i = 0; i < course.curves.size(); ++i) {
            const CourseCurve& curve = course.curves[i];
            for (const CourseCurve::Point& point : curve.points) {
                CHECK(point.moles >= -1e-12);
                CHECK(point.moles <= course.ceiling * (1 + 1e-12));
                CHECK(point.moles <= curve.peak.moles);
            }
            if (i > 0 && course.curves[i - 1].used->per_second < curve.used->per_second)
                CHECK(curve.peak.moles <= course.curves[i - 1].peak.moles * (1 + 1e-9));
        }
    }
}

TEST_CASE("half-lives of the route files follow from the constants they name") {
    // Bromate: 1.54 L3/(mol3 s) (read in an abstract) with 0.035 mol/L bromide and 0.6 mol/L acid.
    const double bromate = std::log(2.0) / (1.54 * 0.035 * 0.6 * 0.6);
    CHECK(std::log(2.0) / Made("A2").courses[0].kinetics->made->per_second ==
          doctest::Approx(bromate).epsilon(0.01));
    // Peroxide: 2.3e-4 L2/(mol2 s) at 25 degC (remembered), 75 kJ/mol assumed, 1.168 mol/L of acid and
    // bromide.
    const double warm = std::exp(75000 / 8.314462 * (1 / 298.15 - 1 / 333.15));
    CHECK(Made("A3").courses[0].kinetics->made->per_second ==
          doctest::Approx(2.3e-4 * warm * 1.168 * 1.168).epsilon(0.01));
    // Second order, 1 L/(mol s), 10 mmol acetanilide in 7.5 mL.
    CHECK(Made("A1").courses[0].curves[2].used->per_second == doctest::Approx(10.0 / 7.5).epsilon(0.01));
}

TEST_CASE("a route without rates has no course") {
    CHECK(Made("A5").courses.empty());
    CHECK(Made("A7b").courses.empty());
}
