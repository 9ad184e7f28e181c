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

/// Says of a name that the catalogue does not know what it may have been meant for.
void refuse(const Field& field, std::string_view name, const Catalogue& catalogue, bool any_material) {
    if (!field.lists_problems()) { // looking for the nearest of many names takes a while
        field.problem("an unknown name");
        return;
    }
    const std::vector<std::string> names = isomers(name, catalogue);
    const Material* bottle = any_material ? nullptr : catalogue.find_material(name);
    if (!names.empty())
        field.problem(
            fmt::format("\"{}\" is the formula of {}: write the name", name, join(names, " and of ")));
    else if (bottle != nullptr)
        field.problem(fmt::format("\"{}\" is a material, and a substance is expected here, such as \"{}\"",
                                  name, bottle->components.front().substance->name));
    else if (any_material)
        field.problem(fmt::format("no material \"{}\" in the catalogue", name),
                      catalogue.nearest_material(name));
    else
        field.problem(fmt::format("no substance \"{}\" in the catalogue", name),
                      catalogue.nearest_substance(name));
}

} // namespace

const Substance* find_named(const Field& field, std::string_view name, const Catalogue& catalogue) {
    const Substance* substance = catalogue.find_substance(name);
    if (substance == nullptr) refuse(field, name, catalogue, false);
    return substance;
}

const Substance* read_substance(const Field& field, const Catalogue& catalogue) {
    const std::string name = field.text();
    return name.empty() ? nullptr : find_named(field, name, catalogue);
}

const Material* read_material(const Field& field, const Catalogue& catalogue) {
    const std::string name = field.text();
    if (name.empty()) return nullptr;
    const Material* material = catalogue.find_material(name);
    if (material == nullptr) refuse(field, name, catalogue, true);
    return material;
}

} // namespace routeweigh
