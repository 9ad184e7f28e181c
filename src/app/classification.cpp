// SPDX-License-Identifier: MIT
#include "app/classification.hpp"

#include "app/session.hpp"
#include "assess/bench/bench_rules.hpp"
#include "assess/mixture/mixture_reader.hpp"
#include "assess/stream_mixture.hpp"
#include "base/quantity_text.hpp"
#include "base/text.hpp"
#include "documents/hazards_document.hpp"

#include <fmt/format.h>

#include <utility>

namespace routeweigh {
namespace {

constexpr std::pair<const char*, MixtureRegime> regimes[] = {
    {"EU", MixtureRegime::eu}, {"UN", MixtureRegime::un}, {"US", MixtureRegime::us}};

MixtureRegime regime_called(const std::string& called) {
    for (const auto& [name, regime] : regimes)
        if (called == name) return regime;
    throw CallError(no_such("jurisdiction", called, jurisdiction_names()));
}

std::optional<double> celsius(const char* what, const std::string& text) {
    if (text.empty()) return std::nullopt;
    try {
        return as_temperature(parse_written(text)).celsius();
    } catch (const QuantityError& error) {
        throw CallError(fmt::format("{}: {}", what, error.what()));
    }
}

Mixture stated(const MixtureRequest& request, const Catalogue& catalogue) {
    Mixture mixture =
        request.file ? read_mixture(request.file, catalogue) : read_mixture(request.ingredients, catalogue);
    MixtureFacts& facts = mixture.facts;
    if (!request.name.empty()) mixture.name = request.name;
    if (request.ph) facts.ph = request.ph;
    if (request.viscosity) facts.viscosity = request.viscosity;
    if (const auto point = celsius("flash point", request.flash_point)) facts.flash_point = point;
    if (const auto point = celsius("boiling point", request.boiling_point)) facts.boiling_point = point;
    using Phase = Substance::Phase;
    if (!request.phase.empty())
        facts.phase = request.phase == "gas"      ? Phase::gas
                      : request.phase == "liquid" ? Phase::liquid
                                                  : Phase::solid;
    if (std::vector<Problem> problems = problems_of(mixture); !problems.empty())
        throw InputError(std::move(problems));
    return mixture;
}

/// What the shares leave open stays open.
Mixture paired_mixture(const Mixture& mixture, const streams::PairedComposition& paired) {
    const double stated_share = composition_of(mixture).total() / 100;
    Mixture result = mixture_of(paired.composition, mixture.name, StreamKind::liquid);
    result.facts = mixture.facts;
    for (Ingredient& ingredient : result.ingredients)
        ingredient.mass_fraction *= stated_share;
    return result;
}

} // namespace

std::vector<std::string> jurisdiction_names() {
    std::vector<std::string> names;
    for (const auto& [name, regime] : regimes)
        names.emplace_back(name);
    return names;
}

std::string jurisdiction_name(const streams::LocalRules& local) {
    const MixtureRegime found = bench::regime_of(local);
    for (const auto& [name, regime] : regimes)
        if (regime == found) return name;
    return {};
}

Jurisdiction chosen(const JurisdictionChoice& choice) {
    Jurisdiction jurisdiction{regime_called(choice.name), {}};
    if (jurisdiction.regime != MixtureRegime::un && !(choice.with.empty() && choice.without.empty()))
        throw CallError("building blocks belong to the UN system: --with and --without need --rules UN");
    for (const std::string& block : choice.with)
        jurisdiction.blocks[block] = true;
    for (const std::string& block : choice.without)
        if (!jurisdiction.blocks.emplace(block, false).second && jurisdiction.blocks[block])
            throw CallError(fmt::format("the building block \"{}\" is switched on and off", block));
    return jurisdiction;
}

writing::Document classify_mixture(const MixtureRequest& request, const Catalogue& catalogue,
                                   const Jurisdiction& jurisdiction) {
    Mixture mixture = stated(request, catalogue);
    const ClassificationRules rules(catalogue, jurisdiction);
    streams::PairedComposition paired;
    if (request.pair) {
        paired = streams::pair_acids_and_bases(composition_of(mixture), rules.acid_base, catalogue);
        mixture = paired_mixture(mixture, paired);
    }
    screen_flash_point(mixture, rules.liquids);
    return mixture_document(classify(mixture, rules.mixture), rules, request.pair ? &paired : nullptr);
}

writing::Document classify_routes(const std::vector<Route>& routes, const Catalogue& catalogue,
                                  const Jurisdiction& jurisdiction) {
    return hazards_document(routes, ClassificationRules(catalogue, jurisdiction));
}

} // namespace routeweigh
