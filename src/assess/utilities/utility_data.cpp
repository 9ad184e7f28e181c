// SPDX-License-Identifier: MIT
#include "assess/utilities/utility_data.hpp"

#include "assess/streams/scheme_file.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace routeweigh::utilities {
namespace {

using streams::SchemeFile;

Flow read_flow(const SchemeFile& file, std::string_view key) {
    const Field field = file.root()[key];
    Flow flow;
    flow.low = field["low"].number();
    flow.high = field["high"].number();
    flow.usual = file.number(key);
    if (!(0.0 < flow.low && flow.low <= flow.usual.value && flow.usual.value <= flow.high))
        field.problem("low, value and high are not in order");
    return flow;
}

LiquidHeat read_liquid(const SchemeFile& file, const Field& row, const Catalogue& catalogue) {
    LiquidHeat liquid;
    const std::string name = row["substance"].text();
    liquid.substance = catalogue.find_substance(name);
    if (liquid.substance == nullptr)
        row["substance"].problem(fmt::format("no substance \"{}\"", name), catalogue.nearest_substance(name));
    liquid.capacity = row["heat_J_per_gK"].number();
    liquid.vaporisation = row["vaporisation_J_per_g"].number();
    if (liquid.capacity <= 0.0 || liquid.vaporisation <= 0.0) row.problem("heats are above 0");
    liquid.from = file.provenance(row);
    row.close();
    return liquid;
}

} // namespace

const LiquidHeat* UtilityData::find(const Substance& substance) const {
    const auto found = std::find_if(liquids.begin(), liquids.end(),
                                    [&](const LiquidHeat& liquid) { return liquid.substance == &substance; });
    return found == liquids.end() ? nullptr : &*found;
}

double UtilityData::heat_capacity(const Substance& substance) const {
    if (const LiquidHeat* liquid = find(substance)) return liquid->capacity;
    return substance.phase == Substance::Phase::liquid ? unknown_liquid.value : unknown_solid.value;
}

std::vector<std::pair<std::string, std::string>> UtilityData::assumptions() const {
    const auto said = [](const Sourced<double>& datum, std::string_view unit) {
        return fmt::format("{:g} {} ({})", datum.value, unit, describe(datum.from));
    };
    const auto flow = [&said](const Flow& datum) {
        return fmt::format("{}, from {:g} to {:g}", said(datum.usual, "L/min"), datum.low, datum.high);
    };
    return {{"room", said(room, "degC")},
            {"plugged in above", said(heated_above, "degC")},
            {"hot plate, average", said(hot_plate, "W")},
            {"condenser where the pot is so near a boiling point", said(reflux_within, "K")},
            {"cooling water", flow(cooling)},
            {"water of an aspirator", flow(suction)},
            {"suction of one filtration", said(suction_minutes, "min")},
            {"circulation pump instead of cooling water", said(circulation_pump, "W")},
            {"diaphragm pump instead of an aspirator", said(diaphragm_pump, "W")},
            {"glass to be heated", said(glass_mass, "g per mL of liquid")}};
}

UtilityData read_utility_data(const Catalogue& catalogue) {
    const SchemeFile file(streams::required_scheme(catalogue, "utilities"), "utilities");
    UtilityData data;
    data.room = file.number("room_C");
    data.heated_above = file.number("heated_above_C");
    data.reflux_within = file.number("reflux_within_K");
    data.hot_plate = file.number("hot_plate_W");
    data.diaphragm_pump = file.number("diaphragm_pump_W");
    data.circulation_pump = file.number("circulation_pump_W");
    data.band = file.number("band");
    data.cooling = read_flow(file, "cooling_L_per_min");
    data.suction = read_flow(file, "suction_L_per_min");
    data.suction_minutes = file.number("suction_min");
    data.glass_heat = file.number("glass_J_per_gK");
    data.glass_mass = file.number("glass_g_per_mL");
    data.unknown_solid = file.number("unknown_solid_J_per_gK");
    data.unknown_liquid = file.number("unknown_liquid_J_per_gK");
    for (const Field& row : file.root()["liquids"].items())
        data.liquids.push_back(read_liquid(file, row, catalogue));
    file.finish();
    return data;
}

} // namespace routeweigh::utilities
