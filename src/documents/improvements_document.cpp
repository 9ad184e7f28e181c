// SPDX-License-Identifier: MIT
#include "documents/improvements_document.hpp"

#include "documents/cautions.hpp"
#include "documents/improvement_words.hpp"
#include "documents/number.hpp"
#include "documents/version.hpp"
#include "documents/words.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace routeweigh {
namespace {

using namespace documents;
using writing::MachineList;
using writing::MachineObject;
using writing::text_list;

writing::Table ranking(const Improvements& improvements, std::size_t shown) {
    const FigurePick& figure = improvements.figure;
    writing::Table table;
    table.caption =
        fmt::format("Changes ranked by their effect on {}, {} now; {}", in_sentence(figure.name()),
                    value_text(figure, improvements.value), standing_of(improvements));
    table.columns = {{.heading = "", .align = writing::Align::right}, {.heading = "change"}};
    for (writing::Column& column : effect_columns(figure))
        table.columns.push_back(std::move(column));
    table.row_headers = false;
    for (std::size_t i = 0; i < shown; ++i) {
        const Improvement& entry = improvements.ranked[i];
        std::vector<writing::Cell> cells{std::to_string(i + 1), capitalised(entry.candidate.what)};
        for (writing::Cell& cell : effect_cells(figure, entry))
            cells.push_back(std::move(cell));
        table.rows.push_back(writing::Row(std::move(cells)));
    }
    return table;
}

void add_details(const Improvements& improvements, std::size_t shown, std::vector<writing::Block>& blocks) {
    blocks.push_back(writing::Heading{2, "What each might break, and what it adds", "cautions"});
    for (std::size_t i = 0; i < shown; ++i) {
        const Improvement& entry = improvements.ranked[i];
        blocks.push_back(
            writing::Heading{3, fmt::format("{}. {}", i + 1, capitalised(entry.candidate.what))});
        writing::BulletList list;
        list.items.push_back({writing::strong("Adds hazard:"), writing::Run(" " + added_text(entry) + ".")});
        for (const std::string& danger : entry.candidate.dangers)
            list.items.push_back({writing::strong("Look out:"), writing::Run(" " + danger + ".")});
        for (const std::string& caution : entry.candidate.cautions)
            list.items.push_back({writing::strong("To test:"), writing::Run(" " + caution + ".")});
        blocks.push_back(std::move(list));
    }
}

writing::Table pairs_table(const Improvements& improvements) {
    const FigurePick& figure = improvements.figure;
    writing::Table table;
    table.caption =
        "Pairs of these changes, by their numbers, that do more or less together than the sum of both";
    table.columns = {{.heading = "changes"},
                     {.heading = "together", .align = writing::Align::decimal},
                     {.heading = "sum of both", .align = writing::Align::decimal},
                     {.heading = "difference", .align = writing::Align::decimal}};
    for (const Interaction& pair : improvements.interactions) {
        const std::string name = fmt::format("{} and {}", pair.first + 1, pair.second + 1);
        if (!pair.refused.empty()) {
            table.rows.push_back({name, writing::missing("they do not go together: " + pair.refused)});
            continue;
        }
        table.rows.push_back(
            {name,
             {difference_text(pair.joint, figure.decimals()), pair.joint},
             {difference_text(pair.sum, figure.decimals()), pair.sum},
             {difference_text(pair.joint - pair.sum, figure.decimals() + 1), pair.joint - pair.sum}});
    }
    return table;
}

/// Pairs whose difference would be seen in print.
bool visible(const Interaction& pair, const FigurePick& figure) {
    return !pair.refused.empty() ||
           std::abs(pair.joint - pair.sum) >= 0.5 * std::pow(10.0, -figure.decimals() - 1);
}

void add_pairs(const Improvements& improvements, std::vector<writing::Block>& blocks) {
    if (improvements.pairs_tried == 0) return;
    blocks.push_back(writing::Heading{2, "Changes together", "pairs"});
    Improvements shown = improvements;
    std::erase_if(shown.interactions,
                  [&](const Interaction& pair) { return !visible(pair, improvements.figure); });
    if (shown.interactions.empty()) {
        blocks.push_back(
            writing::Paragraph{fmt::format("Of {} tried, every one does together what both do alone.",
                                           counted(improvements.pairs_tried, "pair", "pairs"))});
        return;
    }
    blocks.push_back(pairs_table(shown));
    if (const std::size_t rest = improvements.pairs_tried - shown.interactions.size(); rest > 0)
        blocks.push_back(writing::Paragraph{fmt::format("{} {} tried: the effects add up.",
                                                        capitalised(counted(rest, "more pair", "more pairs")),
                                                        verb(rest, "was", "were"))});
}

/// What nobody should try stands open on the page, for its absence would not be seen.
void add_not_proposed(const Improvements& improvements, std::vector<writing::Block>& blocks) {
    writing::BulletList list;
    for (const Improvements::Refused& entry : improvements.refused)
        if (!entry.candidate.against.empty())
            list.items.emplace_back(
                fmt::format("Not proposed: {}, for {}.", entry.candidate.what, entry.why));
    if (list.items.empty()) return;
    blocks.push_back(writing::Heading{2, "Looked at and not proposed", "not-proposed"});
    blocks.push_back(std::move(list));
}

void add_rest(const Improvements& improvements, std::vector<writing::Block>& blocks) {
    writing::BulletList list;
    for (const Improvement& entry : improvements.no_help)
        list.items.emplace_back(fmt::format(
            "{}: {}. Hazard added: {}.", capitalised(entry.candidate.what),
            effect_text(improvements.figure, entry.before, entry.after - entry.before), added_text(entry)));
    for (const Improvements::Refused& entry : improvements.refused)
        if (entry.candidate.against.empty())
            list.items.emplace_back(fmt::format("{}: cannot be worked as written, {}.",
                                                capitalised(entry.candidate.what), entry.why));
    if (list.items.empty()) return;
    writing::Folded folded{"Tried, and no improvement of this figure", {}, "no-help", true};
    folded.blocks.push_back(std::move(list));
    blocks.push_back(std::move(folded));
}

MachineObject entry_tree(const Improvement& entry, bool helps) {
    MachineList changes, added, left_over;
    for (const Assignment& change : entry.candidate.changes)
        changes.emplace_back(MachineObject{{"at", change.pointer}, {"value", change.value}});
    for (const AddedHazard& hazard : entry.added)
        added.emplace_back(MachineObject{{"endpoint", hazard.endpoint},
                                         {"place", hazard.place},
                                         {"before", hazard.before},
                                         {"after", hazard.after}});
    for (const LeftOver& left : entry.left_over)
        left_over.emplace_back(MachineObject{
            {"substance", left.substance}, {"grams_before", left.before}, {"grams_after", left.after}});
    return {{"kind", std::string(entry.candidate.kind)},
            {"what", entry.candidate.what},
            {"helps", helps},
            {"changes", std::move(changes)},
            {"before", entry.before},
            {"after", entry.after},
            {"yield", 100.0 * entry.yield},
            {"yield_at_par", entry.yield_at_par ? 100.0 * *entry.yield_at_par : std::nan("")},
            {"added_hazards", std::move(added)},
            {"left_over", std::move(left_over)},
            {"dangers", text_list(entry.candidate.dangers)},
            {"cautions", text_list(entry.candidate.cautions)}};
}

MachineObject tree_of(const Assessment& route, const Improvements& improvements) {
    MachineList entries, refused, pairs;
    for (const Improvement& entry : improvements.ranked)
        entries.emplace_back(entry_tree(entry, true));
    for (const Improvement& entry : improvements.no_help)
        entries.emplace_back(entry_tree(entry, false));
    for (const Improvements::Refused& entry : improvements.refused)
        refused.emplace_back(MachineObject{{"what", entry.candidate.what}, {"why", entry.why}});
    for (const Interaction& pair : improvements.interactions)
        pairs.emplace_back(MachineObject{{"first", static_cast<int>(pair.first)},
                                         {"second", static_cast<int>(pair.second)},
                                         {"joint", pair.refused.empty() ? pair.joint : std::nan("")},
                                         {"sum", pair.sum},
                                         {"refused", pair.refused}});
    return {{"routeweigh", std::string(program_version())},
            {"route", route.route().id},
            {"figure", improvements.figure.id()},
            {"unit", improvements.figure.unit()},
            {"value", improvements.value},
            {"standing", standing_of(improvements)},
            {"improvements", std::move(entries)},
            {"refused", std::move(refused)},
            {"interactions", std::move(pairs)}};
}

writing::DataRows rows_of(const Assessment& route, const Improvements& improvements) {
    writing::DataRows rows;
    rows.columns = {"route", "figure", "rank", "kind", "what", "before", "after", "yield", "yield_at_par"};
    double rank = 0.0;
    for (const Improvement& entry : improvements.ranked) {
        writing::DataCell par;
        if (entry.yield_at_par) par = 100.0 * *entry.yield_at_par;
        rows.rows.push_back({route.route().id, improvements.figure.id(), ++rank,
                             std::string(entry.candidate.kind), entry.candidate.what, entry.before,
                             entry.after, 100.0 * entry.yield, par});
    }
    return rows;
}

} // namespace

writing::Document improvements_document(const Assessment& route, const Improvements& improvements,
                                        std::size_t top) {
    writing::Document document;
    document.id = "improvements";
    document.title = fmt::format("What would improve {}", route.route().id);
    document.subtitle = route.route().title;
    document.machine = tree_of(route, improvements);
    document.rows = rows_of(route, improvements);
    std::vector<writing::Block>& blocks = document.blocks;
    const std::size_t shown = std::min(top, improvements.ranked.size());
    if (shown == 0) {
        blocks.push_back(writing::Paragraph{
            fmt::format("None of the changes tried improves {}.", in_sentence(improvements.figure.name()))});
    } else {
        blocks.push_back(ranking(improvements, shown));
        if (shown < improvements.ranked.size())
            blocks.push_back(writing::Paragraph{fmt::format(
                "{} would improve it and stand in no row here.",
                capitalised(counted(improvements.ranked.size() - shown, "more change", "more changes")))});
        blocks.push_back(writing::Paragraph{
            fmt::format(
                "Each was put into the route file and everything computed anew. None has been run: the "
                "yield is assumed to stay as it is{}, and the last column says how much of it may be "
                "lost before the gain is gone.",
                changes_yield(improvements) ? ", save where the yield is what changes" : ""),
            true});
        if (route.route().steps.size() > 1) blocks.push_back(amounts_of_steps());
        add_details(improvements, shown, blocks);
        add_pairs(improvements, blocks);
    }
    add_not_proposed(improvements, blocks);
    add_rest(improvements, blocks);
    tell_open_end(route, improvements.figure.id(), blocks);
    blocks.push_back(numbers_of(route));
    tell_found_yields(route, blocks);
    blocks.push_back(not_judged());
    blocks.push_back(not_predicted());
    blocks.push_back(usual_cautions());
    return document;
}

} // namespace routeweigh
