// SPDX-License-Identifier: MIT
#include "assess/bench/glassware.hpp"

#include "assess/streams/scheme_file.hpp"
#include "base/text.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <string_view>

namespace routeweigh::bench {
namespace {

constexpr std::array<std::string_view, 5> ids{"round_flask", "conical_flask", "beaker", "separating_funnel",
                                              "cylinder"};

} // namespace

std::string name_of(const Vessel& vessel) {
    return vessel.size > 0 ? fmt::format("{:g} mL {}", vessel.size, vessel.name)
                           : fmt::format("{} for {} mL, larger than the sizes listed", vessel.name,
                                         significant(vessel.holds, 2));
}

Glassware Glassware::read(const Source& source) {
    const streams::SchemeFile file(source, "glassware");
    Glassware glassware;
    glassware.most_full = file.number("most_full").value;
    glassware.when_foams = file.number("when_foams").value;
    glassware.pipette_below = file.number("pipette_below_mL").value;
    const Field most_full = file.root()["most_full"];
    if (!(glassware.most_full > 0 && glassware.most_full <= 1))
        most_full["value"].problem("is a share, above 0 and at most 1");
    const Field kinds = file.root()["kinds"];
    for (const std::string_view id : ids) {
        const Field row = kinds[id];
        Sizes sizes{row["name"].text(), {}};
        for (const Field& size : row["sizes_mL"].items()) {
            if (!sizes.millilitres.empty() && !(size.number() > sizes.millilitres.back()))
                size.problem("sizes go from small to large");
            sizes.millilitres.push_back(size.number());
        }
        file.provenance(row);
        row.close();
        glassware.kinds_.push_back(std::move(sizes));
    }
    kinds.close();
    file.finish();
    return glassware;
}

Vessel Glassware::fit(VesselKind kind, double holds, bool foams) const {
    const Sizes& sizes = kinds_[static_cast<std::size_t>(kind)];
    // A measuring cylinder is filled to its last mark.
    const double full = kind == VesselKind::cylinder ? 1.0 : most_full;
    const double least = std::max(holds / full, foams ? holds * when_foams : 0.0);
    const auto found = std::find_if(sizes.millilitres.begin(), sizes.millilitres.end(),
                                    [&](double size) { return size >= least * (1 - 1e-9); });
    return {kind, sizes.name, found == sizes.millilitres.end() ? 0.0 : *found, holds};
}

} // namespace routeweigh::bench
