// SPDX-License-Identifier: MIT
// What leaves the pot and by which stream: filtrates, held liquor, vapour, gas, and what is left over.
//
// Most cases turn 10 g of the invented substance A into 10 g of its isomer P, so that grams can be followed.
#include "support/route_builder.hpp"

#include <doctest/doctest.h>

using namespace routeweigh;
using namespace routeweigh::test;
using doctest::Approx;

namespace {

const Catalogue& separation_bench() {
    static const Catalogue catalogue =
        catalogue_of({"A | C10H20", "P | C10H20", "water | H2O | liquid | 1.0", "salt | NaCl",
                      "ether | C4H10O | liquid", "carbonate | NaHCO3", "acid | HCl | gas",
                      "carbon dioxide | CO2 | gas", "oxygen | O2 | gas", "nitric oxide | NO | gas",
                      "nitrogen dioxide | NO2 | gas", "drier | MgSO4", "wet drier | MgSO4.7H2O"});
    return catalogue;
}

/// A -> P in water with salt, then the separations.
std::string with_separations(const Items& separations, std::string_view more = {}) {
    return route("P", {step("P", "A", "A -> P",
                            {stage("reaction",
                                   {charge("A", "10 g", "substrate"), charge("water", "20 g", "solvent"),
                                    charge("salt", "5 g", "reagent")},
                                   {reaction("A -> P")}, separations)},
                            more)});
}

} // namespace

TEST_CASE("a filtration that keeps the product lets all else go") {
    const Built built(with_separations({filtration("filtrate", R"("keeps": ["P"])")}), separation_bench());
    CHECK(built.out("filtrate", "water") == Approx(20));
    CHECK(built.out("filtrate", "salt") == Approx(5));
    CHECK(built.out("filtrate") == Approx(25));
    CHECK(built.out("residue") == 0);
    CHECK(built.nominal.product == Approx(10));
    CHECK(built.closure() < 1e-12);
}

TEST_CASE("the product stays in the pot although no list names it") {
    const Built kept(with_separations({filtration("filtrate", R"("keeps": ["salt"])")}), separation_bench());
    CHECK(kept.out("filtrate") == Approx(20));
    CHECK(kept.out("residue", "salt") == Approx(5));
    CHECK(kept.nominal.product == Approx(10));
    const Built left(with_separations({filtration("filtrate", R"("leaves": ["water"])")}),
                     separation_bench());
    CHECK(left.out("filtrate") == Approx(20));
    CHECK(left.out("residue") == Approx(5));
    CHECK(left.nominal.product == Approx(10));
}

TEST_CASE("fractions say how much is kept, or how much leaves") {
    const Built kept(
        with_separations({filtration("filtrate", R"("keeps": {"salt": "40 %", "water": "5 %"})")}),
        separation_bench());
    CHECK(kept.out("filtrate", "salt") == Approx(3));
    CHECK(kept.out("filtrate", "water") == Approx(19));
    CHECK(kept.out("residue") == Approx(3));
    const Built left(with_separations({filtration("filtrate", R"("leaves": {"salt": "40 %"})")}),
                     separation_bench());
    CHECK(left.out("filtrate") == Approx(2));
    CHECK(left.out("residue", "water") == Approx(20));
}

TEST_CASE("separations follow each other: what left once cannot leave again") {
    const Built built(with_separations({filtration("first", R"("leaves": {"water": "50 %"})"),
                                        filtration("second", R"("leaves": {"water": "50 %"})")}),
                      separation_bench());
    CHECK(built.out("first") == Approx(10));
    CHECK(built.out("second") == Approx(5));
    CHECK(built.out("residue", "water") == Approx(5));
}

TEST_CASE("two separations into one stream add up") {
    const Built built(with_separations({filtration("filtrate", R"("leaves": {"water": "50 %"})"),
                                        filtration("filtrate", R"("keeps": ["P"])")}),
                      separation_bench());
    CHECK(built.out("filtrate") == Approx(25));
}

TEST_CASE("the cake holds liquor of the composition of the liquor") {
    // 10 g of cake holds 5 g of the 25 g of brine, a fifth: 4 g of water and 1 g of salt.
    const Built built(with_separations({filtration("filtrate", R"("keeps": ["P"], "held": "0.5 g/g")")}),
                      separation_bench());
    CHECK(built.out("filtrate", "water") == Approx(16));
    CHECK(built.out("filtrate", "salt") == Approx(4));
    CHECK(built.out("residue", "water") == Approx(4));
    CHECK(built.out("residue", "salt") == Approx(1));
}

TEST_CASE("a wash thins what the cake holds, and drying takes the liquid of it") {
    // The cake holds 4 g of water and 1 g of salt; 20 g of fresh water make 25 g of liquor, of which 5 g
    // stay: 4.8 g of water and 0.2 g of salt. Drying takes the water, the salt stays on the crystals.
    const Built built(
        route("P", {step("P", "A", "A -> P",
                         {stage("reaction",
                                {charge("A", "10 g", "substrate"), charge("water", "20 g", "solvent"),
                                 charge("salt", "5 g", "reagent")},
                                {reaction("A -> P")},
                                {filtration("filtrate", R"("keeps": ["P"], "held": "0.5 g/g")")}),
                          stage("workup", {charge("water", "20 g", "wash")}, {},
                                {filtration("washes", R"("keeps": ["P"], "held": "0.5 g/g")")}),
                          stage("purification", {}, {}, {R"({"by": "drying", "to": "vapour"})"})})}),
        separation_bench());
    CHECK(built.out("washes", "water") == Approx(19.2));
    CHECK(built.out("washes", "salt") == Approx(0.8));
    CHECK(built.out("vapour") == Approx(4.8));
    CHECK(built.out("vapour", "salt") == 0);
    CHECK(built.out("residue") == Approx(0.2));
    CHECK(built.closure() < 1e-12);
    CHECK(built.closure(true) < 1e-12);
}

TEST_CASE("liquor is held by all that is kept, and counted after fractions") {
    // Kept: 10 g of product and 2 g of salt; they hold 6 g of the 23 g that would leave.
    const Built built(
        with_separations({filtration("filtrate", R"("keeps": {"salt": "40 %"}, "held": "0.5 g/g")")}),
        separation_bench());
    CHECK(built.out("filtrate") == Approx(17));
    CHECK(built.out("filtrate", "salt") == Approx(3 * 17.0 / 23));
    CHECK(built.out("residue") == Approx(8));
}

TEST_CASE("with a list of what leaves, everything else holds liquor") {
    // 10 g of product and 5 g of salt hold 3 g of the water.
    const Built built(with_separations({filtration("filtrate", R"("leaves": ["water"], "held": "0.2 g/g")")}),
                      separation_bench());
    CHECK(built.out("filtrate") == Approx(17));
}

TEST_CASE("a cake cannot hold more liquor than there is") {
    const Built built(with_separations({filtration("filtrate", R"("keeps": ["P"], "held": "9 g/g")")}),
                      separation_bench());
    CHECK(built.out("filtrate") == 0);
    CHECK(built.out("residue") == Approx(25));
    CHECK(built.closure() < 1e-12);
}

TEST_CASE("liquor that holds nothing leaves nothing behind") {
    const Built built(with_separations({filtration("first", R"("keeps": ["P"])"),
                                        filtration("second", R"("keeps": ["P"], "held": "0.5 g/g")")}),
                      separation_bench());
    CHECK(built.out("second") == 0);
    CHECK(built.closure() < 1e-12);
}

TEST_CASE("the lost product leaves first, so less cake holds less liquor") {
    // 8 of 10 g are isolated: 2 g go with the filtrate, 8 g of cake hold 4 g of 25 g of brine.
    const Built built(with_separations({filtration("filtrate", R"("keeps": ["P"], "held": "0.5 g/g")")},
                                       R"("isolated": {"yield": "80 %"})"),
                      separation_bench());
    CHECK(built.out("filtrate", "P") == Approx(2));
    CHECK(built.out("filtrate", "water") == Approx(20 * 21.0 / 25));
    CHECK(built.out("residue", "water") == Approx(20 * 4.0 / 25));
    // Read as unreacted, 2 g of A are part of the liquor.
    CHECK(built.out("filtrate", "P", true) == 0);
    CHECK(built.out("filtrate", "A", true) == Approx(2 * 23.0 / 27));
    CHECK(built.out("residue", "water", true) == Approx(20 * 4.0 / 27));
    CHECK(built.closure() < 1e-12);
    CHECK(built.closure(true) < 1e-12);
}

TEST_CASE("the loss follows the declared shares") {
    const Built built(with_separations({filtration("first", R"("leaves": ["water"], "loss": "25 %")"),
                                        filtration("second", R"("leaves": ["salt"], "loss": "75 %")"),
                                        filtration("third", R"("leaves": [])")},
                                       R"("isolated": {"yield": "60 %"})"),
                      separation_bench());
    CHECK(built.out("first", "P") == Approx(1));
    CHECK(built.out("second", "P") == Approx(3));
    CHECK(built.out("third", "P") == 0);
    CHECK(built.nominal.product == Approx(6));
    CHECK(built.closure() < 1e-12);
}

TEST_CASE("without shares the last liquid stream takes the loss, and drying does not") {
    const Built built(with_separations({filtration("first", R"("leaves": ["salt"])"),
                                        filtration("second", R"("leaves": {"water": "90 %"})"),
                                        R"({"by": "drying", "to": "vapour"})"},
                                       R"("isolated": {"yield": "60 %"})"),
                      separation_bench());
    CHECK(built.out("first", "P") == 0);
    CHECK(built.out("second", "P") == Approx(4));
    CHECK(built.out("vapour", "P") == 0);
    CHECK(built.out("vapour", "water") == Approx(2));
}

TEST_CASE("without any liquid stream the loss stays with what is left over") {
    const Built built(
        with_separations({R"({"by": "evaporation", "to": "vapour"})"},
                         R"("isolated": {"yield": "60 %"}, "rest": "what sticks to the flask")"),
        separation_bench());
    CHECK(built.out("what sticks to the flask", "P") == Approx(4));
    CHECK(built.out("what sticks to the flask", "salt") == Approx(5));
    CHECK(built.out("vapour") == Approx(20));
}

TEST_CASE("product is not lost before it is there") {
    // The brine is drawn off before the reaction; nothing is separated after it.
    const Built built(
        route("P",
              {step("P", "A", "A -> P",
                    {stage("reaction", {charge("A", "10 g", "substrate"), charge("water", "20 g", "solvent")},
                           {}, {R"({"by": "decantation", "to": "water layer", "leaves": ["water"]})"}),
                     stage("reaction", {}, {reaction("A -> P")})},
                    R"("isolated": {"yield": "70 %"})")}),
        separation_bench());
    CHECK(built.out("water layer", "P") == 0);
    CHECK(built.out("residue", "P") == Approx(3));
    CHECK(built.closure() < 1e-12);
}

TEST_CASE("a liquor takes no more product than has formed by then") {
    // 10 g form in the end, 2 g are isolated, but only 6 g are there when the only liquor is drawn off.
    const Built built(
        route("P",
              {step("P", "A", "A -> P",
                    {stage("reaction", {charge("A", "6 g", "substrate")}, {reaction("A -> P")},
                           {filtration("first liquor", R"("leaves": ["water"])")}),
                     stage("reaction", {charge("A", "4 g", "substrate"), charge("water", "1 g", "solvent")},
                           {reaction("A -> P")})},
                    R"("isolated": {"yield": "20 %"})")}),
        separation_bench());
    CHECK(built.out("first liquor", "P") == Approx(6));
    CHECK(built.out("residue", "P") == Approx(2));
    CHECK(built.closure() < 1e-12);
}

TEST_CASE("shares of the loss that miss 100 % by a rounding lose nothing from the ledger") {
    const Built built(with_separations({filtration("first", R"("leaves": ["water"], "loss": "33.33334 %")"),
                                        filtration("second", R"("leaves": ["salt"], "loss": "66.66664 %")")},
                                       R"("isolated": {"yield": "40 %"})"),
                      separation_bench());
    CHECK(built.out("first", "P") + built.out("second", "P") == Approx(6).epsilon(1e-6));
    CHECK(built.closure() < 1e-12);
}

TEST_CASE(
    "a filtration between two portions: what it takes changes what forms later, and the ledger closes") {
    // The cake of the first crop holds B and A in proportion to its own mass, and they react later.
    const Built built(
        route("P", {step("P", "A", "A + salt -> P + salt",
                         {stage("reaction",
                                {charge("A", "10 g", "substrate"), charge("salt", "5 g", "reagent"),
                                 charge("water", "20 g", "solvent")},
                                {reaction("A -> P", R"("conversion": "50 %", "of": "A")")},
                                {filtration("first liquor", R"("keeps": ["P"], "held": "0.8 g/g")")}),
                          stage("reaction", {}, {reaction("A -> P")})},
                         R"("isolated": {"yield": "40 %"})")}),
        separation_bench());
    // x g of P are lost with the first liquor. 5 - x g of cake hold 0.8 (5 - x) of 30 g of liquor, a sixth of
    // which is A: 5 - x + 0.8 (5 - x)/6 = 4, so 5 - x = 4/(1 + 0.8/6).
    const double cake = 4 / (1 + 0.8 / 6);
    CHECK(built.out("first liquor", "P") == Approx(5 - cake));
    CHECK(built.out("first liquor", "A") == Approx(5 - 0.8 * cake / 6));
    CHECK(built.nominal.product == Approx(4));
    CHECK(built.closure() < 1e-12);
    CHECK(built.closure(true) < 1e-12);
}

TEST_CASE("a share of the loss before the product forms is refused") {
    const auto found = problems_of(
        route("P",
              {step("P", "A", "A -> P",
                    {stage("reaction", {charge("A", "10 g", "substrate"), charge("water", "20 g", "solvent")},
                           {}, {filtration("filtrate", R"("leaves": ["water"], "loss": "100 %")")}),
                     stage("reaction", {}, {reaction("A -> P")})},
                    R"("isolated": {"yield": "70 %"})")}),
        separation_bench());
    CHECK(any_holds(found, {"/steps/0/stages/0/separations/0/loss", "no P is there yet"}));
}

TEST_CASE("drying and evaporation without a list take liquids and gases, never solids") {
    const Built built(with_separations({R"({"by": "evaporation", "to": "distilled off"})"}),
                      separation_bench());
    CHECK(built.out("distilled off", "water") == Approx(20));
    CHECK(built.out("distilled off") == Approx(20));
    const Built listed(with_separations({R"({"by": "drying", "to": "oven", "leaves": {"water": "95 %"}})"}),
                       separation_bench());
    CHECK(listed.out("oven") == Approx(19));
}

TEST_CASE("kinds of stream: liquid, vapour, gas, and what is left over") {
    const Built built(
        with_separations({filtration("filtrate", R"("leaves": ["salt"])"),
                          R"({"by": "distillation", "to": "distillate", "leaves": {"water": "50 %"}})",
                          R"({"by": "drying", "to": "vapour"})"}),
        separation_bench());
    for (const FlatStream& stream : built.flat.streams()) {
        CAPTURE(stream.name);
        const StreamKind expected = stream.name == "vapour"    ? StreamKind::vapour
                                    : stream.name == "gas"     ? StreamKind::gas
                                    : stream.name == "residue" ? StreamKind::residue
                                                               : StreamKind::liquid;
        CHECK(stream.kind == expected);
    }
    CHECK(built.flat.streams().size() == 5);
}

namespace {

/// A -> P; then the acid is neutralised in water: acid + carbonate -> salt + water + carbon dioxide.
std::string neutralised(std::string_view more) {
    return route(
        "P", {step("P", "A", "A -> P",
                   {stage("reaction", {charge("A", "10 mmol", "substrate"), charge("acid", "3 mmol", "acid")},
                          {reaction("A -> P")}),
                    stage("workup",
                          {charge("water", "20 g", "solvent"), charge("carbonate", "5 mmol", "neutraliser")},
                          {reaction("carbonate + acid -> salt + water + carbon dioxide")},
                          {filtration("filtrate", R"("keeps": ["P"])")})},
                   more)});
}

} // namespace

TEST_CASE("a gas that forms leaves by the gas stream") {
    const Built built(neutralised(""), separation_bench());
    CHECK(built.mmol_out("gas", "carbon dioxide") == Approx(3));
    CHECK(built.out("filtrate", "carbon dioxide") == 0);
    CHECK(built.mmol_out("filtrate", "carbonate") == Approx(2));
    CHECK(built.closure() < 1e-12);
}

TEST_CASE("a gas that is said to stay dissolved goes with the liquor") {
    const Built built(neutralised(R"("dissolved": ["carbon dioxide"])"), separation_bench());
    CHECK(built.out("gas") == 0);
    CHECK(built.mmol_out("filtrate", "carbon dioxide") == Approx(3));
}

TEST_CASE("the gas stream takes the name that the step gives it") {
    const Built built(neutralised(R"("gas": "bubbler")"), separation_bench());
    CHECK(built.mmol_out("bubbler", "carbon dioxide") == Approx(3));
    CHECK_FALSE(built.has_stream("gas"));
}

TEST_CASE("a gas that was charged and not used stays until a separation takes it") {
    const Built built(
        route("P", {step("P", "A", "A -> P",
                         {stage("reaction",
                                {charge("A", "10 mmol", "substrate"), charge("acid", "3 mmol", "acid")},
                                {reaction("A -> P")}, {filtration("filtrate", R"("keeps": ["P"])")})})}),
        separation_bench());
    CHECK(built.out("gas") == 0);
    CHECK(built.mmol_out("filtrate", "acid") == Approx(3));
}

TEST_CASE("only the net amount of a gas that forms leaves") {
    // 2 NO + O2 -> 2 NO2 runs beside A + NO2 -> P + NO, written with isomers as A -> P: NO2 made is the net
    // of both.
    const Built built(
        route(
            "P",
            {step("P", "A", "A -> P",
                  {stage("reaction",
                         {charge("A", "10 mmol", "substrate"), charge("nitric oxide", "4 mmol", "reagent"),
                          charge("nitrogen dioxide", "1 mmol", "reagent"),
                          charge("oxygen", "1 mmol", "reagent")},
                         {reaction("A -> P"), reaction("2 nitric oxide + oxygen -> 2 nitrogen dioxide")})})}),
        separation_bench());
    // 1 mmol of oxygen makes 2 mmol of NO2, which leave; the 1 mmol that was charged stays, as do 2 mmol of
    // NO.
    CHECK(built.mmol_out("gas", "nitrogen dioxide") == Approx(2));
    CHECK(built.mmol_out("residue", "nitrogen dioxide") == Approx(1));
    CHECK(built.mmol_out("residue", "nitric oxide") == Approx(2));
    CHECK(built.closure() < 1e-12);
}

TEST_CASE("oxygen taken from the air counts with what was used of it") {
    const Built built(
        one_pot("nitrogen dioxide", "nitric oxide", "2 nitric oxide + oxygen -> 2 nitrogen dioxide",
                {charge("nitric oxide", "4 mmol", "substrate"), charge("oxygen", "as used", "oxidant")},
                {reaction("2 nitric oxide + oxygen -> 2 nitrogen dioxide")},
                R"("isolated": {"yield": "75 %"})"),
        separation_bench());
    CHECK(built.in("oxygen") == Approx(0.002 * 31.998));
    CHECK(built.nominal.product == Approx(0.003 * 46.005));
    CHECK(built.out("residue", "oxygen") == 0);
    CHECK(built.closure() < 1e-12);
    // Read as unreacted, only 3 mmol took oxygen; the rest of what was drawn leaves with the gas.
    CHECK(built.mmol_out("residue", "nitric oxide", true) == Approx(1));
    CHECK(built.mmol_out("gas", "oxygen", true) == Approx(0.5));
    CHECK(built.closure(true) < 1e-12);
}

TEST_CASE("crystal water that a drying agent binds is booked by a reaction") {
    const Built built(
        route("P", {step("P", "A", "A -> P",
                         {stage("reaction",
                                {charge("A", "10 g", "substrate"), charge("ether", "30 g", "solvent"),
                                 charge("water", "70 mmol", "solvent")},
                                {reaction("A -> P")}),
                          stage("workup", {charge("drier", "20 mmol", "drying agent")},
                                {reaction("drier + 7 water -> wet drier")},
                                {filtration("spent drier", R"("leaves": ["drier", "wet drier"])")}),
                          stage("purification", {}, {}, {R"({"by": "evaporation", "to": "ether"})"})})}),
        separation_bench());
    CHECK(built.mmol_out("spent drier", "wet drier") == Approx(10));
    CHECK(built.mmol_out("spent drier", "drier") == Approx(10));
    CHECK(built.out("ether", "water") == 0);
    CHECK(built.out("ether") == Approx(30));
    CHECK(built.closure() < 1e-12);
}
