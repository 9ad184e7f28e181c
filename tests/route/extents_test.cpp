// SPDX-License-Identifier: MIT
#include "route/extents.hpp"

#include "pot.hpp"

#include <doctest/doctest.h>

#include <string>

using namespace routeweigh;
using doctest::Approx;
using routeweigh::test::Pot;

// Amounts in mmol throughout.

TEST_CASE("the limiting reagent stops a reaction") {
    const auto [left, extents] =
        Pot().put("ArH", 10).put("Br2", 10.6).reaction("ArH + Br2 -> ArBr + HBr").react();
    CHECK(extents[0] == Approx(10));
    CHECK(left.at("ArH") == 0);
    CHECK(left.at("Br2") == Approx(0.6));
    CHECK(left.at("ArBr") == Approx(10));
    CHECK(left.at("HBr") == Approx(10));
}

TEST_CASE("coefficients count: the limiting reagent is the smallest amount over coefficient") {
    // 6 ArH + 4 KBr + 2 KBrO3 + 3 H2SO4 -> 6 ArBr + ...; 8 mmol KBr is enough for 12, 3 mmol KBrO3 for 9
    const auto [left, extents] =
        Pot()
            .put("ArH", 10)
            .put("KBr", 8)
            .put("KBrO3", 3)
            .put("H2SO4", 30)
            .reaction("6 ArH + 4 KBr + 2 KBrO3 + 3 H2SO4 -> 6 ArBr + 3 K2SO4 + 6 H2O")
            .react();
    CHECK(extents[0] == Approx(1.5));
    CHECK(left.at("ArBr") == Approx(9));
    CHECK(left.at("KBrO3") == 0);
    CHECK(left.at("KBr") == Approx(2));
}

TEST_CASE("a chain runs through to its end") {
    const auto [left, extents] =
        Pot().put("A", 3).put("X", 2).reaction("A -> B").reaction("B + X -> C").reaction("C -> D").react();
    CHECK(left.at("A") == 0);
    CHECK(left.at("B") == Approx(1)); // X gave out
    CHECK(left.at("C") == 0);
    CHECK(left.at("D") == Approx(2));
    CHECK(extents == std::vector<double>{3, 2, 2});
}

TEST_CASE("hydrogen bromide set free by the substitution is oxidised again") {
    // 10 mmol acetanilide needs only 10 mmol of bromide when the peroxide suffices.
    Pot pot;
    pot.put("ArH", 10)
        .put("HBr", 10)
        .put("H2O2", 13)
        .reaction("H2O2 + 2 HBr -> Br2 + 2 H2O")
        .reaction("ArH + Br2 -> ArBr + HBr");
    const auto [left, extents] = pot.react();
    CHECK(left.at("ArBr") == Approx(10));
    CHECK(left.at("ArH") == 0);
    CHECK(left.at("HBr") == 0);
    CHECK(left.at("H2O2") == Approx(3));
    CHECK(extents[0] ==
          Approx(10)); // each mole of bromine is made once: 5 at first, then from what came back
    CHECK(left.at("H2O") == Approx(20));
}

TEST_CASE("excess bromide and peroxide leave bromine for the quench") {
    const auto [left, extents] = Pot()
                                     .put("ArH", 10)
                                     .put("HBr", 12.5)
                                     .put("H2O2", 13)
                                     .reaction("H2O2 + 2 HBr -> Br2 + 2 H2O")
                                     .reaction("ArH + Br2 -> ArBr + HBr")
                                     .react();
    // 12.5 mmol of Br in all: 10 end in the product, 2.5 in 1.25 Br2, which takes 11.25 mmol of peroxide
    CHECK(left.at("Br2") == Approx(1.25));
    CHECK(left.at("HBr") == 0);
    CHECK(left.at("H2O2") == Approx(1.75));
}

TEST_CASE("a loop that nothing starts does not run, and a trace starts it") {
    Pot pot;
    pot.put("SO2", 5)
        .put("H2O", 100)
        .put("NO", 0)
        .reaction("NO2 + SO2 + H2O -> H2SO4 + NO")
        .reaction("2 NO + O2 -> 2 NO2");
    pot.put("O2", 10);
    const Extents idle = pot.compile();
    CHECK_FALSE(idle.started(0));
    CHECK_FALSE(idle.started(1));
    CHECK(idle.empty());
    CHECK(pot.react().left.at("H2SO4") == 0);

    pot.put("NO2", 0.01);
    const auto [left, extents] = pot.react();
    CHECK(left.at("H2SO4") == Approx(5));
    CHECK(left.at("SO2") == 0);
    CHECK(left.at("O2") == Approx(10 - extents[1]));
    CHECK(left.at("NO") + left.at("NO2") == Approx(0.01)); // the carrier is neither made nor lost
}

TEST_CASE("a reaction whose reactant nobody supplies stays at nothing while the others run") {
    Pot pot;
    pot.put("A", 1).reaction("A -> B").reaction("B + Y -> C");
    const auto [left, extents] = pot.react();
    CHECK(left.at("B") == Approx(1));
    CHECK(extents[1] == 0);
    CHECK(pot.compile().started(0));
    CHECK_FALSE(pot.compile().started(1));
}

TEST_CASE("two reactions that want one substance: the competition is named") {
    Pot pot;
    pot.put("base", 5)
        .put("acid", 4)
        .put("ester", 4)
        .reaction("acid + base -> salt")
        .reaction("ester + base -> alcohol + salt");
    const Extents compiled = pot.compile();
    REQUIRE(compiled.competition());
    CHECK(pot.name(compiled.competition()->substance) == "base");
    CHECK(compiled.competition()->first == 0);
    CHECK(compiled.competition()->second == 1);
}

TEST_CASE("no competition is reported when the supply covers both") {
    Pot pot;
    pot.put("base", 8)
        .put("acid", 4)
        .put("ester", 4)
        .reaction("acid + base -> salt")
        .reaction("ester + base -> alcohol + salt");
    CHECK_FALSE(pot.compile().competition());
    CHECK(pot.react().left.at("base") == 0);
}

TEST_CASE("a competition behind a transient is found too") {
    // Bromine is made in the pot; alkene and arene both want it.
    Pot pot;
    pot.put("HBr", 10)
        .put("H2O2", 10)
        .put("alkene", 4)
        .put("disulfide", 4)
        .reaction("H2O2 + 2 HBr -> Br2 + 2 H2O")
        .reaction("alkene + Br2 -> dibromide")
        .reaction("disulfide + Br2 -> sulfenyl bromide");
    const Extents compiled = pot.compile();
    REQUIRE(compiled.competition());
    CHECK(pot.name(compiled.competition()->substance) == "Br2");
}

TEST_CASE("priority: the smaller number takes what it wants, the other what is left") {
    const auto pot = [](int acid, int ester) {
        return Pot()
            .put("base", 5)
            .put("acid", 4)
            .put("ester", 4)
            .reaction("acid + base -> salt")
            .priority(acid)
            .reaction("ester + base -> alcohol + salt")
            .priority(ester);
    };
    CHECK_FALSE(pot(1, 2).compile().competition());
    CHECK(pot(1, 2).react().extents == std::vector<double>{4, 1});
    CHECK(pot(2, 1).react().extents == std::vector<double>{1, 4});
    CHECK(pot(-3, 10).react().extents == std::vector<double>{4, 1});
}

TEST_CASE("a reaction without priority takes what those with one leave") {
    Pot pot;
    pot.put("base", 5)
        .put("acid", 4)
        .put("ester", 4)
        .reaction("ester + base -> alcohol + salt")
        .reaction("acid + base -> salt");
    pot.priority(1);
    CHECK_FALSE(pot.compile().competition());
    CHECK(pot.react().extents == std::vector<double>{1, 4});
}

TEST_CASE("two reactions of the same priority still compete") {
    Pot pot;
    pot.put("base", 5)
        .put("acid", 4)
        .put("ester", 4)
        .reaction("acid + base -> salt")
        .priority(1)
        .reaction("ester + base -> alcohol + salt")
        .priority(1);
    const Extents compiled = pot.compile();
    REQUIRE(compiled.competition());
    CHECK(pot.name(compiled.competition()->substance) == "base");
}

TEST_CASE("a rule for two of three reactions does not settle what the third gets from the second") {
    Pot pot;
    pot.put("base", 5)
        .put("acid", 3)
        .put("ester", 4)
        .put("amide", 4)
        .reaction("acid + base -> salt")
        .priority(1)
        .reaction("ester + base -> alcohol + salt")
        .reaction("amide + base -> amine + salt");
    const Extents compiled = pot.compile();
    REQUIRE(compiled.competition());
    CHECK(compiled.competition()->first == 1);
    CHECK(compiled.competition()->second == 2);
}

TEST_CASE("split: reactions share in a fixed ratio until a reactant of one of them runs out") {
    const auto pot = [](double para, double ortho, double bromine) {
        return Pot()
            .put("ArH", 10)
            .put("Br2", bromine)
            .reaction("ArH + Br2 -> para-ArBr + HBr")
            .split(para)
            .reaction("ArH + Br2 -> ortho-ArBr + HBr")
            .split(ortho);
    };
    CHECK_FALSE(pot(9, 1, 12).compile().competition());
    const auto all = pot(9, 1, 12).react();
    CHECK(all.extents[0] == Approx(9));
    CHECK(all.extents[1] == Approx(1));
    const auto some = pot(3, 2, 5).react(); // only the ratio matters
    CHECK(some.extents[0] == Approx(3));
    CHECK(some.extents[1] == Approx(2));
    CHECK(some.left.at("ArH") == Approx(5));

    // One of two esters is used up after 2 mmol each; the other goes on alone.
    Pot two;
    two.put("base", 10)
        .put("ester A", 2)
        .put("ester B", 5)
        .reaction("ester A + base -> A")
        .split(1)
        .reaction("ester B + base -> B");
    two.split(1);
    const auto uneven = two.react();
    CHECK(uneven.extents[0] == Approx(2));
    CHECK(uneven.extents[1] == Approx(5));
}

TEST_CASE("partial conversion counts what is there and what the stage makes") {
    const auto [left, extents] = Pot()
                                     .put("A", 10)
                                     .reaction("A -> B")
                                     .conversion(0.8, "A")
                                     .reaction("B -> C")
                                     .conversion(0.5, "B")
                                     .react();
    CHECK(left.at("A") == Approx(2));
    CHECK(extents[1] == Approx(4)); // half of the 8 that were made
    CHECK(left.at("B") == Approx(4));
    CHECK(left.at("C") == Approx(4));
}

TEST_CASE("partial conversion does not lift a shortage of another reactant") {
    const auto [left, extents] =
        Pot().put("A", 10).put("B", 3).reaction("A + B -> C").conversion(0.8, "A").react();
    CHECK(extents[0] == Approx(3));
    CHECK(left.at("A") == Approx(7));
}

TEST_CASE("partial conversion inside a loop counts each return of the substance") {
    // The ring takes 90 % of all bromine that is ever made; peroxide in excess makes it again from the HBr.
    const auto [left, extents] = Pot()
                                     .put("ArH", 100)
                                     .put("HBr", 10)
                                     .put("H2O2", 100)
                                     .reaction("H2O2 + 2 HBr -> Br2 + 2 H2O")
                                     .reaction("ArH + Br2 -> ArBr + HBr")
                                     .conversion(0.9, "Br2")
                                     .react();
    // x1 = (10 + x2)/2 and x2 = 0.9 x1, hence x1 = 5 / 0.55
    CHECK(extents[0] == Approx(5 / 0.55));
    CHECK(extents[1] == Approx(4.5 / 0.55));
}

TEST_CASE("reactions that undo each other have no greatest extent") {
    CHECK(Pot().put("A", 1).reaction("A -> B").reaction("B -> A").compile().unbounded());
    CHECK(Pot()
              .put("acid", 1)
              .put("alcohol", 1)
              .reaction("acid + alcohol -> ester + H2O")
              .reaction("ester + H2O -> acid + alcohol")
              .compile()
              .unbounded());
    CHECK_FALSE(Pot().put("A", 1).reaction("A -> B").reaction("C -> A").compile().unbounded());
}

TEST_CASE("the ceiling of a transient is what the other charges could make at one time") {
    // 12.5 mmol of bromide bounds it, not 13 mmol of peroxide; using bromine up can only lower it.
    Pot pot;
    pot.put("ArH", 10)
        .put("HBr", 12.5)
        .put("H2O2", 13)
        .reaction("H2O2 + 2 HBr -> Br2 + 2 H2O")
        .reaction("ArH + Br2 -> ArBr + HBr");
    CHECK(pot.ceiling("Br2") == Approx(6.25));
    CHECK(pot.ceiling("ArBr") == Approx(10));
    CHECK(pot.ceiling("ArH") == Approx(10));
    CHECK(pot.ceiling("HBr") == Approx(12.5));
    pot.put("Br2", 1); // what is there already counts
    CHECK(pot.ceiling("Br2") == Approx(7.25));
}

TEST_CASE("the ceiling ignores priorities and keeps partial conversions") {
    Pot pot;
    pot.put("A", 10).put("X", 10).reaction("A + X -> P").priority(1).reaction("A -> T").priority(2);
    CHECK(pot.react().left.at("T") == 0);
    CHECK(pot.ceiling("T") == Approx(10));
    CHECK(Pot().put("A", 10).reaction("A -> T").conversion(0.25, "A").ceiling("T") == Approx(2.5));
}

TEST_CASE("a bromate is limited by the bromide as three bromines from five bromides") {
    // KBrO3 + 5 KBr + 3 H2SO4 -> 3 Br2 + ...; 7 mmol of bromide and 3.5 mmol of bromate give 4.2 mmol of
    // bromine
    CHECK(Pot()
              .put("KBrO3", 3.5)
              .put("KBr", 7)
              .put("H2SO4", 12)
              .reaction("KBrO3 + 5 KBr + 3 H2SO4 -> 3 Br2 + 3 K2SO4 + 3 H2O")
              .ceiling("Br2") == Approx(4.2));
}

TEST_CASE("a cap on the product leaves the rest unreacted") {
    Pot pot;
    pot.put("ArH", 10).put("Br2", 10.6).reaction("ArH + Br2 -> ArBr + HBr").product("ArBr");
    const auto capped = pot.react(8.0);
    CHECK(capped.left.at("ArBr") == Approx(8));
    CHECK(capped.left.at("ArH") == Approx(2));
    CHECK(capped.left.at("Br2") == Approx(2.6));
    CHECK(pot.react(20.0).left.at("ArBr") == Approx(10)); // a cap above what can form changes nothing
    CHECK(pot.react(0.0).left.at("ArBr") == 0);
    CHECK(pot.react(-1.0).left.at("ArBr") == Approx(10));
    CHECK(pot.compile().makes_product());
}

TEST_CASE("a cap on the product counts what is left of it when a part reacts on") {
    // A tenth of the bromide is brominated twice: 8 mmol remain when 8.889 mmol have formed.
    Pot pot;
    pot.put("ArH", 20)
        .put("Br2", 40)
        .reaction("ArH + Br2 -> ArBr + HBr")
        .reaction("ArBr + Br2 -> ArBr2 + HBr")
        .conversion(0.1, "ArBr")
        .product("ArBr");
    CHECK(pot.react().left.at("ArBr") == Approx(18));
    const auto capped = pot.react(8.0);
    CHECK(capped.left.at("ArBr") == Approx(8));
    CHECK(capped.extents[0] == Approx(8 / 0.9));
}

TEST_CASE("a basis prepared for a cap gives the same as a search") {
    Pot pot;
    pot.put("ArH", 10)
        .put("HBr", 12.5)
        .put("H2O2", 13)
        .reaction("H2O2 + 2 HBr -> Br2 + 2 H2O")
        .reaction("ArH + Br2 -> ArBr + HBr");
    pot.product("ArBr");
    const Extents searching = pot.compile();
    Extents prepared = pot.compile();
    prepared.prepare_cap(pot.amounts(), 8.0);
    for (const double cap : {0.0, 1.0, 7.9, 8.0, 9.0, 10.0, 12.0}) {
        CAPTURE(cap);
        const auto a = pot.react(searching, cap), b = pot.react(prepared, cap);
        for (std::size_t r = 0; r < 2; ++r)
            CHECK(a.extents[r] == Approx(b.extents[r]).scale(1.0).epsilon(1e-12));
    }
}

TEST_CASE("oxygen from the air never runs out, and what was drawn reads as a debt") {
    const auto [left, extents] = Pot().put("NO", 4).from_air("O2").reaction("2 NO + O2 -> 2 NO2").react();
    CHECK(left.at("NO2") == Approx(4));
    CHECK(left.at("O2") == Approx(1 - 2)); // 1 stood for "present"
}

TEST_CASE("a catalyst that stands on both sides is neither made nor used") {
    const auto [left, extents] =
        Pot().put("A", 2).put("H2SO4", 0.1).reaction("A + H2SO4 -> B + H2SO4").react();
    CHECK(left.at("B") == Approx(2));
    CHECK(left.at("H2SO4") == Approx(0.1));
}

TEST_CASE("a trace a million times smaller than the rest still runs a chain to its end") {
    const auto [left, extents] =
        Pot().put("A", 1).put("X", 1e-6).reaction("A + X -> B + Y").reaction("Y -> X").react();
    CHECK(left.at("B") == Approx(1));
    CHECK(left.at("X") == Approx(1e-6).epsilon(1e-6));
}

TEST_CASE("a pot of ninety reactions needs more than the ordinary workspace") {
    Pot pot;
    pot.put("S0", 7);
    for (int i = 0; i < 90; ++i) {
        pot.put("R" + std::to_string(i), i == 45 ? 3 : 10);
        pot.reaction("S" + std::to_string(i) + " + R" + std::to_string(i) + " -> S" + std::to_string(i + 1));
    }
    const Extents compiled = pot.compile();
    CHECK_FALSE(compiled.unbounded());
    const auto [left, extents] = pot.react(compiled);
    CHECK(left.at("S90") == Approx(3));
    CHECK(left.at("S45") == Approx(4));
    CHECK(extents[0] == Approx(7));
    CHECK(extents[89] == Approx(3));
    CHECK(pot.ceiling("S90") == Approx(3));
    CHECK(pot.ceiling("S45") == Approx(7));
}

TEST_CASE("what is used up reads as none, so that it starts nothing later") {
    const auto [left, extents] =
        Pot().put("A", 0.1).put("B", 0.3).reaction("A + 3 B -> C").react(); // 0.1 * 3 is not 0.3 in binary
    CHECK(left.at("A") == 0);
    CHECK(left.at("B") == 0);
}
