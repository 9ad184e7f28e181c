// SPDX-License-Identifier: MIT
#include "assess/stock/stockroom.hpp"

#include "assess/streams/scheme_file.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace routeweigh::stock {
namespace {

const Material* material_at(const Field& field, const Catalogue& catalogue) {
    const std::string name = field.text();
    const Material* material = catalogue.find_material(name);
    if (material == nullptr)
        field.problem(fmt::format("no material \"{}\"", name), catalogue.nearest_material(name));
    return material;
}

/// The one substance beside water, or nullptr.
const Substance* solute_in_water(const Material& material, const Substance& water) {
    if (material.components.size() != 2 || material.component_of(water) == nullptr) return nullptr;
    const Component& first = material.components.front();
    return first.substance == &water ? material.components.back().substance : first.substance;
}

} // namespace

bool Stockroom::is_bought(const Material& material) const {
    return std::find(bought.begin(), bought.end(), &material) != bought.end();
}

const ShelfLife* Stockroom::shelf_life(const Substance& solute) const {
    const auto found = std::find_if(keeps.begin(), keeps.end(),
                                    [&](const ShelfLife& life) { return life.substance == &solute; });
    return found == keeps.end() ? nullptr : &*found;
}

Stockroom read_stockroom(const Catalogue& catalogue) {
    const streams::SchemeFile file(streams::required_scheme(catalogue, "stockroom"), "stockroom");
    Stockroom stockroom;
    for (const Field& item : file.root()["from_the_tap"].items())
        if (const Material* material = material_at(item, catalogue)) stockroom.from_tap.insert(material);
    for (const Field& item : file.root()["bought"].items())
        if (const Material* material = material_at(item, catalogue)) stockroom.bought.push_back(material);
    for (const Field& row : file.root()["keeps"].items()) {
        ShelfLife life;
        const std::string name = row["substance"].text();
        life.substance = catalogue.find_substance(name);
        if (life.substance == nullptr)
            row["substance"].problem(fmt::format("no substance \"{}\"", name),
                                     catalogue.nearest_substance(name));
        life.days = row["days"].integer(0, 3650); // ten years
        life.why = streams::text_or_empty(row, "why");
        life.from = file.provenance(row);
        row.close();
        stockroom.keeps.push_back(life);
    }
    file.finish();
    return stockroom;
}

std::optional<Recipe> recipe_of(const Material& material, const Stockroom& stockroom,
                                const Catalogue& catalogue, const std::set<const Material*>& at_hand) {
    const Substance* water = catalogue.find_substance("water");
    if (water == nullptr || stockroom.is_bought(material)) return std::nullopt;
    const Substance* solute = solute_in_water(material, *water);
    if (solute == nullptr) return std::nullopt;
    const double share = material.component_of(*solute)->mass_fraction;

    std::vector<const Material*> stocks;
    if (solute->phase == Substance::Phase::solid) stocks.push_back(&catalogue.neat(*solute));
    for (const Material* bought : stockroom.bought)
        if (solute_in_water(*bought, *water) == solute &&
            bought->component_of(*solute)->mass_fraction > share)
            stocks.push_back(bought);
    if (solute->phase == Substance::Phase::liquid) stocks.push_back(&catalogue.neat(*solute));
    if (stocks.empty()) return std::nullopt;
    const auto there = std::find_if(stocks.begin(), stocks.end(),
                                    [&](const Material* stock) { return at_hand.contains(stock); });
    const Material* stock = there == stocks.end() ? stocks.front() : *there;
    return Recipe{&material, solute, stock, &catalogue.neat(*water),
                  share / stock->component_of(*solute)->mass_fraction};
}

} // namespace routeweigh::stock
