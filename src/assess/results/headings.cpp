// SPDX-License-Identifier: MIT
// The columns of a class file, by their headings.
#include "assess/results/result_row.hpp"

#include "base/text.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>

namespace routeweigh::results {
namespace {

enum class Measure { none, mass, amount, temperature, percent };

struct KnownColumn {
    ColumnKind kind;
    Measure measure;
    std::string_view name;
};

/// The first name of each kind is the one that messages use.
constexpr std::array<KnownColumn, 43> known_columns{{
    {ColumnKind::bench, Measure::none, "bench"},
    {ColumnKind::bench, Measure::none, "bench code"},
    {ColumnKind::bench, Measure::none, "code"},
    {ColumnKind::section, Measure::none, "section"},
    {ColumnKind::section, Measure::none, "group"},
    {ColumnKind::product, Measure::mass, "product"},
    {ColumnKind::product, Measure::mass, "product mass"},
    {ColumnKind::product, Measure::mass, "mass of product"},
    {ColumnKind::product, Measure::mass, "isolated"},
    {ColumnKind::product, Measure::mass, "mass"},
    {ColumnKind::boat_and_product, Measure::mass, "boat and product"},
    {ColumnKind::boat_and_product, Measure::mass, "boat + product"},
    {ColumnKind::boat_and_product, Measure::mass, "boat+product"},
    {ColumnKind::boat_and_product, Measure::mass, "gross"},
    {ColumnKind::boat, Measure::mass, "boat"},
    {ColumnKind::boat, Measure::mass, "boat tare"},
    {ColumnKind::boat, Measure::mass, "tare"},
    {ColumnKind::boat, Measure::mass, "empty boat"},
    {ColumnKind::dried_once, Measure::mass, "dried once"},
    {ColumnKind::dried_once, Measure::mass, "dry 1"},
    {ColumnKind::dried_again, Measure::mass, "dried again"},
    {ColumnKind::dried_again, Measure::mass, "dry 2"},
    {ColumnKind::substrate, Measure::mass, "substrate"},
    {ColumnKind::substrate, Measure::mass, "substrate weighed"},
    {ColumnKind::substrate, Measure::mass, "starting material"},
    {ColumnKind::melts_from, Measure::temperature, "melts from"},
    {ColumnKind::melts_from, Measure::temperature, "melting from"},
    {ColumnKind::melts_from, Measure::temperature, "mp low"},
    {ColumnKind::melts_to, Measure::temperature, "melts to"},
    {ColumnKind::melts_to, Measure::temperature, "melting to"},
    {ColumnKind::melts_to, Measure::temperature, "mp high"},
    {ColumnKind::melting_range, Measure::temperature, "melting range"},
    {ColumnKind::melting_range, Measure::temperature, "melting point"},
    {ColumnKind::melting_range, Measure::temperature, "mp"},
    {ColumnKind::own_amount, Measure::amount, "limiting reagent"},
    {ColumnKind::own_amount, Measure::amount, "amount"},
    {ColumnKind::own_amount, Measure::amount, "own amount"},
    {ColumnKind::own_theory, Measure::mass, "theoretical yield"},
    {ColumnKind::own_theory, Measure::mass, "theoretical"},
    {ColumnKind::own_yield, Measure::percent, "yield"},
    {ColumnKind::own_yield, Measure::percent, "percent yield"},
    {ColumnKind::own_yield, Measure::percent, "own yield"},
    {ColumnKind::ignored, Measure::none, "remark"},
}};

struct KnownUnit {
    std::string_view name;
    Measure measure;
    double factor; ///< to g, mmol, degC, per cent
    int more_decimals;
};

constexpr std::array<KnownUnit, 9> known_units{{{"g", Measure::mass, 1, 0},
                                                {"mg", Measure::mass, 1e-3, 3},
                                                {"mmol", Measure::amount, 1, 0},
                                                {"mol", Measure::amount, 1e3, 0},
                                                {"degc", Measure::temperature, 1, 0},
                                                {"\xC2\xB0"
                                                 "c",
                                                 Measure::temperature, 1, 0},
                                                {"c", Measure::temperature, 1, 0},
                                                {"%", Measure::percent, 1, 0},
                                                {"percent", Measure::percent, 1, 0}}};

const KnownUnit* find_unit(std::string_view name) {
    const auto* const found = std::find_if(known_units.begin(), known_units.end(),
                                           [&](const KnownUnit& unit) { return unit.name == name; });
    return found == known_units.end() ? nullptr : found;
}

struct Heading {
    std::string name, unit;
};

/// "Boat and product [mg]" and "boat_and_product / mg" are "boat and product" and "mg".
Heading split_heading(std::string_view text) {
    std::string folded(text);
    std::replace(folded.begin(), folded.end(), '_', ' ');
    for (char& c : folded)
        if (c == '[' || c == ']' || c == '(' || c == ')' || c == '/') c = c == ']' || c == ')' ? ' ' : '|';
    // Capital letters beyond ASCII do not occur in the names that are known.
    folded = fold(folded);
    Heading heading;
    if (const std::size_t bar = folded.rfind('|'); bar != std::string::npos) {
        heading.unit = std::string(trim(std::string_view(folded).substr(bar + 1)));
        heading.name = std::string(trim(std::string_view(folded).substr(0, bar)));
    } else {
        heading.name = folded;
        const std::size_t space = folded.rfind(' ');
        const std::string last = space == std::string::npos ? folded : folded.substr(space + 1);
        if (find_unit(last) != nullptr && last != "c") {
            heading.unit = last;
            heading.name = space == std::string::npos ? std::string() : folded.substr(0, space);
        }
    }
    if (heading.name.size() > 3 && heading.name.substr(heading.name.size() - 3) == " in")
        heading.name.resize(heading.name.size() - 3);
    if (heading.name.empty() && heading.unit == "mmol") heading.name = "amount";
    if (heading.name.empty() && heading.unit == "%") heading.name = "yield";
    return heading;
}

bool names_people(const std::string& name) {
    static constexpr std::array<std::string_view, 12> parts{
        "name",       "mail",       "matric",         "phone",    "birth",     "address",
        "student id", "student no", "student number", "initials", "signature", "immatric"};
    return name == "student" || name == "students" || name == "person" ||
           std::any_of(parts.begin(), parts.end(),
                       [&](std::string_view part) { return name.find(part) != std::string::npos; });
}

std::vector<std::string> all_names() {
    std::vector<std::string> names;
    for (const KnownColumn& column : known_columns)
        names.emplace_back(column.name);
    return names;
}

/// Sets the unit; a mass or an amount without one is refused, for it would have to be guessed.
void read_unit(const CsvReader& rows, const Heading& heading, Measure measure, Column& column,
               std::vector<Problem>& errors) {
    const KnownUnit* unit = find_unit(heading.unit);
    if (measure == Measure::none) return;
    if (heading.unit.empty() && (measure == Measure::temperature || measure == Measure::percent)) return;
    if (heading.unit.empty()) {
        errors.push_back(
            rows.problem(fmt::format("the column \"{}\" has no unit; write \"{}\"", column.heading,
                                     heading.name + (measure == Measure::mass ? " (g)" : " (mmol)"))));
        return;
    }
    if (unit == nullptr || unit->measure != measure) {
        errors.push_back(rows.problem(fmt::format("the column \"{}\" has the unit \"{}\"; it takes {}",
                                                  column.heading, heading.unit,
                                                  measure == Measure::mass      ? "g or mg"
                                                  : measure == Measure::amount  ? "mmol or mol"
                                                  : measure == Measure::percent ? "%"
                                                                                : "degC")));
        return;
    }
    column.factor = unit->factor;
    column.more_decimals = unit->more_decimals;
}

Column read_heading(const CsvReader& rows, std::string_view text, Problems& problems,
                    std::vector<Problem>& errors) {
    Column column;
    column.heading = std::string(text.substr(0, 60));
    const Heading heading = split_heading(text);
    if (heading.name.empty()) return column;
    const auto* const known =
        std::find_if(known_columns.begin(), known_columns.end(),
                     [&](const KnownColumn& candidate) { return candidate.name == heading.name; });
    if (known != known_columns.end()) {
        column.kind = known->kind;
        read_unit(rows, heading, known->measure, column, errors);
        return column;
    }
    if (names_people(heading.name)) {
        errors.push_back(rows.problem(fmt::format("the column \"{}\" looks as if it named people; a class "
                                                  "file has bench codes only: take the column "
                                                  "out",
                                                  column.heading)));
        return column;
    }
    const std::string near = nearest(heading.name, all_names());
    if (!near.empty()) {
        Problem problem = rows.problem(fmt::format("no column \"{}\" is known", column.heading));
        problem.nearest = near;
        errors.push_back(problem);
        return column;
    }
    Problem problem = rows.problem(fmt::format("the column \"{}\" is not read", column.heading));
    problem.severity = Severity::warning;
    problems.add(problem);
    return column;
}

} // namespace

std::vector<Column> read_headings(const CsvReader& rows, Problems& problems) {
    std::vector<Column> columns;
    std::vector<Problem> errors;
    const auto has = [&](ColumnKind kind) {
        return std::any_of(columns.begin(), columns.end(),
                           [kind](const Column& column) { return column.kind == kind; });
    };
    for (const std::string_view text : rows.fields()) {
        Column column = read_heading(rows, text, problems, errors);
        if (column.kind != ColumnKind::ignored && has(column.kind))
            errors.push_back(
                rows.problem(fmt::format("the column \"{}\" says what another column says", column.heading)));
        columns.push_back(std::move(column));
    }
    if (!has(ColumnKind::bench))
        errors.push_back(rows.problem("a column \"bench\" with bench codes is missing"));
    if (!has(ColumnKind::product) && !has(ColumnKind::boat_and_product))
        errors.push_back(rows.problem("a column with the mass of the product is missing: \"product (g)\", or "
                                      "\"boat and product (g)\" and \"boat (g)\""));
    if (!errors.empty()) {
        errors.insert(errors.begin(), problems.all.begin(), problems.all.end());
        throw InputError(errors);
    }
    return columns;
}

} // namespace routeweigh::results
