// SPDX-License-Identifier: MIT
#include "documents/class_results_data.hpp"

#include "documents/version.hpp"

#include <fmt/format.h>

#include <cmath>
#include <utility>

namespace routeweigh::documents {
namespace {

using results::ClassResults;
using results::FindingKind;
using results::KeptRow;
using results::OwnNumber;
using results::Spread;
using writing::MachineList;
using writing::MachineObject;
using writing::MachineTree;

MachineTree optional(const std::optional<double>& value) {
    return value ? MachineTree(*value) : MachineTree();
}

MachineTree count(std::uint64_t number) {
    return {static_cast<std::int64_t>(number)};
}

MachineObject spread_tree(const Spread& spread) {
    return {{"count", count(spread.count)},           {"mean", spread.mean},
            {"standard_deviation", spread.deviation}, {"lowest", spread.least},
            {"quartile_1", spread.quartile1},         {"median", spread.median},
            {"quartile_3", spread.quartile3},         {"highest", spread.most}};
}

std::string_view id_of(OwnNumber::Standing standing) {
    switch (standing) {
    case OwnNumber::Standing::right:
        return "right";
    case OwnNumber::Standing::carried:
        return "carried";
    case OwnNumber::Standing::rounded:
        return "rounded";
    case OwnNumber::Standing::mistake:
        return "mistake";
    case OwnNumber::Standing::unexplained:
        break;
    }
    return "unexplained";
}

MachineTree row_tree(const KeptRow& row) {
    MachineList findings, own;
    for (const FindingKind& kind : results::finding_kinds())
        if (row.judgement.has(kind.finding)) findings.emplace_back(std::string(kind.id));
    for (const OwnNumber& number : row.own)
        own.emplace_back(MachineObject{{"what", std::string(words(number.kind))},
                                       {"unit", std::string(unit(number.kind))},
                                       {"own", number.own},
                                       {"right", number.right},
                                       {"standing", std::string(id_of(number.standing))},
                                       {"words", number.words}});
    return MachineObject{{"line", static_cast<std::int64_t>(row.line)},
                         {"bench", row.bench},
                         {"section", row.section},
                         {"verdict", std::string(words_of(row.judgement.verdict))},
                         {"mass", optional(row.judgement.mass)},
                         {"theoretical", row.judgement.theory},
                         {"yield", optional(row.judgement.yield)},
                         {"melts_from", optional(row.melts_from)},
                         {"melts_to", optional(row.melts_to)},
                         {"outlier", row.stands_out},
                         {"findings", std::move(findings)},
                         {"own", std::move(own)}};
}

MachineTree tests_tree(const ClassResults& results) {
    MachineObject tests;
    if (results.section_test)
        tests.push_back(
            {"kruskal_wallis", MachineObject{{"h", results.section_test->h},
                                             {"degrees_of_freedom", results.section_test->degrees},
                                             {"p", results.section_test->p}}});
    if (results.outlier_test)
        tests.push_back(
            {"modified_z_score", MachineObject{{"median", results.outlier_test->median},
                                               {"median_absolute_deviation", results.outlier_test->deviation},
                                               {"limit", results::OutlierTest::limit},
                                               {"outliers", count(results.outlier_test->outliers)}}});
    return tests;
}

} // namespace

std::string_view words(OwnNumber::Kind kind) {
    switch (kind) {
    case OwnNumber::Kind::amount:
        return "amount of the limiting reagent";
    case OwnNumber::Kind::theory:
        return "theoretical yield";
    case OwnNumber::Kind::yield:
        break;
    }
    return "percent yield";
}

std::string_view unit(OwnNumber::Kind kind) {
    switch (kind) {
    case OwnNumber::Kind::amount:
        return "mmol";
    case OwnNumber::Kind::theory:
        return "g";
    case OwnNumber::Kind::yield:
        break;
    }
    return "%";
}

std::string findings_text(const KeptRow& row) {
    std::string text;
    for (const FindingKind& kind : results::finding_kinds()) {
        if (!row.judgement.has(kind.finding)) continue;
        if (!text.empty()) text += "; ";
        text += kind.words;
        const bool again =
            kind.finding == results::Finding::bench_again || kind.finding == results::Finding::row_again;
        if (again) text += fmt::format(" (line {})", row.earlier_line);
    }
    if (row.stands_out) text += std::string(text.empty() ? "" : "; ") + "stands out from the class";
    return text;
}

MachineTree class_results_tree(const Assessment& route, const ClassResults& results) {
    MachineList sections, findings, rows, yields;
    for (std::size_t i = 0; i < results.by_section.size(); ++i) {
        MachineObject section{{"section", results.sections[i]}};
        for (writing::Member& member : spread_tree(results.by_section[i]))
            section.push_back(std::move(member));
        sections.emplace_back(std::move(section));
    }
    for (std::size_t i = 0; i < results.findings.size(); ++i)
        if (results.findings[i] > 0)
            findings.emplace_back(MachineObject{{"id", std::string(results::finding_kinds()[i].id)},
                                                {"rows", count(results.findings[i])}});
    for (const KeptRow& row : results.kept)
        rows.push_back(row_tree(row));
    for (const double yield : results.yields())
        yields.emplace_back(yield);
    return MachineObject{{"routeweigh", std::string(program_version())},
                         {"route", route.route().id},
                         {"product", results.theory.product->name},
                         {"theoretical", results.theory.grams},
                         {"rows", count(results.rows)},
                         {"plausible", count(results.verdicts[0])},
                         {"check", count(results.verdicts[1])},
                         {"not_possible", count(results.verdicts[2])},
                         {"yields_counted_in_steps", results.in_steps},
                         {"percent_yield", MachineTree(spread_tree(results.all))},
                         {"sections", std::move(sections)},
                         {"tests", tests_tree(results)},
                         {"findings", std::move(findings)},
                         {"every_row_listed", results.all_kept},
                         {"listed", std::move(rows)},
                         {"yields", std::move(yields)}};
}

writing::DataRows class_results_rows(const ClassResults& results) {
    writing::DataRows data;
    data.columns = {"line",    "bench",      "section",  "verdict",  "mass g",     "theoretical g",
                    "yield %", "melts from", "melts to", "findings", "own numbers"};
    const auto cell = [](const std::optional<double>& value) {
        return value ? writing::DataCell(*value) : writing::DataCell();
    };
    for (const KeptRow& row : results.kept) {
        std::string own;
        for (const OwnNumber& number : row.own) {
            if (number.standing == OwnNumber::Standing::right) continue;
            if (!own.empty()) own += "; ";
            own += fmt::format("{} {:g} {}, right {:.4g}: {}", words(number.kind), number.own,
                               unit(number.kind), number.right, number.words);
        }
        data.rows.push_back({static_cast<double>(row.line), row.bench, row.section,
                             std::string(words_of(row.judgement.verdict)), cell(row.judgement.mass),
                             row.judgement.theory, cell(row.judgement.yield), cell(row.melts_from),
                             cell(row.melts_to), findings_text(row), std::move(own)});
    }
    return data;
}

} // namespace routeweigh::documents
