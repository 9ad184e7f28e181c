// SPDX-License-Identifier: MIT
#include "documents/class_results_document.hpp"

#include "documents/cautions.hpp"
#include "documents/class_results_data.hpp"
#include "documents/class_yields.hpp"
#include "documents/number.hpp"
#include "documents/version.hpp"
#include "documents/words.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <utility>

namespace routeweigh {
namespace {

using documents::digits;
using documents::fixed;
using documents::number_cell;
using results::ClassResults;
using results::FindingKind;
using results::KeptRow;
using results::OwnNumber;
using results::Verdict;

writing::Paragraph summary(const ClassResults& results) {
    const auto count = [&](Verdict verdict) { return results.verdicts[static_cast<std::size_t>(verdict)]; };
    std::string words =
        fmt::format("{} read: {} plausible, {} to check, {} not possible.",
                    capitalised(documents::counted(results.rows, "row", "rows")), count(Verdict::plausible),
                    count(Verdict::check), count(Verdict::not_possible));
    if (results.all.count > 0)
        words += fmt::format(" The median yield is {} %, half of the class lies between {} and {} %.",
                             fixed(results.all.median, 1), fixed(results.all.quartile1, 1),
                             fixed(results.all.quartile3, 1));
    return {words};
}

writing::Paragraph theory_words(const ClassResults& results) {
    const results::Theory& theory = results.theory;
    std::string words = fmt::format("Yields are shares of {} g {}, the theoretical yield",
                                    digits(theory.grams, 4), theory.product->name);
    if (theory.limiting != nullptr)
        words += fmt::format(" from {} mmol {}", digits(theory.limiting_mmol, 4), theory.limiting->name);
    words += "; where a row says how much substrate was weighed, of what that gives.";
    return {words};
}

writing::Cell yield_cell(const KeptRow& row) {
    return row.judgement.yield ? number_cell(*row.judgement.yield, 1) : writing::Cell("\u2013");
}

std::string melting_text(const KeptRow& row) {
    if (!row.melts_to) return "\u2013";
    if (!row.melts_from) return fmt::format("{:g}", *row.melts_to);
    return fmt::format("{:g}\u2013{:g}", *row.melts_from, *row.melts_to);
}

writing::Table row_table(const ClassResults& results, bool only_remarkable) {
    writing::Table table;
    table.caption = only_remarkable ? "Rows to look at" : "Every row";
    table.columns = {{.heading = "bench"},
                     {.heading = "section"},
                     {.heading = "line", .align = writing::Align::right},
                     {.heading = "mass", .align = writing::Align::decimal, .unit = "g"},
                     {.heading = "yield", .align = writing::Align::decimal, .unit = "%"},
                     {.heading = "melts", .align = writing::Align::right, .unit = "\u00B0C"},
                     {.heading = "verdict"},
                     {.heading = "what is seen"}};
    for (const KeptRow& row : results.kept) {
        const bool plain = row.judgement.verdict == Verdict::plausible && !row.stands_out;
        if (only_remarkable && plain) continue;
        table.rows.push_back(
            {row.bench, row.section, writing::Cell(std::to_string(row.line), static_cast<double>(row.line)),
             row.judgement.mass ? documents::digits_cell(*row.judgement.mass, 4) : writing::Cell("\u2013"),
             yield_cell(row), melting_text(row), std::string(words_of(row.judgement.verdict)),
             documents::findings_text(row)});
    }
    return table;
}

writing::Table cause_table(const ClassResults& results) {
    writing::Table table;
    table.caption = "What it may be, and what to test next";
    table.columns = {{.heading = "what is seen"},
                     {.heading = "rows", .align = writing::Align::right},
                     {.heading = "likely causes"},
                     {.heading = "next"}};
    for (std::size_t i = 0; i < results.findings.size(); ++i) {
        if (results.findings[i] == 0) continue;
        const FindingKind& kind = results::finding_kinds()[i];
        table.rows.push_back(
            {std::string(kind.words),
             writing::Cell(std::to_string(results.findings[i]), static_cast<double>(results.findings[i])),
             std::string(kind.causes), std::string(kind.tests)});
    }
    return table;
}

bool has_own_numbers(const ClassResults& results) {
    return std::any_of(results.own.begin(), results.own.end(), [](const auto& counts) {
        return std::any_of(counts.begin(), counts.end(), [](std::uint64_t count) { return count > 0; });
    });
}

writing::Table own_summary_table(const ClassResults& results) {
    writing::Table table;
    table.caption = "The students' own numbers";
    table.columns = {{.heading = "number"},
                     {.heading = "right", .align = writing::Align::right},
                     {.heading = "right from an earlier slip", .align = writing::Align::right},
                     {.heading = "rounded on the way", .align = writing::Align::right},
                     {.heading = "a usual mistake", .align = writing::Align::right},
                     {.heading = "not explained", .align = writing::Align::right}};
    for (const auto kind : {OwnNumber::Kind::amount, OwnNumber::Kind::theory, OwnNumber::Kind::yield}) {
        const auto& counts = results.own[static_cast<std::size_t>(kind)];
        if (std::all_of(counts.begin(), counts.end(), [](std::uint64_t count) { return count == 0; }))
            continue;
        writing::Row row({writing::Cell(std::string(documents::words(kind)))});
        for (const std::uint64_t count : counts)
            row.cells.push_back(writing::Cell(std::to_string(count), static_cast<double>(count)));
        table.rows.push_back(std::move(row));
    }
    return table;
}

writing::Table own_table(const ClassResults& results) {
    writing::Table table;
    table.caption = "Where a number departs";
    table.columns = {{.heading = "bench"},
                     {.heading = "number"},
                     {.heading = "written", .align = writing::Align::right},
                     {.heading = "right", .align = writing::Align::right},
                     {.heading = "which mistake gives it"}};
    for (const KeptRow& row : results.kept)
        for (const OwnNumber& number : row.own) {
            if (number.standing == OwnNumber::Standing::right) continue;
            const std::string unit = " " + std::string(documents::unit(number.kind));
            // A yield is rounded as in the rows above, so that nobody looks for a difference.
            const std::string right = number.kind == OwnNumber::Kind::yield
                                          ? number_cell(number.right, 1).text
                                          : digits(number.right, 4);
            table.rows.push_back({row.bench, std::string(documents::words(number.kind)),
                                  writing::Cell(fmt::format("{:g}", number.own) + unit, number.own),
                                  writing::Cell(right + unit, number.right), number.words});
        }
    return table;
}

void add_rows(const ClassResults& results, std::vector<writing::Block>& blocks) {
    writing::Table remarkable = row_table(results, true);
    if (remarkable.rows.empty()) {
        blocks.push_back(writing::Paragraph{"No row has to be looked at."});
    } else {
        blocks.push_back(std::move(remarkable));
        if (!results.all_kept && results.kept.size() >= ClassResults::most_kept)
            blocks.push_back(writing::Paragraph{
                fmt::format("The first {} such rows are listed.", ClassResults::most_kept), true});
        writing::Table causes = cause_table(results);
        if (!causes.rows.empty()) blocks.push_back(std::move(causes));
    }
    if (!has_own_numbers(results)) return;
    blocks.push_back(writing::Heading{2, "Calculations", "calculations"});
    blocks.push_back(own_summary_table(results));
    writing::Table own = own_table(results);
    if (!own.rows.empty()) blocks.push_back(std::move(own));
}

std::string method_words(const ClassResults& results) {
    std::string words =
        "Quartiles interpolate linearly between neighbours in order (type 7 of Hyndman and Fan). Rows that "
        "are not "
        "possible and copies of rows are left out of the figures; rows to check are in them. A mass after "
        "drying "
        "counts before one from before. Melting ranges are held against the melting point of the catalogue "
        "with "
        "3 K to either side, and a range above 3 K is called broad: common practice, no source.";
    if (results.in_steps)
        words += " There are more than 65,536 yields, so order statistics come from counts in steps of 0.01 "
                 "% and are "
                 "off by at most 0.005 %.";
    if (!results.all_benches_known) words += " Bench codes are compared within the first 65,536 rows only.";
    return words;
}

} // namespace

writing::Document class_results_document(const Assessment& route, const ClassResults& results) {
    writing::Document document;
    document.id = "class_results";
    document.title = "Class results: " + route.route().title;
    document.subtitle = results.file;
    auto& blocks = document.blocks;
    blocks.push_back(summary(results));
    blocks.push_back(theory_words(results));
    if (results.all.count > 0) documents::add_class_yields(results, blocks);
    blocks.push_back(writing::Heading{2, "Row by row", "rows"});
    add_rows(results, blocks);
    if (results.all_kept)
        blocks.push_back(writing::Folded{"Every row", {row_table(results, false)}, "every-row"});
    blocks.push_back(writing::Paragraph{method_words(results), true});
    blocks.push_back(writing::Paragraph{"A finding names what the numbers show and what to test next. It is "
                                        "no verdict on anybody's work, and no "
                                        "mark.",
                                        true});
    document.machine = documents::class_results_tree(route, results);
    document.rows = documents::class_results_rows(results);
    document.colophon = "routeweigh " + std::string(program_version());
    return document;
}

} // namespace routeweigh
