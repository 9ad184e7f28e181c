// SPDX-License-Identifier: MIT
#include "documents/courses.hpp"

#include "documents/compared.hpp"

#include <filesystem>
#include <fstream>
#include <sstream>

namespace routeweigh::test {
namespace {

std::string text_of_file(const std::filesystem::path& path) {
    std::ostringstream text;
    text << std::ifstream(path).rdbuf();
    return text.str();
}

} // namespace

std::string course_text(const std::vector<std::string>& routes, int sections, int students,
                        const std::string& term) {
    std::ostringstream text;
    text << R"json({"id": "X", "title": "T", "college": "Marrow Point College (invented)", )json"
         << R"("term": ")" << term << R"(", "sections": )" << sections << R"(, "students": )" << students
         << R"(, "extra": "10 %", "jurisdiction": "EU", "prices": "prices.json", "experiments": [)";
    for (std::size_t i = 0; i < routes.size(); ++i)
        text << (i == 0 ? "" : ", ") << R"({"week": )" << i + 1 << R"(, "route": "../routes/)" << routes[i]
             << "\"}";
    text << "]}";
    return text.str();
}

std::unique_ptr<Course> open_course_text(const std::string& text, const std::string& replace,
                                         const std::string& changed) {
    const std::filesystem::path root = ROUTEWEIGH_ROOT;
    const LoadFile load = [&](const std::string& name, NamedBy) {
        if (std::filesystem::path(name).filename() == "changed.json") return make_source(name, changed);
        return make_source(name, text_of_file(root / "examples" / name));
    };
    Problems problems;
    return std::make_unique<Course>(make_source("course.json", text), load, Catalogue::embedded(),
                                    shipped_rules(), replace, problems);
}

std::unique_ptr<Course> example_course(const std::string& replace) {
    return open_course_text(text_of_file(std::filesystem::path(ROUTEWEIGH_ROOT) / "examples/course.json"),
                            replace);
}

} // namespace routeweigh::test
