// SPDX-License-Identifier: MIT
#include "chemistry/cas_number.hpp"
#include "chemistry/catalogue.hpp"

#include <doctest/doctest.h>

#include <cmath>
#include <string>
#include <utility>
#include <vector>

using namespace routeweigh;
using doctest::Approx;

namespace {

// Invented entries, just enough to be read.
std::string substance(const std::string& id, const std::string& name, const std::string& formula,
                      const std::string& more = "") {
    return "{\"id\": \"" + id + "\", \"name\": \"" + name + "\", \"formula\": \"" + formula +
           "\", \"phase_at_25C\": \"liquid\", \"ghs_status\": \"not-classified\", \"ghs\": [], "
           "\"ghs_source\": "
           "\"invented\", \"sources\": {\"formula\": \"invented\", \"ghs\": \"invented\", "
           "\"density_g_per_mL\": "
           "\"invented\"}" +
           more + "}";
}

std::string material(const std::string& id, const std::string& name, const std::string& components,
                     const std::string& more = "") {
    return "{\"id\": \"" + id + "\", \"name\": \"" + name + "\", \"components\": " + components +
           ", \"sources\": {\"composition\": \"invented\", \"density_g_per_mL\": \"invented\"}" + more + "}";
}

Source substances(const std::string& entries) {
    return {"d/substances.json", "{\"about\": {\"substances\": []}, \"substances\": [\n" + entries + "\n]}"};
}

Source materials(const std::string& entries) {
    return {"d/materials.json", "{\"materials\": [\n" + entries + "\n]}"};
}

const std::string water =
    substance("water", "water", "H2O", ", \"synonyms\": [\"aqua\"], \"cas\": \"7732-18-5\"");
const std::string ethanol = substance("ethanol", "ethanol", "C2H6O",
                                      ", \"synonyms\": [\"ethyl  alcohol\", \"spirit \\\"95\\\"\"], "
                                      "\"density_g_per_mL\": 0.7893");
const std::string ether = substance("dimethyl-ether", "dimethyl ether", "C2H6O");
const std::string spirit = material(
    "spirit", "Ethanol 95 %",
    "[{\"id\": \"ethanol\", \"mass_fraction\": 0.9241}, {\"id\": \"water\", \"mass_fraction\": 0.0759}]",
    ", \"density_g_per_mL\": 0.81");

Catalogue small() {
    return Catalogue::from_sources({substances(water + ",\n" + ethanol + ",\n" + ether),
                                    materials(spirit),
                                    {"d/schemes/air-bands.json", "{\"bands\": []}"}});
}

std::vector<std::string> messages(const std::vector<Problem>& problems) {
    std::vector<std::string> result;
    result.reserve(problems.size());
    for (const Problem& problem : problems)
        result.push_back(format(problem));
    return result;
}

// What check_all() says of a substance with this text added or with other text in place.
std::vector<std::string> faults_of(const std::string& entry) {
    return messages(Catalogue::from_sources({substances(entry)}).check_all());
}

using Lines = std::vector<std::string>;

} // namespace

TEST_CASE("the check digit of a CAS number is computed") {
    CHECK(is_cas_number("7732-18-5")); // water, the example of the registry's own explanation (from memory)
    CHECK(is_cas_number("7726-95-6"));
    CHECK(is_cas_number("64-17-5"));
    CHECK(is_cas_number("103-84-4"));
    CHECK_FALSE(is_cas_number("7732-18-4"));
    CHECK_FALSE(is_cas_number("7723-18-5")); // digits swapped
    CHECK_FALSE(is_cas_number("7732185"));
    CHECK_FALSE(is_cas_number("7732-185"));
    CHECK_FALSE(is_cas_number("0064-17-5"));
    CHECK_FALSE(is_cas_number("6-17-5"));
    CHECK_FALSE(is_cas_number("64-1a-5"));
    CHECK_FALSE(is_cas_number(""));
}

TEST_CASE("substances are found by id, name, synonym and CAS number, whatever the case and spacing") {
    const Catalogue catalogue = small();
    const Substance* const found = catalogue.find_substance("ethanol");
    REQUIRE(found != nullptr);
    CHECK(found->name == "ethanol");
    CHECK(found->molar_mass == Approx(46.069));
    CHECK(found->density == 0.7893);
    CHECK(catalogue.find_substance(" ETHYL alcohol ") == found);
    CHECK(catalogue.find_substance("spirit \"95\"") == found);
    CHECK(catalogue.find_substance("7732-18-5") == catalogue.find_substance("aqua"));
    CHECK(catalogue.find_substance("etanol") == nullptr);
    CHECK(catalogue.find_substance("") == nullptr);
    CHECK(catalogue.find_substance("spirit") == nullptr); // that is a material
}

TEST_CASE("a formula finds a substance only where one substance has it") {
    const Catalogue catalogue = small();
    CHECK(catalogue.find_substance("H2O") == catalogue.find_substance("water"));
    CHECK(catalogue.find_substance("OH2") == catalogue.find_substance("water"));
    CHECK(catalogue.find_substance("h2o") == nullptr);
    CHECK(catalogue.find_substance("C2H6O") == nullptr);
    CHECK(catalogue.find_substance("H2O+") == nullptr);
    CHECK(catalogue.substances_with_formula(parse_formula("C2H5OH")).size() == 2);
}

TEST_CASE("materials are found by name, and every substance is a material of itself") {
    const Catalogue catalogue = small();
    const Material* const found = catalogue.find_material("ethanol 95 %");
    REQUIRE(found != nullptr);
    CHECK(found->id == "spirit");
    REQUIRE(found->components.size() == 2);
    CHECK(found->components[0].substance == catalogue.find_substance("ethanol"));
    CHECK_FALSE(found->components[0].carrier);
    CHECK(found->components[1].carrier); // water
    CHECK(found->only_active() == found->components.data());
    CHECK(found->component_of(*catalogue.find_substance("water"))->mass_fraction == 0.0759);
    CHECK(found->component_of(*catalogue.find_substance("dimethyl ether")) == nullptr);

    const Material* const neat = catalogue.find_material("ethyl alcohol");
    REQUIRE(neat != nullptr);
    CHECK(neat->is_neat());
    CHECK(neat->density == 0.7893);
    CHECK(neat == &catalogue.neat(*catalogue.find_substance("ethanol")));
    CHECK(catalogue.find_material("H2O") == &catalogue.neat(*catalogue.find_substance("water")));
    CHECK_FALSE(catalogue.find_material("water")->components[0].carrier);
    CHECK(catalogue.find_material("methanol") == nullptr);
}

TEST_CASE("pointers stay good when the catalogue is moved") {
    Catalogue first = small();
    const Substance* const found = first.find_substance("ethanol");
    const Catalogue second = std::move(first);
    CHECK(second.find_substance("ethanol") == found);
}

TEST_CASE("an unknown name brings the nearest known one") {
    const Catalogue catalogue = small();
    CHECK(catalogue.nearest_substance("etanol") == "ethanol");
    CHECK(catalogue.nearest_material("etanol 95 %") == "Ethanol 95 %");
    CHECK(catalogue.nearest_substance("etanol 95 %") == ""); // no substance is called so
    CHECK(catalogue.nearest_material("wather") == "water");
    CHECK(catalogue.nearest_substance("zirconia") == "");
}

TEST_CASE("a search finds parts of names, whole names first") {
    const Catalogue catalogue = small();
    const auto names = [&](const char* text) {
        Lines result;
        for (const Found& found : catalogue.search(text))
            result.push_back((found.substance != nullptr ? found.substance->id : found.material->id) +
                             " by " + found.matched);
        return result;
    };
    CHECK(names("ethanol") == Lines{"ethanol by ethanol", "spirit by Ethanol 95 %"});
    CHECK(names("ETH") ==
          Lines{"ethanol by ethanol", "spirit by Ethanol 95 %", "dimethyl-ether by dimethyl ether"});
    CHECK(names("C2H6O") == Lines{"dimethyl-ether by C2H6O", "ethanol by C2H6O"});
    CHECK(names("7732") == Lines{"water by 7732-18-5"});
    CHECK(names("xyz").empty());
    CHECK(names("").empty());
}

TEST_CASE("schemes are kept by the stem of their file") {
    const Catalogue catalogue = small();
    REQUIRE(catalogue.scheme("air-bands") != nullptr);
    CHECK(catalogue.scheme("air-bands")->text == "{\"bands\": []}");
    CHECK(catalogue.scheme("water-bands") == nullptr);
    CHECK(catalogue.scheme_stems() == Lines{"air-bands"});
    CHECK_THROWS_AS(Catalogue::from_sources({{"schemes/a.json", "{}"}, {"other/schemes/a.json", "{}"}}),
                    InputError);
}

TEST_CASE("two entries of one name are refused at both places") {
    const auto refused = [](const std::vector<Source>& sources) {
        try {
            Catalogue::from_sources(sources);
        } catch (const InputError& error) {
            return messages(error.problems);
        }
        return Lines{"not refused"};
    };
    CHECK(refused({substances(water + ",\n" + substance("x", "Aqua", "H2O"))}) ==
          Lines{"d/substances.json:3 /substances/1: \"Aqua\" already names \"water\"; the other place: "
                "d/substances.json:2 /substances/0"});
    CHECK(refused({substances(water + ",\n" + substance("water", "x", "H2O"))}).size() == 1);
    CHECK(refused({substances(water + ",\n" + substance("x", "y", "H2O", ", \"cas\": \"7732-18-5\""))})
              .size() == 1);
    CHECK(refused({substances(ethanol), materials(material("x", "ETHANOL", "[]"))}) ==
          Lines{"d/materials.json:2 /materials/0: \"ETHANOL\" already names \"ethanol\"; the other place: "
                "d/substances.json:2 /substances/0"});
    CHECK(refused({substances("{\"name\": \"x\"}")}) ==
          Lines{"d/substances.json:2 /substances/0: an entry needs an \"id\" and a \"name\""});
}

TEST_CASE("a file that is no catalogue file is refused") {
    const auto refused = [](const std::string& text) {
        try {
            Catalogue::from_sources({{"d/x.json", text}});
        } catch (const InputError& error) {
            return std::string(error.what());
        }
        return std::string("not refused");
    };
    const std::string no_list =
        "d/x.json: the file has neither a list \"substances\" nor a list \"materials\" of objects";
    CHECK(refused("{\"substance\": []}") == no_list);
    CHECK(refused("{\"substances\": {}}") == no_list);
    CHECK(refused("{\"substances\": [1]}") == no_list);
    CHECK(refused("[]") == no_list);
    CHECK(refused("") == "d/x.json:1: the file is empty");
    CHECK(refused("{\"substances\": [\n{\"id\": \"a\" \"name\": \"b\"}]}")
              .rfind("d/x.json:2: a comma is missing", 0) == 0);
    CHECK(refused("{\"substances\": [").find("not closed") != std::string::npos);
    CHECK(refused("{\"substances\": []}") == "not refused");
}

TEST_CASE("entries are read on first use, and a faulty one harms nobody else") {
    const Catalogue catalogue =
        Catalogue::from_sources({substances(water + ",\n" + substance("bad", "bad", "Xy2") + ",\n" + ethanol),
                                 materials(material("m", "m", "[{\"id\": \"bad\", \"mass_fraction\": 1}]"))});
    CHECK(catalogue.find_substance("ethanol") != nullptr);
    CHECK_THROWS_WITH_AS(
        catalogue.find_substance("bad"),
        "d/substances.json:3 /substances/1/formula: no element \"Xy\", at character 1 of \"Xy2\"",
        InputError);
    CHECK_THROWS_AS(catalogue.find_material("m"), InputError);
    CHECK_THROWS_AS(catalogue.all_substances(), InputError);
    CHECK(messages(catalogue.check_all()) ==
          Lines{"d/substances.json:3 /substances/1/formula: no element \"Xy\", at character 1 of \"Xy2\""});
    CHECK(small().check_all().empty());
    CHECK(small().all_substances().size() == 3);
    CHECK(small().all_materials().size() == 1);
}

TEST_CASE("each fault of a substance is reported") {
    const std::string at = "d/substances.json:2 /substances/0";
    const auto with = [](const std::string& more) { return faults_of(substance("x", "x", "CH4", more)); };
    CHECK(with("").empty());
    CHECK(with(", \"molar_mass_g_per_mol\": 16.043").empty());
    CHECK(with(", \"cas\": \"7732-18-4\"") ==
          Lines{at + "/cas: \"7732-18-4\" is no CAS number, or its check digit is wrong"});
    CHECK(with(", \"molar_mass_g_per_mol\": 16.05") ==
          Lines{at + "/molar_mass_g_per_mol: 16.05 g/mol is not the 16.043 g/mol of CH4; the other place: " +
                at + "/formula"});
    CHECK(with(", \"formula_common\": \"CH3\"").size() == 1);
    CHECK(with(", \"density_g_per_mL\": 0") == Lines{at + "/density_g_per_mL: 0 is not above 0"});
    CHECK(with(", \"boiling_point_C\": 5") == Lines{at + "/sources: no source for \"boiling_point_C\""});
    CHECK(with(", \"melting_point_C\": -300").size() == 2);
    CHECK(with(", \"decomposes_C\": 300") == Lines{at + "/sources: no source for \"decomposes_C\""});
    CHECK(
        with(", \"melting_point_C\": 100, \"decomposes_C\": 300").front() ==
        at + "/decomposes_C: what has a melting point does not decompose before it melts; the other place: " +
            at + "/melting_point_C");
    CHECK(with(", \"densty\": 1") == Lines{at + "/densty: unknown key \"densty\""});
    CHECK(faults_of(substance("x", "x", "NH4+")) ==
          Lines{at + "/formula: a substance is a neutral formula unit, not an ion"});
    CHECK(
        with(", \"oel\": {\"value\": 1, \"unit\": \"ppb\", \"type\": \"monthly\", \"source\": \"invented\"}")
            .size() == 3); // unit, kind, no entry among the sources

    const auto with_ghs = [&](const std::string& status, const std::string& entries) {
        return faults_of(
            "{\"id\": \"x\", \"name\": \"x\", \"formula\": \"CH4\", \"phase_at_25C\": \"gas\", "
            "\"sources\": {\"formula\": \"invented\", \"ghs\": \"invented\"}, \"ghs_status\": \"" +
            status + "\"" + entries + "}");
    };
    CHECK(with_ghs("no-data", "").empty());
    CHECK(with_ghs("supplier", "").size() == 1);
    CHECK(with_ghs("no-data", ", \"ghs\": [], \"ghs_source\": \"invented\"").size() == 2);
    CHECK(with_ghs("suplier", "").front() == at + "/ghs_status: \"suplier\" is none of: \"harmonised\", "
                                                  "\"harmonised-group\", \"supplier\", \"not-classified\", "
                                                  "\"no-data\"; "
                                                  "nearest: \"supplier\"");
    const std::string entry =
        ", \"ghs_source\": \"invented\", \"ghs\": [{\"class\": \"Flam. Gas\", \"category\": "
        "\"1\", \"h\": \"H220\"";
    CHECK(with_ghs("supplier", entry + "}]").empty());
    CHECK(with_ghs("supplier", entry + ", \"m_factor\": 0}]") ==
          Lines{at + "/ghs/0/m_factor: 0 is not above 0"});
    CHECK(with_ghs("supplier", entry + ", \"specific_limits\": [{\"class\": \"Flam. Gas\", \"h\": \"H22\", "
                                       "\"min_pct\": 10, \"max_pct\": 5}]}]") ==
          Lines{at + "/ghs/0/specific_limits/0/h: \"H22\" is no hazard statement such as \"H314\"",
                at + "/ghs/0/specific_limits/0: the limits of the band do not rise from 0 to 100 %"});
}

TEST_CASE("a substance without classification is unassessed, one with an empty list is not") {
    const Catalogue catalogue = Catalogue::from_sources({substances(
        water + ", {\"id\": \"x\", \"name\": \"x\", \"is_mixture\": true, \"phase_at_25C\": \"liquid\", "
                "\"ghs_status\": \"no-data\", \"sources\": {}}")});
    CHECK(catalogue.find_substance("water")->assessed);
    const Substance* const unknown = catalogue.find_substance("x");
    CHECK_FALSE(unknown->assessed);
    CHECK_FALSE(unknown->has_formula());
    CHECK(std::isnan(unknown->molar_mass));
}

TEST_CASE("each fault of a material is reported") {
    const std::string at = "d/materials.json:2 /materials/0";
    const auto faults = [&](const std::string& components, const std::string& more = "") {
        return messages(Catalogue::from_sources({substances(water + "," + ethanol + "," + ether),
                                                 materials(material("m", "m", components, more))})
                            .check_all());
    };
    const auto part = [](const std::string& id, const std::string& fraction) {
        return "{\"id\": \"" + id + "\", \"mass_fraction\": " + fraction + "}";
    };
    CHECK(faults("[" + part("ethanol", "0.9999995") + "," + part("water", "0.000001") + "]").empty());
    CHECK(faults("[" + part("ethanol", "0.9") + "," + part("water", "0.2") + "]").size() == 1);
    CHECK(faults("[]") == Lines{at + "/components: the mass fractions sum to 0, not to 1"});
    CHECK(faults("[" + part("ethano", "1") + "]") ==
          Lines{at + "/components/0/id: no substance has the id \"ethano\"; nearest: \"ethanol\""});
    CHECK(faults("[" + part("aqua", "1") + "]").size() == 1); // a synonym is no id
    CHECK(faults("[" + part("ethanol", "1.2") + "," + part("water", "-0.2") + "]").size() == 2);
    CHECK(faults("[" + part("water", "0.5") + "," + part("water", "0.5") + "]").size() == 1);
    const std::string both = "[" + part("ethanol", "0.5") + "," + part("dimethyl-ether", "0.5") + "]";
    CHECK(faults(both, ", \"carrier\": [\"ethanol\"]").empty());
    CHECK(faults(both, ", \"carrier\": [\"water\"]") ==
          Lines{at + "/carrier/0: \"water\" carries nothing: it is no component beside another"});
    CHECK(faults(both, ", \"carrier\": [\"ethanol\", \"dimethyl-ether\"]") ==
          Lines{at + "/carrier: every component is a carrier"});
    CHECK(faults(both, ", \"density_g_per_mL\": -1").size() == 1);
}
