// SPDX-License-Identifier: MIT
#include "assess/streams/route_stream.hpp"

#include "base/index.hpp"

#include <cstddef>
#include <map>

namespace routeweigh::streams {
namespace {

constexpr double dust = 1e-9; // g; what arithmetic leaves behind

/// g charged into a step as a stated trace, and as a solid that does not dissolve, by substance.
struct Charged {
    std::map<const Substance*, double> trace, all, solid;
};

Charged charged_into(int step, const FlatRoute& flat, const Evaluation& evaluation, double runs) {
    Charged charged;
    for (std::size_t i = 0; i < flat.inflows().size(); ++i) {
        const Inflow& inflow = flat.inflows()[i];
        if (inflow.step != step) continue;
        const double grams = evaluation.in[i] / runs;
        charged.all[inflow.substance] += grams;
        if (inflow.role->is_trace()) charged.trace[inflow.substance] += grams;
        if (inflow.role->name == "drying agent" || inflow.role->name == "adsorbent")
            charged.solid[inflow.substance] += grams;
    }
    return charged;
}

Composition composition_of(const FlatStep& step, const FlatStream& stream, const std::vector<double>& out,
                           double runs, const Charged& charged) {
    Composition result;
    for (std::size_t s = 0; s < step.substances.size(); ++s) {
        const double grams = out[at(stream.first_outflow) + s] / runs;
        if (!(grams > dust)) continue;
        const auto trace = charged.trace.find(step.substances[s]);
        result.add(*step.substances[s], grams, trace != charged.trace.end() && grams <= 1.01 * trace->second);
    }
    return result;
}

} // namespace

bool RouteStream::stays_on_product() const {
    constexpr double little = 0.05; // of the product, by mass; our line
    return kind == StreamKind::residue && nominal.total() <= little * product &&
           unreacted.total() <= little * product;
}

std::vector<RouteStream> streams_of(const FlatRoute& flat, const Evaluation& evaluation) {
    std::vector<RouteStream> all;
    const Route& route = flat.route();
    for (const FlatStream& stream : flat.streams()) {
        const FlatStep& step = flat.steps()[at(stream.step)];
        const Step& written = route.steps[at(stream.step)];
        RouteStream result;
        result.step = stream.step;
        result.step_id = written.id;
        result.name = stream.name;
        result.title = route.steps.size() > 1 ? written.id + ": " + stream.name : stream.name;
        result.kind = stream.kind;
        result.runs = evaluation.steps[at(stream.step)].scale;
        if (!(result.runs > 0)) continue;
        if (written.product->phase == Substance::Phase::solid)
            result.product = evaluation.steps[at(stream.step)].isolated * written.product->molar_mass;
        const Charged charged = charged_into(stream.step, flat, evaluation, result.runs);
        result.nominal = composition_of(step, stream, evaluation.out, result.runs, charged);
        result.unreacted = composition_of(step, stream, evaluation.out_unreacted, result.runs, charged);
        for (const auto& [substance, grams] : charged.solid)
            result.solid_aid += result.nominal.grams(*substance);
        for (std::size_t r = 0; r < route.reuse.size(); ++r)
            if (route.reuse[r].from_step == stream.step && route.reuse[r].from_stream == stream.name)
                result.recovered.add(*route.reuse[r].substance, evaluation.recovered[r] / result.runs);
        for (const StreamNote& note : written.streams)
            if (note.name == stream.name) {
                result.handout = note.container;
                result.handout_pointer = note.pointer;
            }
        if (result.nominal.empty() && result.unreacted.empty() && result.recovered.empty()) continue;
        all.push_back(std::move(result));
    }
    return all;
}

} // namespace routeweigh::streams
