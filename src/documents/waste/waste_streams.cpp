// SPDX-License-Identifier: MIT
// Every stream with its container, and the way that led there.
#include "base/text.hpp"
#include "documents/composition_text.hpp"
#include "documents/destination.hpp"
#include "documents/number.hpp"
#include "documents/shared_figure.hpp"
#include "documents/waste/waste_parts.hpp"

#include <fmt/format.h>

namespace routeweigh::documents {
namespace {

using streams::Decision;
using streams::StreamAdvice;

constexpr double worth_a_row = 1e-4; // g: prints as more than nothing

std::string goes_to(const Decision& decision) {
    std::string words = destination(decision);
    if (!decision.waste_code.empty()) words += fmt::format(" ({})", decision.waste_code);
    return words;
}

/// No volume for gas, nor for what stays on the product.
writing::Cell volume_cell(const StreamAdvice& advice) {
    return advice.stream.is_gas() || advice.decision.outcome == Decision::Outcome::on_product
               ? writing::Cell("-")
               : writing::Cell(stream_volume_text(advice.largest_volume()), advice.largest_volume());
}

writing::Table composition_table(const StreamAdvice& advice) {
    writing::Table table;
    table.caption = fmt::format("What is in it, one pot: {}", advice.stream.title);
    table.columns = {{.heading = "substance"},
                     {.heading = "lost yield made and lost", .align = writing::Align::decimal, .unit = "g"},
                     {.heading = "lost yield never reacted", .align = writing::Align::decimal, .unit = "g"}};
    const streams::Composition& nominal = advice.stream.nominal;
    const streams::Composition& unreacted = advice.stream.unreacted;
    const bool wet = nominal.grams("water") > 0 || unreacted.grams("water") > 0;
    const auto row = [&](const Substance& substance) {
        const double one = nominal.grams(substance), other = unreacted.grams(substance);
        if (one >= worth_a_row || other >= worth_a_row)
            table.rows.push_back(
                {wet ? name_in_water(substance) : substance.name, digits_cell(one), digits_cell(other)});
    };
    for (const streams::Portion& portion : nominal.portions())
        row(*portion.substance);
    for (const streams::Portion& portion : unreacted.portions())
        if (nominal.grams(*portion.substance) == 0) row(*portion.substance);
    if (table.rows.empty()) table.remarks = {"Less than 0.1 mg of anything."};
    return table;
}

writing::Cell looked_at(const std::optional<double>& value, const std::string& unit) {
    return value ? writing::Cell(digits(*value) + " " + unit, *value) : writing::Cell("");
}

writing::Table reasons_table(const StreamAdvice& advice) {
    writing::Table table;
    table.caption = fmt::format("The way to the container: {}", advice.stream.title);
    table.columns = {{.heading = "asked"},
                     {.heading = "found"},
                     {.heading = "value"},
                     {.heading = "line"},
                     {.heading = "source of the line"}};
    for (const streams::Reason& reason : advice.decision.reasons)
        table.rows.push_back({reason.what, reason.words, looked_at(reason.value, reason.unit),
                              looked_at(reason.line, reason.unit), reason.source});
    return table;
}

writing::BulletList pairing_list(const StreamAdvice& advice) {
    writing::BulletList list;
    for (const streams::PairingStep& step : advice.nominal.paired.steps)
        list.items.emplace_back(fmt::format("{} ({} mmol)", step.words, significant(1000 * step.moles, 2)));
    for (const std::string& pair : advice.nominal.paired.left_unpaired)
        list.items.emplace_back(fmt::format("not paired off, for want of an entry of the salt: {}", pair));
    return list;
}

} // namespace

writing::Folded why_block(const StreamAdvice& advice) {
    writing::Folded folded{
        writing::Text(fmt::format("Why: {} to {}", advice.stream.title, goes_to(advice.decision))), {}};
    folded.blocks.emplace_back(composition_table(advice));
    writing::BulletList pairs = pairing_list(advice);
    if (!pairs.items.empty()) {
        folded.blocks.emplace_back(writing::Paragraph{"Acids and bases in it are paired off first:"});
        folded.blocks.emplace_back(std::move(pairs));
    }
    if (!advice.decision.reasons.empty()) folded.blocks.emplace_back(reasons_table(advice));
    return folded;
}

writing::Table containers_table(const streams::ClassWaste& one) {
    const bool steps = one.route->steps.size() > 1;
    writing::Table table;
    table.caption = fmt::format("The streams of {} and their containers", one.route->id);
    table.columns = {
        {.heading = "stream"},
        {.heading = steps ? "one run" : "one pot", .align = writing::Align::decimal, .unit = "mL"},
        {.heading = "goes to"},
        {.heading = "before that"},
        {.heading = "the handout says"}};
    if (steps) table.columns.insert(table.columns.begin() + 1, {.heading = "step"});
    for (const StreamAdvice& advice : one.waste.streams) {
        writing::Row row{advice.stream.name, volume_cell(advice), goes_to(advice.decision),
                         first_words(advice.decision), advice.stream.handout};
        if (steps) row.cells.insert(row.cells.begin() + 1, writing::Cell(advice.stream.step_id));
        table.rows.push_back(std::move(row));
    }
    table.remarks = {
        "Volumes are densities added up, the larger of both readings of the yield: lost after it "
        "was made, or never formed. Of both readings the container is the more demanding one. "
        "No pH is predicted: acid and base are counted in mol."};
    if (steps)
        table.remarks.emplace_back(
            "Amounts here and in what is done before are for one run of each step as it is written; "
            "the table of what fits counts the runs that one pot of the product takes.");
    return table;
}

void add_containers(const streams::ClassWaste& one, WasteBlocks& blocks) {
    blocks.emplace_back(containers_table(one));
    for (const StreamAdvice& advice : one.waste.streams)
        blocks.emplace_back(why_block(advice));
}

} // namespace routeweigh::documents
