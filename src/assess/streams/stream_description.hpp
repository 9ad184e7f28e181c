// SPDX-License-Identifier: MIT
// What a stream is, as far as its composition tells: form, water, acid or base left, halogenated share, flash
// point, metals, what still oxidises or reduces, what never goes into a shared container.
#pragma once

#include "assess/streams/acid_base.hpp"
#include "assess/streams/flash_point.hpp"
#include "assess/streams/local_rules.hpp"
#include "assess/streams/pairing.hpp"
#include "assess/streams/quench_table.hpp"
#include "assess/streams/route_stream.hpp"
#include "assess/streams/substance_set.hpp"

#include <string>
#include <vector>

namespace routeweigh::streams {

enum class StreamForm { nothing, gas, vapour, solid, aqueous, organic };
std::string_view words_of(StreamForm form);

/// Counted from what is left, never a predicted pH.
enum class AcidClass { strong_acid, weak_acid, neither, weak_base, strong_base };
std::string_view words_of(AcidClass acid);

struct MetalLeft {
    std::string symbol;
    double grams = 0, share = 0; ///< of the metal itself; share by mass of the stream
    std::vector<std::string> in; ///< substances that hold it
};

struct StopHit {
    const StopRule* rule;
    const Substance* substance;
    double grams = 0, share = 0;
};

struct StreamDescription {
    Composition as_left;
    PairedComposition paired; ///< acids and bases paired off; all below is of this composition
    StreamForm form = StreamForm::nothing;
    double grams = 0;
    VolumeSum volume;
    double water_share = 0;       ///< by mass of the whole
    double organic_share = 0;     ///< by mass
    double halogenated_share = 0; ///< by mass
    std::vector<const Substance*> halogenated;
    double alcohol_by_volume = 0; ///< of the whole; volumes added
    std::vector<const Substance*> alcohols;
    AcidBaseLeft acid_base;
    AcidClass acid_class = AcidClass::neither;
    double strong_acid_per_litre = 0, strong_base_per_litre = 0; ///< mol/L
    const Sourced<double>* acid_at_bench = nullptr;              ///< mol/L; the line of the quench table
    FlashPoint flash;
    FlashPoint flash_without_alcohols;
    std::vector<MetalLeft> metals; ///< at or above the line of the local rules
    std::vector<LeftToDestroy> oxidants, strong_reducers, sulfites;
    std::vector<Portion> gases;      ///< at 25 degC, and neither acid nor base nor to be quenched
    std::vector<std::string> layers; ///< organic liquids above their solubility in the water that is there
    std::vector<StopHit> stops;
    std::vector<std::string> not_assigned; ///< substances without a reactivity group

    /// Its own acid is more than is neutralised at a bench. Acid that a quench makes is not counted: it comes
    /// little by little, with base at hand.
    bool too_strong_for_bench() const {
        return acid_at_bench != nullptr && strong_acid_per_litre > acid_at_bench->value;
    }
};

struct DescriptionRules {
    const AcidBaseTable& acid_base;
    const MixedLiquids& liquids;
    const ReactivityGroups& groups;
    const QuenchTable& quench;
    const LocalRules& local;
    const Catalogue& catalogue;
};

/// \param kind, solid_aid  as of RouteStream  \param planned  reducers of the planned quench
StreamDescription describe_stream(const Composition& composition, StreamKind kind, double solid_aid,
                                  const DescriptionRules& rules,
                                  const std::vector<const Reducer*>& planned = {});

} // namespace routeweigh::streams
