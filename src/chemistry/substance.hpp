// SPDX-License-Identifier: MIT
// A pure compound: formula, molar mass, density, hazards, and where each of these facts comes from.
#pragma once

#include "chemistry/classification.hpp"
#include "chemistry/formula.hpp"

#include <map>
#include <optional>
#include <string>
#include <vector>

namespace routeweigh {

struct Substance {
    enum class Phase { solid, liquid, gas };

    std::string id;
    std::string name;
    std::vector<std::string> synonyms;
    std::string cas;

    Formula formula;            // no atoms where the "substance" is a mixture of unsaid composition
    std::string common_formula; // as chemists write it ("NaHCO3"); "" where the same as the formula's text
    double molar_mass = 0;      // g/mol, from the formula; NaN without one
    bool bookkept_only = false; // a formula unit that stands for ions in solution and is in no bottle
    bool is_mixture = false;    // isomers or a boiling range sold as one
    std::string smiles;

    Phase phase = Phase::solid;              // at 25 degC
    std::optional<double> density;           // g/mL
    std::optional<double> density_at;        // degC
    std::optional<double> melting_point;     // degC
    std::optional<double> decomposes;        // degC; only of what falls apart before it melts
    std::optional<double> boiling_point;     // degC; the lower end of a boiling range
    std::optional<double> boiling_range_end; // degC
    std::optional<double> flash_point;       // degC

    bool assessed = false; // false: no classification was found, which is not harmless
    AssessmentStatus status = AssessmentStatus::no_data;
    std::vector<GhsEntry> ghs; // empty and assessed: not classified
    std::string ghs_source;
    std::string ghs_confidence; // high, medium, low, or ""
    std::string ghs_note;
    std::optional<SolutionClassification> ghs_solution;
    std::vector<GhsEntry> supplier_additions; // never mixed into ghs
    std::vector<std::string> supplemental;    // EUH statements
    std::vector<SupplementalLimit> supplemental_limits;
    std::optional<ExposureLimit> exposure_limit;

    double free_bromine = 0;    // mol of Br2 that one mol is or holds loosely: 1 for bromine and tribromides
    double carried_bromine = 0; // mol of Br2 equivalents that one mol can give: 1 for N-bromosuccinimide

    std::optional<double> gwp100; // kg CO2 per kg

    std::map<std::string, std::string> sources; // by datum, as named in the file ("density_g_per_mL")
    std::string notes;

    bool has_formula() const { return !formula.atoms.empty(); }
};

} // namespace routeweigh
