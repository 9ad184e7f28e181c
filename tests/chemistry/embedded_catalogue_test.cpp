// SPDX-License-Identifier: MIT
// The catalogue that is built into the program: that its data are whole and agree with each other.
#include "chemistry/catalogue.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <fstream>
#include <sstream>
#include <string>
#include <vector>

using namespace routeweigh;
using doctest::Approx;

namespace {

Source file(const std::string& name) {
    std::ifstream stream(std::string(ROUTEWEIGH_ROOT) + "/hazard-data/" + name);
    std::ostringstream text;
    text << stream.rdbuf();
    return {"hazard-data/" + name, text.str()};
}

} // namespace

TEST_CASE("no entry of the built-in catalogue has a fault") {
    std::string faults;
    for (const Problem& problem : Catalogue::embedded().check_all())
        faults += format(problem) + '\n';
    CHECK(faults == "");
    CHECK(Catalogue::embedded().all_substances().size() >= 198);
    CHECK(Catalogue::embedded().all_materials().size() >= 53);
}

TEST_CASE("the built-in catalogue is that of hazard-data, byte for byte") {
    const Catalogue read = Catalogue::from_sources({file("substances.json"), file("materials.json")});
    CHECK(read.check_all().empty());
    const auto built_in = Catalogue::embedded().all_substances();
    const auto from_files = read.all_substances();
    REQUIRE(built_in.size() == from_files.size());
    for (std::size_t i = 0; i < built_in.size(); ++i) {
        CHECK(built_in[i]->id == from_files[i]->id);
        CHECK(built_in[i]->notes == from_files[i]->notes);
        CHECK(built_in[i]->sources == from_files[i]->sources);
        CHECK(built_in[i]->ghs_source == from_files[i]->ghs_source);
    }
    for (const std::string& stem : Catalogue::embedded().scheme_stems())
        CHECK(Catalogue::embedded().scheme(stem)->text == file("schemes/" + stem + ".json").text);
}

TEST_CASE("every name of every entry finds that entry") {
    const Catalogue& catalogue = Catalogue::embedded();
    for (const Substance* const substance : catalogue.all_substances()) {
        CAPTURE(substance->id);
        CHECK(catalogue.find_substance(substance->id) == substance);
        CHECK(catalogue.find_substance(substance->name) == substance);
        if (!substance->cas.empty()) CHECK(catalogue.find_substance(substance->cas) == substance);
        for (const std::string& synonym : substance->synonyms)
            CHECK(catalogue.find_substance(synonym) == substance);
        if (substance->has_formula()) {
            const auto same = catalogue.substances_with_formula(substance->formula);
            CHECK(std::find(same.begin(), same.end(), substance) != same.end());
        }
    }
    for (const Material* const material : catalogue.all_materials()) {
        CAPTURE(material->id);
        CHECK(catalogue.find_material(material->name) == material);
        for (const std::string& synonym : material->synonyms)
            CHECK(catalogue.find_material(synonym) == material);
    }
}

// Molar masses in g/mol from the CRC Handbook of Chemistry and Physics (from memory; computed with older
// atomic weights, so to 0.02).
TEST_CASE("substances have the molar masses of the handbook") {
    const auto mass = [](const char* name) {
        CAPTURE(std::string(name));
        const Substance* const found = Catalogue::embedded().find_substance(name);
        REQUIRE(found != nullptr);
        return found->molar_mass;
    };
    CHECK(mass("bromine") == Approx(159.808).epsilon(1e-5));
    CHECK(mass("acetanilide") == Approx(135.163).epsilon(1e-4));
    CHECK(mass("hydrogen peroxide") == Approx(34.015).epsilon(1e-4));
    CHECK(mass("sodium bromide") == Approx(102.894).epsilon(1e-4));
    CHECK(mass("2-propanol") == Approx(60.095).epsilon(1e-4));
}

TEST_CASE("bromine is free in bromine and tribromides and carried by tribromides and N-bromosuccinimide") {
    const Catalogue& catalogue = Catalogue::embedded();
    CHECK(catalogue.find_substance("Br2")->free_bromine == 1);
    CHECK(catalogue.find_substance("pyridinium tribromide")->free_bromine == 1);
    CHECK(catalogue.find_substance("NBS")->carried_bromine == 1);
    CHECK(catalogue.find_substance("NBS")->free_bromine == 0);
    CHECK(catalogue.find_substance("hydrogen bromide")->free_bromine == 0);
    for (const Substance* const substance : catalogue.all_substances()) {
        CAPTURE(substance->id);
        // No substance can hold more bromine than its formula has.
        const int atoms = substance->has_formula() ? atoms_of(substance->formula, 35) : 0;
        CHECK(2 * substance->free_bromine <= atoms);
    }
}

TEST_CASE("classifications are read with their limits and estimates") {
    const Catalogue& catalogue = Catalogue::embedded();
    const Substance* const peroxide = catalogue.find_substance("hydrogen peroxide");
    REQUIRE(peroxide != nullptr);
    CHECK(peroxide->assessed);
    const auto corrosive = std::find_if(peroxide->ghs.begin(), peroxide->ghs.end(),
                                        [](const GhsEntry& e) { return e.statement == "H314"; });
    REQUIRE(corrosive != peroxide->ghs.end());
    // Annex VI of Regulation (EC) No 1272/2008, hydrogen peroxide: Skin Corr. 1A from 70 %, Eye Dam. 1 from 8
    // to 50 %.
    const auto& bands = corrosive->specific_limits;
    CHECK(std::any_of(bands.begin(), bands.end(), [](const ConcentrationBand& b) {
        return b.category == "1A" && b.min_percent == 70 && !b.max_percent;
    }));
    CHECK(std::any_of(bands.begin(), bands.end(), [](const ConcentrationBand& b) {
        return b.statement == "H318" && b.min_percent == 8 && b.max_percent == 50;
    }));
    REQUIRE(peroxide->exposure_limit);
    CHECK(peroxide->exposure_limit->kind == ExposureLimit::Kind::time_weighted);
    CHECK(catalogue.find_substance("hydrogen bromide")->exposure_limit->kind == ExposureLimit::Kind::ceiling);
    CHECK(catalogue.find_substance("hydrogen bromide")->ghs_solution);
    CHECK_FALSE(catalogue.find_substance("2-bromoacetanilide")->assessed);
}

// 48 % hydrobromic acid is 8.8 to 8.9 mol/L (common practice, no source): density * fraction / molar mass.
TEST_CASE("the strength of stock acids comes out as bottles state it") {
    const Catalogue& catalogue = Catalogue::embedded();
    const auto molarity = [&](const char* name, const char* substance) {
        const Material* const material = catalogue.find_material(name);
        REQUIRE(material != nullptr);
        const Substance* const solute = catalogue.find_substance(substance);
        return 1000 * *material->density * material->component_of(*solute)->mass_fraction /
               solute->molar_mass;
    };
    CHECK(molarity("hydrobromic acid 48 %", "hydrogen bromide") == Approx(8.84).epsilon(0.01));
    CHECK(molarity("hydrochloric acid 37 %", "hydrogen chloride") == Approx(12.0).epsilon(0.01));
    CHECK(molarity("hydrochloric acid 6 M", "hydrogen chloride") == Approx(6.0).epsilon(0.01));
    CHECK(molarity("sodium hydroxide 3 M", "sodium hydroxide") == Approx(3.0).epsilon(0.01));
    CHECK(molarity("sulfuric acid 3 M", "sulfuric acid") == Approx(3.0).epsilon(0.01));
}
