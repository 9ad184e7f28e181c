// SPDX-License-Identifier: MIT
#include "documents/bench.hpp"

#include "assess/hazard/statement.hpp"

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
        return BenchHazard::oxidiser;
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
        return BenchHazard::sensitiser;
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

void add_statements(BenchSubstance& item, const HazardEntry& entry) {
    for (const GhsEntry& ghs : entry.ghs()) {
        const auto hazard = hazard_of(statement_number(ghs.statement));
        if (hazard) item.hazards.insert(*hazard);
        std::vector<std::string>& list = hazard ? item.statements : item.others;
        if (std::find(list.begin(), list.end(), ghs.statement) == list.end()) list.push_back(ghs.statement);
    }
}

} // namespace

std::string_view words(BenchHazard hazard) {
    switch (hazard) {
    case BenchHazard::oxidiser:
        return "oxidiser";
    case BenchHazard::flammable:
        return "flammable";
    case BenchHazard::corrosive:
        return "corrosive";
    case BenchHazard::toxic:
        return "acutely toxic";
    case BenchHazard::sensitiser:
        return "sensitiser";
    case BenchHazard::long_term:
        return "long-term harm";
    case BenchHazard::aquatic:
        return "toxic to water life";
    case BenchHazard::explosive:
        break;
    }
    return "explosive or self-reactive";
}

std::vector<BenchSubstance> bench_of(const Assessment& route) {
    std::vector<BenchSubstance> bench;
    const auto inflows = route.flat().inflows();
    for (std::size_t i = 0; i < inflows.size(); ++i) {
        const Inflow& inflow = inflows[i];
        if (inflow.fed_by >= 0 || inflow.as_used || inflow.substance->id == "water") continue;
        const double grams = route.evaluation().in[i] / route.evaluation().product;
        auto found = std::find_if(bench.begin(), bench.end(),
                                  [&](const auto& item) { return item.substance == inflow.substance; });
        if (found == bench.end())
            found = bench.insert(bench.end(),
                                 {inflow.substance, 0.0, false, inflow.substance->assessed, {}, {}, {}});
        found->grams += grams;
        found->reactant = found->reactant || inflow.reactant;
        // As in the hazard figures: the entry of the solution holds unless the bottle holds nothing else.
        add_statements(*found,
                       inflow.neat ? entry_neat(*inflow.substance) : entry_in_solution(*inflow.substance));
    }
    std::stable_sort(bench.begin(), bench.end(),
                     [](const auto& a, const auto& b) { return a.grams > b.grams; });
    return bench;
}

const BenchSubstance* find_on_bench(const std::vector<BenchSubstance>& bench, const Substance* substance) {
    const auto found = std::find_if(bench.begin(), bench.end(),
                                    [&](const auto& item) { return item.substance == substance; });
    return found == bench.end() ? nullptr : &*found;
}

} // namespace routeweigh::documents
