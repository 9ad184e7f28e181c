// SPDX-License-Identifier: MIT
// Bottles and streams of the shipped routes: which there are, what was done before the limits, what the label
// says.
#include "assess/classified_route.hpp"

#include "assess/streams/flash_point.hpp"

#include "chemistry/catalogue.hpp"
#include "mixture_case.hpp"
#include "route/route_reader.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <memory>
#include <sstream>

using namespace routeweigh;
using namespace routeweigh::test::mixtures;
using doctest::Approx;

namespace {

const ClassificationRules& rules_of(MixtureRegime regime) {
    static const ClassificationRules eu(Catalogue::embedded(), {MixtureRegime::eu, {}});
    static const ClassificationRules un(Catalogue::embedded(), {MixtureRegime::un, {}});
    static const ClassificationRules us(Catalogue::embedded(), {MixtureRegime::us, {}});
    return regime == MixtureRegime::un ? un : regime == MixtureRegime::us ? us : eu;
}

struct Judged {
    Route route;
    FlatRoute flat;
    Evaluation evaluation;
    ClassifiedRoute classified;

    Judged(const std::filesystem::path& path, MixtureRegime regime)
        : route(read(path)), flat(route), evaluation(flat.evaluate(flat.nominal())),
          classified(classify_route(flat, evaluation, rules_of(regime))) {}

    static Route read(const std::filesystem::path& path) {
        std::ifstream stream(path);
        REQUIRE(stream);
        std::ostringstream text;
        text << stream.rdbuf();
        Problems problems;
        return read_route(make_source(path.string(), text.str()), Catalogue::embedded(), problems);
    }
    const ClassifiedBottle& bottle(std::string_view name) const {
        const auto found =
            std::find_if(classified.bottles.begin(), classified.bottles.end(),
                         [&](const ClassifiedBottle& other) { return other.material->name == name; });
        REQUIRE(found != classified.bottles.end());
        return *found;
    }
    const ClassifiedStream& stream(std::string_view name) const {
        const auto found =
            std::find_if(classified.streams.begin(), classified.streams.end(),
                         [&](const ClassifiedStream& other) { return other.stream.name == name; });
        REQUIRE(found != classified.streams.end());
        return *found;
    }
};

std::filesystem::path bromination(const char* id) {
    return std::filesystem::path(ROUTEWEIGH_ROOT "/routes/4-bromoacetanilide") / (std::string(id) + ".json");
}

std::vector<std::filesystem::path> shipped() {
    std::vector<std::filesystem::path> paths;
    for (const auto& entry : std::filesystem::recursive_directory_iterator(ROUTEWEIGH_ROOT "/routes"))
        if (entry.path().extension() == ".json" && entry.path().filename() != "route.schema.json")
            paths.push_back(entry.path());
    std::sort(paths.begin(), paths.end());
    return paths;
}

} // namespace

TEST_CASE("every bottle and every stream of every shipped route is classified, by each set of limits") {
    for (const MixtureRegime regime : {MixtureRegime::eu, MixtureRegime::un, MixtureRegime::us})
        for (const auto& path : shipped()) {
            CAPTURE(path.string());
            const Judged judged(path, regime);
            double charged = 0, used = 0;
            for (const ClassifiedBottle& bottle : judged.classified.bottles) {
                charged += bottle.grams;
                CHECK(bottle.classification.results.size() > 20);
            }
            for (std::size_t i = 0; i < judged.flat.inflows().size(); ++i)
                if (const Inflow& inflow = judged.flat.inflows()[i];
                    !inflow.as_used && !inflow.role->is_trace())
                    used += judged.evaluation.in[i];
            CHECK(charged == Approx(used).epsilon(1e-12));
            std::size_t left = 0;
            for (const auto& stream : streams::streams_of(judged.flat, judged.evaluation))
                left += stream.nominal.empty() && stream.unreacted.empty() ? 0U : 1U;
            CHECK(judged.classified.streams.size() == left);
            for (const ClassifiedStream& stream : judged.classified.streams)
                for (const auto* reading : {&stream.nominal, &stream.unreacted}) {
                    if (!*reading) continue;
                    // Pairing moves mass between substances and into gas, and loses none.
                    CHECK((*reading)->paired.composition.total() + (*reading)->paired.gas.total() ==
                          Approx((*reading)->grams).epsilon(1e-9));
                    CHECK((*reading)->classification.results.size() > 20);
                }
        }
}

// Harmonised entries of bromine (035-001-00-5), hydrogen bromide in solution (035-002-01-8) and hydrogen
// peroxide in solution (008-003-00-9) with their specific limits (remembered).
TEST_CASE("hydrobromic acid and peroxide arrive where bromine left") {
    const Judged a1(bromination("A1"), MixtureRegime::eu), a3(bromination("A3"), MixtureRegime::eu);
    CHECK(statements(a1.bottle("bromine").classification) == "H314 H330 H400");
    const auto opens = [](const Judged& judged, std::string_view name) {
        return std::any_of(judged.classified.bottles.begin(), judged.classified.bottles.end(),
                           [&](const ClassifiedBottle& bottle) { return bottle.material->name == name; });
    };
    CHECK_FALSE(opens(a3, "bromine"));
    CHECK_FALSE(opens(a1, "hydrobromic acid 48 %"));
    CHECK(statements(a3.bottle("hydrobromic acid 48 %").classification) == "H314 H335");
    CHECK(statements(a3.bottle("hydrogen peroxide 30 %").classification).find("H318") != std::string::npos);
    CHECK(a3.bottle("hydrogen peroxide 30 %").classification.label.signal == "Danger");
}

TEST_CASE("a dissolved acid takes the entry of its solution, a stream is no gas under pressure") {
    const Judged a3(bromination("A3"), MixtureRegime::eu);
    const MixtureClassification& acid = a3.bottle("hydrobromic acid 48 %").classification;
    CHECK(acid.mixture.ingredients.back().solution);
    CHECK(acid.result("gas_under_pressure") == nullptr);
}

// Hydrogen bromide beside acetate is acetic acid and bromide: pKa of about -9 and of 4.76 (remembered).
TEST_CASE("acids and bases are paired off before the limits are applied") {
    streams::Composition left;
    const auto add = [&](const char* name, double grams) {
        left.add(*Catalogue::embedded().find_substance(name), grams);
    };
    add("hydrogen bromide", 8.0912); // 100 mmol
    add("sodium acetate", 8.2034);   // 100 mmol
    add("water", 80);
    const ClassificationRules& rules = rules_of(MixtureRegime::eu);
    const auto judge = [&](const streams::Composition& composition) {
        return classify(mixture_of(composition, "liquor", StreamKind::liquid), rules.mixture);
    };
    const streams::PairedComposition paired =
        streams::pair_acids_and_bases(left, rules.acid_base, rules.catalogue);
    CHECK(paired.composition.grams("hydrogen-bromide") == Approx(0).epsilon(1e-9));
    CHECK(paired.composition.grams("acetic-acid") == Approx(6.0052).epsilon(1e-3));
    CHECK(judge(left).mixture.percent_of("hydrogen-bromide") > 8);
    // 8 % hydrogen bromide would be below its own limits, too; what counts is who is judged.
    CHECK(judge(paired.composition).mixture.percent_of("hydrogen-bromide") == 0);
    CHECK(judge(paired.composition).mixture.percent_of("acetic-acid") == Approx(6.24).epsilon(1e-2));
}

// The flash point of a watery liquid is that of the screening that sorts waste: one liquid, one number.
TEST_CASE("the flash point of a filtrate is screened, and says so") {
    const Judged a3(bromination("A3"), MixtureRegime::eu);
    const ClassifiedStream& filtrate = a3.stream("filtrate and washes");
    const MixtureResult* flammable = filtrate.first().classification.result("flammable_liquid");
    REQUIRE(flammable != nullptr);
    CHECK(flammable->screened);
    REQUIRE(flammable->estimate.has_value());
    CHECK(*flammable->estimate == Approx(streams::screen_flash_point(filtrate.first().paired.composition,
                                                                     rules_of(MixtureRegime::eu).liquids)
                                             .celsius));
    CHECK(flammable->statement == "H226");
}

TEST_CASE("both readings of the yield are there, and differ only where the labels do") {
    int differing = 0, same = 0;
    for (const auto& path : shipped()) {
        const Judged judged(path, MixtureRegime::eu);
        for (const ClassifiedStream& stream : judged.classified.streams) {
            if (!stream.nominal || !stream.unreacted) continue;
            const bool labels =
                statements(stream.nominal->classification) != statements(stream.unreacted->classification) ||
                stream.nominal->classification.label.supplemental !=
                    stream.unreacted->classification.label.supplemental;
            CHECK(stream.readings_differ() == labels);
            ++(labels ? differing : same);
        }
    }
    CHECK(differing > 0);
    CHECK(same > 0);
}

TEST_CASE(
    "a gas in a stream counts as dissolved, gases alone are a gas, vapour is judged as what condenses") {
    const auto phase_as = [](std::initializer_list<std::pair<const char*, double>> parts, StreamKind kind) {
        streams::Composition left;
        for (const auto& [name, grams] : parts)
            left.add(*Catalogue::embedded().find_substance(name), grams);
        return classify(mixture_of(left, "stream", kind), rules_of(MixtureRegime::eu).mixture).mixture.phase;
    };
    CHECK(phase_as({{"carbon dioxide", 1}, {"water", 99}}, StreamKind::liquid) == Substance::Phase::liquid);
    CHECK(phase_as({{"carbon dioxide", 1}, {"oxygen", 1}}, StreamKind::gas) == Substance::Phase::gas);
    CHECK(phase_as({{"ethanol", 1}, {"water", 1}}, StreamKind::vapour) == Substance::Phase::liquid);
}
