// SPDX-License-Identifier: MIT
#include "chemistry/material_reader.hpp"

#include "chemistry/substance_reader.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace routeweigh {

namespace {

void read_components(const Field& field, const ComponentLookup& lookup, Material& material) {
    const Field list = field["components"];
    double sum = 0;
    for (const Field& item : list.items()) {
        Component component;
        const std::string id = item["id"].text();
        component.substance = lookup.find(id);
        if (component.substance == nullptr)
            item["id"].problem(fmt::format("no substance has the id \"{}\"", id), lookup.nearest(id));
        component.mass_fraction = item["mass_fraction"].number();
        if (!(component.mass_fraction > 0 && component.mass_fraction <= 1))
            item["mass_fraction"].problem(
                fmt::format("the mass fraction {} is not above 0 and at most 1", component.mass_fraction));
        const bool twice =
            std::any_of(material.components.begin(), material.components.end(), [&](const Component& c) {
                return c.substance != nullptr && c.substance == component.substance;
            });
        if (twice) item["id"].problem(fmt::format("\"{}\" is a component twice", id));
        sum += component.mass_fraction;
        material.components.push_back(component);
        item.close();
    }
    if (list.is_array() && std::abs(sum - 1) > 1e-6)
        list.problem(fmt::format("the mass fractions sum to {}, not to 1", sum));
}

// Water carries whatever is dissolved in it; other carriers are named.
void read_carriers(const Field& field, Material& material) {
    if (material.components.size() > 1)
        for (Component& component : material.components)
            component.carrier = component.substance != nullptr && component.substance->id == "water";
    const auto carriers = field.maybe("carrier");
    if (!carriers) return;
    for (const Field& item : carriers->items()) {
        const std::string id = item.text();
        const auto found =
            std::find_if(material.components.begin(), material.components.end(),
                         [&](const Component& c) { return c.substance != nullptr && c.substance->id == id; });
        if (found == material.components.end() || material.components.size() == 1)
            item.problem(fmt::format("\"{}\" carries nothing: it is no component beside another", id));
        else
            found->carrier = true;
    }
    if (std::all_of(material.components.begin(), material.components.end(),
                    [](const Component& c) { return c.carrier; }))
        carriers->problem("every component is a carrier");
}

} // namespace

Material read_material(const Field& field, const ComponentLookup& lookup) {
    Material material;
    material.id = field["id"].text();
    material.name = field["name"].text();
    if (const auto synonyms = field.maybe("synonyms")) material.synonyms = synonyms->texts();
    if (const auto basis = field.maybe("basis")) material.basis = basis->text();
    if (const auto typical = field.maybe("typical")) material.typical = typical->boolean();
    if (const auto notes = field.maybe("notes")) material.notes = notes->text();
    read_components(field, lookup, material);
    read_carriers(field, material);

    if (const auto phase = field.maybe("phase_at_25C")) material.phase = read_phase(*phase);
    if (const auto density = field.maybe("density_g_per_mL")) {
        material.density = density->number();
        if (!(*material.density > 0))
            density->problem(fmt::format("the density {} is not above 0", *material.density));
    }
    if (const auto at = field.maybe("density_T_C")) material.density_at = at->number();
    field.maybe("molarity_mol_per_L"); // said again in the basis; the mass fractions count
    const Field sources = field["sources"];
    for (const std::string& datum : sources.is_object() ? sources.keys() : std::vector<std::string>())
        material.sources[datum] = sources[datum].text();
    for (const std::string_view datum : {"density_g_per_mL", "phase_at_25C"})
        if (field.maybe(datum) && !material.sources.contains(std::string(datum)))
            sources.problem(fmt::format("no source for \"{}\"", datum));
    if (!material.sources.contains("composition")) sources.problem("no source for \"composition\"");
    field.close();
    return material;
}

const Component* Material::component_of(const Substance& substance) const {
    const auto found = std::find_if(components.begin(), components.end(),
                                    [&](const Component& c) { return c.substance == &substance; });
    return found == components.end() ? nullptr : &*found;
}

const Component* Material::only_active() const {
    const Component* only = nullptr;
    for (const Component& component : components) {
        if (component.carrier) continue;
        if (only != nullptr) return nullptr;
        only = &component;
    }
    return only;
}

} // namespace routeweigh
