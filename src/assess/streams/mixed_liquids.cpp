// SPDX-License-Identifier: MIT
#include "assess/streams/mixed_liquids.hpp"

#include "assess/streams/scheme_file.hpp"

#include <fmt/core.h>

namespace routeweigh::streams {
namespace {

MixedLiquid read_liquid(const SchemeFile& file, const Field& row) {
    MixedLiquid liquid;
    liquid.id = row["substance"].text();
    liquid.vaporisation = row["vaporisation_kJ_per_mol"].number();
    if (!(liquid.vaporisation > 0)) row["vaporisation_kJ_per_mol"].problem("is not above 0");
    if (const auto constants = row.maybe("van_laar")) {
        const std::vector<Field> two = constants->items();
        if (two.size() == 2)
            liquid.van_laar = {two[0].number(), two[1].number()};
        else
            constants->problem("holds two numbers");
    }
    if (const auto soluble = row.maybe("soluble_g_per_100_g_water")) {
        liquid.soluble = soluble->number();
        if (!(*liquid.soluble > 0)) soluble->problem("is not above 0");
    }
    if (liquid.van_laar.has_value() == liquid.soluble.has_value())
        row.problem("either mixes by van Laar or has a limit of solubility");
    if (const auto alcohol = row.maybe("alcohol")) liquid.alcohol = alcohol->boolean();
    liquid.from = file.provenance(row);
    row.close();
    return liquid;
}

} // namespace

const MixedLiquid* MixedLiquids::find(std::string_view id) const {
    for (const MixedLiquid& liquid : liquids)
        if (liquid.id == id) return &liquid;
    return nullptr;
}

MixedLiquids read_mixed_liquids(const Source& source) {
    const SchemeFile file(source, "mixed liquids");
    MixedLiquids result;
    const Field range = file.root()["range"];
    result.least_water = range["least_water_by_mass"].fraction();
    result.most_without_vapour = range["most_without_vapour_by_mass"].fraction();
    result.lowest = range["lowest_C"].number();
    result.highest = range["highest_C"].number();
    if (!(result.lowest < result.highest)) range.problem("lowest_C is not below highest_C");
    result.range_from = file.provenance(range);
    range.close();
    const Field negligible = file.root()["negligible_by_mass"];
    result.negligible = {negligible["value"].fraction(), file.provenance(negligible)};
    negligible.close();
    const Field published = file.root()["published"];
    result.published_substance = published["substance"].text();
    published["method"].text();
    result.published_from = file.provenance(published);
    for (const Field& point : published["points"].items()) {
        result.published.push_back({point["percent_by_volume"].number(), point["flash_point_C"].number()});
        point.close();
    }
    published.close();
    for (const Field& row : file.root()["liquids"].items()) {
        MixedLiquid liquid = read_liquid(file, row);
        if (result.find(liquid.id) != nullptr)
            row["substance"].problem(fmt::format("\"{}\" stands twice", liquid.id));
        result.liquids.push_back(std::move(liquid));
    }
    file.finish();
    return result;
}

} // namespace routeweigh::streams
