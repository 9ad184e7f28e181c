// SPDX-License-Identifier: MIT
#include "app/atomic_weights.hpp"

#include "app/session.hpp"

namespace routeweigh {

std::vector<ElementEffect> atomic_weight_effects(const Comparison& comparison,
                                                 const std::vector<SourcePtr>& sources,
                                                 const Catalogue& catalogue) {
    return element_effects(comparison, [&](const AtomicWeights& weights) {
        const Catalogue other = catalogue.with(weights);
        AssessmentRules rules = read_assessment_rules(other);
        rules.classified_by = comparison.baseline().rules().classified_by;
        Problems said_before;
        const Comparison again =
            compare_routes(read_routes(sources, other, said_before), comparison.baseline().route().id, rules);
        return FigureModel(again, {}).nominal();
    });
}

} // namespace routeweigh
