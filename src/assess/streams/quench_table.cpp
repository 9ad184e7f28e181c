// SPDX-License-Identifier: MIT
#include "assess/streams/quench_table.hpp"

#include "assess/streams/scheme_file.hpp"
#include "base/list.hpp"
#include "chemistry/formula.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <array>

namespace routeweigh::streams {
namespace {

template<typename Row>
const Row* with_id(const std::vector<Row>& rows, std::string_view id) {
    const auto found =
        std::find_if(rows.begin(), rows.end(), [id](const Row& row) { return !id.empty() && row.id == id; });
    return found == rows.end() ? nullptr : &*found;
}

QuenchEquation read_equation(const Field& field) {
    try {
        return QuenchEquation(field.text());
    } catch (const EquationError& error) {
        field.problem(error.what());
    } catch (const FormulaError& error) {
        field.problem(error.what());
    }
    return {};
}

double read_molar_mass(const Field& field) {
    try {
        return molar_mass(parse_formula(field.text()));
    } catch (const FormulaError& error) {
        field.problem(error.what());
    }
    return 1;
}

QuenchRow read_row(const SchemeFile& file, const Field& row) {
    QuenchRow result;
    result.id = text_or_empty(row, "substance");
    result.name = row["name"].text();
    result.species = row["species"].text();
    result.equation = read_equation(row["equation"]);
    result.reagent = "HSO3^-";
    result.reagent_name = "sodium hydrogensulfite";
    if (const auto reagent = row.maybe("reagent")) {
        result.reagent = reagent->text();
        result.reagent_name = row["reagent_name"].text();
    }
    if (const auto density = row.maybe("reagent_density_g_per_mL"))
        result.reagent_density = density->number();
    if (!(result.equation.coefficient(result.species) < 0))
        row["species"].problem("is not used up by the equation");
    if (!(result.equation.coefficient(result.reagent) < 0))
        row["equation"].problem(fmt::format("does not use up {}", result.reagent));
    if (const auto decay = row.maybe("decay")) {
        result.decay = read_equation(*decay);
        result.gas = row["gas"].text();
        if (!(result.decay.coefficient(result.gas) > 0)) row["gas"].problem("does not form");
    }
    for (const Field& test : row["tests"].items())
        result.tests.push_back(test.text());
    if (const auto papers = row.maybe("papers")) result.papers = papers->texts();
    result.warning = text_or_empty(row, "warning");
    result.note = text_or_empty(row, "note");
    result.metal = text_or_empty(row, "metal");
    result.salt = text_or_empty(row, "salt");
    result.from = file.provenance(row);
    row.close();
    return result;
}

Reducer read_reducer(const SchemeFile& file, const Field& row) {
    Reducer result;
    result.id = row["substance"].text();
    result.formula = row["formula"].text();
    result.molar_mass = read_molar_mass(row["formula"]);
    result.electrons = row["electrons"].number();
    result.acid_per_electron = row["acid_per_electron"].number();
    result.sulfur_dioxide = row["sulfur_dioxide"].number();
    if (!(result.electrons > 0)) row["electrons"].problem("a reducer gives electrons");
    if (const auto only = row.maybe("only")) result.only = only->texts();
    result.note = text_or_empty(row, "note");
    result.from = file.provenance(row);
    row.close();
    return result;
}

Neutraliser read_neutraliser(const SchemeFile& file, const Field& row) {
    Neutraliser result;
    result.id = text_or_empty(row, "substance");
    result.formula = row["formula"].text();
    result.name = row["name"].text();
    result.molar_mass = read_molar_mass(row["formula"]);
    result.equation = read_equation(row["equation"]);
    const std::string base = row["base"].text();
    result.protons = -result.equation.ratio("H^+", base);
    if (!(result.protons > 0)) row["equation"].problem("takes no proton");
    if (const auto gas = row.maybe("gas")) {
        result.gas = gas->text();
        result.gas_per_proton = result.equation.ratio(result.gas, "H^+");
    }
    result.from = file.provenance(row);
    row.close();
    return result;
}

} // namespace

QuenchEquation::QuenchEquation(std::string_view text) : equation_(parse_equation(text)) {
    std::array<std::vector<Formula>, 2> sides;
    for (const EquationTerm& term : equation_.left)
        sides[0].push_back(parse_formula(term.name));
    for (const EquationTerm& term : equation_.right)
        sides[1].push_back(parse_formula(term.name));
    const std::vector<ElementDifference> differences = imbalance(equation_, sides[0], sides[1]);
    if (!differences.empty())
        throw EquationError(fmt::format("does not balance: {}", format_imbalance(differences)));
}

double QuenchEquation::coefficient(std::string_view species) const {
    double net = 0;
    for (const EquationTerm& term : equation_.left)
        if (term.name == species) net -= static_cast<double>(term.coefficient);
    for (const EquationTerm& term : equation_.right)
        if (term.name == species) net += static_cast<double>(term.coefficient);
    return net;
}

double QuenchEquation::ratio(std::string_view of_it, std::string_view per) const {
    const double used = -coefficient(per);
    return used > 0 ? coefficient(of_it) / used : 0;
}

double QuenchEquation::acid_made(std::string_view per) const {
    return ratio("H^+", per) + ratio("HSO4^-", per);
}

std::optional<double> QuenchEquation::enthalpy(std::string_view per,
                                               const std::map<std::string, double>& formation) const {
    double sum = 0;
    for (const auto* side : {&equation_.left, &equation_.right})
        for (const EquationTerm& term : *side) {
            const auto known = formation.find(term.name);
            if (known == formation.end()) return std::nullopt;
            sum += (side == &equation_.left ? -1.0 : 1.0) * static_cast<double>(term.coefficient) *
                   known->second;
        }
    const double used = -coefficient(per);
    if (!(used > 0)) return std::nullopt;
    return sum / used;
}

const QuenchRow* QuenchTable::oxidiser(std::string_view id) const {
    return with_id(oxidisers, id);
}

const QuenchRow* QuenchTable::reducer_left(std::string_view id) const {
    return with_id(reducers_left, id);
}

const Reducer* QuenchTable::reducer(std::string_view id) const {
    return with_id(reducers, id);
}

const Reducer* QuenchTable::first_suited(const QuenchRow& row, const std::vector<const Reducer*>& reducers) {
    if (!row.by_sulfite()) return nullptr;
    for (const Reducer* one : reducers)
        if (one->only.empty() || contains(one->only, row.species)) return one;
    return nullptr;
}

double QuenchTable::more_acid_per_electron(const Reducer& reducer) const {
    const Reducer* written = this->reducer("sodium-bisulfite");
    return written == nullptr ? 0 : reducer.acid_per_electron - written->acid_per_electron;
}

const Neutraliser* QuenchTable::neutraliser(std::string_view formula) const {
    for (const Neutraliser& one : neutralisers)
        if (one.formula == formula) return &one;
    return nullptr;
}

QuenchTable read_quench_table(const Source& source) {
    const SchemeFile file(source, "quench");
    QuenchTable table;
    const Field excess = file.root()["excess"];
    table.excess_low = excess["low"].fraction();
    table.excess_high = excess["high"].fraction();
    file.provenance(excess); // asked for, and not printed
    excess.close();
    table.vessel = file.number("vessel_times_liquid");
    table.warm_from = file.number("warm_from_K");
    table.boils_from = file.number("boils_from_K");
    table.acid_at_bench = file.number("acid_at_bench_mol_per_L");
    const Field spill = file.root()["acid_spill"];
    table.spill_material = spill["material"].text();
    table.spill_from = file.provenance(spill);
    spill.close();
    const Field molar = file.root()["molar_volume"];
    molar["value"].text();
    table.litres_per_mol = molar["litres"].number();
    file.provenance(molar);
    molar.close();
    for (const Field& row : file.root()["oxidisers"].items())
        table.oxidisers.push_back(read_row(file, row));
    for (const Field& row : file.root()["reducers_left"].items())
        table.reducers_left.push_back(read_row(file, row));
    for (const Field& row : file.root()["reducers"].items())
        table.reducers.push_back(read_reducer(file, row));
    for (const Field& row : file.root()["neutralisers"].items())
        table.neutralisers.push_back(read_neutraliser(file, row));
    for (const Field& row : file.root()["formation"].items()) {
        table.formation[row["species"].text()] = row["kJ_per_mol"].number();
        file.provenance(row);
        row.close();
    }
    file.finish();
    return table;
}

} // namespace routeweigh::streams
