// SPDX-License-Identifier: MIT
#include "assess/streams/acid_base.hpp"
#include "assess/streams/scheme_file.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>

namespace routeweigh::streams {
namespace {

double number_or(const Field& row, std::string_view key, double otherwise) {
    const auto field = row.maybe(key);
    if (!field) return otherwise;
    if (field->number() < 0) field->problem("is below 0");
    return field->number();
}

SpeciesCount read_counts(const Field& field) {
    SpeciesCount counts;
    for (const std::string& key : field.keys()) {
        counts.emplace_back(key, field[key].number());
        if (!(counts.back().second > 0)) field[key].problem("a count is above 0");
    }
    return counts;
}

void read_couples(const SchemeFile& file, AcidBaseTable& table) {
    for (const Field& row : file.root()["couples"].items()) {
        Couple couple{row["acid"].text(), row["base"].text(), row["pKa"].number(), file.provenance(row)};
        if (table.as_acid(couple.acid) != nullptr)
            row["acid"].problem(fmt::format("the acid \"{}\" stands twice", couple.acid));
        if (table.as_base(couple.base) != nullptr)
            row["base"].problem(fmt::format("the base \"{}\" stands twice", couple.base));
        row.close();
        table.couples.push_back(std::move(couple));
    }
}

void read_substances(const SchemeFile& file, AcidBaseTable& table) {
    for (const Field& row : file.root()["substances"].items()) {
        AcidBaseSubstance entry{row["substance"].text(), read_counts(row["is"]), number_or(row, "acid", 0),
                                number_or(row, "base", 0)};
        double charge = 0;
        for (const auto& [species, count] : entry.species) {
            charge += count * table.charge(species);
            if (table.charge(species) == 0 && table.as_acid(species) == nullptr &&
                table.as_base(species) == nullptr)
                row["is"].problem(fmt::format("no ion and no acid or base \"{}\"", species));
        }
        if (std::abs(charge) > 1e-9) row["is"].problem("the charges of the ions do not cancel");
        if (table.substance(entry.id) != nullptr)
            row["substance"].problem(fmt::format("\"{}\" stands twice", entry.id));
        row.close();
        table.substances.push_back(std::move(entry));
    }
}

void read_decaying(const SchemeFile& file, AcidBaseTable& table) {
    for (const Field& row : file.root()["as_substances"].items()) {
        DecayingSpecies entry{row["species"].text(), read_counts(row["as"]), row["gas"].text()};
        const bool among = std::any_of(entry.substances.begin(), entry.substances.end(),
                                       [&](const auto& part) { return part.first == entry.gas; });
        if (!among) row["gas"].problem("is not among the substances");
        row.close();
        table.decaying.push_back(std::move(entry));
    }
}

void read_hydrolysing(const SchemeFile& file, AcidBaseTable& table) {
    for (const Field& row : file.root()["acids_with_water"].items()) {
        table.hydrolysing.push_back({row["substance"].text(), number_or(row, "acid", 0),
                                     row["strong"].boolean(), text_or_empty(row, "note")});
        file.provenance(row);
        row.close();
    }
}

} // namespace

AcidBaseTable read_acid_base_table(const Source& source) {
    const SchemeFile file(source, "acids and bases");
    AcidBaseTable table;
    table.least_gap = file.number("least_gap");
    table.strong_acid_at_most = file.number("strong_acid_at_most");
    table.no_base_at_most = file.number("no_base_at_most");
    table.strong_base_from = file.number("strong_base_from");
    const Field ions = file.root()["ions"];
    for (const std::string& ion : ions.keys())
        table.charges[ion] = ions[ion].integer(-9, 9);
    read_couples(file, table);
    read_decaying(file, table);
    read_substances(file, table);
    read_hydrolysing(file, table);
    file.finish();
    return table;
}

} // namespace routeweigh::streams
