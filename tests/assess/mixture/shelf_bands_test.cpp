// SPDX-License-Identifier: MIT
// Solutions of the shelf just below, at and just above the specific limits of the harmonised list (CLP Annex
// VI, table 3; remembered, and so a second memory beside that of the catalogue).
#include "mixture_case.hpp"

#include <doctest/doctest.h>

#include <algorithm>

using namespace routeweigh;
using namespace routeweigh::test::mixtures;

namespace {

/// From `percent` on, up to the next line of the substance.
struct Band {
    const char* substance;
    double percent;
    const char *skin, *eye, *airways;
};

constexpr const char *irritates = "Skin Irrit. 2", *stings = "Eye Irrit. 2", *damages = "Eye Dam. 1";
constexpr const char *a = "Skin Corr. 1A", *b = "Skin Corr. 1B", *chokes = "STOT SE 3";

constexpr Band bands[] = {
    {"hydrogen bromide", 10, irritates, stings, chokes},
    {"hydrogen bromide", 40, b, damages, chokes},
    {"hydrogen chloride", 10, irritates, stings, chokes},
    {"hydrogen chloride", 25, b, damages, chokes},
    {"sulfuric acid", 5, irritates, stings, ""},
    {"sulfuric acid", 15, a, damages, ""},
    {"sodium hydroxide", 0.5, irritates, stings, ""},
    {"sodium hydroxide", 2, b, damages, ""},
    {"sodium hydroxide", 5, a, damages, ""},
    {"potassium hydroxide", 0.5, irritates, stings, ""},
    {"potassium hydroxide", 2, b, damages, ""},
    {"potassium hydroxide", 5, a, damages, ""},
    {"acetic acid", 10, irritates, stings, ""},
    {"acetic acid", 25, b, damages, ""},
    {"acetic acid", 90, a, damages, ""},
    {"formic acid", 2, irritates, stings, ""},
    {"formic acid", 10, b, damages, ""},
    {"formic acid", 90, a, damages, ""},
    {"phosphoric acid", 10, irritates, stings, ""},
    {"phosphoric acid", 25, b, damages, ""},
    // Below 5 % the general limits hold.
    {"nitric acid", 1, irritates, stings, ""},
    {"nitric acid", 3, irritates, damages, ""},
    {"nitric acid", 5, b, damages, ""},
    {"nitric acid", 20, a, damages, ""},
    {"hydrogen peroxide", 5, "", stings, ""},
    {"hydrogen peroxide", 8, "", damages, ""},
    {"hydrogen peroxide", 35, irritates, damages, chokes},
    {"hydrogen peroxide", 50, b, damages, chokes},
    {"hydrogen peroxide", 70, a, damages, chokes},
};

MixtureClassification solution(const char* substance, double percent) {
    return bottle({{substance, percent}, {"water", 100 - percent}});
}

void check_band(const Band& band, double percent) {
    CAPTURE(band.substance);
    CAPTURE(percent);
    const MixtureClassification judged = solution(band.substance, percent);
    CHECK(found(judged, "skin") == band.skin);
    CHECK(found(judged, "eye") == band.eye);
    CHECK(found(judged, "airway_irritation") == band.airways);
}

} // namespace

TEST_CASE("solutions of the shelf follow the bands of the harmonised list, edge by edge") {
    const Band* before = nullptr;
    for (const Band& band : bands) {
        check_band(band, band.percent);
        check_band(band, 1.0001 * band.percent);
        const bool first = before == nullptr || std::string_view(before->substance) != band.substance;
        check_band(first ? Band{band.substance, 0, "", "", ""} : *before, 0.9999 * band.percent);
        before = &band;
    }
}

// EUH031 from 5 % sodium hypochlorite on: specific limit of the entry (remembered).
TEST_CASE("hypochlorite frees gas with acids from its own limit on") {
    const auto frees = [](double percent) {
        const auto& list = solution("sodium hypochlorite", percent).label.supplemental;
        return std::count(list.begin(), list.end(), "EUH031") == 1;
    };
    CHECK_FALSE(frees(4.999));
    CHECK(frees(5));
    CHECK(frees(12));
}
