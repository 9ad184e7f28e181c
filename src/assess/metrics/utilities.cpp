// SPDX-License-Identifier: MIT
// Energy, cooling water, time and vessel per gram, where the route file states them.
#include "assess/metrics/metrics.hpp"

namespace routeweigh::metrics {
namespace {
constexpr Term energy[] = {{"energy of all stages", &Totals::energy}};
constexpr Term cooling[] = {{"cooling water of all stages", &Totals::cooling_water}};
constexpr Term time[] = {{"time of all stages", &Totals::time}};
constexpr Term volume_hours[] = {
    {"volume of the reaction mixture x time of the reaction stages", &Totals::volume_hours}};
constexpr Term catalyst_hours[] = {{"catalyst x time of the reaction stages", &Totals::catalyst_hours}};
constexpr Term largest_volume[] = {{"largest volume in the vessel", &Totals::largest_volume}};
constexpr Term product_moles[] = {{"isolated product", &Totals::product_moles}};
constexpr Term catalyst_moles[] = {{"catalyst", &Totals::catalyst_moles}};
constexpr std::string_view teaching =
    "A. A. S. C. Machado, Quim. Nova 2014, 37, 1094, doi:10.5935/0100-4042.20140152";
constexpr std::string_view no_single_source = "usage of chemical engineering and catalysis, no single source";
constexpr std::string_view in_proportion =
    "as stated for each step, in proportion to how much of it the route needs";
} // namespace

const Metric energy_intensity{.id = "energy_intensity",
                              .name = "Energy intensity",
                              .unit = "kJ/g",
                              .group = FigureGroup::utilities,
                              .better = Better::lower,
                              .boundary = in_proportion,
                              .reference = teaching,
                              .missing = "a step states no energy",
                              .above = energy,
                              .below = isolated_product};
const Metric cooling_water_intensity{
    .id = "cooling_water_intensity",
    .name = "Cooling water",
    .unit = "mL/g",
    .group = FigureGroup::utilities,
    .better = Better::lower,
    .boundary = "running-water condensers, in proportion to each step; apart from every mass intensity",
    .reference = "common practice, no source",
    .missing = "a step states no cooling water",
    .above = cooling,
    .below = isolated_product};
const Metric time_intensity{.id = "time_intensity",
                            .name = "Time intensity",
                            .unit = "h/g",
                            .group = FigureGroup::utilities,
                            .better = Better::lower,
                            .boundary = "times of the stages as stated, each step run once",
                            .reference = teaching,
                            .missing = "a step states no time",
                            .above = time,
                            .below = isolated_product,
                            .decimals = 2};
const Metric space_time_yield{
    .id = "space_time_yield",
    .name = "Space-time yield",
    .unit = "g/(L h)",
    .group = FigureGroup::utilities,
    .better = Better::higher,
    .boundary = "volume of the liquids of the reaction stages, their time; no work-up; one-step routes",
    .reference = no_single_source,
    .missing = "several steps, no time stated, or a liquid without density",
    .above = isolated_product,
    .below = volume_hours};
const Metric volume_productivity{
    .id = "volume_productivity",
    .name = "Volume productivity",
    .unit = "g/L",
    .group = FigureGroup::utilities,
    .better = Better::higher,
    .boundary = "largest volume that is in the vessel at one time, one-step routes; liquids only",
    .reference = no_single_source,
    .missing = "several steps, or a liquid without density",
    .above = isolated_product,
    .below = largest_volume};
const Metric turnover_number{.id = "turnover_number",
                             .name = "Turnover number",
                             .unit = "",
                             .group = FigureGroup::utilities,
                             .better = Better::higher,
                             .boundary = "mol product per mol of charges with the role catalyst",
                             .reference = no_single_source,
                             .missing = "no catalyst, or several steps",
                             .above = product_moles,
                             .below = catalyst_moles};
const Metric turnover_frequency{.id = "turnover_frequency",
                                .name = "Turnover frequency",
                                .unit = "1/h",
                                .group = FigureGroup::utilities,
                                .better = Better::higher,
                                .boundary = "turnover number over the time of the reaction stages",
                                .reference = no_single_source,
                                .missing = "no catalyst, no time stated, or several steps",
                                .above = product_moles,
                                .below = catalyst_hours};
} // namespace routeweigh::metrics
