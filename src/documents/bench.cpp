// SPDX-License-Identifier: MIT
#include "documents/bench.hpp"

#include "assess/hazard/statement.hpp"
#include "assess/input_class.hpp"
#include "documents/classified_mixture.hpp"

#include <algorithm>
#include <array>

namespace routeweigh::documents {
namespace {

struct KindRange {
    int first, last; ///< numbers of statements
    BenchHazard kind;
};

/// Numbers of hazard statements: Annex 3 to the GHS (remembered).
constexpr std::array kind_ranges{
    KindRange{200, 211, BenchHazard::explosive},   KindRange{220, 228, BenchHazard::flammable},
    KindRange{229, 229, BenchHazard::pressure},    KindRange{230, 231, BenchHazard::explosive},
    KindRange{232, 232, BenchHazard::flammable},   KindRange{240, 242, BenchHazard::explosive},
    KindRange{250, 261, BenchHazard::flammable},   KindRange{270, 272, BenchHazard::oxidising},
    KindRange{280, 284, BenchHazard::pressure},    KindRange{290, 290, BenchHazard::corrosive},
    KindRange{300, 301, BenchHazard::toxic},       KindRange{302, 303, BenchHazard::harmful},
    KindRange{304, 305, BenchHazard::aspiration},  KindRange{310, 311, BenchHazard::toxic},
    KindRange{312, 313, BenchHazard::harmful},     KindRange{314, 314, BenchHazard::corrosive},
    KindRange{315, 316, BenchHazard::harmful},     KindRange{317, 317, BenchHazard::sensitising},
    KindRange{318, 318, BenchHazard::corrosive},   KindRange{319, 320, BenchHazard::harmful},
    KindRange{330, 331, BenchHazard::toxic},       KindRange{332, 333, BenchHazard::harmful},
    KindRange{334, 334, BenchHazard::sensitising}, KindRange{335, 336, BenchHazard::harmful},
    KindRange{340, 373, BenchHazard::long_term},   KindRange{400, 413, BenchHazard::aquatic},
    KindRange{420, 420, BenchHazard::ozone}};

BenchBottle bench_bottle(const ClassifiedBottle& bottle, double product) {
    const MixtureClassification& classification = bottle.classification;
    BenchBottle item{
        bottle.material, bottle.grams / product, bottle.reactants, {}, {}, {}, is_assessed(classification)};
    for (const std::string& statement : classification.label.statements) {
        item.hazards.insert(kind_of(statement_number(statement)));
        item.statements.push_back(statement);
    }
    const auto& supplemental = classification.label.supplemental;
    item.statements.insert(item.statements.end(), supplemental.begin(), supplemental.end());
    if (!supplemental.empty()) item.hazards.insert(BenchHazard::other);
    for (const MixtureResult& result : classification.results)
        if (result.outcome == MixtureOutcome::test_needed) item.undecided.emplace_back(result.title);
    return item;
}

/// Nothing but water, solid or liquid.
bool is_plain_water(const Material& material) {
    return material.is_neat() && is_water(*material.components.front().substance);
}

} // namespace

BenchHazard kind_of(int statement) {
    for (const KindRange& range : kind_ranges)
        if (statement >= range.first && statement <= range.last) return range.kind;
    return BenchHazard::other;
}

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
    case BenchHazard::aspiration:
        return "harms the lungs when swallowed";
    case BenchHazard::aquatic:
        return "harms water life";
    case BenchHazard::ozone:
        return "harms the ozone layer";
    case BenchHazard::explosive:
        return "explosive or self-reactive";
    case BenchHazard::pressure:
        return "under pressure";
    case BenchHazard::harmful:
        return "harmful or irritating";
    case BenchHazard::other:
        break;
    }
    return "of another kind";
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
