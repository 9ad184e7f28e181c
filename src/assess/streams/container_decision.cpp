// SPDX-License-Identifier: MIT
#include "assess/streams/container_decision.hpp"

#include "assess/streams/decider.hpp"
#include "base/list.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <utility>

namespace routeweigh::streams {
namespace {

/// Larger: asks for more care. Of two readings the larger counts.
int demand(const Decision& decision) {
    switch (decision.outcome) {
    case Decision::Outcome::own_bottle:
        return 100;
    case Decision::Outcome::trap:
        return 90;
    case Decision::Outcome::container:
        break;
    case Decision::Outcome::air:
        return 5;
    case Decision::Outcome::recovered:
        return 2;
    case Decision::Outcome::on_product:
        return 1;
    case Decision::Outcome::nothing:
        return 0;
    }
    switch (decision.kind.value_or(ContainerKind::aqueous_neutral)) {
    case ContainerKind::oxidiser:
        return 80;
    case ContainerKind::metal:
        return 70;
    case ContainerKind::halogenated:
        return 60;
    case ContainerKind::flammable:
    case ContainerKind::flammable_aqueous:
        return 50;
    case ContainerKind::aqueous_acidic:
        return 40;
    case ContainerKind::aqueous_basic:
        return 35;
    case ContainerKind::aqueous_neutral: // made neutral for what acid would free: no acid container then
        return decision.needs(Treatment::Kind::add_base) ? 45 : 30;
    default:
        return 20;
    }
}

} // namespace

bool Decision::needs(Treatment::Kind treatment) const {
    return std::any_of(first.begin(), first.end(),
                       [&](const Treatment& one) { return one.kind == treatment; });
}

bool Decision::needs_base_for_weak_acid() const {
    return std::any_of(first.begin(), first.end(), [](const Treatment& one) {
        return one.kind == Treatment::Kind::add_base && one.of == weak_acid_too;
    });
}

Decision decide_container(const StreamDescription& stream, const LocalRules& local) {
    return Decider(stream, local).run();
}

Decision decide_on_product(const StreamDescription& stream, const LocalRules& local) {
    return Decider(stream, local).run_on_product();
}

Decision join_readings(const Decision& nominal, const Decision& unreacted) {
    const bool take_unreacted = demand(unreacted) > demand(nominal);
    Decision joined = take_unreacted ? unreacted : nominal;
    const Decision& other = take_unreacted ? nominal : unreacted;
    const char* if_nominal = "if the lost yield was made and lost";
    const char* if_unreacted = "if the lost yield never reacted";
    const char* this_reading = take_unreacted ? if_unreacted : if_nominal;
    const char* other_reading = take_unreacted ? if_nominal : if_unreacted;
    if (other.goes_to != joined.goes_to && other.outcome != Decision::Outcome::nothing)
        joined.reasons.push_back(
            {"other reading",
             fmt::format("this counts {}; {} it would be \"{}\"", this_reading, other_reading, other.goes_to),
             {},
             {},
             "",
             ""});
    // Each treatment as the reading that needs more of it has it.
    for (const Treatment& treatment : other.first) {
        if (joined.too_strong && treatment.kind > Treatment::Kind::destroy) continue;
        const auto same = std::find_if(joined.first.begin(), joined.first.end(), [&](const Treatment& one) {
            return one.kind == treatment.kind && one.of == treatment.of;
        });
        if (same != joined.first.end() && same->moles >= treatment.moles) continue;
        Treatment& larger = same != joined.first.end() ? *same : joined.first.emplace_back();
        const bool told = larger.words == treatment.words; // the same to the digits that are printed
        larger = treatment;
        if (told) continue;
        for (std::string* words : {&larger.words, &larger.without_amounts})
            *words += fmt::format(" ({})", other_reading);
    }
    std::stable_sort(joined.first.begin(), joined.first.end(), [](const Treatment& a, const Treatment& b) {
        return std::pair(a.kind, a.of == weak_acid_too) < std::pair(b.kind, b.of == weak_acid_too);
    });
    for (const std::string& vent : other.vent)
        if (!contains(joined.vent, vent)) joined.vent.push_back(vent);
    return joined;
}

} // namespace routeweigh::streams
