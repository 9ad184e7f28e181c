// SPDX-License-Identifier: MIT
// Every route in routes/: it reads without a fault, its ledger closes in both readings, and each overall
// equation follows from its reactions.
#include "route/ledger.hpp"
#include "route/net_equation.hpp"
#include "route/overall_equation.hpp"
#include "route/route_reader.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <map>
#include <string>
#include <vector>

using namespace routeweigh;
using doctest::Approx;
namespace fs = std::filesystem;

namespace {

std::vector<fs::path> route_files() {
    std::vector<fs::path> files;
    for (const auto& entry : fs::recursive_directory_iterator(fs::path(ROUTEWEIGH_ROOT) / "routes"))
        if (entry.path().extension() == ".json" && entry.path().filename() != "route.schema.json")
            files.push_back(entry.path());
    std::sort(files.begin(), files.end());
    return files;
}

Route read(const fs::path& path, Problems& problems) {
    std::ifstream file(path, std::ios::binary);
    std::string text{std::istreambuf_iterator<char>(file), std::istreambuf_iterator<char>()};
    return read_route(make_source(path.filename().string(), std::move(text)), Catalogue::embedded(),
                      problems);
}

} // namespace

TEST_CASE("the families of routes are all there") {
    std::map<std::string, int> families;
    for (const fs::path& path : route_files())
        ++families[path.parent_path().filename().string()];
    CHECK(families["4-bromoacetanilide"] == 10);
    CHECK(families["adipic-acid"] >= 2);
    CHECK(families["ibuprofen"] >= 2);
    CHECK(families["5-5-diphenylhydantoin"] >= 2);
    CHECK(families.size() >= 5); // and one convergent synthesis
}

TEST_CASE("every shipped route reads, closes and proves its equations") {
    std::map<std::string, std::string> ids;
    for (const fs::path& path : route_files()) {
        CAPTURE(path.filename().string());
        Problems problems;
        const Route route = read(path, problems);
        CHECK_FALSE(problems.any_error());
        CHECK(ids.try_emplace(route.id, path.string()).second); // no id twice
        CHECK_FALSE(route.origin.empty());

        const FlatRoute flat(route);
        const Evaluation evaluation = flat.evaluate(flat.nominal());
        for (const bool unreacted : {false, true}) {
            const Ledger ledger = make_ledger(flat, evaluation, unreacted);
            CHECK(ledger.closure_error() < 1e-9);
            CHECK(ledger.in == Approx(ledger.product + ledger.recovered + ledger.streams).epsilon(1e-12));
            for (const LedgerRow& row : ledger.rows)
                CHECK(row.grams > -1e-9);
        }
        for (std::size_t s = 0; s < route.steps.size(); ++s) {
            const Step& step = route.steps[s];
            CAPTURE(step.id);
            const OverallProof proof = prove_overall(step);
            CHECK(proof.proved);
            // The combination that is claimed really gives the equation.
            std::map<const Substance*, double> sum;
            std::size_t next = 0;
            for (const Stage& stage : step.stages)
                for (const Reaction& reaction : stage.reactions) {
                    REQUIRE(proof.combination[next] >= 0.0);
                    for (const auto& part : reaction.equation.parts)
                        sum[part.substance] += proof.combination[next] * part.coefficient;
                    ++next;
                }
            for (const auto& term : sum) {
                const Substance* substance = term.first;
                CAPTURE(substance->name);
                CHECK(term.second == Approx(step.overall.coefficient_of(substance)).scale(1.0).epsilon(1e-9));
            }
            CHECK(evaluation.steps[s].isolated > 0.0);
            CHECK(evaluation.steps[s].isolated <= evaluation.steps[s].made * (1 + 1e-9));
        }
        const NetEquation net = net_equation(route, flat.scale_plan());
        double mass = 0.0;
        for (const auto& part : net.inputs)
            mass += part.moles * part.substance->molar_mass;
        for (const auto& part : net.outputs)
            mass -= part.moles * part.substance->molar_mass;
        CHECK(mass == Approx(route.product->molar_mass).epsilon(1e-9));
    }
}

TEST_CASE("only A2b counts excess as stoichiometry") {
    for (const fs::path& path : route_files()) {
        CAPTURE(path.filename().string());
        Problems problems;
        const Route route = read(path, problems);
        const bool warned = std::any_of(problems.all.begin(), problems.all.end(), [](const Problem& problem) {
            return problem.message.find("atom economy") != std::string::npos;
        });
        CHECK(warned == (route.id == "A2b"));
        CHECK(problems.all.size() == (warned ? 1 : 0)); // nothing else to complain of
        if (route.id == "A2b") {
            const OverallProof proof = prove_overall(route.steps.front());
            // Figures of the route authors' own inventory for A2b and A2, computed before this program.
            CHECK(100 * proof.atom_economy == Approx(43.9).epsilon(0.05 / 43.9));
            CHECK(100 * proof.best_atom_economy == Approx(67.1).epsilon(0.05 / 67.1));
        }
    }
}

TEST_CASE("a route says what its numbers rest on, and yields that are not measured are marked") {
    for (const fs::path& path : route_files()) {
        CAPTURE(path.filename().string());
        Problems problems;
        const Route route = read(path, problems);
        const auto& statuses = route_statuses();
        CHECK(std::find(statuses.begin(), statuses.end(), route.status) != statuses.end());
        if (route.status == "designed from the equations, never run")
            for (const Step& step : route.steps)
                CHECK(step.isolated.assumed);
    }
}
