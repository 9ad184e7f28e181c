// SPDX-License-Identifier: MIT
#include "assess/streams/route_waste.hpp"

#include "base/index.hpp"
#include "base/list.hpp"
#include "base/text.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <numeric>

namespace routeweigh::streams {
namespace {

constexpr int mineral_acids = 1, oxidising_acids = 2, caustics = 10; // reactivity groups

bool is_acid(const Participant& part) {
    return part.in_group(mineral_acids) || part.in_group(oxidising_acids);
}

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

/// Of both readings: what is lost and what never reacted may both be there. Pairing counts what an acid could
/// free as gone; until it is, sulfite and its like are there.
std::vector<Participant> participants_of_stream(const StreamAdvice& advice, const StreamRules& rules) {
    const ReactivityGroups& groups = rules.compatibility.groups;
    std::vector<Participant> all;
    for (const StreamDescription* stream : {&advice.nominal, &advice.unreacted}) {
        join_participants(all, participants_of(stream->paired.composition, groups));
        if (stream->paired.gas.empty()) continue;
        std::vector<Participant> left = participants_of(stream->as_left, groups);
        std::erase_if(left, [&](const Participant& part) {
            return is_acid(part) || stream->paired.composition.grams(*part.substance) > 0;
        });
        join_participants(all, left);
    }
    return all;
}

/// Why nothing at all goes upon what a log says is there: a part that belongs in a bottle of its own, or an
/// addition that should not have met the earlier ones. "" for nothing found.
std::string conflict_held(const ContainerLog& log, const StreamRules& rules) {
    const ReactivityGroups& groups = rules.compatibility.groups;
    const std::vector<Participant> content = log.content(groups);
    for (const Participant& part : content)
        for (const StopRule& stop : rules.local.stops)
            if (!part.trace && stop.set.holds(part) && !(stop.not_in_water && part.in_water))
                return fmt::format("add nothing: the container holds {} ({}: {})", part.name, stop.what,
                                   stop.why);
    std::vector<Participant> so_far;
    for (const Addition& addition : log.additions) {
        const std::vector<Participant> added = addition.participants(groups);
        const CompatibilityReport report = check_compatibility(added, so_far, rules.compatibility);
        if (report.verdict == CompatibilityReport::Verdict::conflict)
            return fmt::format("add nothing: the container holds {} beside {}, which {}",
                               report.meetings[0].one.name, report.meetings[0].other.name,
                               consequences(report.meetings[0], rules.compatibility.chart));
        join_participants(so_far, added);
    }
    return "";
}

const ContainerLog* log_of(const StreamAdvice& advice, const std::vector<ContainerLog>& logs) {
    if (advice.decision.outcome != Decision::Outcome::container) return nullptr;
    for (const ContainerLog& log : logs)
        if (log.container == advice.decision.kind) return &log;
    return nullptr;
}

/// Whether it has to leave, to be destroyed or neutralised before the stream goes anywhere.
bool gone_first(const Participant& part, const StreamAdvice& advice) {
    const Decision& decision = advice.decision;
    if (decision.needs(Treatment::Kind::add_acid) && part.in_group(caustics)) return true;
    if (decision.needs(Treatment::Kind::add_base) && is_acid(part)) return true;
    for (const StreamDescription* stream : {&advice.nominal, &advice.unreacted}) {
        for (const StopHit& hit : stream->stops)
            if (hit.rule->destroy && hit.substance == part.substance) return true;
        for (const LeftToDestroy& left : stream->strong_reducers)
            if (left.substance == part.substance) return true;
        for (const Portion& gas : stream->gases)
            if (gas.substance == part.substance) return true;
        // An oxidiser is quenched until test papers show none, or they never would.
        for (const LeftToDestroy& left : stream->oxidants)
            if (left.substance == part.substance) return true;
    }
    return false;
}

/// What must not meet the content of its container goes into a bottle of its own.
void set_apart(StreamAdvice& advice, const CompatibilityReport& report, const LocalRules& local) {
    Decision& decision = advice.decision;
    decision.reasons.push_back(
        {"kept apart", fmt::format("{}; so not into {}", report.words, decision.goes_to), {}, {}, "", ""});
    decision.outcome = Decision::Outcome::own_bottle;
    decision.kind.reset();
    decision.bottle = decision.goes_to = fmt::format("own bottle, labelled, not into {}", decision.goes_to);
    decision.summary = report.words;
    decision.ask = local.contact;
    advice.handout = compare_with_handout(advice.stream, decision, local);
}

std::vector<std::size_t> smallest_first(const std::vector<StreamAdvice>& streams) {
    std::vector<std::size_t> order(streams.size());
    std::iota(order.begin(), order.end(), 0);
    std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
        return streams[a].largest_volume() * streams[a].stream.runs <
               streams[b].largest_volume() * streams[b].stream.runs;
    });
    return order;
}

/// Every stream with the others that go into the same container, and with what its log says is there: both as
/// they are once what has to be destroyed or neutralised first is gone.
void check_meetings(std::vector<StreamAdvice>& streams, const std::vector<ContainerLog>& logs,
                    const StreamRules& rules) {
    std::vector<std::vector<Participant>> parts;
    for (StreamAdvice& advice : streams) {
        parts.push_back(participants_of_stream(advice, rules));
        advice.inside = check_compatibility(parts.back(), {}, rules.compatibility);
        std::erase_if(parts.back(), [&](const Participant& part) { return gone_first(part, advice); });
    }
    for (std::size_t i = 0; i < streams.size(); ++i)
        if (const ContainerLog* log = log_of(streams[i], logs)) {
            streams[i].log = log->name;
            streams[i].with_log =
                check_compatibility(parts[i], log->content(rules.compatibility.groups), rules.compatibility);
            const std::string held = conflict_held(*log, rules);
            if (!held.empty()) {
                streams[i].with_log->verdict = CompatibilityReport::Verdict::conflict;
                streams[i].with_log->words = fmt::format("{}; {}", held, streams[i].with_log->words);
            }
            if (streams[i].with_log->keeps_apart()) set_apart(streams[i], *streams[i].with_log, rules.local);
        }
    const auto with_others = [&](std::size_t i) -> std::optional<CompatibilityReport> {
        if (streams[i].decision.outcome != Decision::Outcome::container) return std::nullopt;
        std::vector<Participant> others;
        for (std::size_t k = 0; k < streams.size(); ++k)
            if (k != i && streams[k].decision.outcome == Decision::Outcome::container &&
                streams[k].decision.kind == streams[i].decision.kind)
                join_participants(others, parts[k]);
        if (others.empty()) return std::nullopt;
        return check_compatibility(parts[i], others, rules.compatibility);
    };
    // The smallest leave first, so that the container keeps what fills it.
    for (const std::size_t i : smallest_first(streams)) {
        auto report = with_others(i);
        if (!report || !report->keeps_apart()) continue;
        set_apart(streams[i], *report, rules.local);
        streams[i].with_others = std::move(report);
    }
    for (std::size_t i = 0; i < streams.size(); ++i)
        if (!streams[i].with_others) streams[i].with_others = with_others(i);
}

/// Among the quench charges of a step, in their order.
std::vector<const Reducer*> planned_reducers(const Step& step, const QuenchTable& table) {
    std::vector<const Reducer*> planned;
    for (const Stage& stage : step.stages)
        for (const Charge& charge : stage.charges) {
            if (charge.role->name != "quench") continue;
            for (const Component& component : charge.material->components)
                if (const Reducer* reducer = table.reducer(component.substance->id))
                    planned.push_back(reducer);
        }
    return planned;
}

StreamAdvice advise(RouteStream stream, const Route& route, const StreamRules& rules) {
    StreamAdvice advice;
    const DescriptionRules description = rules.description();
    const std::vector<const Reducer*> planned = planned_reducers(route.steps[at(stream.step)], rules.quench);
    advice.nominal = describe_stream(stream.nominal, stream.kind, stream.solid_aid, description, planned);
    advice.unreacted = describe_stream(stream.unreacted, stream.kind, stream.solid_aid, description, planned);
    const auto decide = stream.stays_on_product() ? decide_on_product : decide_container;
    advice.nominal_decision = decide(advice.nominal, rules.local);
    advice.unreacted_decision = decide(advice.unreacted, rules.local);
    advice.decision = is_one_recovered_solvent(stream)
                          ? recovered_decision(stream, rules.local)
                          : join_readings(advice.nominal_decision, advice.unreacted_decision);
    advice.stream = std::move(stream);
    advice.handout = compare_with_handout(advice.stream, advice.decision, rules.local);
    return advice;
}

/// Why no tight cap: by what the stream is, and by what gives gas when it meets in the container.
std::vector<std::string> vents_of(const StreamAdvice& advice) {
    std::vector<std::string> all = advice.decision.vent, pairs;
    const auto take = [&](const std::vector<Meeting>& meetings) {
        for (const Meeting& meeting : meetings) {
            const bool gas = std::any_of(meeting.codes.begin(), meeting.codes.end(),
                                         [](const std::string& code) { return code.front() == 'G'; });
            if (gas && !meeting.of_little())
                add_once(pairs, fmt::format("{} with {}", meeting.one.name, meeting.other.name));
        }
    };
    take(advice.inside.within);
    if (advice.with_others) take(advice.with_others->meetings);
    if (advice.with_log) take(advice.with_log->meetings);
    if (!pairs.empty()) all.push_back("gas may come of " + join(pairs, ", "));
    return all;
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

RouteWaste assess_waste(const Route& route, const StreamRules& rules, const std::vector<ContainerLog>& logs) {
    const FlatRoute flat(route);
    RouteWaste waste;
    for (RouteStream& stream : streams_of(flat, flat.evaluate(flat.nominal())))
        waste.streams.push_back(advise(std::move(stream), route, rules));
    check_meetings(waste.streams, logs, rules);
    waste.quenches = plan_quenches(route, waste.streams, rules);
    return waste;
}

std::vector<ContainerFit> fit_class(const RouteWaste& waste, double pots, const LocalRules& local,
                                    const std::vector<ContainerLog>& logs) {
    std::vector<ContainerFit> fits;
    for (const Container& container : local.containers) {
        std::vector<StreamVolume> streams;
        std::vector<std::string> vent;
        for (const StreamAdvice& advice : waste.streams) {
            if (advice.decision.kind != container.kind) continue;
            streams.push_back({advice.stream.title, advice.largest_volume() * advice.stream.runs,
                               advice.nominal.volume.assumed * advice.stream.runs});
            for (const std::string& why : vents_of(advice))
                vent.push_back(advice.stream.title + ": " + why);
        }
        if (streams.empty()) continue;
        Begun begun;
        for (const ContainerLog& log : logs)
            if (log.container == container.kind) begun = {log.millilitres(), log.size};
        fits.push_back(fit_container(container, std::move(streams), pots, local, begun));
        fits.back().vent = std::move(vent);
    }
    return fits;
}

std::vector<OwnBottle> own_bottles(const RouteWaste& waste, double pots, const LocalRules& local) {
    std::vector<OwnBottle> bottles;
    for (const StreamAdvice& advice : waste.streams)
        if (advice.decision.outcome == Decision::Outcome::own_bottle) {
            const double per_pot = advice.largest_volume() * advice.stream.runs;
            bottles.push_back({advice.stream.title, per_pot, per_pot * pots * (1 + local.allowance.value)});
        }
    return bottles;
}

ClassWaste assess_class(const Route& route, double pots, const StreamRules& rules,
                        const std::vector<ContainerLog>& logs) {
    ClassWaste result{&route, pots, assess_waste(route, rules, logs), {}, {}};
    result.fits = fit_class(result.waste, pots, rules.local, logs);
    result.own_bottles = own_bottles(result.waste, pots, rules.local);
    return result;
}

} // namespace routeweigh::streams
