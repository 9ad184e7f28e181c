// SPDX-License-Identifier: MIT
#include "documents/bench.hpp"

#include "assess/hazard/statement.hpp"
#include "assess/input_class.hpp"
#include "documents/classified_mixture.hpp"

#include <algorithm>
#include <optional>

namespace routeweigh::documents {
namespace {

/// Hazard statements of the GHS by number; what has no hazard of its own for this purpose is left out.
std::optional<BenchHazard> hazard_of(int statement) {
    switch (statement) {
    case 270:
    case 271:
    case 272:
        return BenchHazard::oxidising;
    case 220:
    case 221:
    case 222:
    case 223:
    case 224:
    case 225:
    case 226:
    case 228:
    case 250:
    case 260:
    case 261:
        return BenchHazard::flammable;
    case 290:
    case 314:
    case 318:
        return BenchHazard::corrosive;
    case 300:
    case 301:
    case 310:
    case 311:
    case 330:
    case 331:
        return BenchHazard::toxic;
    case 317:
    case 334:
        return BenchHazard::sensitising;
    case 340:
    case 350:
    case 360:
    case 370:
    case 372:
        return BenchHazard::long_term;
    case 400:
    case 410:
        return BenchHazard::aquatic;
    default:
        break;
    }
    if (statement >= 200 && statement <= 211) return BenchHazard::explosive;
    if (statement == 240 || statement == 241 || statement == 242) return BenchHazard::explosive;
    return std::nullopt;
}

BenchBottle bench_bottle(const ClassifiedBottle& bottle, double product) {
    const MixtureClassification& classification = bottle.classification;
    BenchBottle item{bottle.material,
                     bottle.grams / product,
                     bottle.reactants,
                     {},
                     {},
                     classification.label.supplemental,
                     {},
                     is_assessed(classification)};
    for (const std::string& statement : classification.label.statements) {
        const auto hazard = hazard_of(statement_number(statement));
        if (hazard) item.hazards.insert(*hazard);
        (hazard ? item.statements : item.others).push_back(statement);
    }
    for (const MixtureResult& result : classification.results)
        if (result.outcome == MixtureOutcome::test_needed) item.undecided.emplace_back(result.title);
    return item;
}

/// Nothing but water, solid or liquid.
bool is_plain_water(const Material& material) {
    return material.is_neat() && is_water(*material.components.front().substance);
}

} // namespace

std::string_view words(BenchHazard hazard) {
    switch (hazard) {
    case BenchHazard::oxidising:
        return "oxidising";
    case BenchHazard::flammable:
        return "flammable";
    case BenchHazard::corrosive:
        return "corrosive";
    case BenchHazard::toxic:
        return "acutely toxic";
    case BenchHazard::sensitising:
        return "sensitising";
    case BenchHazard::long_term:
        return "serious health hazard";
    case BenchHazard::aquatic:
        return "toxic to water life";
    case BenchHazard::explosive:
        break;
    }
    return "explosive or self-reactive";
}

std::vector<BenchBottle> bench_of(const Assessment& route, const std::vector<ClassifiedBottle>& bottles) {
    std::vector<BenchBottle> bench;
    for (const ClassifiedBottle& bottle : bottles)
        if (bottle.made_in.empty() && !is_plain_water(*bottle.material))
            bench.push_back(bench_bottle(bottle, route.evaluation().product));
    std::stable_sort(bench.begin(), bench.end(),
                     [](const auto& a, const auto& b) { return a.grams > b.grams; });
    return bench;
}

std::vector<BenchBottle> bench_of(const Assessment& route, const ClassificationRules& rules) {
    return bench_of(route, classify_bottles(route.flat(), route.evaluation(), rules));
}

const BenchBottle* find_on_bench(const std::vector<BenchBottle>& bench, const Material* material) {
    const auto found =
        std::find_if(bench.begin(), bench.end(), [&](const auto& item) { return item.material == material; });
    return found == bench.end() ? nullptr : &*found;
}

} // namespace routeweigh::documents
