// SPDX-License-Identifier: MIT
// Compositions as people state them: words of a call and small files, and what is wrong with them.
#include "assess/mixture/mixture_reader.hpp"

#include "base/text.hpp"
#include "chemistry/catalogue.hpp"

#include <doctest/doctest.h>

#include <functional>

using namespace routeweigh;
using doctest::Approx;

namespace {

double percent(const Mixture& mixture, std::string_view id) {
    double sum = 0;
    for (const Ingredient& ingredient : mixture.ingredients)
        if (ingredient.substance->id == id) sum += 100 * ingredient.mass_fraction;
    return sum;
}

Mixture words(const std::vector<std::string>& list) {
    return read_mixture(list, Catalogue::embedded());
}

Mixture file(const std::string& text) {
    return read_mixture(make_source("bath.json", text), Catalogue::embedded());
}

std::string error_text(const std::function<void()>& work) {
    try {
        work();
    } catch (const InputError& error) {
        std::string all;
        for (const Problem& problem : error.problems)
            all += format(problem) + "\n";
        return all;
    }
    return "nothing";
}

} // namespace

TEST_CASE("a bottle brings its water, and one ingredient takes what is left") {
    const Mixture mixture = words({"hydrobromic acid 48 %=50 %", "ethanol=10 %", "water"});
    CHECK(percent(mixture, "hydrogen-bromide") == Approx(24));
    CHECK(percent(mixture, "ethanol") == Approx(10));
    CHECK(percent(mixture, "water") == Approx(66));
    CHECK(mixture.name == "50 % hydrobromic acid 48 %, 10 % ethanol, water");
    CHECK(percent(words({"hydrobromic acid 48 %"}), "hydrogen-bromide") == Approx(48));
}

TEST_CASE("shares that leave something open leave it unknown") {
    const Mixture mixture = words({"ethanol=10 %", "water=50 %"});
    CHECK(percent(mixture, "ethanol") + percent(mixture, "water") == Approx(60));
}

TEST_CASE("each faulty word of a call is told") {
    const std::string all = error_text([] { words({"ethnol=10 %", "water=ten", "acetone=-5 %"}); });
    CHECK(all.find("\"ethnol=10 %\": no material \"ethnol\"; nearest: \"ethanol\"") != std::string::npos);
    CHECK(all.find("\"water=ten\"") != std::string::npos);
    CHECK(all.find("\"acetone=-5 %\"") != std::string::npos);
    CHECK(error_text([] {
              words({"ethanol", "water"});
          }) == "\"water\": only one ingredient may leave its share open, and \"ethanol\" does too\n");
    CHECK(error_text([] {
              words({"ethanol=60 %", "acetone=40 %", "water"});
          }) == "\"water\": nothing is left for \"water\": the other shares sum to 100 %\n");
    CHECK(error_text([] { words({"ethanol=0.4"}); }).find("write a percentage") != std::string::npos);
}

TEST_CASE("a file states what is known of the whole and of each ingredient") {
    const Mixture mixture = file(R"({"name": "bath", "source": "invented", "phase": "liquid", "pH": 1.5,
        "flash_point": "36 degC", "boiling_point": "351 K", "viscosity_mm2_per_s": 1.2, "inhaled_form": "vapours",
        "ingredients": [
          {"material": "ethanol", "share": "20 %", "lc50_mg_per_litre": 11000, "noec_mg_per_litre": 9.6,
           "rapidly_degradable": true, "additive": true},
          {"material": "hydrochloric acid 37 %", "share": "10 %", "pH": 0.1},
          {"material": "water"}]})");
    CHECK(mixture.name == "bath");
    CHECK(mixture.facts.ph == 1.5);
    CHECK(*mixture.facts.flash_point == Approx(36));
    CHECK(*mixture.facts.boiling_point == Approx(77.85));
    CHECK(mixture.facts.viscosity == 1.2);
    CHECK(mixture.facts.inhaled_form == "vapours");
    CHECK(mixture.ingredients.front().facts.aquatic.acute_mg_per_litre == 11000);
    CHECK(percent(mixture, "hydrogen-chloride") == Approx(3.7));
    for (const Ingredient& ingredient : mixture.ingredients) // the pH is that of the acid, not of its water
        CHECK(ingredient.facts.ph.has_value() == (ingredient.substance->id == "hydrogen-chloride"));
    CHECK(percent(mixture, "water") == Approx(76.3));
}

TEST_CASE("faults of a file are told with line, pointer and nearest spelling, all at once") {
    const std::string all = error_text([] {
        file("{\"name\": \"bath\",\n\"ph\": 1,\n\"phase\": \"fluid\",\n\"ingredients\": [\n"
             "{\"material\": \"ethnol\", \"share\": \"20 %\"},\n{\"material\": \"water\", \"share\": 0.8}]}");
    });
    CHECK(all.find("bath.json:2 /ph:") != std::string::npos);
    CHECK(all.find("nearest: \"pH\"") != std::string::npos);
    CHECK(all.find("bath.json:3 /phase:") != std::string::npos);
    CHECK(all.find("bath.json:5 /ingredients/0/material: no material \"ethnol\"; nearest: \"ethanol\"") !=
          std::string::npos);
    CHECK(all.find("bath.json:6 /ingredients/1/share:") != std::string::npos);
}

TEST_CASE("what cannot be a mixture is refused at its place") {
    const auto one = [](const std::string& ingredients) {
        return error_text([&] { file("{\"name\": \"bath\", \"ingredients\": [" + ingredients + "]}"); });
    };
    CHECK(one("").find("no ingredients") != std::string::npos);
    CHECK(one(R"({"material": "ethanol", "share": "60 %"}, {"material": "water", "share": "50 %"})")
              .find("the shares sum to 110 %, which is above 100 %") != std::string::npos);
    CHECK(one(R"({"material": "ethanol", "share": "-5 %"}, {"material": "water"})")
              .find("/ingredients/0/share") != std::string::npos);
    CHECK(one(R"({"material": "hydrogen", "share": "1 %"}, {"material": "water"})")
              .find("\"hydrogen\" is a gas and has no entry as a solution") != std::string::npos);
    CHECK(one(R"({"material": "hydrogen", "share": "0.1 %", "dissolved": true}, {"material": "water"})") ==
          "nothing");
    CHECK(one(R"({"material": "ethanol"}, {"material": "water"})").find("/ingredients/1:") !=
          std::string::npos);
    // Twice the same bottle is a slip; a bottle and the water beside that in it are two.
    CHECK(one(R"({"material": "ethanol", "share": "5 %"}, {"material": "ethyl alcohol", "share": "5 %"},
                {"material": "water"})")
              .find("/ingredients/1: \"ethanol\" stands twice; give it one share") != std::string::npos);
    CHECK(one(R"({"material": "hydrochloric acid 37 %", "share": "10 %"}, {"material": "water"})") ==
          "nothing");
}
