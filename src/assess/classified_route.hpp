// SPDX-License-Identifier: MIT
// The bottles that a route opens and the streams that it leaves, each classified as a mixture.
//
// A classification is an estimate for planning; a supplier's label goes before that of a bottle, and the
// rules for mixtures are no rules for waste.
#pragma once

#include "assess/mixture/mixture_classification.hpp"
#include "assess/stream_mixture.hpp"
#include "assess/streams/route_stream.hpp"

#include <optional>
#include <string>
#include <vector>

namespace routeweigh {

/// Every table that the classification of a route needs. Stays where it was made, for results refer to it.
class ClassificationRules {
  public:
    /// The catalogue must outlive it. \throws InputError where a table is missing or faulty, or a block
    /// unknown
    ClassificationRules(const Catalogue& catalogue, const Jurisdiction& jurisdiction);
    ClassificationRules(const ClassificationRules&) = delete;
    ClassificationRules& operator=(const ClassificationRules&) = delete;

    const Catalogue& catalogue;
    MixtureRules mixture;
    streams::AcidBaseTable acid_base;
    streams::MixedLiquids liquids;
};

struct ClassifiedBottle {
    const Material* material = nullptr;
    double grams = 0;    ///< charged in one run of the route
    std::string made_in; ///< id of the step that makes it; "" where it is bought
    std::vector<const Substance*>
        reactants; ///< in it, used up by the overall equation of a step; water apart
    MixtureClassification classification;
};

/// A stream in one reading of the yield.
struct ClassifiedReading {
    streams::PairedComposition paired; ///< acids and bases paired off: what is classified
    double grams = 0;                  ///< as left, one run of the step
    MixtureClassification classification;
};

struct ClassifiedStream {
    streams::RouteStream stream;
    std::optional<ClassifiedReading> nominal, unreacted; ///< none where nothing is left in that reading

    /// Do the two readings lead to different labels?
    bool readings_differ() const;
    /// The nominal reading, else the other. \pre one of them is there
    const ClassifiedReading& first() const { return nominal ? *nominal : *unreacted; }
};

struct ClassifiedRoute {
    std::vector<ClassifiedBottle> bottles; ///< in the order in which they are first opened; no traces
    std::vector<ClassifiedStream> streams; ///< in the order of the steps
};

/// What stands in the bottles alone. \param evaluation  of `flat`, at the amounts as written
std::vector<ClassifiedBottle> classify_bottles(const FlatRoute& flat, const Evaluation& evaluation,
                                               const ClassificationRules& rules);

/// \param evaluation  of `flat`, at the amounts as written
ClassifiedRoute classify_route(const FlatRoute& flat, const Evaluation& evaluation,
                               const ClassificationRules& rules);

/// What stands in a bottle, its flash point screened.
MixtureClassification classify_bottle(const Material& material, const ClassificationRules& rules);

/// Signal word, hazard statements and supplemental statements are the same.
bool same_label(const MixtureClassification& a, const MixtureClassification& b);

} // namespace routeweigh
