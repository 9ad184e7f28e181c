// SPDX-License-Identifier: MIT
// Two routes whose hazard figures and score were worked out on paper, all endpoints and places.
// Classifications and limits stand in data/substances.json; those of the two "test" substances are invented,
// the others were copied from Annex VI of Regulation (EC) No 1272/2008 and the exposure limits of the
// catalogue.
//
// Both routes charge 10 mmol of acetanilide and isolate 80 %: 8 mmol x 214.062 g/mol = 1.712496 g of product,
// P. Molar masses: acetanilide 135.166, bromine 159.808, hydrogen bromide 80.912, hydrogen peroxide 34.014.
#include "hazard_case.hpp"

#include <doctest/doctest.h>

#include <cmath>
#include <limits>

using namespace routeweigh;
using namespace routeweigh::test;
using doctest::Approx;

namespace {

constexpr double unbounded = std::numeric_limits<double>::infinity();

struct HandCell {
    double bottle, flask, waste;
};
struct HandRow {
    const char* endpoint;
    HandCell value, low, high;
};

void check(double found, double expected, const std::string& where) {
    INFO(where);
    if (std::isinf(expected))
        CHECK(found == expected);
    else
        CHECK(found == Approx(expected).epsilon(1e-9));
}

void check_rows(const WeighedRoute& route, const std::vector<HandRow>& rows) {
    const HazardValues& values = route.values();
    REQUIRE(rows.size() == schemes().score.endpoints.size());
    for (const HandRow& row : rows) {
        const std::size_t e = endpoint(row.endpoint);
        const auto compare = [&](HazardPlace place, double HandCell::*member) {
            const std::size_t cell = cell_index(e, place);
            const std::string where =
                std::string(row.endpoint) + " " + std::string(place_ids[index_of(place)]);
            check(values.value[cell], row.value.*member, where + ", value");
            check(values.low[cell], row.low.*member, where + ", low");
            check(values.high[cell], row.high.*member, where + ", high");
        };
        compare(HazardPlace::bottle, &HandCell::bottle);
        compare(HazardPlace::flask, &HandCell::flask);
        compare(HazardPlace::waste, &HandCell::waste);
    }
}

} // namespace

// Grams per gram of product, P = 1.712496 g:
//   bottle: acetanilide 1.35166/P = 0.789292354551, bromine 1.59808/P = 0.933187581168, acetic acid 10/P
//   = 5.839429697938,
//           test promoter 0.05/P = 0.029197148490
//   flask:  the same, and what the reaction makes at most, 10 mmol: product 2.14062/P = 1.25, hydrogen
//   bromide
//           0.80912/P = 0.472479935720
//   waste, all made (80 % isolated): acetic acid, promoter, hydrogen bromide as in the flask, lost product
//           2 mmol = 0.428124 g/P = 0.25
//   waste, 2 mmol never reacted: acetic acid, promoter, hydrogen bromide 8 mmol 0.647296/P = 0.377983948576,
//   acetanilide
//           0.270332/P = 0.157858470910, bromine 0.319616/P = 0.186637516234
// m3 of air per gram: bromine 1000/(0.1 x 159.808/24.45) = 1529.960953143773; acetic acid 1000/(10
// x 60.052/24.45) =
//   40.714713914607; acetanilide (H302, band C) and product (H315, H319, band C), both solid: 1000 to 10 000;
//   promoter (H360 1B and H317, band D, solid): 10 000 to 100 000; hydrogen bromide has a ceiling only: 0 in
//   the figure.
TEST_CASE("worked by hand: bromine poured into acetic acid") {
    const WeighedRoute route = small_route("bromine_poured");
    CHECK(route.evaluation().product == Approx(1.712496));
    check_rows(
        route,
        {
            // bottle: 0.933187581168 x 1529.960953144 + 5.839429697938 x 40.714713915 + 789.292354551 +
            // 291.971484897
            //         = 1427.740561146 + 237.750709576 + 789.292354551 + 291.971484897; flask: + 1.25 x 1000
            // waste: 237.750709576 + 0.25 x 1000 + 291.971484897
            // high, bottle and flask: with 10 000 and 100 000 m3/g; waste, all made: 237.750710 + 2500 +
            // 2919.714849; waste, unreacted: 237.750710 + 285.548112 + 1578.584709 + 2919.714849 =
            // 5021.598380, which is less
            {"inhalation",
             {2746.75511017023, 3996.75511017023, 779.722194472906},
             {2746.75511017023, 3996.75511017023, 779.722194472906},
             {12478.1296652057, 24978.1296652057, 5657.465558545}},
            // bromine H400, no M-factor known: 1 g/m3; in the waste only if some never reacts
            {"aquatic_acute",
             {0.933187581168073, 0.933187581168073, 0},
             {0.933187581168073, 0.933187581168073, 0},
             {0.933187581168073, 0.933187581168073, 0.186637516233615}},
            // promoter H410, M = 10: 0.01 g/m3, 100 m3/g x 0.029197148490
            {"aquatic_chronic",
             {2.91971484896899, 2.91971484896899, 2.91971484896899},
             {2.91971484896899, 2.91971484896899, 2.91971484896899},
             {2.91971484896899, 2.91971484896899, 2.91971484896899}},
            // acetanilide H302, 500 mg/kg: 2 kg/g x 0.789292354551; bromine's H330 is no oral dose
            {"oral",
             {1.57858470910297, 1.57858470910297, 0},
             {1.57858470910297, 1.57858470910297, 0},
             {1.57858470910297, 1.57858470910297, 0.315716941820594}},
            // promoter H311, 300 mg/kg: 3.3333 kg/g x 0.029197148490
            {"dermal",
             {0.0973238282989663, 0.0973238282989663, 0.0973238282989663},
             {0.0973238282989663, 0.0973238282989663, 0.0973238282989663},
             {0.0973238282989663, 0.0973238282989663, 0.0973238282989663}},
            // acetic acid H226
            {"fire",
             {5.83942969793798, 5.83942969793798, 5.83942969793798},
             {5.83942969793798, 5.83942969793798, 5.83942969793798},
             {5.83942969793798, 5.83942969793798, 5.83942969793798}},
            // H314: bromine, acetic acid, hydrogen bromide (also by the entry of its solution)
            // waste, all made: 5.839429698 + 0.472479936; unreacted: 5.839429698 + 0.377983949 + 0.186637516
            {"contact",
             {6.77261727910605, 7.24509721482561, 6.31190963365754},
             {6.77261727910605, 7.24509721482561, 6.31190963365754},
             {6.77261727910605, 7.24509721482561, 6.40405116274724}},
            // promoter H317 and H360FD
            {"sensitisation",
             {0.0291971484896899, 0.0291971484896899, 0.0291971484896899},
             {0.0291971484896899, 0.0291971484896899, 0.0291971484896899},
             {0.0291971484896899, 0.0291971484896899, 0.0291971484896899}},
            {"long_term",
             {0.0291971484896899, 0.0291971484896899, 0.0291971484896899},
             {0.0291971484896899, 0.0291971484896899, 0.0291971484896899},
             {0.0291971484896899, 0.0291971484896899, 0.0291971484896899}},
        });

    // d = log10(1 + x/x0), bottle, flask, waste:
    //   inhalation 3.438978 3.601816 2.892496   aquatic acute 2.970434 2.970434 0   aquatic chronic 3.465489
    //   (3 times) oral 0.411381 0.411381 0   dermal 0.040335 (3 times)   fire 2.767114 (3 times)
    //   contact 2.831397 2.860643 2.800848   sensitisation, long-term 0.593254 (3 times each)
    // sum 47.568150, divided by 27
    const HazardScores scores = all_scores(schemes().score, route.values(), &route.values(1));
    CHECK(scores.nominal.value == Approx(1.761783328959).epsilon(1e-11));
    CHECK(scores.nominal.low == Approx(1.761783328959).epsilon(1e-11));
    CHECK(scores.nominal.high == Approx(1.936299470369).epsilon(1e-11));
    CHECK(scores.nominal.ranked());
    REQUIRE(scores.scales.size() == 2);
    CHECK(scores.scales[0].score.value == Approx(1.108486157570).epsilon(1e-11)); // every x0 tenfold
    CHECK(scores.scales[1].score.value == Approx(2.565716895445).epsilon(1e-11)); // every x0 a tenth

    // Second banding: acetanilide H302 B (1000 to 10 000), product H335 C (10 000 to 100 000), promoter H360
    // D (100 000, no bound): bottle 1665.491271 + 789.292355 + 2919.714849; flask + 12 500; waste 237.750710
    // + 2500 + 2919.714849
    const auto second = [&](HazardPlace place) {
        return route.values(1).value[cell_index(endpoint("inhalation"), place)];
    };
    CHECK(second(HazardPlace::bottle) == Approx(5374.498474).epsilon(1e-9));
    CHECK(second(HazardPlace::flask) == Approx(17874.498474).epsilon(1e-9));
    CHECK(second(HazardPlace::waste) == Approx(5657.465559).epsilon(1e-9));
    // Here the reading in which 2 mmol never reacted is the lower one, for the product is in a worse group
    // than what it is made of: 237.750710 + 285.548112 + 157.858471 + 2919.714849
    CHECK(route.values(1).low[cell_index(endpoint("inhalation"), HazardPlace::waste)] ==
          Approx(3600.872142).epsilon(1e-9));
    REQUIRE(scores.second_banding.has_value());
    CHECK(scores.second_banding->value == Approx(1.828527212071).epsilon(1e-11));
    CHECK(!scores.second_banding->ranked());
}

// Grams per gram of product:
//   bottle: acetanilide 0.789292354551, ethanol 5/P = 2.919714848969, hydrogen bromide 14 mmol 1.132768/P =
//           0.661471910007 (in water: entry of the solution), hydrogen peroxide 10 mmol 0.34014/P =
//           0.198622361746, test catalyst 0.1/P = 0.058394296979
//   flask:  the same; bromine at most 7 mmol (all the bromide, before any is used) 1.118656/P =
//   0.653231306818;
//           product 1.25
//   waste, all made: peroxide 0, hydrogen bromide 14 - 20 + 10 = 4 mmol 0.188991974288, ethanol, catalyst,
//   product 0.25 waste, 2 mmol never brominated: hydrogen bromide 14 - 20 + 8 = 2 mmol 0.094495987144,
//   bromine 10 - 8 = 2 mmol
//           0.186637516234, acetanilide 0.157858470910, ethanol, catalyst
// m3 of air per gram: peroxide 1000/(1 x 34.014/24.45) = 718.821661668725; ethanol (15 minutes) and hydrogen
// bromide
//   (ceiling) 0 in the figure, and 1000/(1000 x 46.069/24.45) = 0.530725650654 and 151.090073165909 beside it
// The catalyst has no data: 0 in the low end; in the high end no bound, 1/1, 1/0.1 m3, 1000/0.5, 1000/5 kg
// and 1 g.
TEST_CASE(
    "worked by hand: bromine made from hydrobromic acid and hydrogen peroxide, with an unassessed catalyst") {
    const WeighedRoute route = small_route("bromine_made");
    CHECK(route.evaluation().product == Approx(1.712496));
    check_rows(
        route,
        {
            // bottle: 789.292355 + 0.198622362 x 718.821662; flask: + 0.653231307 x 1529.960953 + 1250;
            // waste: 250 if all is made (unreacted: 285.548112 + 157.858471)
            {"inhalation",
             {932.066410666069, 3181.48480346815, 250},
             {932.066410666069, 3181.48480346815, 250},
             {unbounded, unbounded, unbounded}},
            // bromine in the flask; high: + 0.058394297; waste, high: 0.186637516 + 0.058394297
            {"aquatic_acute",
             {0, 0.653231306817651, 0},
             {0, 0.653231306817651, 0},
             {0.0583942969793798, 0.711625603797031, 0.245031813212994}},
            {"aquatic_chronic",
             {0, 0, 0},
             {0, 0, 0},
             {0.583942969793798, 0.583942969793798, 0.583942969793798}},
            // acetanilide and peroxide H302: 2 x (0.789292355 + 0.198622362); high: + 2000 x 0.058394297;
            // waste, high: 2 x 0.157858471 + 116.788593959
            {"oral",
             {1.97582943259430, 1.97582943259430, 0},
             {1.97582943259430, 1.97582943259430, 0},
             {118.764423391354, 118.764423391354, 117.104310900580}},
            {"dermal", {0, 0, 0}, {0, 0, 0}, {11.6788593958760, 11.6788593958760, 11.6788593958760}},
            {"fire",
             {2.91971484896899, 2.91971484896899, 2.91971484896899},
             {2.91971484896899, 2.91971484896899, 2.91971484896899},
             {2.97810914594837, 2.97810914594837, 2.97810914594837}},
            // hydrogen bromide and peroxide 0.661471910 + 0.198622362; flask: + bromine; waste: 0.188991974;
            // unreacted 0.094495987 + 0.186637516 = 0.281133503
            {"contact",
             {0.860094271753043, 1.51332557857069, 0.188991974287823},
             {0.860094271753043, 1.51332557857069, 0.188991974287823},
             {0.918488568732423, 1.57171987555007, 0.339527800356906}},
            {"sensitisation",
             {0, 0, 0},
             {0, 0, 0},
             {0.0583942969793798, 0.0583942969793798, 0.0583942969793798}},
            {"long_term", {0, 0, 0}, {0, 0, 0}, {0.0583942969793798, 0.0583942969793798, 0.0583942969793798}},
        });

    // The labelled part: 0.661471910 x 151.090073166 + 2.919714849 x 0.530725651; waste with 0.188991974
    const auto labelled = [&](HazardPlace place) {
        return route.values().short_term[cell_index(endpoint("inhalation"), place)];
    };
    CHECK(labelled(HazardPlace::bottle) == Approx(101.491406843).epsilon(1e-9));
    CHECK(labelled(HazardPlace::flask) == Approx(101.491406843).epsilon(1e-9));
    CHECK(labelled(HazardPlace::waste) == Approx(30.104378786).epsilon(1e-9));

    // d: inhalation 2.969913 3.502766 2.399674   aquatic acute 0 2.815731 0   oral 0.473608 0.473608 0
    //    fire 2.466825 (3 times)   contact 1.939566 2.182793 1.298836   all others 0; sum 25.456971, divided
    //    by 27
    const HazardScores scores = all_scores(schemes().score, route.values(), &route.values(1));
    CHECK(scores.nominal.value == Approx(0.942850765537).epsilon(1e-11));
    CHECK(scores.nominal.low == Approx(0.942850765537).epsilon(1e-11));
    CHECK(!scores.nominal.ranked()); // an unassessed substance leaves the demand for air without a bound
    CHECK(scores.scales[0].score.value == Approx(0.554153457545).epsilon(1e-11));
    CHECK(scores.scales[1].score.value == Approx(1.374453338342).epsilon(1e-11));
    // Second banding: acetanilide B as before, product C: flask 13 181.484803 + 1250, waste 2500
    CHECK(scores.second_banding->value == Approx(1.004147607781).epsilon(1e-11));
}
