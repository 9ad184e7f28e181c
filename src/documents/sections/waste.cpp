// SPDX-License-Identifier: MIT
// Where the waste goes: containers by the US and the EU rules, handouts that differ, quench. The command that
// asks about waste alone says much more; here ten routes have to fit on a page.
#include "assess/streams/quench_words.hpp"
#include "base/text.hpp"
#include "documents/number.hpp"
#include "documents/sections/sections.hpp"
#include "documents/waste/waste_parts.hpp"
#include "documents/words.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace routeweigh::documents {
namespace {

using streams::ClassWaste;
using streams::Decision;
using streams::QuenchPlan;
using streams::StreamAdvice;

/// Every route by the rules shipped for one jurisdiction.
struct Judged {
    Judged(const ReportView& view, const char* jurisdiction)
        : rules(*view.baseline().assessment->rules().catalogue,
                streams::shipped_local_rules(*view.baseline().assessment->rules().catalogue, jurisdiction)) {
        for (const RouteView& route : view.routes)
            routes.push_back(streams::assess_class(route.route(), 1, rules));
    }
    streams::StreamRules rules;
    std::vector<ClassWaste> routes;
};

/// What goes where from one pot: "aqueous, neutral 54 mL".
std::vector<std::string> containers_of(const ClassWaste& one) {
    std::vector<std::string> list;
    for (const streams::ContainerFit& fit : one.fits)
        list.push_back(fmt::format("{} {} mL", fit.container->name, digits(fit.per_pot, 2)));
    for (const streams::OwnBottle& bottle : one.own_bottles)
        list.push_back(fmt::format("STOP, own bottle: {}", bottle.stream));
    return list;
}

std::string quench_words(const ClassWaste& one) {
    std::vector<std::string> list;
    for (const QuenchPlan& plan : one.waste.quenches) {
        if (plan.verdict == QuenchPlan::Verdict::nothing_to_destroy) continue;
        std::string words = one.route->steps.size() > 1 ? plan.step_id + ": " : "";
        words += std::string(streams::words_of(plan.verdict));
        if (plan.extra > 0)
            words += fmt::format("; have {} g more {} ready", digits(plan.extra, 2), plan.extra_of);
        list.push_back(std::move(words));
    }
    return list.empty() ? "nothing to destroy" : join(list, "; ");
}

/// L of carbon dioxide from one pot when the acid that needs base is taken up with hydrogencarbonate.
double carbon_dioxide(const ClassWaste& one) {
    double litres = 0;
    for (const QuenchPlan& plan : one.waste.quenches)
        if (const streams::BaseNeeded* base = plan.needed.with("NaHCO3")) litres += base->gas_litres;
    return litres;
}

writing::Table overview(const ReportView& view, const Judged& us, const Judged& eu) {
    writing::Table table;
    table.caption = "Containers, quench and gas of one pot";
    table.columns = {{.heading = "route"},
                     {.heading = "containers, US rules"},
                     {.heading = "EU rules"},
                     {.heading = "planned quench"},
                     {.heading = "carbon dioxide", .align = writing::Align::decimal, .unit = "L"}};
    for (std::size_t i = 0; i < view.routes.size(); ++i) {
        const std::vector<std::string> in_us = containers_of(us.routes[i]),
                                       in_eu = containers_of(eu.routes[i]);
        table.rows.push_back(
            writing::Row({view.routes[i].head(), join(in_us, "; "),
                          in_us == in_eu ? std::string("the same") : join(in_eu, "; "),
                          quench_words(us.routes[i]), digits_cell(carbon_dioxide(us.routes[i]), 2)},
                         view.routes[i].row_kind()));
    }
    table.remarks = {
        "Each stream counts at both readings of the yield that is lost, made and lost or never "
        "formed, and so does the quench. Carbon dioxide: when the strong acid of the streams that "
        "base goes into is taken up with sodium hydrogencarbonate, and where the container is the neutral "
        "one their weak acid too, likewise where sulfite or thiosulfate is left beside it.",
        "A class, a house's own rules and the log of a container: routeweigh waste."};
    return table;
}

/// Mismatches once each, with the rules under which they are.
writing::BulletList mismatches(const Judged& us, const Judged& eu) {
    std::vector<std::pair<std::string, std::string>> found; // words, rules
    for (const Judged* judged : {&us, &eu})
        for (const ClassWaste& one : judged->routes)
            for (const StreamAdvice* advice : one.waste.mismatches()) {
                std::string words = fmt::format("{}, {}: {}; handout says \"{}\", should go to {}",
                                                one.route->id, advice->stream.title, advice->decision.summary,
                                                advice->handout.said, advice->decision.goes_to);
                const std::string& rules = judged->rules.local.jurisdiction;
                const auto known = std::find_if(found.begin(), found.end(),
                                                [&](const auto& entry) { return entry.first == words; });
                if (known == found.end())
                    found.emplace_back(words, rules);
                else
                    known->second += " and " + rules;
            }
    writing::BulletList list;
    for (const auto& [words, rules] : found)
        list.items.emplace_back(fmt::format("{} ({} rules).", words, rules));
    return list;
}

writing::Folded waste_details(const ClassWaste& one) {
    writing::Folded folded{writing::Text(fmt::format("Streams and quench of {}, US rules", one.route->id)),
                           {containers_table(one)},
                           "waste-" + one.route->id};
    writing::BulletList quench;
    for (const QuenchPlan& plan : one.waste.quenches) {
        if (!needs_work(plan)) continue;
        quench.items.emplace_back(fmt::format("{}: {}", plan.step_id, plan.words));
        for (const std::string& line : plan.order)
            quench.items.emplace_back(line);
        for (const std::string& line : plan.warnings)
            quench.items.emplace_back("warning: " + line);
    }
    if (!quench.items.empty()) folded.blocks.emplace_back(std::move(quench));
    return folded;
}

} // namespace

bool has_waste_tables(const ReportView& view) {
    const Catalogue& catalogue = *view.baseline().assessment->rules().catalogue;
    return catalogue.scheme("local_rules_us") != nullptr && catalogue.scheme("local_rules_eu") != nullptr &&
           catalogue.scheme("quench") != nullptr;
}

void add_waste(const ReportView& view, Blocks& blocks) {
    const Judged us(view, "US"), eu(view, "EU");
    writing::BulletList list = mismatches(us, eu);
    if (list.items.empty()) {
        blocks.emplace_back(writing::Paragraph{
            "In no stream does a handout name another container than the one computed from what is in it."});
    } else {
        blocks.emplace_back(writing::Paragraph{
            "What is in a stream decides where it goes. Here the handout names another container than the "
            "computed one:"});
        blocks.emplace_back(std::move(list));
    }
    blocks.emplace_back(overview(view, us, eu));
    for (const ClassWaste& one : us.routes)
        blocks.emplace_back(waste_details(one));
    blocks.emplace_back(waste_cautions());
}

} // namespace routeweigh::documents
