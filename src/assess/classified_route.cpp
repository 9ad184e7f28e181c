// SPDX-License-Identifier: MIT
#include "assess/classified_route.hpp"

#include "assess/input_class.hpp"
#include "assess/streams/scheme_file.hpp"
#include "base/index.hpp"
#include "base/list.hpp"
#include "chemistry/catalogue.hpp"

#include <algorithm>
#include <utility>

namespace routeweigh {
namespace {

/// Bottles by material and origin; the classification follows once all charges are known.
std::vector<ClassifiedBottle> bottles_of(const FlatRoute& flat, const Evaluation& evaluation) {
    std::vector<ClassifiedBottle> bottles;
    const Route& route = flat.route();
    for (std::size_t i = 0; i < flat.inflows().size(); ++i) {
        const Inflow& inflow = flat.inflows()[i];
        if (inflow.as_used || inflow.role->is_trace()) continue; // out of no bottle
        const Step& step = route.steps[at(inflow.step)];
        const Material* material = step.stages[at(inflow.stage)].charges[at(inflow.charge)].material;
        const std::string made_in = inflow.fed_by >= 0 ? route.steps[at(inflow.fed_by)].id : std::string();
        auto found = std::find_if(bottles.begin(), bottles.end(), [&](const ClassifiedBottle& other) {
            return other.material == material && other.made_in == made_in;
        });
        if (found == bottles.end()) {
            bottles.push_back({material, 0, made_in, {}, {}});
            found = std::prev(bottles.end());
        }
        found->grams += evaluation.in[i];
        if (inflow.reactant && !is_water(*inflow.substance)) add_once(found->reactants, inflow.substance);
    }
    return bottles;
}

std::optional<ClassifiedReading> classify_reading(const streams::Composition& composition,
                                                  const streams::RouteStream& stream,
                                                  const ClassificationRules& rules) {
    if (composition.empty()) return std::nullopt;
    ClassifiedReading reading;
    reading.grams = composition.total();
    reading.paired = stream.is_gas()
                         ? streams::PairedComposition{composition, {}, {}, {}} // apart in the gas
                         : streams::pair_acids_and_bases(composition, rules.acid_base, rules.catalogue);
    if (reading.paired.composition.empty()) return std::nullopt;
    Mixture mixture = mixture_of(reading.paired.composition, stream.name, stream.kind);
    screen_flash_point(mixture, rules.liquids);
    reading.classification = classify(mixture, rules.mixture);
    return reading;
}

} // namespace

ClassificationRules::ClassificationRules(const Catalogue& from, const Jurisdiction& jurisdiction)
    : catalogue(from), mixture(read_mixture_rules(from, jurisdiction.regime, jurisdiction.blocks)),
      acid_base(streams::read_acid_base_table(streams::required_scheme(from, "acids_and_bases"))),
      liquids(streams::read_mixed_liquids(streams::required_scheme(from, "mixed_liquids"))) {}

bool same_label(const MixtureClassification& a, const MixtureClassification& b) {
    return a.label.signal == b.label.signal && a.label.statements == b.label.statements &&
           a.label.supplemental == b.label.supplemental;
}

bool ClassifiedStream::readings_differ() const {
    if (!nominal || !unreacted) return false;
    return !same_label(nominal->classification, unreacted->classification);
}

MixtureClassification classify_bottle(const Material& material, const ClassificationRules& rules) {
    Mixture mixture = mixture_of(material);
    screen_flash_point(mixture, rules.liquids);
    return classify(mixture, rules.mixture);
}

std::vector<ClassifiedBottle> classify_bottles(const FlatRoute& flat, const Evaluation& evaluation,
                                               const ClassificationRules& rules) {
    std::vector<ClassifiedBottle> bottles = bottles_of(flat, evaluation);
    for (ClassifiedBottle& bottle : bottles)
        bottle.classification = classify_bottle(*bottle.material, rules);
    return bottles;
}

ClassifiedRoute classify_route(const FlatRoute& flat, const Evaluation& evaluation,
                               const ClassificationRules& rules) {
    ClassifiedRoute result;
    result.bottles = classify_bottles(flat, evaluation, rules);
    for (streams::RouteStream& stream : streams::streams_of(flat, evaluation)) {
        ClassifiedStream classified;
        classified.nominal = classify_reading(stream.nominal, stream, rules);
        classified.unreacted = classify_reading(stream.unreacted, stream, rules);
        classified.stream = std::move(stream);
        if (classified.nominal || classified.unreacted) result.streams.push_back(std::move(classified));
    }
    return result;
}

} // namespace routeweigh
