// SPDX-License-Identifier: MIT
#include "assess/mixture/flash_point_data.hpp"

#include "input/field.hpp"

#include <cmath>

namespace routeweigh {

double AntoineConstants::pressure(double celsius) const {
    return std::pow(10.0, a - b / (celsius + c));
}

FlashPointData FlashPointData::read(const Source& source) {
    const Document document = Document::parse(source);
    Problems problems;
    const Field root = document.root(problems);
    FlashPointData data;
    root["id"].text();
    root["kind"].one_of({"flash point data"});
    root["title"].text();
    data.source_ = root["about"]["source"].text();
    for (const Field& row : root["antoine_mmHg_degC"].items()) {
        const AntoineConstants constants{row["a"].number(), row["b"].number(), row["c"].number()};
        if (!(constants.b > 0)) row["b"].problem("must be above 0");
        if (!data.antoine_.emplace(row["substance"].text(), constants).second)
            row["substance"].problem("stands twice");
        row["source"].text();
        row.close();
    }
    for (const Field& row : root["van_laar_with_water"].items()) {
        const WaterPair pair{row["solvent_in_water"].number(), row["water_in_solvent"].number()};
        if (!(pair.solvent_in_water > 0 && pair.water_in_solvent > 0))
            row.problem("both constants of a pair are above 0");
        if (!data.with_water_.emplace(row["substance"].text(), pair).second)
            row["substance"].problem("stands twice");
        row["source"].text();
        row.close();
    }
    root.close();
    problems.throw_if_error();
    return data;
}

const AntoineConstants* FlashPointData::antoine(std::string_view substance_id) const {
    const auto found = antoine_.find(substance_id);
    return found == antoine_.end() ? nullptr : &found->second;
}

const WaterPair* FlashPointData::with_water(std::string_view substance_id) const {
    const auto found = with_water_.find(substance_id);
    return found == with_water_.end() ? nullptr : &found->second;
}

} // namespace routeweigh
