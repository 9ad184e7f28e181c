// SPDX-License-Identifier: MIT
// Which container a stream belongs in, or an explicit stop, with every reason in the order in which it was
// weighed.
#pragma once

#include "assess/streams/stream_description.hpp"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace routeweigh::streams {

/// One line of the way to a decision, with the number that was looked at.
struct Reason {
    std::string what;            ///< "water share", for programs
    std::string words;           ///< the sentence, lower case, without a full stop
    std::optional<double> value; ///< in `unit`
    std::optional<double> line;  ///< that it was held against
    std::string unit;
    std::string source; ///< of the line
};

/// Treatment::of where the weak acid takes base as well.
inline constexpr std::string_view weak_acid_too = "weak acid";

/// What has to be done before the stream goes anywhere.
struct Treatment {
    enum class Kind { let_gas_leave, destroy, quench, add_base, add_acid, part_layers };
    Kind kind;
    std::string words;
    std::string without_amounts; ///< the same words where amounts are to be worked out
    double moles = 0; ///< of oxidiser, acid, base or sulfite that is there; 0 where it is no matter of moles
    std::string of{}; ///< what is destroyed, the sulfite, `weak_acid_too`; "" where the kind says it all
};

struct Decision {
    enum class Outcome {
        container,
        own_bottle, ///< stop and ask
        air,        ///< leaves through the hood
        trap,       ///< gas that a hood alone does not answer
        recovered,  ///< put to use again
        on_product, ///< an impurity of what is handed in, no waste by itself
        nothing
    };
    Outcome outcome = Outcome::nothing;
    std::optional<ContainerKind> kind; ///< with Outcome::container and Outcome::recovered
    std::string goes_to;               ///< name of the container, or what to do instead
    std::string summary;               ///< what decided, with numbers: "37 % ethanol by volume, ..."
    std::vector<Treatment> first;
    std::vector<Reason> reasons;
    std::vector<std::string> vent; ///< why no tight cap
    std::string waste_code;
    std::string ask;         ///< whom, where the outcome is a stop
    std::string bottle;      ///< there: what to collect it in, "own bottle, marked cyanide, kept basic"
    bool too_strong = false; ///< a stop, for its acid is not neutralised at a bench

    bool needs(Treatment::Kind treatment) const;
    bool needs_base_for_weak_acid() const;
};

Decision decide_container(const StreamDescription& stream, const LocalRules& local);

/// What is left beside the product, so little that it stays on it.
Decision decide_on_product(const StreamDescription& stream, const LocalRules& local);

/// The more demanding of the decisions of both readings, with the treatments of both.
Decision join_readings(const Decision& nominal, const Decision& unreacted);

} // namespace routeweigh::streams
