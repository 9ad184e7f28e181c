// SPDX-License-Identifier: MIT
#include "assess/streams/route_waste.hpp"

#include <algorithm>

namespace routeweigh::streams {
namespace {

/// Nothing but the solvent that is put to use again, also where not all of it is.
bool is_one_recovered_solvent(const RouteStream& stream) {
    constexpr double pure = 0.95; // by mass; our line
    if (stream.recovered.empty()) return false;
    double same = stream.recovered.total();
    const double all = same + stream.nominal.total();
    for (const Portion& portion : stream.recovered.portions())
        same += stream.nominal.grams(*portion.substance);
    return same >= pure * all;
}
Decision recovered_decision(const RouteStream& stream, const LocalRules& local) {
    Decision decision;
    decision.outcome = Decision::Outcome::recovered;
    decision.kind = ContainerKind::recovery;
    decision.goes_to = local.container(ContainerKind::recovery)->name;
    decision.summary = "one solvent, put to use again";
    for (const Portion& portion : stream.recovered.portions())
        decision.reasons.push_back(
            {"recovered", portion.substance->name + " is put to use again", portion.grams, {}, "g", ""});
    if (!stream.nominal.empty())
        decision.reasons.push_back(
            {"rest", "this much is not, and stays with it", stream.nominal.total(), {}, "g", ""});
    return decision;
}

std::vector<Participant> participants_of_stream(const StreamDescription& stream, const StreamRules& rules) {
    return participants_of(stream.paired.composition, rules.compatibility.groups);
}

StreamAdvice advise(RouteStream stream, const StreamRules& rules) {
    StreamAdvice advice;
    const DescriptionRules description = rules.description();
    advice.nominal = describe_stream(stream.nominal, stream.kind, stream.solid_aid, description);
    advice.unreacted = describe_stream(stream.unreacted, stream.kind, stream.solid_aid, description);
    const auto decide = stream.stays_on_product() ? decide_on_product : decide_container;
    advice.nominal_decision = decide(advice.nominal, rules.local);
    advice.unreacted_decision = decide(advice.unreacted, rules.local);
    advice.decision = is_one_recovered_solvent(stream)
                          ? recovered_decision(stream, rules.local)
                          : join_readings(advice.nominal_decision, advice.unreacted_decision);
    advice.stream = std::move(stream);
    advice.handout = compare_with_handout(advice.stream, advice.decision, rules.local);
    advice.inside =
        check_compatibility(participants_of_stream(advice.nominal, rules), {}, rules.compatibility);
    return advice;
}

} // namespace

double StreamAdvice::largest_volume() const {
    return std::max(nominal.volume.millilitres, unreacted.volume.millilitres);
}

std::vector<const StreamAdvice*> RouteWaste::mismatches() const {
    std::vector<const StreamAdvice*> found;
    for (const StreamAdvice& advice : streams)
        if (advice.handout.verdict == HandoutFinding::Verdict::differs) found.push_back(&advice);
    return found;
}

RouteWaste assess_waste(const Route& route, const StreamRules& rules) {
    const FlatRoute flat(route);
    RouteWaste waste;
    for (RouteStream& stream : streams_of(flat, flat.evaluate(flat.nominal())))
        waste.streams.push_back(advise(std::move(stream), rules));
    waste.quenches = plan_quenches(route, rules.quenching());
    return waste;
}

std::vector<ContainerFit> fit_class(const RouteWaste& waste, const ClassSize& size, const LocalRules& local) {
    std::vector<ContainerFit> fits;
    for (const Container& container : local.containers) {
        std::vector<StreamVolume> streams;
        std::vector<std::string> vent;
        for (const StreamAdvice& advice : waste.streams) {
            if (advice.decision.kind != container.kind) continue;
            streams.push_back({advice.stream.name, advice.largest_volume() * advice.stream.runs,
                               advice.nominal.volume.assumed * advice.stream.runs});
            for (const std::string& why : advice.decision.vent)
                vent.push_back(advice.stream.name + ": " + why);
        }
        if (streams.empty()) continue;
        fits.push_back(fit_container(container, std::move(streams), size, local));
        fits.back().vent = std::move(vent);
    }
    return fits;
}

std::vector<OwnBottle> own_bottles(const RouteWaste& waste, const ClassSize& size, const LocalRules& local) {
    std::vector<OwnBottle> bottles;
    for (const StreamAdvice& advice : waste.streams)
        if (advice.decision.outcome == Decision::Outcome::own_bottle)
            bottles.push_back({&advice, advice.largest_volume() * advice.stream.runs * size.pots *
                                            (1 + size.allowance.value_or(local.allowance.value))});
    return bottles;
}

CompatibilityReport check_stream(const StreamAdvice& advice, const ContainerLog& log,
                                 const StreamRules& rules) {
    const std::vector<Participant> content = log.content(rules.compatibility.groups);
    CompatibilityReport nominal =
        check_compatibility(participants_of_stream(advice.nominal, rules), content, rules.compatibility);
    CompatibilityReport unreacted =
        check_compatibility(participants_of_stream(advice.unreacted, rules), content, rules.compatibility);
    return unreacted.meetings.size() > nominal.meetings.size() ? unreacted : nominal;
}

} // namespace routeweigh::streams
