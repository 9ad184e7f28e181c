// SPDX-License-Identifier: MIT
#include "chemistry/classification_reader.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <string>
#include <utility>

namespace routeweigh {

namespace {

// "H314", "H360FD"; EUH statements stand elsewhere.
std::string read_statement(const Field& field) {
    std::string text = field.text();
    const bool good =
        text.size() >= 4 && text.size() <= 6 && text[0] == 'H' && text[1] >= '2' && text[1] <= '4' &&
        std::all_of(text.begin() + 2, text.begin() + 4, [](char c) { return c >= '0' && c <= '9'; }) &&
        std::all_of(text.begin() + 4, text.end(),
                    [](char c) { return c == 'F' || c == 'f' || c == 'D' || c == 'd' || c == 'i'; });
    if (!good) field.problem(fmt::format("\"{}\" is no hazard statement such as \"H314\"", text));
    return text;
}

std::string optional_text(const Field& parent, std::string_view key) {
    const auto field = parent.maybe(key);
    return field ? field->text() : std::string();
}

std::vector<std::string> optional_texts(const Field& parent, std::string_view key) {
    const auto field = parent.maybe(key);
    return field ? field->texts() : std::vector<std::string>();
}

double positive(const Field& field) {
    const double value = field.number();
    if (!(value > 0)) field.problem(fmt::format("{} is not above 0", value));
    return value;
}

ConcentrationBand read_band(const Field& field) {
    ConcentrationBand band;
    band.hazard_class = field["class"].text();
    band.category = optional_text(field, "category");
    band.statement = read_statement(field["h"]);
    band.min_percent = field["min_pct"].number();
    if (const auto max = field.maybe("max_pct")) band.max_percent = max->number();
    if (const auto exclusive = field.maybe("min_exclusive")) band.min_exclusive = exclusive->boolean();
    band.flags = optional_texts(field, "flags");
    if (band.min_percent < 0 || band.max_percent.value_or(100) > 100 ||
        band.max_percent.value_or(101) <= band.min_percent)
        field.problem("the limits of the band do not rise from 0 to 100 %");
    field.close();
    return band;
}

AcuteToxicityEstimate read_estimate(const Field& field) {
    AcuteToxicityEstimate estimate;
    estimate.route = field["route"].one_of({"oral", "dermal", "inhalation"});
    estimate.value = positive(field["value"]);
    estimate.unit = field["unit"].one_of({"mg/kg bw", "mg/L", "ppm", "ppmV"});
    estimate.form = optional_text(field, "form");
    field.close();
    return estimate;
}

GhsEntry read_entry(const Field& field) {
    GhsEntry entry;
    entry.hazard_class = field["class"].text();
    entry.category = optional_text(field, "category");
    entry.statement = read_statement(field["h"]);
    entry.statement_note = optional_text(field, "h_note");
    if (const auto factor = field.maybe("m_factor")) entry.m_factor = positive(*factor);
    if (const auto estimate = field.maybe("ate")) entry.acute_toxicity = read_estimate(*estimate);
    if (const auto limits = field.maybe("specific_limits"))
        for (const Field& limit : limits->items())
            entry.specific_limits.push_back(read_band(limit));
    entry.flags = optional_texts(field, "flags");
    entry.target = optional_text(field, "target");
    entry.condition = optional_text(field, "condition");
    field.close();
    return entry;
}

AirLimit read_air_limit(const Field& field) {
    AirLimit limit;
    limit.value = positive(field["value"]);
    limit.unit = field["unit"].one_of({"ppm", "mg/m3"});
    field.close();
    return limit;
}

ExposureLimit::Kind kind_of(const std::string& text, const Field& field) {
    const auto says = [&](std::string_view part) { return text.find(part) != std::string::npos; };
    if (says("time-weighted")) return ExposureLimit::Kind::time_weighted;
    if (says("ceiling")) return ExposureLimit::Kind::ceiling;
    if (says("short-term")) return ExposureLimit::Kind::short_term;
    field.problem(
        fmt::format("\"{}\" is neither a time-weighted average nor a ceiling nor a short-term limit", text));
    return ExposureLimit::Kind::time_weighted;
}

} // namespace

std::vector<GhsEntry> read_ghs_entries(const Field& list) {
    std::vector<GhsEntry> entries;
    for (const Field& item : list.items())
        entries.push_back(read_entry(item));
    return entries;
}

void read_supplemental(const Field& annex_row, std::vector<std::string>& statements) {
    const auto list = annex_row.maybe("euh");
    if (!list) return;
    for (std::string& statement : list->texts())
        if (std::find(statements.begin(), statements.end(), statement) == statements.end())
            statements.push_back(std::move(statement));
}

SolutionClassification read_solution_classification(const Field& field) {
    SolutionClassification solution;
    solution.applies_to = field["applies_to"].text();
    if (const auto max = field.maybe("max_pct")) solution.max_percent = positive(*max);
    solution.ghs = read_ghs_entries(field["ghs"]);
    solution.source = field["ghs_source"].text();
    if (const auto row = field.maybe("annex_vi")) read_supplemental(*row, solution.supplemental);
    field.close();
    return solution;
}

ExposureLimit read_exposure_limit(const Field& field) {
    ExposureLimit limit;
    limit.value = positive(field["value"]);
    limit.unit = field["unit"].one_of({"ppm", "mg/m3"});
    limit.kind_text = field["type"].text();
    limit.kind = kind_of(limit.kind_text, field["type"]);
    limit.source = field["source"].text();
    if (const auto short_term = field.maybe("short_term")) limit.short_term = read_air_limit(*short_term);
    if (const auto ceiling = field.maybe("ceiling")) limit.ceiling = read_air_limit(*ceiling);
    if (const auto skin = field.maybe("skin")) limit.skin = skin->boolean();
    field.close();
    return limit;
}

} // namespace routeweigh
