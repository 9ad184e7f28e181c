// SPDX-License-Identifier: MIT
#include "documents/composition_text.hpp"

#include "base/percentages.hpp"
#include "documents/words.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <string_view>

namespace routeweigh::documents {

std::vector<PrintedShare> printed_shares(const std::vector<std::pair<const Substance*, double>>& grams) {
    std::vector<PrintedShare> shares;
    for (const auto& [substance, mass] : grams)
        if (mass > 0) shares.push_back({substance, mass, 0});
    std::stable_sort(shares.begin(), shares.end(), [](const PrintedShare& a, const PrintedShare& b) {
        const bool water_a = a.substance->id == "water", water_b = b.substance->id == "water";
        return water_a != water_b ? water_b : a.grams > b.grams;
    });
    std::vector<double> masses;
    for (const PrintedShare& share : shares)
        masses.push_back(share.grams);
    const std::vector<std::int64_t> tenths = largest_remainder(masses, 1000);
    for (std::size_t i = 0; i < shares.size(); ++i)
        shares[i].tenths = tenths[i];
    return shares;
}

std::string name_in_water(const Substance& substance) {
    constexpr std::string_view dry = " (anhydrous)";
    std::string name = substance.name;
    if (name.ends_with(dry)) name.resize(name.size() - dry.size());
    return name;
}

std::string composition_text(const std::vector<PrintedShare>& shares) {
    std::string text;
    std::vector<std::string> traces;
    const bool wet = std::any_of(shares.begin(), shares.end(),
                                 [](const PrintedShare& share) { return share.substance->id == "water"; });
    for (const PrintedShare& share : shares) {
        const std::string name = wet ? name_in_water(*share.substance) : share.substance->name;
        if (share.tenths == 0) {
            traces.push_back(name);
            continue;
        }
        if (!text.empty()) text += ", ";
        text += share.tenths % 10 == 0 && share.tenths == 1000
                    ? fmt::format("{} 100 %", name)
                    : fmt::format("{} {}.{} %", name, share.tenths / 10, share.tenths % 10);
    }
    if (!traces.empty()) text += "; traces of " + listed(traces);
    return text;
}

} // namespace routeweigh::documents
