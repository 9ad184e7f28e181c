// SPDX-License-Identifier: MIT
#include "documents/case_rows.hpp"

#include "base/text.hpp"
#include "compare/comparison.hpp"
#include "documents/bench_listing.hpp"
#include "documents/term_figures.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace routeweigh::documents {
namespace {

using course::ClassUse;

template<class Value>
CaseRow case_row(const Proposal& proposal, std::string id, std::string name, std::string unit, int decimals,
                 Value value) {
    CaseRow row{std::move(id), std::move(name), std::move(unit), decimals};
    row.now = value(proposal.now->use);
    row.proposed = row.low = row.high = value(proposal.proposed->use);
    const int sign = printed_sign(row.proposed - row.now, decimals);
    bool turns = false;
    for (const OtherYields& other : proposal.proposed_otherwise) {
        const double moved = value(other.use);
        row.low = std::min(row.low, moved);
        row.high = std::max(row.high, moved);
        // A value that is none here is no proof of anything.
        turns = turns || !(moved == moved) || printed_sign(moved - row.now, decimals) != sign;
    }
    row.standing = turns      ? RowStanding::open
                   : sign > 0 ? RowStanding::more
                   : sign < 0 ? RowStanding::less
                              : RowStanding::same;
    return row;
}

/// Mass put in for a gram of product, in both boundaries; where these disagree neither says anything.
void add_intensities(const Proposal& proposal, std::vector<CaseRow>& rows) {
    const Assessment& base = *proposal.now->use.route;
    CaseRow written =
        case_row(proposal, "process_mass_intensity", "mass put in for a gram of product", "g/g", 1,
                 [](const ClassUse& use) { return use.route->metric("process_mass_intensity"); });
    CaseRow same = case_row(
        proposal, "process_mass_intensity_same_auxiliaries", "the same with the drown-out and rinse of now",
        "g/g", 1, [&](const ClassUse& use) {
            return intensity_with_same_auxiliaries(auxiliaries_of(use.route->values(), use.route->flat()),
                                                   auxiliaries_of(base.values(), base.flat()));
        });
    if (written.standing != same.standing) written.standing = same.standing = RowStanding::open;
    rows.push_back(std::move(written));
    rows.push_back(std::move(same));
}

CaseList coming_and_going(std::string id, std::string name, const Listing& now, const Listing& proposed) {
    return {std::move(id), std::move(name), only_in(proposed, now), only_in(now, proposed)};
}

Listing names_on_bench(const std::vector<BenchBottle>& bench) {
    Listing found;
    for (const BenchBottle& bottle : bench)
        found[bottle.material->name + (bottle.assessed ? "" : ", hazards not assessed")];
    return found;
}

/// Somebody has to keep it apart, and not the air or the product.
bool is_kept_apart(const streams::StreamAdvice& advice) {
    using Outcome = streams::Decision::Outcome;
    const Outcome outcome = advice.decision.outcome;
    return outcome == Outcome::container || outcome == Outcome::own_bottle || outcome == Outcome::trap;
}

Listing destinations_of(const ClassUse& use) {
    Listing found;
    for (const streams::StreamAdvice& advice : use.waste.waste.streams)
        if (is_kept_apart(advice)) found[advice.decision.goes_to];
    return found;
}

/// Of the week; where the term practises it in other weeks too, these are named.
Listing techniques_of_week(const course::Experiment& experiment, const course::CourseUse& term) {
    Listing found;
    for (const std::string& technique : experiment.techniques) {
        std::vector<std::string> others;
        for (const auto& [name, weeks] : term.techniques())
            if (name == technique)
                for (const int week : weeks)
                    if (week != experiment.week) others.push_back(std::to_string(week));
        found[technique];
        if (!others.empty()) found[technique].insert("also in week " + join(others, ", "));
    }
    return found;
}

/// Stages that state no time can only make it longer: what is lacking is certain, that it fits is not.
CaseList fit_into_session(const ClassUse& now, const ClassUse& proposed) {
    const auto words = [](const ClassUse& use, const char* when) {
        const double lacking = minutes_lacking(use);
        if (lacking > 0.0) return fmt::format("{} {:.0f} min are lacking", when, lacking);
        return fmt::format("{} none are{}", when,
                           use.one.silent_stages > 0 ? " by the times that are stated" : "");
    };
    CaseList list{"session", fmt::format("fit into a session of {:g} min", now.plan.session), {}, {}};
    const double more = minutes_lacking(proposed) - minutes_lacking(now);
    if (more > 0.0) list.comes = {words(proposed, "as proposed"), words(now, "now")};
    if (more < 0.0) list.goes = {words(now, "now"), words(proposed, "as proposed")};
    return list;
}

double stream_count(const ClassUse& use) {
    const auto& streams = use.waste.waste.streams;
    return static_cast<double>(std::count_if(streams.begin(), streams.end(), is_kept_apart));
}

/// A sum that is a lower bound proves neither that it is less than another nor that they are the same.
void doubt_bounds(CaseRow& row, bool now_is_bound, bool proposed_is_bound) {
    const bool proved = row.standing == RowStanding::more   ? !now_is_bound
                        : row.standing == RowStanding::less ? !proposed_is_bound
                                                            : !now_is_bound && !proposed_is_bound;
    if (!proved) row.standing = RowStanding::open;
}

} // namespace

std::string_view id_of(RowStanding standing) {
    switch (standing) {
    case RowStanding::more:
        return "more";
    case RowStanding::less:
        return "less";
    case RowStanding::open:
        return "open";
    case RowStanding::same:
        break;
    }
    return "same";
}

std::vector<CaseRow> case_rows(const Proposal& proposal, const stock::PriceList& prices) {
    std::vector<CaseRow> rows;
    for (const TermFigure& figure : term_figures()) {
        if (!is_shown(figure, proposal.now->use.plan, prices)) continue;
        if (figure.of == minutes_lacking) continue; // stands in the lists, in words
        // Other weeks buy of the same bottles, so packs are those of the term.
        const auto packs = [&](const ClassUse& use) {
            return proposal.before->cost_of_packs(prices, proposal.now->week, &use);
        };
        const auto make = [&](std::string name, auto value) {
            return case_row(proposal, std::string(figure.id), std::move(name), unit_of(figure, prices),
                            figure.decimals, value);
        };
        CaseRow row = figure.spare ? make("packs to buy over the term", packs)
                                   : make(std::string(figure.name), figure.of);
        if (figure.lacks != nullptr)
            doubt_bounds(row, figure.lacks(proposal.now->use), figure.lacks(proposal.proposed->use));
        rows.push_back(std::move(row));
    }
    rows.push_back(
        case_row(proposal, "waste_streams", "streams of waste to keep apart", "", 0, stream_count));
    if (proposal.same_product()) add_intensities(proposal, rows);
    // A route in its own place: no yield and no price that is lacking makes a difference.
    if (proposal.now->use.route->route().source->text == proposal.proposed->use.route->route().source->text)
        for (CaseRow& row : rows)
            row.standing = RowStanding::same;
    return rows;
}

std::vector<CaseList> case_lists(const Proposal& proposal, const ClassificationRules& rules) {
    const ClassUse &now = proposal.now->use, &proposed = proposal.proposed->use;
    const std::vector<BenchBottle> bench_now = bench_of(*now.route, rules),
                                   bench_proposed = bench_of(*proposed.route, rules);
    std::vector<CaseList> lists;
    lists.push_back(coming_and_going("statements", "hazard statements and unassessed bottles",
                                     hazards_on_bench(bench_now), hazards_on_bench(bench_proposed)));
    lists.push_back(coming_and_going("bottles", "bottles on the bench", names_on_bench(bench_now),
                                     names_on_bench(bench_proposed)));
    lists.push_back(coming_and_going("destinations", "where waste goes", destinations_of(now),
                                     destinations_of(proposed)));
    lists.push_back(coming_and_going("techniques", "techniques of the week",
                                     techniques_of_week(*proposal.now, *proposal.before),
                                     techniques_of_week(*proposal.proposed, *proposal.after)));
    lists.back().coming_is_loss = false;
    if (now.plan.session > 0.0) lists.push_back(fit_into_session(now, proposed));
    return lists;
}

} // namespace routeweigh::documents
