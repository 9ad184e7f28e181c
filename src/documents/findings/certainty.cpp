// SPDX-License-Identifier: MIT
// What may be said with which certainty: shares of runs where they mean something, and where they do not,
// why.
#include "compare/uncertainty/certainty.hpp"
#include "documents/findings/finding.hpp"
#include "documents/number.hpp"
#include "documents/weighting_view.hpp"
#include "documents/words.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace routeweigh::documents {
namespace {

using writing::Run;
using writing::strong;

struct Sorted {
    std::vector<const RouteView*> better, worse, alike, firm, open;
    double least_better = 1.0, least_worse = 1.0;
};

Sorted sort_by_verdict(const ReportView& view, std::size_t figure) {
    Sorted sorted;
    const Certainty& certainty = *view.certainty;
    for (std::size_t r = 0; r < view.routes.size(); ++r) {
        if (view.routes[r].baseline) continue;
        const RouteView* route = &view.routes[r];
        const FigureOrder& order = certainty.order(figure);
        switch (certainty.verdict(r, view.baseline_index, figure)) {
        case PairVerdict::better:
            sorted.better.push_back(route);
            sorted.least_better = std::min(sorted.least_better, order.share_better(r, view.baseline_index));
            break;
        case PairVerdict::worse:
            sorted.worse.push_back(route);
            sorted.least_worse = std::min(sorted.least_worse, order.share_better(view.baseline_index, r));
            break;
        case PairVerdict::not_distinguishable:
            sorted.alike.push_back(route);
            break;
        case PairVerdict::rests_on_assumed:
            (certainty.holds_for_plausible_yields(r, view.baseline_index, figure) ? sorted.firm : sorted.open)
                .push_back(route);
            break;
        case PairVerdict::exact:
        case PairVerdict::no_bound:
        case PairVerdict::no_value:
            break;
        }
    }
    return sorted;
}

void add_sure(const ReportView& view, const std::vector<const RouteView*>& routes, double share, bool less,
              Statements& statements) {
    if (routes.empty()) return;
    statements.push_back(
        {Topic::mass,
         less ? "certainty.less" : "certainty.more",
         ids(routes),
         {strong(fmt::format("In {}{} of runs", routes.size() > 1 ? "at least " : "", share_words(share))),
          Run(fmt::format(" {} {} {} mass than {} with the same auxiliaries, as far as balances, glassware, "
                          "bottles and stated yields go.",
                          names(view, routes), verb(routes.size(), "takes", "take"), less ? "less" : "more",
                          view.baseline().id))}});
}

void add_mass(const ReportView& view, Statements& statements) {
    const Sorted sorted =
        sort_by_verdict(view, view.certainty->model().heads().index_of(pmi_same_auxiliaries));
    add_sure(view, sorted.better, sorted.least_better, true, statements);
    add_sure(view, sorted.worse, sorted.least_worse, false, statements);
    if (!sorted.alike.empty())
        statements.push_back(
            {Topic::mass,
             "certainty.alike",
             ids(sorted.alike),
             {strong("Not distinguishable"),
              Run(fmt::format(" from {} by mass with the same auxiliaries: {}. Neither is "
                              "ahead in {} of runs.",
                              view.baseline().id, names(view, sorted.alike), percent(sure_share)))}});
    if (sorted.firm.empty() && sorted.open.empty()) return;
    std::vector<const RouteView*> all = sorted.firm;
    all.insert(all.end(), sorted.open.begin(), sorted.open.end());
    const std::string points = fixed(100.0 * plausible_yield_difference, 0);
    std::string text = " for the order of mass with the same auxiliaries: it rests on assumed yields.";
    if (!sorted.firm.empty())
        text += fmt::format(" It holds with {} at any yields within {} points of those assumed.",
                            names(view, sorted.firm), points);
    if (!sorted.open.empty())
        text += fmt::format(" With {} yields within {} points turn it, so {} not distinguishable from {}.",
                            names(view, sorted.open), points, verb(sorted.open.size(), "it is", "they are"),
                            view.baseline().id);
    statements.push_back(
        {Topic::mass, "certainty.assumed", ids(all), {strong("No share of runs is given"), Run(text)}});
}

void add_weightings(const ReportView& view, Statements& statements) {
    const WeightingView weightings(view);
    const auto best = std::max_element(weightings.first.begin(), weightings.first.end());
    const auto& route = view.routes[static_cast<std::size_t>(best - weightings.first.begin())];
    std::vector<const RouteView*> never;
    for (std::size_t r = 0; r < view.routes.size(); ++r)
        if (weightings.best_lead[r] <= 0.0) never.push_back(&view.routes[r]);
    const bool bounded = std::all_of(view.routes.begin(), view.routes.end(), [](const RouteView& entry) {
        return entry.assessment->scores().nominal.ranked();
    });
    std::string text = fmt::format(
        " of all weightings of the cells of endpoint and place {} has the least hazard score{}{}.", route.id,
        view.routes.size() > 2 ? ", more often than any other" : "",
        bounded ? "" : ", by the low ends alone: nothing bounds some scores from above, so it is no rank");
    if (!never.empty()) text += fmt::format(" No weighting at all puts {} first.", listed(ids(never)));
    statements.push_back({Topic::hazard,
                          "certainty.weightings",
                          {route.id},
                          {strong("Under " + share_words(*best)), Run(text)}});
}

} // namespace

void find_certainty(const ReportView& view, Statements& statements) {
    if (view.certainty == nullptr) return;
    add_mass(view, statements);
    add_weightings(view, statements);
}

} // namespace routeweigh::documents
