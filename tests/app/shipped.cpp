// SPDX-License-Identifier: MIT
#include "app/shipped.hpp"

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <iterator>

namespace routeweigh::test {
namespace {

const std::filesystem::path folder = std::filesystem::path(ROUTEWEIGH_ROOT) / "routes";

std::unique_ptr<Assessment> assess(const SourcePtr& source) {
    Problems problems;
    std::vector<Route> routes = read_routes({source}, Catalogue::embedded(), problems);
    return std::make_unique<Assessment>(std::move(routes.front()), rules());
}

} // namespace

const AssessmentRules& rules() {
    static const AssessmentRules read = read_assessment_rules(Catalogue::embedded());
    return read;
}

std::unique_ptr<Assessment> shipped(const std::string& name) {
    std::ifstream file(folder / (name + ".json"));
    const std::string text(std::istreambuf_iterator<char>(file), {});
    return assess(make_source(name + ".json", text));
}

std::vector<std::string> all_shipped() {
    std::vector<std::string> names;
    for (const auto& set : std::filesystem::directory_iterator(folder)) {
        if (!set.is_directory()) continue;
        for (const auto& file : std::filesystem::directory_iterator(set))
            names.push_back((set.path().filename() / file.path().stem()).string());
    }
    std::sort(names.begin(), names.end());
    return names;
}

std::unique_ptr<Assessment> assessed(const std::string& text) {
    return assess(make_source("route.json", text));
}

std::unique_ptr<Assessment> changed(const Assessment& parent, const std::vector<std::string>& settings,
                                    const std::string& patch) {
    RouteChange change;
    Problems problems;
    for (const std::string& words : settings)
        change.places.push_back(read_assignment(words, parent.route(), problems));
    if (!patch.empty()) change.patch = make_source("patch.json", patch);
    return std::make_unique<Assessment>(
        read_changed(changed_source(parent.route(), change), Catalogue::embedded(), problems), rules());
}

FigurePick pick(const std::string& figure) {
    return figure_named(figure, rules());
}

} // namespace routeweigh::test
