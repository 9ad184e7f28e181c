// SPDX-License-Identifier: MIT
#include "route/name_reader.hpp"

#include "base/text.hpp"
#include "chemistry/formula.hpp"

#include <fmt/core.h>

#include <vector>

namespace routeweigh {
namespace {

/// Names of the substances that have this formula; empty where the name is no formula.
std::vector<std::string> isomers(std::string_view name, const Catalogue& catalogue) {
    std::vector<std::string> names;
    try {
        for (const Substance* substance : catalogue.substances_with_formula(parse_formula(name)))
            names.push_back(substance->name);
    } catch (const FormulaError&) { // most names are none
    }
    return names;
}

} // namespace

const Substance* find_named(const Field& field, std::string_view name, const Catalogue& catalogue) {
    if (const Substance* substance = catalogue.find_substance(name)) return substance;
    if (const auto names = isomers(name, catalogue); !names.empty())
        field.problem(
            fmt::format("\"{}\" is the formula of {}: write the name", name, join(names, " and of ")));
    else if (const Material* bottle = catalogue.find_material(name))
        field.problem(fmt::format("\"{}\" is a material, and a substance is expected here, such as \"{}\"",
                                  name, bottle->components.front().substance->name));
    else
        field.problem(fmt::format("no substance \"{}\" in the catalogue", name),
                      catalogue.nearest_substance(name));
    return nullptr;
}

const Substance* read_substance(const Field& field, const Catalogue& catalogue) {
    const std::string name = field.text();
    return name.empty() ? nullptr : find_named(field, name, catalogue);
}

const Material* read_material(const Field& field, const Catalogue& catalogue) {
    const std::string name = field.text();
    if (name.empty()) return nullptr;
    const Material* material = catalogue.find_material(name);
    if (material == nullptr) {
        if (const auto names = isomers(name, catalogue); !names.empty())
            field.problem(
                fmt::format("\"{}\" is the formula of {}: write the name", name, join(names, " and of ")));
        else
            field.problem(fmt::format("no material \"{}\" in the catalogue", name),
                          catalogue.nearest_material(name));
    }
    return material;
}

} // namespace routeweigh
