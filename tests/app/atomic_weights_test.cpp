// SPDX-License-Identifier: MIT
// Atomic weights as uncertain inputs. Their intervals are those of IUPAC 2021, abridged; the figures to
// compare with are worked by hand from the formulas of the metrics.
#include "app/atomic_weights.hpp"
#include "app/shipped.hpp"
#include "compare/uncertainty/certainty.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>

using namespace routeweigh;
using namespace routeweigh::test;
using doctest::Approx;

namespace {

constexpr int carbon = 6, bromine = 35;

struct Weighed {
    std::vector<SourcePtr> sources;
    Comparison comparison;
    std::vector<ElementEffect> effects;

    explicit Weighed(const std::vector<std::string>& names)
        : sources(sources_of(names)), comparison(compared(sources)),
          effects(atomic_weight_effects(comparison, sources, Catalogue::embedded())) {}

    FigureModel model() const {
        UncertaintyOptions options;
        options.elements = effects;
        return {comparison, options};
    }

    double slope(int element, const char* figure, std::size_t route = 0) const {
        const auto found = std::find_if(effects.begin(), effects.end(),
                                        [&](const ElementEffect& e) { return e.element == element; });
        REQUIRE(found != effects.end());
        const FigureModel figures(comparison, {});
        return found->slope[figures.output(route, figures.heads().index_of(figure))];
    }

  private:
    static std::vector<SourcePtr> sources_of(const std::vector<std::string>& names) {
        std::vector<SourcePtr> result;
        for (const std::string& name : names)
            result.push_back(shipped(name)->route().source);
        return result;
    }
    static Comparison compared(const std::vector<SourcePtr>& sources) {
        Problems warnings;
        return compare_routes(read_routes(sources, Catalogue::embedded(), warnings), {}, rules());
    }
};

} // namespace

TEST_CASE("atom economy follows the atomic weights as its formula says") {
    const Weighed a1({"4-bromoacetanilide/A1"});
    // 100 P / S with P = C8H8BrNO 214.062 g/mol and S = C8H9NO + Br2 = 294.975 g/mol
    const double p = 214.062, s = 294.975;
    CHECK(a1.slope(carbon, "atom_economy") == Approx(100 * 8 / s * (1 - p / s)).epsilon(1e-5));
    CHECK(a1.slope(bromine, "atom_economy") == Approx(100 / s * (1 - 2 * p / s)).epsilon(1e-5));
}

TEST_CASE("a yield in per cent weighs more with heavier atoms, bromine poured as bromine does not") {
    const Weighed a1({"4-bromoacetanilide/A1"});
    // 10.00 mmol of acetanilide are weighed: theory m P / A, A = 135.166 g/mol, so dlnP - dlnA.
    const double theory = 1.3517 * 214.062 / 135.166;
    CHECK(a1.slope(carbon, "theoretical_yield") ==
          Approx(theory * (8 / 214.062 - 8 / 135.166)).epsilon(1e-3));
    // Grams of bromine poured do not change; only the product that they are counted by.
    const FigureModel figures(a1.comparison, {});
    const double handled = figures.nominal()[figures.heads().index_of("bromine_handled")];
    CHECK(a1.slope(bromine, "bromine_handled") == Approx(-handled / 214.062).epsilon(1e-3));
}

TEST_CASE("the weight of an element is one quantity for all routes, in the linear and in the drawn result") {
    const Weighed both({"4-bromoacetanilide/A1", "4-bromoacetanilide/A3"});
    const FigureModel model = both.model();
    const auto& inputs = model.inputs();
    CHECK(inputs.inputs.size() == inputs.first_element + both.effects.size());
    UncertaintyOptions options;
    options.elements = both.effects;
    MonteCarloOptions draws;
    draws.most = 20'000;
    const Certainty certainty(both.comparison, options, draws);
    const std::size_t economy = model.heads().index_of("atom_economy");
    for (const std::size_t route : {0U, 1U}) {
        const std::size_t y = model.output(route, economy);
        double square = 0.0;
        for (const ElementEffect& effect : both.effects) {
            const double u = element_weight_uncertainty(effect.element) / std::sqrt(3.0);
            square += std::pow(effect.slope[y] * u, 2);
        }
        CHECK(certainty.linear().deviation[y] == Approx(std::sqrt(square)).epsilon(1e-9));
        CHECK(certainty.figure(route, economy).deviation == Approx(std::sqrt(square)).epsilon(0.02));
    }
    CHECK(certainty.order(economy).share_better(1, 0) == 1.0);
}

TEST_CASE("routes read again with the standard weights have the figures that they had") {
    const Weighed routes({"ibuprofen/three-step"});
    const Catalogue again = Catalogue::embedded().with(AtomicWeights{});
    const AssessmentRules other_rules = read_assessment_rules(again);
    Problems warnings;
    const Comparison other = compare_routes(read_routes(routes.sources, again, warnings), {}, other_rules);
    const std::vector<double> now = FigureModel(other, {}).nominal();
    const std::vector<double> before = FigureModel(routes.comparison, {}).nominal();
    REQUIRE(now.size() == before.size());
    for (std::size_t y = 0; y < now.size(); ++y)
        CHECK((now[y] == before[y] || (std::isnan(now[y]) && std::isnan(before[y]))));
}
