// SPDX-License-Identifier: MIT
#include "mixture_case.hpp"

#include "assess/mixture/flash_point.hpp"

#include <doctest/doctest.h>

#include <cmath>
#include <string>

using namespace routeweigh;
using namespace routeweigh::test::mixtures;
using doctest::Approx;

namespace {

const FlashPointData& data() {
    return rules().flash_points;
}

constexpr double m_ethanol = 46.069, m_water = 18.015;

double aqueous_ethanol(double mass_percent, bool ideal = false) {
    const VolatilePart ethanol{mass_percent / m_ethanol, 13, *data().antoine("ethanol"),
                               *data().with_water("ethanol")};
    return *liaw_flash_point({ethanol}, (100 - mass_percent) / m_water, ideal);
}

FlashPoint screened(const std::vector<std::pair<std::string_view, double>>& percent_by_name) {
    const Mixture mixture = mixture_of(Catalogue::embedded(), "mixture", percent_by_name);
    return flash_point_of(resolve(mixture, rules().notes), data(), 60);
}

} // namespace

TEST_CASE("aqueous ethanol agrees with an independent evaluation of the method") {
    // Liaw's method with van Laar and with ideal mixing, flash point of ethanol 13 degC, worked in a script
    // of its own before this program was written.
    struct Row {
        double percent, van_laar, ideal;
    };
    constexpr Row rows[] = {{5, 56.2, 94.6},  {10, 43.6, 75.5}, {20, 33.5, 57.8}, {30, 28.9, 47.7},
                            {40, 26.3, 40.4}, {50, 24.4, 34.6}, {60, 22.8, 29.6}, {70, 21.1, 25.2},
                            {80, 19.1, 21.0}, {90, 16.5, 17.0}, {96, 14.5, 14.6}};
    for (const Row& row : rows) {
        CAPTURE(row.percent);
        CHECK(aqueous_ethanol(row.percent) == Approx(row.van_laar).epsilon(0.003));
        CHECK(aqueous_ethanol(row.percent, true) == Approx(row.ideal).epsilon(0.003));
    }
}

TEST_CASE("aqueous ethanol agrees with a published table within a few degrees") {
    // Flash points of ethanol in water as an engineering reference prints them, read in two public copies of
    // which one says per cent by mass and one by volume: taken by volume (ethanol 0.789 g/mL, water the
    // rest).
    struct Row {
        double percent, celsius;
    };
    constexpr Row rows[] = {{5, 62},  {10, 49}, {20, 36}, {30, 29}, {40, 26}, {50, 24},
                            {60, 22}, {70, 21}, {80, 20}, {90, 17}, {96, 17}};
    // Density of the mixtures at 20 degC, g/mL (handbook, memory): turns volume into mass.
    constexpr double density[] = {0.9911, 0.9844, 0.9734, 0.9622, 0.9480, 0.9301,
                                  0.9091, 0.8855, 0.8593, 0.8293, 0.8074};
    for (std::size_t i = 0; i < std::size(rows); ++i) {
        CAPTURE(rows[i].percent);
        const double mass_percent = rows[i].percent * 0.78924 / density[i];
        CHECK(std::abs(aqueous_ethanol(mass_percent) - rows[i].celsius) < 2.6);
    }
}

TEST_CASE("an ideal pair of solvents") {
    // Half ethanol, half ethyl acetate by mass; flash points 13 and -4 degC: about 5.4 degC (worked beside
    // the method's description).
    const VolatilePart ethanol{50 / m_ethanol, 13, *data().antoine("ethanol"), {}};
    const VolatilePart ester{50 / 88.106, -4, *data().antoine("ethyl-acetate"), {}};
    CHECK(*liaw_flash_point({ethanol, ester}, 0, true) == Approx(5.4).epsilon(0.02));
}

TEST_CASE("vapour pressures reach one atmosphere at the boiling point of the catalogue") {
    // The boiling points are those of handbooks, named in the catalogue; the constants are from memory.
    int found = 0, rows = 0;
    for (const Substance* const substance : Catalogue::embedded().all_substances()) {
        const AntoineConstants* const antoine = data().antoine(substance->id);
        if (antoine == nullptr) continue;
        CAPTURE(substance->id);
        const double boiling = antoine->b / (antoine->a - std::log10(760.0)) - antoine->c;
        CHECK(std::abs(boiling - *substance->boiling_point) < 0.9);
        ++found;
    }
    const std::string& text = Catalogue::embedded().scheme("ghs_flash_points")->text;
    for (std::size_t at = text.find("\"b\":"); at != std::string::npos; at = text.find("\"b\":", at + 1))
        ++rows;
    CHECK(found == rows); // none is of a substance that the catalogue does not have
    CHECK(found > 0);
}

TEST_CASE("activity in water gives the known azeotropes") {
    // Azeotropes with water at one atmosphere (handbook, memory): ethanol 95.6 % at 78.2 degC, 2-propanol
    // 87.7 % at 80.3 degC. Methanol and acetone have none.
    const AntoineConstants water{8.07131, 1730.63, 233.426}; // memory
    const auto boiling = [&](std::string_view id, double x) {
        const WaterPair& pair = *data().with_water(id);
        const double a = pair.solvent_in_water, b = pair.water_in_solvent, y = 1 - x;
        const double g1 = std::exp(a * std::pow(b * y / (a * x + b * y), 2));
        const double g2 = std::exp(b * std::pow(a * x / (a * x + b * y), 2));
        double low = 40, high = 110;
        while (high - low > 1e-6) {
            const double t = 0.5 * (low + high);
            (x * g1 * data().antoine(id)->pressure(t) + y * g2 * water.pressure(t) < 760 ? low : high) = t;
        }
        return low;
    };
    const auto lowest = [&](std::string_view id) {
        double best_x = 0, best = 1e9;
        for (double x = 0.001; x < 1; x += 0.001)
            if (const double t = boiling(id, x); t < best) {
                best = t;
                best_x = x;
            }
        return std::pair(best_x, best);
    };
    const auto mass_percent = [](double x, double m) { return 100 * x * m / (x * m + (1 - x) * m_water); };
    const auto [x_ethanol, t_ethanol] = lowest("ethanol");
    CHECK(std::abs(t_ethanol - 78.2) < 0.2);
    CHECK(std::abs(mass_percent(x_ethanol, m_ethanol) - 95.6) < 1.5);
    const auto [x_propanol, t_propanol] = lowest("2-propanol");
    CHECK(std::abs(t_propanol - 80.3) < 0.5);
    CHECK(std::abs(mass_percent(x_propanol, 60.096) - 87.7) < 1.5);
    CHECK(lowest("methanol").first > 0.99);
    CHECK(lowest("acetone").first > 0.99);
}

TEST_CASE("the method that was used is told, and where it may not be") {
    CHECK(screened({{"ethanol", 30}, {"water", 70}}).method == FlashPointMethod::activity);
    CHECK(screened({{"ethanol", 100}}).method == FlashPointMethod::neat);
    CHECK(screened({{"water", 100}}).method == FlashPointMethod::not_flammable);
    CHECK(screened({{"ethanol", 0.9}, {"water", 99.1}}).method == FlashPointMethod::not_flammable);
    // No constants for hexane in water, and none for pairs of solvents: the lowest flash point as a bound.
    const FlashPoint bound = screened({{"hexane", 2}, {"ethanol", 58}, {"water", 40}});
    CHECK(bound.method == FlashPointMethod::lowest);
    CHECK(*bound.celsius == -22);
    CHECK(screened({{"acetic acid", 98}, {"ethanol", 2}}).method == FlashPointMethod::lowest);
    CHECK(screened({{"dichloromethane", 50}, {"ethanol", 50}}).method == FlashPointMethod::halogenated);
    // Mostly flammable: as if the halogenated solvent were not there, until somebody tests it. Our line.
    const auto flames = bottle({{"dichloromethane", 5}, {"ethanol", 95}});
    CHECK(flames.result("flammable_liquid")->statement == "H225");
    CHECK(flames.result("flammable_liquid")->screened);
    // A halogenated solid that is dissolved is no solvent.
    CHECK(screened({{"4-bromoacetanilide", 5}, {"ethanol", 45}, {"water", 50}}).method ==
          FlashPointMethod::activity);
    const auto judged = bottle({{"dichloromethane", 50}, {"ethanol", 50}});
    CHECK(judged.result("flammable_liquid")->outcome == MixtureOutcome::test_needed);
    CHECK(all_lines(*judged.result("flammable_liquid")).find("EUH209") != std::string::npos);
    const auto estimate = bottle({{"ethanol", 30}, {"water", 70}});
    CHECK(found(estimate, "flammable_liquid") == "Flam. Liq. 3");
    CHECK(estimate.result("flammable_liquid")->screened);
    CHECK(all_lines(*estimate.result("flammable_liquid")).find("not to be used") != std::string::npos);
}

TEST_CASE("37 per cent of ethanol by volume flash at about 28 degC") {
    // 37 mL in 100 mL at 0.952 g/mL (handbook, memory): 30.7 % by mass.
    const FlashPoint found = screened({{"ethanol", 30.7}, {"water", 69.3}});
    CHECK(*found.celsius > 26.5);
    CHECK(*found.celsius < 29.5);
}

TEST_CASE("a test decides near a limit") {
    const auto lines = [](double percent) {
        const auto judged = bottle({{"ethanol", percent}, {"water", 100 - percent}});
        return all_lines(*judged.result("flammable_liquid"));
    };
    CHECK(lines(50).find("only a closed-cup test decides") != std::string::npos); // about 23 degC
    CHECK(lines(20).find("only a closed-cup test decides") == std::string::npos); // about 33 degC
}

TEST_CASE("a stated flash point comes first, with the boiling point") {
    Mixture mixture = mixture_of(Catalogue::embedded(), "m", {{"dichloromethane", 50}, {"ethanol", 50}});
    mixture.facts.flash_point = 70;
    CHECK(found(classify(mixture, rules()), "flammable_liquid") == "");
    CHECK(found(classify(mixture, rules(MixtureRegime::un)), "flammable_liquid") == "Flam. Liq. 4");
    CHECK(found(classify(mixture, rules(MixtureRegime::us)), "flammable_liquid") == "Flam. Liq. 4");
    mixture.facts.flash_point = 20;
    mixture.facts.boiling_point = 35;
    CHECK(found(classify(mixture, rules()), "flammable_liquid") == "Flam. Liq. 1");
    mixture.facts.boiling_point = 35.1;
    CHECK(found(classify(mixture, rules()), "flammable_liquid") == "Flam. Liq. 2");
    for (const auto& [celsius, category] : {std::pair(93.0, "Flam. Liq. 4"), {93.1, ""}}) {
        mixture.facts.flash_point = celsius;
        CHECK(found(classify(mixture, rules(MixtureRegime::us)), "flammable_liquid") == category);
    }
}

TEST_CASE("several solvents in water are less cautious than none of them alone, and dilution raises the "
          "flash point") {
    double last = -100;
    for (const double percent : {90.0, 70.0, 50.0, 30.0, 10.0, 5.0}) {
        const double now =
            *screened({{"ethanol", percent / 2}, {"acetone", percent / 2}, {"water", 100 - percent}}).celsius;
        CHECK(now > last);
        last = now;
    }
    const double alone = *screened({{"ethanol", 20}, {"water", 80}}).celsius;
    CHECK(*screened({{"ethanol", 20}, {"acetone", 5}, {"water", 75}}).celsius < alone);
}
