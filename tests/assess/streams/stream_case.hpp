// SPDX-License-Identifier: MIT
// What the tests of the waste streams share: the shipped tables, compositions by name, routes of the
// repository.
#pragma once

#include "assess/streams/route_waste.hpp"
#include "chemistry/catalogue.hpp"
#include "route/route_reader.hpp"

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <initializer_list>
#include <memory>
#include <regex>
#include <sstream>
#include <stdexcept>
#include <string>
#include <utility>
#include <vector>

namespace routeweigh::streams::testing {

inline Source file(const std::string& path) {
    std::ifstream stream(std::string(ROUTEWEIGH_ROOT "/") + path);
    if (!stream) throw std::runtime_error("cannot read " + path);
    std::ostringstream text;
    text << stream.rdbuf();
    return {path, text.str()};
}

inline const Catalogue& catalogue() {
    return Catalogue::embedded();
}

inline const StreamRules& us_rules() {
    static const StreamRules rules(catalogue(), shipped_local_rules(catalogue(), "US"));
    return rules;
}

inline const StreamRules& eu_rules() {
    static const StreamRules rules(catalogue(), shipped_local_rules(catalogue(), "EU"));
    return rules;
}

inline const Substance& substance(const std::string& name) {
    const Substance* found = catalogue().find_substance(name);
    if (found == nullptr) throw std::runtime_error("no substance " + name);
    return *found;
}

/// Grams by name.
inline Composition grams(std::initializer_list<std::pair<const char*, double>> parts) {
    Composition made;
    for (const auto& [name, amount] : parts)
        made.add(substance(name), amount);
    return made;
}

/// mmol by name.
inline Composition mmol(std::initializer_list<std::pair<const char*, double>> parts) {
    Composition made;
    for (const auto& [name, amount] : parts)
        made.add(substance(name), amount / 1000 * substance(name).molar_mass);
    return made;
}

inline double mmol_of(const Composition& composition, const std::string& name) {
    return 1000 * composition.grams(substance(name)) / substance(name).molar_mass;
}

/// Percent by volume of ethanol in water, as mL beside mL.
inline Composition spirit(double percent_by_volume) {
    return grams({{"ethanol", percent_by_volume * *substance("ethanol").density},
                  {"water", (100 - percent_by_volume) * *substance("water").density}});
}

inline std::vector<Participant> poured(const Composition& composition) {
    return participants_of(composition, us_rules().compatibility.groups);
}

inline Decision decide(const Composition& composition, const StreamRules& rules,
                       StreamKind kind = StreamKind::liquid, double solid_aid = 0) {
    return decide_container(describe_stream(composition, kind, solid_aid, rules.description()), rules.local);
}

/// A route of the repository, with some texts of its file changed. Stays where it was made.
struct WasteOf {
    WasteOf(const std::string& path, const StreamRules& rules,
            const std::vector<std::pair<std::string, std::string>>& changes = {}) {
        Source source = file(path);
        for (const auto& [from, to] : changes) {
            const std::size_t at = source.text.find(from);
            if (at == std::string::npos) throw std::runtime_error("not in the route: " + from);
            source.text.replace(at, from.size(), to);
        }
        Problems problems;
        route =
            std::make_unique<Route>(read_route(make_source(source.name, source.text), catalogue(), problems));
        waste = assess_waste(*route, rules);
    }
    const StreamAdvice& stream(const std::string& name, const std::string& step = {}) const {
        for (const StreamAdvice& advice : waste.streams)
            if (advice.stream.name == name && (step.empty() || advice.stream.step_id == step)) return advice;
        throw std::runtime_error("no stream " + name);
    }
    const QuenchPlan& quench(std::size_t step = 0) const { return waste.quenches.at(step); }

    std::unique_ptr<Route> route;
    RouteWaste waste;
};

inline const std::vector<std::string>& shipped_routes() {
    static const std::vector<std::string> paths = [] {
        const std::filesystem::path root = ROUTEWEIGH_ROOT;
        std::vector<std::string> list;
        for (const auto& entry : std::filesystem::recursive_directory_iterator(root / "routes"))
            if (entry.path().extension() == ".json" && entry.path().parent_path() != root / "routes")
                list.push_back(std::filesystem::relative(entry.path(), root).generic_string());
        std::sort(list.begin(), list.end());
        return list;
    }();
    return paths;
}

/// nullptr where nothing of that kind is told.
inline const Reason* reason(const Decision& decision, const std::string& what) {
    for (const Reason& one : decision.reasons)
        if (one.what == what) return &one;
    return nullptr;
}

/// One of the ten ways to 4-bromoacetanilide.
inline std::string a_route(const std::string& id) {
    return "routes/4-bromoacetanilide/" + id + ".json";
}

inline bool holds(const std::string& text, const std::string& part) {
    return text.find(part) != std::string::npos;
}

/// The word itself, not "safety office" or "unsafe".
inline bool calls_anything_safe(const std::string& text) {
    static const std::regex word("\\bsafer?\\b", std::regex::icase);
    return std::regex_search(text, word);
}

inline bool any_holds(const std::vector<std::string>& lines, const std::string& part) {
    for (const std::string& line : lines)
        if (holds(line, part)) return true;
    return false;
}

} // namespace routeweigh::streams::testing
