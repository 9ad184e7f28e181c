// SPDX-License-Identifier: MIT
// The rules of one house: names of containers, lines, contact. A data file that is copied and edited.
#pragma once

#include "assess/streams/substance_set.hpp"
#include "base/provenance.hpp"
#include "input/source.hpp"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace routeweigh {
class Catalogue;
}

namespace routeweigh::streams {

/// Collection streams of a teaching laboratory.
enum class ContainerKind {
    halogenated,
    flammable,
    flammable_aqueous, ///< only where a house keeps one for water that burns
    aqueous_acidic,
    aqueous_basic,
    aqueous_neutral,
    oxidiser,
    metal,
    solids,
    sharps,
    product,
    recovery
};

/// "aqueous_acidic", as data files write it.
std::string_view id_of(ContainerKind kind);

struct Container {
    ContainerKind kind;
    std::string name; ///< as the house calls it
    std::string takes;
    double size = 0;        ///< mL; 0 where it has none
    std::string waste_code; ///< of the EU list of waste, "" where not given
};

/// What never goes into a shared container.
struct StopRule {
    std::string what, why;
    std::string bottle;        ///< where it goes instead; for what is to be destroyed, how
    bool destroy = false;      ///< no stop, but destroyed before the stream goes anywhere
    bool not_in_water = false; ///< much water has destroyed it already
    bool vented = false;
    SubstanceSet set;
    Provenance from;
};

/// Things that no composition describes: filter paper, gloves, capillaries.
struct Thing {
    std::string name;
    ContainerKind kind;
    std::string note;
    Provenance from;
};

/// Words of a handout and the outcomes they may mean: ids of containers, "air", "trap", "drain",
/// "own_bottle".
struct HandoutWords {
    std::string says;
    std::vector<std::string> means;
};

struct LocalRules {
    std::string id, title, jurisdiction, contact;
    Sourced<double> halogenated_from;                    ///< share by mass
    Sourced<double> ignitable_below;                     ///< degC
    Sourced<double> aqueous_from;                        ///< share of water by mass
    std::optional<Sourced<double>> alcohol_exempt_below; ///< share by volume of a watery solution
    Sourced<double> corrosive_acid_from, corrosive_base_from, weak_from; ///< mol/L
    double neutral_low = 6, neutral_high = 9;                            ///< pH
    Provenance neutral_from;
    Sourced<double> fill_limit;            ///< of the nominal size
    Sourced<double> allowance;             ///< for spills and rinses, share added
    Sourced<double> call_at;               ///< share of the nominal size at which to call for pickup
    Sourced<double> bench_most;            ///< mL neutralised at a bench at one time
    Sourced<double> oxidant_from;          ///< share by mass from which test papers surely show it
    Sourced<double> metal_from;            ///< share by mass
    std::vector<std::string> toxic_metals; ///< symbols
    bool drain_permitted = false;
    double flush_volumes = 0;
    std::vector<Container> containers;
    std::vector<HandoutWords> handout_words; ///< the first that fits counts
    std::vector<StopRule> stops;
    std::vector<Thing> things;

    const Container* container(ContainerKind kind) const;
    const Thing* thing(std::string_view name) const;
};

/// A file that says "based_on": "US" or "EU" edits the rules shipped for it and need only say what differs:
/// containers by kind, words of handouts before the shipped ones, stops and things beside them.
/// \throws InputError with every problem of the file
LocalRules read_local_rules(const Source& source, const Catalogue& catalogue);

/// The rules shipped for a jurisdiction: "US" or "EU". \throws InputError where there are none
LocalRules shipped_local_rules(const Catalogue& catalogue, std::string_view jurisdiction);

} // namespace routeweigh::streams
