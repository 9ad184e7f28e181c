// SPDX-License-Identifier: MIT
#include "assess/streams/container_contents.hpp"

#include <algorithm>

namespace routeweigh::streams {
namespace {

std::string stream_name(const RouteStream& stream) {
    return stream.step_id + ": " + stream.name;
}

ContainerContents& contents_for(std::vector<ContainerContents>& all, const StreamAdvice& advice,
                                const LocalRules& local) {
    const bool own = advice.decision.outcome == Decision::Outcome::own_bottle;
    const Container* container =
        own || !advice.decision.kind ? nullptr : local.container(*advice.decision.kind);
    const auto found = std::find_if(all.begin(), all.end(), [&](const ContainerContents& contents) {
        return container != nullptr && contents.container == container;
    });
    if (found != all.end()) return *found;
    ContainerContents contents;
    contents.container = container;
    contents.name = container != nullptr ? container->name : "bottle of its own: " + advice.stream.title;
    all.push_back(std::move(contents));
    return all.back();
}

} // namespace

std::vector<ContainerContents> contents_of(const RouteWaste& waste, double pots, const LocalRules& local) {
    std::vector<ContainerContents> all;
    for (const StreamAdvice& advice : waste.streams) {
        const auto outcome = advice.decision.outcome;
        if (outcome != Decision::Outcome::container && outcome != Decision::Outcome::own_bottle) continue;
        ContainerContents& contents = contents_for(all, advice, local);
        contents.streams.push_back(stream_name(advice.stream));
        contents.vented = contents.vented || !advice.decision.vent.empty();
        for (const Portion& portion : advice.nominal.as_left.portions())
            contents.composition.add(*portion.substance, portion.grams * advice.stream.runs * pots,
                                     portion.trace);
    }
    for (const ContainerFit& fit : fit_class(waste, pots, local))
        for (ContainerContents& contents : all)
            if (contents.container == fit.container) contents.containers = std::max(1, fit.containers);
    return all;
}

} // namespace routeweigh::streams
