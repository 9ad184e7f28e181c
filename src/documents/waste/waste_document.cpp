// SPDX-License-Identifier: MIT
#include "documents/waste/waste_document.hpp"

#include "documents/version.hpp"
#include "documents/waste/waste_parts.hpp"
#include "documents/words.hpp"

#include <fmt/format.h>

namespace routeweigh {
namespace {

using namespace documents;

std::string title_of(const WasteSubject& subject) {
    const auto routes = subject.routes;
    if (routes.size() > 1)
        return fmt::format("Where the waste of {} goes", counted(routes.size(), "route", "routes"));
    return fmt::format("Where the waste of {} goes: {}", routes[0].route->id, routes[0].route->title);
}

std::string class_words(const WasteSubject& subject) {
    const double pots = subject.routes.front().pots;
    std::string count = fmt::format("{:g} {}", pots, pots == 1 ? "pot" : "pots");
    if (subject.team > 1)
        return fmt::format("{:g} students, {:g} at a pot: {}", subject.students, subject.team, count);
    return count;
}

void add_route(const streams::ClassWaste& one, const WasteSubject& subject, WasteBlocks& blocks) {
    blocks.emplace_back(writing::Heading{2, fmt::format("{}: {}", one.route->id, one.route->title),
                                         "route-" + one.route->id});
    add_containers(one, blocks);
    blocks.emplace_back(writing::Heading{3, "What meets there"});
    add_meetings(one, *subject.rules, blocks);
    blocks.emplace_back(writing::Heading{3, "Quench and neutralisation"});
    bool any = false;
    for (const streams::QuenchPlan& plan : one.waste.quenches)
        if (needs_work(plan)) {
            add_quench(plan, one, *subject.rules, blocks);
            any = true;
        }
    if (!any)
        blocks.emplace_back(writing::Paragraph{
            "Nothing is left that has to be destroyed or neutralised, as far as the ledger tells."});
    blocks.emplace_back(writing::Heading{3, "Does it fit"});
    add_fit(one, *subject.rules, blocks);
}

} // namespace

writing::Document waste_document(const WasteSubject& subject) {
    writing::Document document;
    document.id = "waste";
    document.title = title_of(subject);
    document.subtitle = fmt::format("{}. {}", subject.rules->local.title, capitalised(class_words(subject)));
    document.blocks.emplace_back(writing::Heading{2, "The handout", "handout"});
    add_handout(subject, document.blocks);
    for (const streams::ClassWaste& one : subject.routes)
        add_route(one, subject, document.blocks);
    document.blocks.emplace_back(writing::Heading{2, "Paper, gloves, spills, and the rules used", "house"});
    add_house(subject, document.blocks);
    document.blocks.emplace_back(waste_cautions());
    document.colophon = fmt::format("Made by routeweigh {} from the route files, the local rules and its "
                                    "catalogue; the same files give the same page.",
                                    program_version());
    document.machine = waste_tree(subject);
    document.rows = waste_rows(subject);
    return document;
}

} // namespace routeweigh
