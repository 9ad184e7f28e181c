// SPDX-License-Identifier: MIT
// What destroys an oxidiser, what neutralises an acid, by which equation. Every amount follows from the
// equation.
#pragma once

#include "base/provenance.hpp"
#include "chemistry/equation.hpp"
#include "chemistry/substance.hpp"
#include "input/source.hpp"

#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace routeweigh::streams {

/// An equation between formulas and what one mol of a species of it needs and gives.
class QuenchEquation {
  public:
    QuenchEquation() = default;
    /// \throws EquationError, FormulaError; also where it does not balance
    explicit QuenchEquation(std::string_view text);

    const std::string& text() const { return equation_.text; }
    /// Net coefficient of a species: negative on the left. 0 where it is no part.
    double coefficient(std::string_view species) const;
    /// mol of `of_it` made (used: negative) for one mol of `per` used up.
    double ratio(std::string_view of_it, std::string_view per) const;
    /// H+ and hydrogensulfate made for one mol of `per`.
    double acid_made(std::string_view per) const;
    /// kJ for one mol of `per` used up, from enthalpies of formation; empty where one is unknown.
    std::optional<double> enthalpy(std::string_view per,
                                   const std::map<std::string, double>& formation) const;

  private:
    Equation equation_;
};

/// Something left that has to be destroyed: an oxidiser, or a strong reducer.
struct QuenchRow {
    std::string id; ///< of the substance; "" for one outside the catalogue
    std::string name, species;
    QuenchEquation equation;
    std::string reagent,
        reagent_name;           ///< species of the equation; hydrogensulfite unless the row says otherwise
    double reagent_density = 0; ///< g/mL of a liquid reagent
    QuenchEquation decay;       ///< what frees gas, where anything does
    std::string gas;
    std::vector<std::string> tests;  ///< by which it is seen that it is gone
    std::vector<std::string> papers; ///< that these tests use up: "starch-iodide paper"
    std::string warning, note, metal;
    std::string salt; ///< formula that is weighed, where the species is an ion outside the catalogue
    Provenance from;

    bool by_sulfite() const { return reagent == "HSO3^-"; }
    /// mol of reagent for one mol of it.
    double reagent_per_mol() const { return -equation.ratio(reagent, species); }
    double electrons() const { return by_sulfite() ? 2 * reagent_per_mol() : 0; }
    double acid_per_mol() const { return equation.acid_made(species); }
    double gas_per_mol() const { return gas.empty() ? 0 : decay.ratio(gas, species); }
};

struct Reducer {
    std::string id, formula, note;
    double molar_mass = 0;         ///< g/mol
    double electrons = 0;          ///< that one mol gives
    double acid_per_electron = 0;  ///< mol acid that its oxidation makes for one electron
    double sulfur_dioxide = 0;     ///< mol that acid frees from one mol
    std::vector<std::string> only; ///< species; empty: any
    Provenance from;

    bool is_thiosulfate() const { return formula.starts_with("Na2S2O3"); }
};

/// So much of something is left that has to be destroyed, or that acid turns into gas.
struct LeftToDestroy {
    const Substance* substance;
    const QuenchRow* row; ///< nullptr for what is a reducer itself
    double moles = 0;
    const Reducer* quencher = nullptr; ///< of an oxidiser: as planned, else hydrogensulfite
    double acid = 0;                   ///< mol that its quench makes
};

struct Neutraliser {
    std::string id, name, formula;
    double molar_mass = 0;
    double protons = 0; ///< that one mol takes
    double gas_per_proton = 0;
    std::string gas;
    QuenchEquation equation;
    Provenance from;
};

struct QuenchTable {
    double excess_low = 0, excess_high = 0; ///< share of what is needed
    Sourced<double> vessel;                 ///< times the liquid, where carbonate goes in
    double litres_per_mol = 0;
    Sourced<double> warm_from;     ///< K in the whole liquor, from which its heat is told
    Sourced<double> boils_from;    ///< K, from which it may boil
    Sourced<double> acid_at_bench; ///< mol/L: stronger is not neutralised at a bench
    std::string spill_material;    ///< that takes up spilled acid
    Provenance spill_from;
    std::vector<QuenchRow> oxidisers, reducers_left;
    std::vector<Reducer> reducers;
    std::vector<Neutraliser> neutralisers;
    std::map<std::string, double> formation; ///< kJ/mol by species

    const QuenchRow* oxidiser(std::string_view id) const;
    const QuenchRow* reducer_left(std::string_view id) const;
    const Reducer* reducer(std::string_view id) const;
    /// The first of these that takes the electrons of such a row; nullptr where none does.
    static const Reducer* first_suited(const QuenchRow& row, const std::vector<const Reducer*>& reducers);
    /// mol acid that a reducer makes for an electron beyond the hydrogensulfite of the equations.
    double more_acid_per_electron(const Reducer& reducer) const;
    const Neutraliser* neutraliser(std::string_view formula) const;
};

/// \throws InputError with every problem of the file; an equation that does not balance is one
QuenchTable read_quench_table(const Source& source);

} // namespace routeweigh::streams
