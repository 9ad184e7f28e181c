// SPDX-License-Identifier: MIT
// A route as its author wrote it: steps, stages, charges, reactions, separations. Plain data, checked for
// spelling (every name found, every amount typed) but not yet for chemistry.
//
// Substances and materials are pointers into the catalogue, which outlives every route read with it. Each
// part keeps the JSON pointer of its place in the file, so that later findings can name file, line and
// pointer.
#pragma once

#include "base/distribution.hpp"
#include "base/provenance.hpp"
#include "base/quantity.hpp"
#include "base/quantity_text.hpp"
#include "chemistry/material.hpp"
#include "chemistry/substance.hpp"
#include "input/source.hpp"
#include "route/correlation.hpp"
#include "route/role.hpp"

#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace routeweigh {

/// How the amounts of a route came about, in the words of the files.
namespace status {
inline constexpr std::string_view published = "published amounts",
                                  as_weighed = "run here, amounts as weighed",
                                  run_since = "designed from the equations, run here since",
                                  never_run = "designed from the equations, never run",
                                  equations_only = "equations only, amounts are stoichiometric";
} // namespace status

/// One side-by-side sum of substances: "acetanilide + bromine -> 4-bromoacetanilide + hydrogen bromide".
struct SubstanceEquation {
    struct Part {
        const Substance* substance;
        double
            coefficient; ///< negative on the left, positive on the right; a substance on both sides is netted
    };
    std::vector<Part> parts;
    std::string text;
    std::string pointer;

    /// Net coefficient, 0 when the substance has no part in it.
    double coefficient_of(const Substance* substance) const;
};

struct Instrument;

/// An instrument as a file names it; found in the list of instruments by InstrumentFinder.
struct NamedInstrument {
    std::string name, pointer; ///< no name: none is named
};

struct Charge {
    const Material* material = nullptr;
    WrittenQuantity amount; ///< as written; charge.hpp turns it into grams
    bool as_used = false;   ///< taken from the air: charged = consumed
    const Role* role = nullptr;
    const Substance* of = nullptr;      ///< the component that mol, eq and mol % count; nullptr: not needed
    bool bought = false;                ///< not to be fed from another step even though one makes it
    std::optional<Distribution> spread; ///< of the number in `amount`, in its unit
    NamedInstrument measured_with;
    std::shared_ptr<const Instrument> instrument; ///< nullptr: its spread is stated, or nobody knows it
    std::string source, pointer;
    std::string
        given_as;     ///< the amount in the words of the source: "10.00 mmol"; tells what a student works out
    std::string note; ///< what the hand needs to know beside the amount
};

struct Reaction {
    SubstanceEquation equation;
    std::string title;
    double conversion = 1.0;       ///< of `of`, 0 to 1
    const Substance* of = nullptr; ///< needed only below full conversion
    std::optional<int> priority;   ///< among competing reactions, smaller goes first
    std::optional<double> split;   ///< share among the reactions of the stage that carry one
    std::string pointer;
};

enum class SeparationMethod {
    filtration,
    decantation,
    extraction,
    distillation,
    evaporation,
    drying,
    sublimation
};

struct Separation {
    struct Share {
        const Substance* substance;
        double fraction; ///< 0 to 1: of what is kept, or of what leaves
    };
    SeparationMethod by = SeparationMethod::filtration;
    std::string to;
    bool lists_what_stays =
        false;                    ///< true: `shares` are kept and all else leaves; false: only `shares` leave
    bool takes_volatiles = false; ///< drying without a list: every liquid and gas leaves
    std::vector<Share> shares;
    double held = 0.0;          ///< g liquor kept back per g of what is kept
    std::optional<double> loss; ///< share of the step's product loss, 0 to 1
    std::string pointer;

    bool gives_vapour() const {
        return by == SeparationMethod::drying || by == SeparationMethod::evaporation;
    }
};

enum class Phase { reaction, workup, purification };

/// How fast something is made or used up, first order.
struct RateConstant {
    double per_second = 0;
    Provenance from;
    std::string note;
};

/// How one substance comes into the pot of a stage and goes again, for its course over time.
struct Kinetics {
    const Substance* of = nullptr;
    const Substance* with = nullptr;  ///< what uses it up; charged in the same stage
    double per_mol = 1;               ///< mol of `with` that one mol uses up
    Duration over;                    ///< of the addition
    int portions = 0;                 ///< 0: drop by drop
    std::optional<RateConstant> made; ///< none: charged as such, or made at once
    /// With all of `with` there; it slows down as that is used up. Several: values assumed in turn.
    std::vector<RateConstant> used;
    std::string pointer;
};

struct Stage {
    std::string title;
    Phase phase = Phase::reaction;
    std::optional<Temperature> temperature;
    std::optional<Duration> time;
    std::optional<Energy> energy;        ///< metered or estimated, per run of the step
    std::optional<Volume> cooling_water; ///< per run of the step
    std::vector<Charge> charges;
    std::vector<Reaction> reactions;
    std::vector<Separation> separations;
    std::optional<Kinetics> kinetics;
    std::string pointer;
};

struct Isolated {
    std::optional<Mass> mass;    ///< exactly one of the two is given
    std::optional<double> yield; ///< of the theoretical yield, above 0 to 1
    bool assumed = false;
    std::string note, pointer;
    std::optional<Distribution> spread;           ///< of the true value over the mass or yield as written
    std::shared_ptr<const Instrument> instrument; ///< with which the mass was weighed
};

struct StreamNote {
    std::string name, container, note, pointer;
};

struct Step {
    std::string id, title;
    const Substance* product = nullptr;
    const Substance* reference = nullptr; ///< eq and mol % refer to its amount
    SubstanceEquation overall;
    Isolated isolated;
    std::vector<const Substance*> dissolved; ///< gases that form and stay in the liquor
    std::string rest = "residue", gas = "gas";
    std::vector<StreamNote> streams;
    std::vector<Stage> stages;
    std::vector<std::string> notes;
    std::string pointer;
};

/// A substance taken out of a stream and put to use again in place of fresh material.
struct Reuse {
    const Substance* substance = nullptr;
    int from_step = 0;
    std::string from_stream;
    int to_step = 0;
    double fraction = 1.0;
    std::optional<Distribution> spread; ///< of the fraction
    std::string note, pointer;
};

/// The strength of a solution, where it may differ from that of the catalogue.
struct Bottle {
    const Material* material = nullptr;
    const Substance* of = nullptr;      ///< the component that may vary; the others fill up to 1
    std::optional<Distribution> spread; ///< of its mass fraction
    std::string note, pointer;
};

struct Coproduct {
    const Substance* substance = nullptr;
    std::string note, pointer;
};

/// From which route this one was made, and by which changes. Values as they stand in the file, texts without
/// quotes; "" where nothing stood or stands.
struct Parentage {
    struct Change {
        std::string at; ///< JSON pointer
        std::string before, after;
    };
    std::string id;
    std::vector<Change> changes;
};

struct Route {
    std::string id, title, origin, status; ///< `origin`: where the numbers come from
    std::string schema;                    ///< where the file says that its schema lies; not followed
    std::optional<Parentage> parent;
    const Substance* product = nullptr;
    AtomicWeights weights;   ///< that its substances were read with
    std::vector<Step> steps; ///< in the order of the file
    std::vector<Reuse> reuse;
    std::vector<Coproduct> coproducts;
    std::vector<Bottle> bottles;
    CorrelatedInputs correlated;
    struct {
        NamedInstrument masses, volumes, liquids; ///< liquids: solvents, however their amount is written
    } measured_with;                              ///< where a charge says nothing else
    std::vector<std::string> notes;
    std::shared_ptr<const Source> source;

    /// Somebody has carried it out with these amounts.
    bool was_run() const { return status != status::never_run && status != status::equations_only; }
};

} // namespace routeweigh
