// SPDX-License-Identifier: MIT
// Routes of several steps: scale, branches, loops, reuse, and the net equation.
//
// The substances are invented isomers, so that amounts in mmol tell the whole story.
#include "route/net_equation.hpp"
#include "support/route_builder.hpp"

#include <doctest/doctest.h>

#include <string>

using namespace routeweigh;
using namespace routeweigh::test;
using doctest::Approx;

namespace {

const Catalogue& step_isomers() {
    static const Catalogue catalogue = catalogue_of(
        {"A | C5H10", "B | C5H10", "C | C5H10", "D | C5H10", "I | C5H10", "J | C10H20", "K | C10H20",
         "P | C15H30", "Q | C15H30", "water | H2O | liquid | 1.0", "toluene | C7H8 | liquid | 0.87",
         "alcohol | C5H12O | liquid", "ester | C7H14O2 | liquid", "vinegar | C2H4O2 | liquid",
         "amide | C2H5NO", "ammonia | NH3 | gas"});
    return catalogue;
}

std::string isomerise(std::string_view from, std::string_view to, std::string_view amount,
                      std::string_view more, const Items& further = {}) {
    const std::string equation = std::string(from) + " -> " + std::string(to);
    Items charges{charge(from, amount, "substrate")};
    charges.insert(charges.end(), further.begin(), further.end());
    return step(to, from, equation, {stage("reaction", charges, {reaction(equation)})}, more);
}

double moles_of(const std::vector<NetEquation::Part>& parts, std::string_view substance) {
    for (const auto& part : parts)
        if (part.substance->name == substance) return part.moles;
    return 0.0;
}

NetEquation net_of(const Built& built) {
    return net_equation(built.route, built.flat.scale_plan());
}

} // namespace

TEST_CASE("an upstream step is scaled to what the next one charges") {
    // Step 1 gives 8 mmol of I a run; step 2 charges 20 mmol, hence 2.5 runs: 25 mmol of A.
    const Built built(route("B", {isomerise("A", "I", "10 mmol", R"("isolated": {"yield": "80 %"})"),
                                  isomerise("I", "B", "20 mmol", R"("isolated": {"yield": "50 %"})")}),
                      step_isomers());
    CHECK(built.step(0).scale == Approx(2.5));
    CHECK(built.step(1).scale == Approx(1));
    CHECK(built.in() == Approx(0.025 * 70.135)); // C5H10; I is no input
    CHECK(built.mmol_out("residue", "I") == Approx(5));
    CHECK(built.mmol_out("residue", "B") == Approx(10));
    CHECK(built.nominal.product == Approx(0.010 * 70.135));
    CHECK(built.closure() < 1e-12);
    CHECK(built.closure(true) < 1e-12);
}

TEST_CASE("the size at which an upstream step is written does not matter") {
    const auto amounts = [](std::string_view upstream) {
        const Built built(route("B", {isomerise("A", "I", upstream, R"("isolated": {"yield": "80 %"})"),
                                      isomerise("I", "B", "20 mmol", "")}),
                          step_isomers());
        return built.in("A");
    };
    CHECK(amounts("10 mmol") == Approx(amounts("3.7 mol")));
}

TEST_CASE("a convergent route: both branches are scaled, and both wastes count") {
    // J from two isomers, then J + D -> P with D from C.
    const Built built(
        route(
            "P",
            {isomerise("A", "I", "10 mmol", R"("isolated": {"yield": "50 %"})"),
             step("J", "I", "I + B -> J",
                  {stage("reaction", {charge("I", "4 mmol", "substrate"), charge("B", "6 mmol", "reagent")},
                         {reaction("I + B -> J")})},
                  R"("isolated": {"yield": "75 %"})"),
             isomerise("C", "D", "2 mmol", ""),
             step("P", "J", "J + D -> P",
                  {stage("reaction", {charge("J", "9 mmol", "substrate"), charge("D", "10 mmol", "reagent")},
                         {reaction("J + D -> P")})})}),
        step_isomers());
    CHECK(built.step(1).scale == Approx(3));        // 9 mmol of J at 3 mmol a run
    CHECK(built.step(0).scale == Approx(12.0 / 5)); // 3 runs take 12 mmol of I at 5 a run
    CHECK(built.step(2).scale == Approx(5));        // 10 mmol of D at 2 a run
    CHECK(built.in("A") == Approx(0.024 * 70.135));
    CHECK(built.in("B") == Approx(0.018 * 70.135));
    CHECK(built.in("C") == Approx(0.010 * 70.135));
    CHECK(built.in("I") == 0);
    CHECK(built.nominal.product == Approx(0.009 * 210.405)); // C15H30
    CHECK(built.closure() < 1e-12);
    CHECK(built.closure(true) < 1e-12);
}

TEST_CASE("one step that feeds two, which meet again") {
    // I goes into B (4 mmol at 50 %) and into J with B: J needs 2 mmol of I and 2 mmol of B.
    const Built built(
        route("J",
              {isomerise("A", "I", "1 mmol", ""),
               isomerise("I", "B", "4 mmol", R"("isolated": {"yield": "50 %"})"),
               step("J", "I", "I + B -> J",
                    {stage("reaction", {charge("I", "2 mmol", "substrate"), charge("B", "2 mmol", "reagent")},
                           {reaction("I + B -> J")})})}),
        step_isomers());
    CHECK(built.step(0).scale == Approx(6)); // 2 for J itself, 4 for B
    CHECK(built.in("A") == Approx(0.006 * 70.135));
    CHECK(built.nominal.product == Approx(0.002 * 140.270));
    CHECK(built.closure() < 1e-12);
    const NetEquation net = net_of(built);
    CHECK(moles_of(net.inputs, "A") == Approx(2)); // two of A for one of J, at 100 %
    CHECK(net.outputs.empty());
}

TEST_CASE("the same intermediate charged twice in one step is fed twice") {
    const Built built(
        route("B", {isomerise("A", "I", "10 mmol", ""),
                    step("B", "I", "I -> B",
                         {stage("reaction", {charge("I", "5 mmol", "substrate")}, {reaction("I -> B")}),
                          stage("reaction", {charge("I", "15 mmol", "substrate")}, {reaction("I -> B")})})}),
        step_isomers());
    CHECK(built.step(0).scale == Approx(2));
    CHECK(built.closure() < 1e-12);
}

TEST_CASE("an intermediate may also be bought") {
    const Built built(route("B", {isomerise("A", "I", "10 mmol", ""),
                                  step("B", "I", "I -> B",
                                       {stage("reaction",
                                              {charge("I", "5 mmol", "substrate"),
                                               charge("I", "15 mmol", "substrate", R"("bought": true)")},
                                              {reaction("I -> B")})})}),
                      step_isomers());
    CHECK(built.step(0).scale == Approx(0.5));
    CHECK(built.in("I") == Approx(0.015 * 70.135));
    CHECK(built.closure() < 1e-12);
}

TEST_CASE("a later step feeds an earlier one: the loop is solved") {
    // Step 1 takes 10 mmol of A with 2 mmol of B as aid; step 2 turns 10 mmol of I into 8 mmol of B;
    // the last step takes 4 mmol of B.
    const Built built(route("D", {isomerise("A", "I", "10 mmol", "", {charge("B", "2 mmol", "solvent")}),
                                  isomerise("I", "B", "10 mmol", R"("isolated": {"yield": "80 %"})"),
                                  isomerise("B", "D", "4 mmol", "")}),
                      step_isomers());
    // x2 runs of step 2 give 8 x2 = 4 + 2 x1 mmol of B, and x1 = x2: x2 = 4/6
    CHECK(built.step(1).scale == Approx(4.0 / 6));
    CHECK(built.step(0).scale == Approx(4.0 / 6));
    CHECK(built.in("A") == Approx(0.010 * 4 / 6 * 70.135));
    CHECK(built.in("B") == 0);
    CHECK(built.closure() < 1e-12);
    CHECK(built.closure(true) < 1e-12);
}

TEST_CASE("the last step may feed an earlier one: only what leaves the loop is product") {
    const Built built(route("B", {isomerise("A", "I", "10 mmol", "", {charge("B", "2 mmol", "solvent")}),
                                  isomerise("I", "B", "10 mmol", "")}),
                      step_isomers());
    // One net run of 10 mmol of B: x2 = 1 + 0.2 x1, x1 = x2, so 1.25 runs, of which 2.5 mmol of B go back.
    CHECK(built.step(1).scale == Approx(1.25));
    CHECK(built.nominal.product == Approx(0.010 * 70.135));
    CHECK(built.in("A") == Approx(0.0125 * 70.135));
    CHECK(built.mmol_out("residue", "B") == Approx(2.5));
    CHECK(built.closure() < 1e-12);
}

TEST_CASE("a loop of steps that eats what it makes is refused") {
    const auto found =
        problems_of(route("D", {isomerise("A", "I", "10 mmol", "", {charge("B", "9 mmol", "solvent")}),
                                isomerise("I", "B", "10 mmol", R"("isolated": {"yield": "80 %"})"),
                                isomerise("B", "D", "4 mmol", "")}),
                    step_isomers());
    CHECK(any_holds(found, {"/steps", "loop that uses up at least as much as it makes"}));
}

TEST_CASE("what is in the flask counts for all runs that the product needs") {
    const Built built(route("B", {isomerise("A", "I", "10 mmol", R"("isolated": {"yield": "80 %"})"),
                                  isomerise("I", "B", "20 mmol", "")}),
                      step_isomers());
    CHECK(built.mmol_in_flask("A", 0) == Approx(25));
    CHECK(built.mmol_in_flask("I", 1) == Approx(20));
}

// ---- reuse
// ------------------------------------------------------------------------------------------------------

namespace {

/// A -> B in 10 g of toluene, which a distillation takes off.
std::string in_toluene(std::string_view reuse) {
    return route(
        "B",
        {step("B", "A", "A -> B",
              {stage("reaction", {charge("A", "10 mmol", "substrate"), charge("toluene", "10 g", "solvent")},
                     {reaction("A -> B")},
                     {R"({"by": "distillation", "to": "distillate", "leaves": {"toluene": "95 %"}})"})})},
        reuse);
}

std::string reuse_of(std::string_view substance, std::string_view from, std::string_view stream,
                     std::string_view to, std::string_view fraction) {
    return R"({"substance": ")" + std::string(substance) + R"(", "from": {"step": ")" + std::string(from) +
           R"(", "stream": ")" + std::string(stream) + R"("}, "to": ")" + std::string(to) +
           R"(", "fraction": ")" + std::string(fraction) + R"("})";
}

double credit(const Built& built) {
    double sum = 0.0;
    for (const double grams : built.nominal.credit)
        sum += grams;
    return sum;
}

} // namespace

TEST_CASE("recovered solvent covers a part of the next purchase and leaves the stream") {
    const Built built(in_toluene(R"("reuse": [)" + reuse_of("toluene", "B", "distillate", "B", "90 %") + "]"),
                      step_isomers());
    CHECK(credit(built) == Approx(8.55)); // 90 % of 9.5 g
    CHECK(built.nominal.recovered[0] == Approx(8.55));
    CHECK(built.out("distillate") == Approx(0.95));
    CHECK(built.in("toluene") == Approx(10)); // gross, what is in the pot does not change
    CHECK(built.closure() < 1e-12);
    CHECK(built.closure(true) < 1e-12);
}

TEST_CASE("the credit never exceeds what is charged") {
    // The first step could give back 9.5 g of toluene, the second charges 2 g.
    const Built built(
        route(
            "I",
            {step("B", "A", "A -> B",
                  {stage("reaction",
                         {charge("A", "10 mmol", "substrate"), charge("toluene", "10 g", "solvent")},
                         {reaction("A -> B")},
                         {R"({"by": "distillation", "to": "distillate", "leaves": {"toluene": "95 %"}})"})}),
             isomerise("B", "I", "10 mmol", "", {charge("toluene", "2 g", "solvent")})},
            R"("reuse": [)" + reuse_of("toluene", "B", "distillate", "I", "100 %") + "]"),
        step_isomers());
    CHECK(credit(built) == Approx(2));
    CHECK(built.out("distillate") == Approx(7.5));
    CHECK(built.closure() < 1e-12);
}

TEST_CASE("two links into one charge credit it once") {
    const Built built(in_toluene(R"("reuse": [)" + reuse_of("toluene", "B", "distillate", "B", "100 %") +
                                 ", " + reuse_of("toluene", "B", "residue", "B", "100 %") + "]"),
                      step_isomers());
    CHECK(credit(built) == Approx(10));
    CHECK(built.nominal.recovered[0] == Approx(9.5));
    CHECK(built.nominal.recovered[1] == Approx(0.5));
    CHECK(built.out("distillate") == Approx(0));
    CHECK(built.closure() < 1e-12);
}

TEST_CASE("a credit is spread over the charges in proportion") {
    const Built built(
        route("B",
              {step("B", "A", "A -> B",
                    {stage("reaction",
                           {charge("A", "10 mmol", "substrate"), charge("toluene", "6 g", "solvent")},
                           {reaction("A -> B")}),
                     stage("workup", {charge("toluene", "4 g", "extraction")}, {},
                           {R"({"by": "distillation", "to": "distillate", "leaves": ["toluene"]})"})})},
              R"("reuse": [)" + reuse_of("toluene", "B", "distillate", "B", "50 %") + "]"),
        step_isomers());
    CHECK(built.nominal.credit[1] == Approx(3));
    CHECK(built.nominal.credit[2] == Approx(2));
}

TEST_CASE("reuse counts per run of the route, not per run of a step") {
    // Step 1 runs twice for one run of step 2, so 19 g of toluene come over.
    const Built built(
        route(
            "I",
            {step("B", "A", "A -> B",
                  {stage("reaction",
                         {charge("A", "10 mmol", "substrate"), charge("toluene", "10 g", "solvent")},
                         {reaction("A -> B")},
                         {R"({"by": "distillation", "to": "distillate", "leaves": {"toluene": "95 %"}})"})}),
             isomerise("B", "I", "20 mmol", "", {charge("toluene", "100 g", "solvent")})},
            R"("reuse": [)" + reuse_of("toluene", "B", "distillate", "I", "100 %") + "]"),
        step_isomers());
    CHECK(credit(built) == Approx(19));
    CHECK(built.closure() < 1e-12);
}

TEST_CASE(
    "what could be recovered is the smaller of the two readings, so that purchases do not depend on them") {
    // vinegar: set free by ester + ammonia; lost yield would not have set it free.
    const Built built(
        route("amide",
              {step("amide", "vinegar", "vinegar + ammonia -> amide + water",
                    {stage("reaction",
                           {charge("vinegar", "10 mmol", "substrate"),
                            charge("ammonia", "10 mmol", "reagent"), charge("water", "1 g", "solvent")},
                           {reaction("vinegar + ammonia -> amide + water")})},
                    R"("isolated": {"yield": "50 %"})")},
              R"("reuse": [)" + reuse_of("water", "amide", "residue", "amide", "100 %") + "]"),
        step_isomers());
    CHECK(credit(built) == Approx(1)); // all of the charge: 1 g and 0.09 to 0.18 g that form
    CHECK(built.out("residue", "water") == Approx(0.01 * 18.015));
    CHECK(built.out("residue", "water", true) == Approx(0.005 * 18.015));
    CHECK(built.closure() < 1e-12);
    CHECK(built.closure(true) < 1e-12);
}

// ---- the net equation
// -------------------------------------------------------------------------------------------

TEST_CASE("the net equation multiplies each step so that intermediates cancel, whatever the yields") {
    // 2 I + B is invented: J + I -> P takes one J and one I.
    const Built built(
        route("P",
              {isomerise("A", "I", "10 mmol", R"("isolated": {"yield": "10 %"})"),
               step("J", "I", "I + B -> J",
                    {stage("reaction", {charge("I", "4 mmol", "substrate"), charge("B", "6 mmol", "reagent")},
                           {reaction("I + B -> J")})},
                    R"("isolated": {"yield": "20 %"})"),
               step("P", "J", "J + I -> P",
                    {stage("reaction", {charge("J", "1 mmol", "substrate"), charge("I", "3 mmol", "reagent")},
                           {reaction("J + I -> P")})})}),
        step_isomers());
    const NetEquation net = net_of(built);
    CHECK(net.runs == std::vector<double>{2, 1, 1});
    CHECK(moles_of(net.inputs, "A") == Approx(2));
    CHECK(moles_of(net.inputs, "B") == Approx(1));
    CHECK(net.inputs.size() == 2);
    CHECK(net.outputs.empty());
}

TEST_CASE("a by-product cancels only where the file feeds it to another step") {
    // vinegar + alcohol -> ester + water; ester + ammonia -> amide + alcohol: the alcohol comes back.
    const auto text = [](std::string_view more) {
        return route(
            "amide",
            {step("ester", "vinegar", "vinegar + alcohol -> ester + water",
                  {stage("reaction",
                         {charge("vinegar", "10 mmol", "substrate"), charge("alcohol", "10 mmol", "reagent")},
                         {reaction("vinegar + alcohol -> ester + water")})}),
             step("amide", "ester", "ester + ammonia -> amide + alcohol",
                  {stage("reaction",
                         {charge("ester", "10 mmol", "substrate"), charge("ammonia", "10 mmol", "reagent")},
                         {reaction("ester + ammonia -> amide + alcohol")})})},
            more);
    };
    const Built apart(text(""), step_isomers());
    const NetEquation gross = net_of(apart);
    CHECK(moles_of(gross.inputs, "alcohol") == Approx(1));
    CHECK(moles_of(gross.outputs, "alcohol") == Approx(1));

    const Built linked(text(R"("reuse": [)" + reuse_of("alcohol", "amide", "residue", "ester", "90 %") + "]"),
                       step_isomers());
    const NetEquation net = net_of(linked);
    CHECK(moles_of(net.inputs, "alcohol") == 0);
    CHECK(moles_of(net.outputs, "alcohol") == 0);
    CHECK(moles_of(net.gross_inputs, "alcohol") == Approx(1));
    CHECK(moles_of(net.inputs, "vinegar") == Approx(1));
    CHECK(moles_of(net.outputs, "water") == Approx(1));
    CHECK(credit(linked) == Approx(0.9 * 0.010 * 88.150)); // the mass figures do take the 90 %
    CHECK(linked.closure() < 1e-12);
}

TEST_CASE("a solvent recycled within a step is in no equation") {
    const Built built(in_toluene(R"("reuse": [)" + reuse_of("toluene", "B", "distillate", "B", "90 %") + "]"),
                      step_isomers());
    const NetEquation net = net_of(built);
    CHECK(net.inputs.size() == 1);
    CHECK(moles_of(net.inputs, "A") == Approx(1));
}

TEST_CASE(
    "what a step could feed but a charge buys counts in the net equation, and the maker feeds the rest") {
    const Built built(route("J",
                            {
                                isomerise("A", "I", "10 mmol", ""),
                                step("J", "I", "I + B -> J",
                                     {stage("reaction",
                                            {charge("I", "5 mmol", "substrate"),
                                             charge("B", "5 mmol", "reagent", R"("bought": true)")},
                                            {reaction("I + B -> J")})}),
                            }),
                      step_isomers());
    const NetEquation net = net_of(built);
    CHECK(moles_of(net.inputs, "A") == Approx(1));
    CHECK(moles_of(net.inputs, "B") == Approx(1));
    CHECK(moles_of(net.inputs, "I") == 0);
}
