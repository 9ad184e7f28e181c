// SPDX-License-Identifier: MIT
#include "assess/streams/container_contents.hpp"

#include "assess/streams/amounts_in_words.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace routeweigh::streams {
namespace {

std::string stream_name(const RouteStream& stream) {
    return stream.step_id + ": " + stream.name;
}

/// Each solvent that is used again has a container of its own.
std::string container_name(const Container& container, const StreamAdvice& advice) {
    if (advice.decision.outcome != Decision::Outcome::recovered) return container.name;
    std::vector<const Substance*> solvents;
    for (const Portion& portion : advice.stream.recovered.portions())
        solvents.push_back(portion.substance);
    return container.name + ": " + names_of(solvents);
}

ContainerContents& contents_for(std::vector<ContainerContents>& all, const StreamAdvice& advice,
                                const LocalRules& local) {
    const bool own = advice.decision.outcome == Decision::Outcome::own_bottle;
    const Container* container =
        own || !advice.decision.kind ? nullptr : local.container(*advice.decision.kind);
    const std::string name = container != nullptr ? container_name(*container, advice) : std::string();
    const auto found = std::find_if(all.begin(), all.end(), [&](const ContainerContents& contents) {
        return container != nullptr && contents.name == name;
    });
    if (found != all.end()) return *found;
    ContainerContents contents;
    contents.container = container;
    contents.washings = own && advice.stream.stays_on_product();
    contents.name = container != nullptr
                        ? name
                        : fmt::format("{}: {}{}", advice.decision.bottle,
                                      contents.washings ? "washings of " : "", advice.stream.title);
    all.push_back(std::move(contents));
    return all.back();
}

void add_stream(ContainerContents& contents, const StreamAdvice& advice, const StreamDescription& reading,
                double pots) {
    contents.streams.push_back(stream_name(advice.stream));
    contents.vented = contents.vented || !advice.decision.vent.empty();
    const auto put = [&](const Composition& composition) {
        for (const Portion& portion : composition.portions())
            contents.composition.add(*portion.substance, portion.grams * advice.stream.runs * pots,
                                     portion.trace);
    };
    put(reading.as_left);
    if (advice.decision.outcome == Decision::Outcome::recovered) put(advice.stream.recovered);
}

/// What the rules name a container for until it is quenched; empty where nothing is.
ContainerContents awaiting_quench(const RouteWaste& waste, double pots, const LocalRules& local) {
    ContainerContents contents;
    contents.container = local.container(ContainerKind::oxidiser);
    contents.name = contents.container->name;
    contents.awaits_quench = true;
    std::vector<StreamVolume> volumes;
    for (const StreamAdvice& advice : waste.streams) {
        if (!advice.decision.needs(Treatment::Kind::quench)) continue;
        const StreamDescription& reading =
            advice.nominal_decision.needs(Treatment::Kind::quench) ? advice.nominal : advice.unreacted;
        add_stream(contents, advice, reading, pots);
        volumes.push_back({advice.stream.title, advice.largest_volume() * advice.stream.runs,
                           advice.nominal.volume.assumed * advice.stream.runs});
    }
    if (volumes.empty()) return contents;
    contents.vented = true;
    contents.containers =
        std::max(1, fit_container(*contents.container, std::move(volumes), pots, local).containers);
    return contents;
}

} // namespace

std::vector<ContainerContents> contents_of(const RouteWaste& waste, double pots, const LocalRules& local) {
    std::vector<ContainerContents> all;
    for (const StreamAdvice& advice : waste.streams) {
        const auto outcome = advice.decision.outcome;
        if (outcome != Decision::Outcome::container && outcome != Decision::Outcome::own_bottle &&
            outcome != Decision::Outcome::recovered)
            continue;
        ContainerContents& contents = contents_for(all, advice, local);
        add_stream(contents, advice, advice.nominal, pots);
        for (const Treatment& treatment : advice.decision.first)
            contents.before.insert(treatment.kind);
    }
    for (const ContainerFit& fit : fit_class(waste, pots, local))
        for (ContainerContents& contents : all)
            if (contents.container == fit.container) contents.containers = std::max(1, fit.containers);
    ContainerContents waiting = awaiting_quench(waste, pots, local);
    if (!waiting.streams.empty()) all.push_back(std::move(waiting));
    return all;
}

} // namespace routeweigh::streams
