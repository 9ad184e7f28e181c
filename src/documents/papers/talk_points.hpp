// SPDX-License-Identifier: MIT
// What a short talk says of an experiment: its kinds of hazard, most severe first, and the signs to watch.
#pragma once

#include "assess/bench/experiment.hpp"

#include <string>
#include <string_view>
#include <vector>

namespace routeweigh::documents {

struct TalkHazard {
    struct Amount {
        int step = 0;
        double grams = 0; ///< in one pot of the step
    };
    struct Bottle {
        std::string name;
        std::vector<Amount> amounts; ///< a step each; none: what a step makes, which is for the key to say
        int urgency = 0;

        double grams() const; ///< of all steps, one pot each
    };
    std::string_view id, title;
    std::string what_to_do;
    int urgency = 0;
    std::vector<Bottle> bottles; ///< most urgent first, then heaviest

    double grams() const;
};

/// Kinds of hazard of the bottles and of what the flask sets free: a poison first (GHS categories 1 to 3 of
/// acute toxicity), the others by urgency and then by grams. Amounts are those of the bench sheet.
std::vector<TalkHazard> talk_hazards(const bench::Experiment& experiment);

/// What is seen when it goes as it should, and when it does not.
std::vector<std::string> talk_signs(const bench::Experiment& experiment);

} // namespace routeweigh::documents
