// SPDX-License-Identifier: MIT
// Printed workings: the parts add up to the totals, the totals give the figure, every figure can be
// explained.
#include "assess/figure_pick.hpp"
#include "documents/compared.hpp"
#include "documents/explain_figure.hpp"
#include "documents/inputs.hpp"
#include "documents/working.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <cstdlib>

using namespace routeweigh;
using namespace routeweigh::documents;
using namespace routeweigh::test;
using doctest::Approx;

TEST_CASE("the parts of every total add up to it, and their printed texts to its printed text") {
    for (const RouteSet& set : shipped_sets()) {
        const Comparison comparison = compare_folder(set.folder, set.baseline);
        for (const auto& route : comparison.routes()) {
            CAPTURE(route->route().id);
            for (const Metric* metric : all_metrics()) {
                CAPTURE(metric->id);
                if (std::isnan(route->metric(metric->id))) continue;
                for (const WorkingSum& sum : working_of(*route, *metric).sums) {
                    CAPTURE(sum.name);
                    CHECK_FALSE(sum.text.empty());
                    if (sum.parts.empty()) {
                        CHECK((sum.value == 0.0 || !sum.rule.empty()));
                        continue;
                    }
                    REQUIRE(sum.parts.size() == sum.part_texts.size());
                    double total = 0.0;
                    for (const Contribution& part : sum.parts)
                        total += part.value;
                    CHECK(total == Approx(sum.value).epsilon(1e-9));
                }
            }
        }
    }
}

TEST_CASE("the totals of a ratio give its figure") {
    const Comparison comparison = compare_folder("4-bromoacetanilide", "A1");
    for (const auto& route : comparison.routes())
        for (const Metric* metric : all_metrics()) {
            if (metric->derive != nullptr || std::isnan(route->metric(metric->id))) continue;
            CAPTURE(metric->id);
            const Working working = working_of(*route, *metric);
            double above = 0.0, below = metric->below.empty() ? 1.0 : 0.0;
            // A total that stands above and below the line is told once.
            const auto value_of = [&working](double Totals::*total) {
                const auto sum = std::find_if(working.sums.begin(), working.sums.end(),
                                              [total](const WorkingSum& one) { return one.total == total; });
                REQUIRE(sum != working.sums.end());
                return sum->value;
            };
            for (const auto& term : metric->above)
                above += term.sign * value_of(term.total);
            for (const auto& term : metric->below)
                below += term.sign * value_of(term.total);
            CHECK(metric->factor * above / below == Approx(route->metric(metric->id)).epsilon(1e-12));
            CHECK_FALSE(working.formula.empty());
        }
}

TEST_CASE("the mass intensity of A3 is worked out from its fifteen charged components") {
    const Comparison comparison = compare_folder("4-bromoacetanilide", "A1");
    const Assessment& route = comparison.route(3);
    REQUIRE(route.route().id == "A3");
    const Working working =
        working_of(route, *all_metrics()[static_cast<std::size_t>(metric_index("process_mass_intensity"))]);
    REQUIRE(working.sums.size() == 2);
    CHECK(working.sums[0].parts.size() == 15);
    // 1.3517 + 6.48 + 2.107 + 1.474 + 24.95 + 4.28 + 14.97 + 11.34 + 3.72 g, added by hand from the route
    // file
    CHECK(working.sums[0].value == Approx(70.6727));
    CHECK(working.sums[0].text == "70.67");
    CHECK(working.result == "41.3\u00A0g/g");
    for (const Contribution& part : working.sums[0].parts)
        CHECK(part.pointer.find("/steps/0/stages/") == 0);
}

TEST_CASE("every figure of every shipped route can be explained") {
    for (const RouteSet& set : shipped_sets()) {
        const Comparison comparison = compare_folder(set.folder, set.baseline);
        for (std::size_t i = 0; i < comparison.routes().size(); ++i)
            for (const Figure& figure : comparison.route(i).figures()) {
                CAPTURE(figure.id);
                const writing::Document document = explain_figure(comparison, i, figure.id);
                const double value = number_of(member(*document.machine, "value"));
                CHECK((std::isnan(value) == std::isnan(figure.value)));
                if (!std::isnan(value)) CHECK(value == figure.value);
            }
        const writing::Document same =
            explain_figure(comparison, 1, "same_auxiliaries_process_mass_intensity");
        CHECK(number_of(member(*same.machine, "value")) ==
              comparison.against_baseline(1).same_auxiliaries.process_mass_intensity);
    }
}

TEST_CASE("the numbers of the same-auxiliaries figure give it, for routes of several steps too") {
    for (const RouteSet& set : shipped_sets()) {
        const Comparison comparison = compare_folder(set.folder, set.baseline);
        for (std::size_t i = 0; i < comparison.routes().size(); ++i) {
            const Assessment& route = comparison.route(i);
            CAPTURE(route.route().id);
            const double value = comparison.against_baseline(i).same_auxiliaries.process_mass_intensity;
            CHECK(FigurePick::same_auxiliaries(route.flat(), comparison.baseline()).value(route.values()) ==
                  value);
            const writing::Document document = explain_figure(comparison, i, same_auxiliaries_id);
            const auto& numbers = std::get<std::string>(member(*document.machine, "numbers").value);
            // "(91.4 - 48.6 + 51.9 x 10.00 mmol / 10.00 mmol) g / 1.713 g"
            std::vector<double> found;
            for (const char* at = numbers.c_str(); *at != 0;) {
                char* end = nullptr;
                if (*at >= '0' && *at <= '9') found.push_back(std::strtod(at, &end));
                at = end != nullptr ? end : at + 1;
            }
            REQUIRE(found.size() == 6);
            CHECK((found[0] - found[1] + found[2] * found[3] / found[4]) / found[5] ==
                  Approx(value).epsilon(2e-3));
        }
    }
}

TEST_CASE("contributors of a hazard figure add up to it") {
    const Comparison comparison = compare_folder("4-bromoacetanilide", "A1");
    const writing::Document document =
        explain_figure(comparison, comparison.baseline_index(), "inhalation_bottle");
    double sum = 0.0;
    for (const auto& term : std::get<writing::MachineList>(member(*document.machine, "terms").value))
        sum += number_of(member(term, "value"));
    CHECK(sum == Approx(number_of(member(*document.machine, "value"))).epsilon(1e-9));
    CHECK(sum > 0.0);
}

TEST_CASE("inputs by purpose add up to the mass intensity, and causes point the way of the difference") {
    const Comparison comparison = compare_folder("4-bromoacetanilide", "A1");
    const Assessment& base = comparison.baseline();
    for (const auto& route : comparison.routes()) {
        CAPTURE(route->route().id);
        double sum = 0.0;
        for (const PurposeInput& input : inputs_by_purpose(*route))
            sum += input.grams;
        CHECK(sum == Approx(route->metric("process_mass_intensity")).epsilon(1e-9));
        const double difference =
            route->metric("process_mass_intensity") - base.metric("process_mass_intensity");
        for (const PurposeDifference& cause : causes(*route, base, true))
            CHECK(cause.grams * difference > 0.0);
    }
    // A3 saves its mass in drown-out water alone; with the same auxiliaries the quench makes it heavier.
    CHECK(causes(comparison.route(3), base, true).front().purpose == Purpose::drown_out);
    CHECK(causes(comparison.route(3), base, false).front().purpose == Purpose::quench);
}
