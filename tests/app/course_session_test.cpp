// SPDX-License-Identifier: MIT
#include "app/course_session.hpp"

#include "app/shipped.hpp"
#include "app/waste.hpp"

#include <doctest/doctest.h>

#include <fstream>
#include <iterator>
#include <set>

using namespace routeweigh;

namespace {

struct Opened {
    std::unique_ptr<Course> course;
    std::multiset<std::string> from_file, from_call; ///< paths that were asked for
};

/// Every path reads as the same shipped route.
Opened open_weeks(const std::vector<std::string>& routes, const std::string& replace,
                  const std::string& more = {}) {
    std::ifstream file(ROUTEWEIGH_ROOT "/routes/4-bromoacetanilide/A3.json");
    const std::string route(std::istreambuf_iterator<char>(file), {});
    std::string text = R"({"id": "X", "title": "T", "college": "C", "term": "autumn", "sections": 1,
                           "students": 12, )" +
                       more + R"("experiments": [)";
    for (std::size_t i = 0; i < routes.size(); ++i)
        text += std::string(i == 0 ? "" : ", ") + R"({"week": )" + std::to_string(i + 1) + R"(, "route": ")" +
                routes[i] + "\"}";
    Opened opened;
    const LoadFile load = [&](const std::string& path, NamedBy named) {
        (named == NamedBy::file ? opened.from_file : opened.from_call).insert(path);
        return make_source(path, route);
    };
    Problems problems;
    opened.course = std::make_unique<Course>(make_source("course.json", text + "]}"), load,
                                             Catalogue::embedded(), test::rules(), replace, problems);
    return opened;
}

} // namespace

TEST_CASE(
    "only the route that replaces another comes from where the call was made, however others are spelt") {
    const Opened opened = open_weeks({"a.json", "other.json", "other.json"}, "1=other.json");
    CHECK(opened.from_call == std::multiset<std::string>{"other.json"});
    CHECK(opened.from_file == std::multiset<std::string>{"a.json", "other.json", "other.json"});
    CHECK(open_weeks({"a.json"}, {}).from_call.empty());
}

TEST_CASE("a course that names no jurisdiction follows the rules that every command follows") {
    const auto jurisdiction = [](const std::string& more) {
        return open_weeks({"a.json"}, {}, more).course->house().waste.local.jurisdiction;
    };
    CHECK(jurisdiction({}) == usual_local_rules);
    CHECK(jurisdiction(R"("jurisdiction": "EU", )") == "EU");
    std::ifstream schema(ROUTEWEIGH_ROOT "/examples/course.schema.json");
    const std::string text(std::istreambuf_iterator<char>(schema), {});
    CHECK(text.find(std::string("\"default\": \"") + usual_local_rules + "\"") != std::string::npos);
}
