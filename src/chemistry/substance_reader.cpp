// SPDX-License-Identifier: MIT
#include "chemistry/substance_reader.hpp"

#include "chemistry/cas_number.hpp"
#include "chemistry/classification_reader.hpp"

#include <fmt/format.h>

#include <cmath>
#include <limits>

namespace routeweigh {

namespace {

std::string text_if_any(const Field& parent, std::string_view key) {
    const auto field = parent.maybe(key);
    return field ? field->text() : std::string();
}

std::optional<double> optional_number(const Field& parent, std::string_view key, double above) {
    const auto field = parent.maybe(key);
    if (!field) return std::nullopt;
    const double value = field->number();
    if (!(value > above)) field->problem(fmt::format("{} is not above {}", value, above));
    return value;
}

double optional_count(const Field& parent, std::string_view key) {
    return optional_number(parent, key, 0).value_or(0);
}

void read_composition(const Field& field, const AtomicWeights& weights, Substance& substance) {
    substance.molar_mass = std::numeric_limits<double>::quiet_NaN();
    substance.common_formula = text_if_any(field, "formula_common");
    substance.smiles = text_if_any(field, "smiles");
    if (const auto mixture = field.maybe("is_mixture")) substance.is_mixture = mixture->boolean();
    if (const auto bookkept = field.maybe("bookkept_only")) substance.bookkept_only = bookkept->boolean();
    const auto formula = field.maybe("formula");
    const auto printed = field.maybe("molar_mass_g_per_mol");
    if (!formula) {
        if (!substance.is_mixture) field["formula"];
        return;
    }
    try {
        substance.formula = parse_formula(formula->text());
        substance.molar_mass = molar_mass(substance.formula, weights);
        if (!substance.common_formula.empty() &&
            !same_composition(parse_formula(substance.common_formula), substance.formula))
            field["formula_common"].contradiction(fmt::format("{} is another composition than {}",
                                                              substance.common_formula,
                                                              substance.formula.text),
                                                  *formula);
    } catch (const FormulaError& error) {
        formula->problem(error.what());
        return;
    }
    if (substance.formula.charge != 0) formula->problem("a substance is a neutral formula unit, not an ion");
    // The file's own figure only guards against a slip in the formula; half of its last digit is forgiven.
    const double standard = molar_mass(substance.formula);
    if (printed && std::abs(printed->number() - standard) > 0.0011)
        printed->contradiction(fmt::format("{} g/mol is not the {:.3f} g/mol of {}", printed->number(),
                                           standard, substance.formula.text),
                               *formula);
}

void read_physical(const Field& field, Substance& substance) {
    constexpr double absolute_zero = -273.15;
    substance.phase = read_phase(field["phase_at_25C"]);
    substance.density = optional_number(field, "density_g_per_mL", 0);
    substance.density_at = optional_number(field, "density_T_C", absolute_zero);
    substance.melting_point = optional_number(field, "melting_point_C", absolute_zero);
    substance.decomposes = optional_number(field, "decomposes_C", absolute_zero);
    if (substance.decomposes && substance.melting_point)
        field["decomposes_C"].contradiction("what has a melting point does not decompose before it melts",
                                            field["melting_point_C"]);
    substance.boiling_point = optional_number(field, "boiling_point_C", absolute_zero);
    substance.flash_point = optional_number(field, "flash_point_C", absolute_zero);
    substance.gwp100 = optional_number(field, "gwp100", -1);
    field.maybe("odp"); // ozone depletion enters no figure
    if (const auto range = field.maybe("boiling_range_C")) {
        const std::vector<Field> ends = range->items();
        if (ends.size() == 2 && ends[0].number() < ends[1].number()) {
            substance.boiling_point = ends[0].number();
            substance.boiling_range_end = ends[1].number();
        } else {
            range->problem("a boiling range has a lower and an upper end");
        }
    }
}

AssessmentStatus status_of(const std::string& text) {
    if (text == "harmonised") return AssessmentStatus::harmonised;
    if (text == "harmonised-group") return AssessmentStatus::harmonised_group;
    if (text == "supplier") return AssessmentStatus::supplier;
    if (text == "not-classified") return AssessmentStatus::not_classified;
    return AssessmentStatus::no_data;
}

void read_hazards(const Field& field, Substance& substance) {
    const Field status = field["ghs_status"];
    substance.status =
        status_of(status.one_of({"harmonised", "harmonised-group", "supplier", "not-classified", "no-data"}));
    const auto ghs = field.maybe("ghs");
    substance.assessed = ghs.has_value();
    if (ghs) {
        substance.ghs = read_ghs_entries(*ghs);
        substance.ghs_source = field["ghs_source"].text();
    }
    if (substance.assessed == (substance.status == AssessmentStatus::no_data))
        status.problem("\"no-data\" goes without \"ghs\", every other status with it");
    if ((substance.status == AssessmentStatus::not_classified) != (ghs && substance.ghs.empty()))
        status.problem("\"not-classified\" goes with an empty list \"ghs\", and only with that");
    substance.ghs_confidence = text_if_any(field, "ghs_confidence");
    substance.ghs_note = text_if_any(field, "ghs_note");
    if (const auto solution = field.maybe("ghs_solution"))
        substance.ghs_solution = read_solution_classification(*solution);
    if (const auto additions = field.maybe("supplier_additions"))
        substance.supplier_additions = read_ghs_entries(*additions);
    if (const auto supplemental = field.maybe("euh")) substance.supplemental = supplemental->texts();
    if (const auto limit = field.maybe("oel")) substance.exposure_limit = read_exposure_limit(*limit);
    if (const auto row = field.maybe("annex_vi")) {
        read_supplemental(*row, substance.supplemental);
        if (const auto limits = row->maybe("euh_limits"))
            for (const Field& limit : limits->items())
                substance.supplemental_limits.push_back({limit["euh"].text(), limit["min_pct"].number()});
    }
}

void read_sources(const Field& field, Substance& substance) {
    const Field sources = field["sources"];
    for (const std::string& datum : sources.is_object() ? sources.keys() : std::vector<std::string>())
        substance.sources[datum] = sources[datum].text();
    // A figure without a source is a rumour.
    for (const std::string_view datum :
         {"formula", "density_g_per_mL", "melting_point_C", "decomposes_C", "boiling_point_C",
          "boiling_range_C", "flash_point_C", "ghs", "oel", "gwp100"})
        if (field.maybe(datum) && !substance.sources.contains(std::string(datum)))
            sources.problem(fmt::format("no source for \"{}\"", datum));
}

} // namespace

Substance::Phase read_phase(const Field& field) {
    const std::string phase = field.one_of({"solid", "liquid", "gas"});
    return phase == "gas"      ? Substance::Phase::gas
           : phase == "liquid" ? Substance::Phase::liquid
                               : Substance::Phase::solid;
}

Substance read_substance(const Field& field, const AtomicWeights& weights) {
    Substance substance;
    substance.id = field["id"].text();
    substance.name = field["name"].text();
    if (const auto synonyms = field.maybe("synonyms")) substance.synonyms = synonyms->texts();
    if (const auto cas = field.maybe("cas")) {
        substance.cas = cas->text();
        if (!is_cas_number(substance.cas))
            cas->problem(fmt::format("\"{}\" is no CAS number, or its check digit is wrong", substance.cas));
    }
    read_composition(field, weights, substance);
    read_physical(field, substance);
    read_hazards(field, substance);
    substance.free_bromine = optional_count(field, "free_bromine");
    substance.carried_bromine = optional_count(field, "carried_bromine");
    substance.notes = text_if_any(field, "notes");
    read_sources(field, substance);
    field.close();
    return substance;
}

} // namespace routeweigh
