// SPDX-License-Identifier: MIT
// What programs read. The figures of the ten ways to 4-bromoacetanilide are those of the bench procedures
// that the route files were written from, computed there by hand-made tables; read.
#include "compare/uncertainty/certainty.hpp"
#include "documents/compared.hpp"
#include "documents/comparison_data.hpp"

#include <doctest/doctest.h>

#include <cmath>
#include <set>

using namespace routeweigh;
using namespace routeweigh::test;
using doctest::Approx;

namespace {

double percent_points(double value) {
    return value;
}

} // namespace

TEST_CASE("figures of the data are those of the bench tables, to the digits printed there") {
    const Comparison comparison = compare_folder("4-bromoacetanilide", "A1");
    const writing::MachineTree tree = documents::comparison_tree(comparison);
    struct Row {
        const char* route;
        double atom_economy, intensity, same_auxiliaries;
    };
    // atom economy %, process mass intensity as written and with the same 50 mL of drown-out water
    constexpr Row rows[] = {{"A1", 72.6, 53.4, 53.4}, {"A2", 67.1, 49.8, 61.5},  {"A2b", 43.9, 53.0, 64.6},
                            {"A3", 85.6, 41.3, 55.8}, {"A3w", 85.6, 40.3, 54.9}, {"A4", 57.5, 46.1, 75.2},
                            {"A5", 15.8, 79.7, 79.7}, {"A6", 38.1, 59.7, 65.5},  {"A7a", 68.4, 63.9, 58.1},
                            {"A7b", 47.0, 59.2, 59.2}};
    for (const Row& row : rows) {
        CAPTURE(row.route);
        CHECK(std::abs(figure_of(tree, row.route, "atom_economy") - row.atom_economy) < 0.051);
        CHECK(std::abs(figure_of(tree, row.route, "process_mass_intensity") - row.intensity) < 0.051);
        CHECK(std::abs(figure_of(tree, row.route, "same_auxiliaries_process_mass_intensity") -
                       row.same_auxiliaries) < 0.051);
    }
    CHECK(std::round(percent_points(figure_of(tree, "A3", "break_even_yield"))) == 84.0);
    CHECK(std::isnan(figure_of(tree, "A1", "break_even_yield")));
    CHECK(std::isnan(figure_of(tree, "A1", "chlorine_economy")));
}

TEST_CASE("a missing value is null and its note says why; an open end is null, too") {
    for (const RouteSet& set : shipped_sets()) {
        CAPTURE(set.folder);
        const writing::MachineTree tree =
            documents::comparison_tree(compare_folder(set.folder, set.baseline));
        for (const auto& route : std::get<writing::MachineList>(member(tree, "routes").value))
            for (const auto& figure : std::get<writing::MachineList>(member(route, "figures").value)) {
                const double value = number_of(member(figure, "value")),
                             high = number_of(member(figure, "high"));
                CAPTURE(std::get<std::string>(member(figure, "id").value));
                if (!std::isfinite(value) || !std::isfinite(high))
                    CHECK_FALSE(std::get<std::string>(member(figure, "note").value).empty());
                if (std::isfinite(value)) CHECK(number_of(member(figure, "low")) <= value);
            }
    }
}

TEST_CASE("a route alone has no figure that needs a second one") {
    const Comparison all = compare_folder("ibuprofen", "six-step");
    const Comparison one = compare_texts({all.route(0).route().source->text});
    const writing::MachineTree tree = documents::comparison_tree(one);
    const std::string& id = one.route(0).route().id;
    CHECK(std::isnan(figure_of(tree, id, "same_auxiliaries_process_mass_intensity")));
    CHECK(std::isnan(figure_of(tree, id, "break_even_yield")));
}

TEST_CASE("streams and steps of the data agree with the ledger, in both readings of the loss") {
    for (const RouteSet& set : shipped_sets()) {
        const Comparison comparison = compare_folder(set.folder, set.baseline);
        const writing::MachineTree tree = documents::comparison_tree(comparison);
        const auto& routes = std::get<writing::MachineList>(member(tree, "routes").value);
        for (std::size_t i = 0; i < routes.size(); ++i) {
            CAPTURE(comparison.route(i).route().id);
            double nominal = 0.0, unreacted = 0.0;
            for (const auto& stream : std::get<writing::MachineList>(member(routes[i], "streams").value)) {
                nominal += number_of(member(stream, "grams"));
                unreacted += number_of(member(stream, "grams_unreacted"));
            }
            CHECK(nominal == Approx(comparison.route(i).ledger().streams).epsilon(1e-9));
            CHECK(unreacted == Approx(comparison.route(i).ledger(true).streams).epsilon(1e-9));
            CHECK(number_of(member(member(routes[i], "balance"), "closure_error")) < 1e-9);
            for (const auto& step : std::get<writing::MachineList>(member(routes[i], "steps").value))
                for (const char* reading : {"loss_in_workup", "loss_unreacted"}) {
                    const auto& masses = member(step, reading);
                    CHECK(number_of(member(masses, "isolated")) + number_of(member(masses, "lost")) +
                              number_of(member(masses, "unreacted")) ==
                          Approx(number_of(member(step, "theoretical"))).epsilon(1e-9));
                }
        }
    }
}

TEST_CASE("a row of the table for programs is one figure of one route") {
    const Comparison comparison = compare_folder("adipic-acid", "E1");
    const writing::DataRows rows = documents::comparison_rows(comparison);
    std::set<std::pair<std::string, std::string>> keys;
    for (const auto& row : rows.rows) {
        REQUIRE(row.size() == rows.columns.size());
        CHECK(keys.emplace(std::get<std::string>(row[0]), std::get<std::string>(row[1])).second);
    }
    CHECK(keys.size() % comparison.routes().size() == 0);
}

TEST_CASE(
    "data of draws give no share where nothing bounds a score, and ranks that sum to one route a rank") {
    const Comparison comparison = compare_folder("4-bromoacetanilide", "A1");
    UncertaintyOptions options;
    for (const auto& route : comparison.routes()) // as a class may have found, so that no yield is assumed
        options.found.push_back({route->route().id, -1, {0.6, 0.7, 0.8}});
    const Certainty certainty(comparison, options, {});
    const writing::MachineTree tree = documents::comparison_tree(comparison, &certainty);
    const auto& routes = std::get<writing::MachineList>(member(member(tree, "certainty"), "routes").value);
    REQUIRE(routes.size() == comparison.routes().size());
    int unbounded = 0;
    std::vector<double> taken(routes.size(), 0.0); // by rank
    for (std::size_t r = 0; r < routes.size(); ++r) {
        CAPTURE(comparison.route(r).route().id);
        CHECK(number_of(member(member(routes[r], "weightings"), "first")) >= 0.0);
        for (const auto& figure : std::get<writing::MachineList>(member(routes[r], "figures").value)) {
            const std::string id = std::get<std::string>(member(figure, "id").value);
            if (id == "hazard_score") {
                const bool bounded = comparison.route(r).scores().nominal.ranked(),
                           baseline = comparison.baseline().scores().nominal.ranked();
                CHECK(std::get<bool>(member(figure, "bounded_above").value) == bounded);
                CHECK(std::isnan(number_of(member(figure, "better_than_baseline"))) ==
                      !(bounded && baseline));
                unbounded += bounded ? 0 : 1;
            }
            if (id != "yield") continue;
            const auto& shares = std::get<writing::MachineList>(member(figure, "at_rank").value);
            REQUIRE(shares.size() == routes.size());
            for (std::size_t rank = 0; rank < shares.size(); ++rank)
                taken[rank] += number_of(shares[rank]);
        }
    }
    CHECK(unbounded > 0);
    double all = 0.0;
    for (const double share : taken)
        all += share;
    CHECK(all == Approx(static_cast<double>(routes.size())));
}
