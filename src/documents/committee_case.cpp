// SPDX-License-Identifier: MIT
#include "documents/committee_case.hpp"

#include "assess/bench/bench_rules.hpp"
#include "assess/classified_route.hpp"
#include "base/text.hpp"
#include "compare/comparison.hpp"
#include "documents/bench_listing.hpp"
#include "documents/case_rows.hpp"
#include "documents/cautions.hpp"
#include "documents/number.hpp"
#include "documents/term_figures.hpp"
#include "documents/version.hpp"
#include "documents/words.hpp"

#include <fmt/format.h>

#include <cmath>
#include <set>
#include <utility>

namespace routeweigh {
namespace {

using namespace documents;
using writing::MachineList;
using writing::MachineObject;

std::vector<std::string> names_with(const std::vector<CaseRow>& rows, RowStanding standing) {
    std::vector<std::string> names;
    for (const CaseRow& row : rows)
        if (row.standing == standing) names.push_back(row.name);
    return names;
}

std::string points_text() {
    return fmt::format("{} points", fixed(100.0 * plausible_yield_difference, 0));
}

writing::Paragraph proposed_words(const Proposal& proposal) {
    const Route &now = proposal.now->use.route->route(), &then = proposal.proposed->use.route->route();
    const stock::ClassPlan& plan = proposal.now->use.plan;
    const std::string what =
        proposal.same_product()
            ? fmt::format(" in week {} the class makes {} by {} ({}), no longer by {} ({}).",
                          proposal.now->week, then.product->name, then.title, then.id, now.title, now.id)
            : fmt::format(" in week {} the class makes {} by {} ({}), no longer {} by {} ({}).",
                          proposal.now->week, then.product->name, then.title, then.id, now.product->name,
                          now.title, now.id);
    const std::string whom = fmt::format(
        " {} of {}, each with a run of their own; {:g} % spare stock{}.",
        counted(static_cast<std::size_t>(plan.sections), "section", "sections"),
        counted(static_cast<std::size_t>(plan.students), "student", "students"), 100.0 * plan.extra,
        plan.session > 0.0 ? fmt::format("; a session of {} min", fixed(plan.session, 0)) : "");
    return {writing::Text{writing::strong("Proposed:"), writing::Run(what), writing::Run(" "),
                          writing::strong("For:"), writing::Run(whom)}};
}

/// From the rows and lists alone, and never that one method is better: that is a weighing, and not ours.
std::string case_verdict(const std::vector<CaseRow>& rows, const std::vector<CaseList>& lists) {
    const std::vector<std::string> more = names_with(rows, RowStanding::more),
                                   less = names_with(rows, RowStanding::less),
                                   open = names_with(rows, RowStanding::open);
    std::vector<std::string> against;
    for (const CaseList& list : lists)
        if (!(list.coming_is_loss ? list.comes : list.goes).empty()) against.push_back(list.name);
    std::string words;
    if (more.empty() && less.empty())
        words = "No figure counted here is more or less with any plausible yield.";
    else if (less.empty())
        words = fmt::format("Nothing counted here becomes less, and {} more: {}.",
                            counted(more.size(), "figure becomes", "figures become"), join(more, "; "));
    else if (more.empty())
        words = fmt::format("{} less, and no figure counted here becomes more.",
                            capitalised(counted(less.size(), "figure becomes", "figures become")));
    else
        words =
            fmt::format("An exchange: {} more and {} less. Which of them weigh more is not in the figures.",
                        counted(more.size(), "figure becomes", "figures become"),
                        counted(less.size(), "becomes", "become"));
    if (!against.empty())
        words += fmt::format(" Against it also stand changes of {}, listed below.", listed(against));
    if (!open.empty())
        words += fmt::format(" {} open.", capitalised(counted(open.size(), "figure is", "figures are")));
    return words;
}

void add_group(writing::Table& table, const std::vector<CaseRow>& rows, RowStanding standing,
               std::string heading) {
    if (names_with(rows, standing).empty()) return;
    table.rows.push_back(writing::group(std::move(heading)));
    for (const CaseRow& row : rows) {
        if (row.standing != standing) continue;
        const double difference = row.proposed - row.now;
        table.rows.push_back({row.name,
                              row.unit,
                              {fixed(row.now, row.decimals), row.now},
                              {fixed(row.proposed, row.decimals), row.proposed},
                              {(difference > 0 ? "+" : "") + fixed(difference, row.decimals), difference}});
    }
}

writing::Table figures_table(const Proposal& proposal, const std::vector<CaseRow>& rows) {
    writing::Table table;
    table.caption = "For the whole class; each figure is the better the smaller it is";
    table.columns = {{.heading = "figure"},
                     {.heading = "unit"},
                     {.heading = "now", .align = decimal},
                     {.heading = "proposed", .align = decimal},
                     {.heading = "difference", .align = decimal}};
    add_group(table, rows, RowStanding::more, "It loses: more than now");
    add_group(table, rows, RowStanding::less, "It wins: less than now");
    add_group(table, rows, RowStanding::open,
              fmt::format("Open: {} of yield, the boundary, or a price or time that is lacking may turn it",
                          points_text()));
    if (const auto same = names_with(rows, RowStanding::same); !same.empty())
        table.remarks.emplace_back("No difference at the precision printed: " + join(same, "; ") + ".");
    const double now = proposal.now->use.product, then = proposal.proposed->use.product;
    table.remarks.emplace_back(fmt::format(
        "The class isolates {} g of product now and {} g as proposed{}.", digits(now), digits(then),
        std::abs(then - now) > 0.1 * now
            ? "; a figure of the class may be less because less is made, and more because more is"
            : ""));
    return table;
}

writing::Table lists_table(const std::vector<CaseList>& lists) {
    writing::Table table;
    table.caption = "What comes and what goes";
    table.columns = {
        {.heading = ""}, {.heading = "against: comes, or is lost"}, {.heading = "for: goes, or is gained"}};
    const auto words = [](const std::vector<std::string>& list) {
        return list.empty() ? "none" : join(list, "; ");
    };
    for (const CaseList& list : lists)
        table.rows.push_back({list.name, words(list.coming_is_loss ? list.comes : list.goes),
                              words(list.coming_is_loss ? list.goes : list.comes)});
    return table;
}

std::vector<std::string> not_known(const Proposal& proposal, const stock::PriceList& prices,
                                   const MixtureRules& classified_by) {
    std::vector<std::string> items;
    std::set<std::string> unpriced;
    for (const auto& [experiment, when] :
         {std::pair{proposal.now, "Now"}, std::pair{proposal.proposed, "Proposed"}}) {
        const Assessment& route = *experiment->use.route;
        std::string words = fmt::format("{}, {}: {}", when, route.route().id, route.route().status);
        if (route.yield_assumed()) words += "; the yield is assumed";
        if (const int silent = experiment->use.one.silent_stages; silent > 0)
            words += fmt::format("; {} no time and are not counted",
                                 counted(static_cast<std::size_t>(silent), "stage states", "stages state"));
        items.push_back(words + ".");
        unpriced.insert(experiment->use.money.unpriced.begin(), experiment->use.money.unpriced.end());
    }
    items.push_back(
        fmt::format("Rows count as more or less only where {} of yield up or down in the proposed "
                    "method, step by step, leave them so.",
                    points_text()));
    if (prices.packs.empty())
        items.emplace_back("Money: there is no price list, so nothing is said of it.");
    else {
        std::string words = capitalised(prices.words());
        if (!unpriced.empty())
            words += "; not priced and counted as nothing: " +
                     join(std::vector<std::string>(unpriced.begin(), unpriced.end()), "; ");
        items.push_back(words + ".");
    }
    if (const double extra = proposal.now->use.plan.extra; extra > 0.0)
        items.push_back(
            fmt::format("The {:g} % extra is spare stock and in the packs alone; a spill or a repeat "
                        "adds to every other figure.",
                        100.0 * extra));
    items.emplace_back(
        proposal.same_product()
            ? "Techniques that only the course file names are taken to stay with the product."
            : "Techniques that only the course file names are not known of the proposed method.");
    items.push_back("Power and water are estimates for usual appliances. " +
                    limits_of_statements(classified_by));
    if (!proposal.same_product())
        items.emplace_back("The products differ, so no figure per gram is compared.");
    return items;
}

MachineObject tree_of(const Proposal& proposal, const stock::PriceList& prices,
                      const std::vector<CaseRow>& rows, const std::vector<CaseList>& lists,
                      const std::string& verdict, const std::vector<std::string>& unknown) {
    MachineList row_list, figure_list, list_list;
    for (const CaseRow& row : rows)
        row_list.emplace_back(MachineObject{{"of", row.id},
                                            {"unit", row.unit},
                                            {"now", row.now},
                                            {"proposed", row.proposed},
                                            {"proposed_low", row.low},
                                            {"proposed_high", row.high},
                                            {"standing", std::string(id_of(row.standing))}});
    for (const TermFigure& figure : term_figures())
        if (is_shown(figure, proposal.now->use.plan, prices))
            for (const course::Experiment* experiment : {proposal.now, proposal.proposed})
                figure_list.emplace_back(
                    machine_of(figure_of(figure, experiment->use, prices), Edition::key));
    for (const CaseList& list : lists)
        list_list.emplace_back(MachineObject{{"of", list.id},
                                             {"comes", writing::text_list(list.comes)},
                                             {"goes", writing::text_list(list.goes)}});
    return {{"routeweigh", std::string(program_version())},
            {"course", proposal.after->id},
            {"week", proposal.now->week},
            {"now", proposal.now->use.route->route().id},
            {"proposed", proposal.proposed->use.route->route().id},
            {"verdict", verdict},
            {"rows", std::move(row_list)},
            {"figures", std::move(figure_list)},
            {"lists", std::move(list_list)},
            {"not_known", writing::text_list(unknown)}};
}

writing::DataRows csv_rows(const Proposal& proposal, const std::vector<CaseRow>& rows) {
    writing::DataRows data;
    data.columns = {"course", "week",     "now_route",    "proposed_route", "figure",  "unit",
                    "now",    "proposed", "proposed_low", "proposed_high",  "standing"};
    for (const CaseRow& row : rows)
        data.rows.push_back({proposal.after->id, static_cast<double>(proposal.now->week),
                             proposal.now->use.route->route().id, proposal.proposed->use.route->route().id,
                             row.id, row.unit, row.now, row.proposed, row.low, row.high,
                             std::string(id_of(row.standing))});
    return data;
}

} // namespace

writing::Document committee_case(const Proposal& proposal, const course::House& house) {
    const stock::PriceList& prices = house.prices;
    const ClassificationRules rules(house.catalogue, {bench::regime_of(house.waste.local), {}});
    const std::vector<CaseRow> rows = case_rows(proposal, prices);
    const std::vector<CaseList> lists = case_lists(proposal, rules);
    const std::string verdict = case_verdict(rows, lists);
    const std::vector<std::string> unknown = not_known(proposal, prices, rules.mixture);
    writing::Document document;
    document.id = "committee_case";
    document.one_page = true;
    document.title = fmt::format("Another method in week {}: a case to decide", proposal.now->week);
    document.subtitle =
        fmt::format("{}, {}; {}", proposal.after->title, proposal.after->term, proposal.after->college);
    auto& blocks = document.blocks;
    blocks.push_back(proposed_words(proposal));
    blocks.push_back(
        writing::Paragraph{writing::Text{writing::strong("In short:"), writing::Run(" " + verdict)}});
    blocks.push_back(figures_table(proposal, rows));
    blocks.push_back(lists_table(lists));
    blocks.push_back(writing::Paragraph{writing::strong("Not known, or taken on trust:")});
    writing::BulletList list;
    for (const std::string& item : unknown)
        list.items.emplace_back(item);
    blocks.push_back(std::move(list));
    blocks.push_back(writing::Paragraph{writing::Text{
        writing::strong("Who decides:"),
        writing::Run(" the committee, after the safety office has seen the risk assessment of the "
                     "proposed method and somebody has run it at this scale. This page weighs "
                     "nothing for them.")}});
    blocks.push_back(usual_cautions_in_small_print());
    document.machine = tree_of(proposal, prices, rows, lists, verdict, unknown);
    document.rows = csv_rows(proposal, rows);
    document.colophon =
        fmt::format("Made by routeweigh {} from the course file and two route files.", program_version());
    return document;
}

} // namespace routeweigh
