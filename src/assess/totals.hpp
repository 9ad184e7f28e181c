// SPDX-License-Identifier: MIT
// The sums that every mass figure is made of, for one run of the last step, and where each of them comes
// from.
//
// A total is a sparse linear map of what an evaluation filled (inflows, credits, outflows) or a number of the
// overall equations. A total that cannot be known is NaN; the metric that needs it says why.
#pragma once

#include "route/flat_route.hpp"
#include "route/net_equation.hpp"

#include <cstddef>
#include <set>
#include <span>
#include <string>
#include <string_view>
#include <type_traits>
#include <vector>

namespace routeweigh {

template<Number N>
struct TotalsOf {
    // g per run of the last step; inputs are net of what is reused unless called gross
    N product = 0, theoretical_product = 0;
    N inputs = 0, inputs_gross = 0, recovered = 0, waste = 0;
    N reactants_gross = 0, reactants_needed = 0; ///< needed: by the theoretical yield of every step
    N reactants_and_aids = 0;                    ///< reactants, reagents, catalysts, quench, drying agents
    N solvents = 0, water = 0;
    N benign = 0;
    N part_reactants = 0, part_reaction_solvent = 0,
      part_workup = 0; ///< with `water` they add up to inputs
    N reaction_stages = 0, workup_stages = 0, purification_stages = 0;
    N drown_out = 0;                           ///< class "drown-out and flask rinse", water included
    N reactant_carbon = 0, product_carbon = 0; ///< g of carbon, reactants gross
    N aqueous_effluent = 0;                    ///< liquid streams that are mostly water
    N bromine_handled = 0, bromine_carried = 0, bromine_ceiling = 0; ///< g of Br2 equivalents
    // of the equations, per mol of product: g or atoms
    N formula_product = 0, formula_inputs = 0, formula_inputs_gross = 0, formula_coproducts = 0;
    N carbon_product = 0, carbon_inputs = 0, bromine_product = 0, bromine_inputs = 0;
    N nitrogen_product = 0, nitrogen_inputs = 0, chlorine_product = 0, chlorine_inputs = 0;
    // other
    N energy = 0;         ///< kJ
    N cooling_water = 0;  ///< mL
    N time = 0;           ///< h
    N volume_hours = 0;   ///< L h: volume of the reaction stages x their time
    N catalyst_hours = 0; ///< mol h
    N largest_volume = 0; ///< L, the most that is in the vessel at one time
    N product_moles = 0, catalyst_moles = 0;
    N yield = 0; ///< 0 to 1, over the longest linear sequence
};
using Totals = TotalsOf<double>;

/// The total that a metric names, for any kind of number.
inline double& total(Totals& totals, double Totals::*member) {
    return totals.*member;
}
inline double total(const Totals& totals, double Totals::*member) {
    return totals.*member;
}
// Totals of several draws have the same members in the same order and nothing else, so that the place of one
// in memory tells the place of the other, as offsetof does.
static_assert(std::is_standard_layout_v<Totals> && std::is_standard_layout_v<TotalsOf<Lanes>>);
static_assert(sizeof(TotalsOf<Lanes>) == lane_count * sizeof(Totals));
inline std::size_t offset_in_lanes(double Totals::*member) {
    static constexpr Totals totals{};
    const auto offset =
        reinterpret_cast<const std::byte*>(&(totals.*member)) - reinterpret_cast<const std::byte*>(&totals);
    return lane_count * static_cast<std::size_t>(offset);
}
inline Lanes& total(TotalsOf<Lanes>& totals, double Totals::*member) {
    return *reinterpret_cast<Lanes*>(reinterpret_cast<std::byte*>(&totals) + offset_in_lanes(member));
}
inline const Lanes& total(const TotalsOf<Lanes>& totals, double Totals::*member) {
    return *reinterpret_cast<const Lanes*>(reinterpret_cast<const std::byte*>(&totals) +
                                           offset_in_lanes(member));
}

/// One thing that counts in a total.
struct Contribution {
    std::string words;   ///< material and substance, or stream and substance
    std::string pointer; ///< place in the route file, empty for what no single place states
    double value;        ///< in the unit of the total
};

/// Compiled once per route; evaluating it is a few hundred multiply-adds.
class TotalsMap {
  public:
    /// \param benign  substances counted as benign by the effective mass yield
    TotalsMap(const FlatRoute& route, const NetEquation& net, const std::set<const Substance*>& benign);

    template<Number N>
    void evaluate(const EvaluationOf<N>& evaluation, TotalsOf<N>& totals) const;

    /// How a total counts what goes in.
    struct Counting {
        std::vector<double> weights; ///< by inflow: counted per g; empty when the total is no sum of inflows
        bool net = false;            ///< what reuse covers is taken off
    };
    Counting counting(double Totals::*member) const;

    /// The parts of one total, largest first; empty for a total that is not a sum of parts.
    std::vector<Contribution> contributions(double Totals::*member, const Evaluation& evaluation) const;

  private:
    enum class Flow { in_gross, in_net, out };
    struct Entry {
        int index;
        double coefficient;
    };
    struct Row {
        double Totals::*member;
        Flow flow;
        std::vector<Entry> entries;
    };
    /// A stream that may be waste water: its outflows, and which of them is water.
    struct Effluent {
        int first, last, water;
    };
    void add_effluents();
    void add_rows(const std::set<const Substance*>& benign);
    void add_equation_totals(const NetEquation& net);
    void add_utilities();
    void add_volumes();
    template<Number N>
    N reactants_needed(const EvaluationOf<N>& evaluation) const;
    template<Number N>
    N aqueous_effluent(const EvaluationOf<N>& evaluation) const;
    template<Number N>
    N sum(const Row& row, const EvaluationOf<N>& evaluation) const;

    const FlatRoute* route_;
    std::vector<Row> rows_;
    Totals constants_; ///< what no amount changes
    TotalsOf<Lanes> constants_in_lanes_;
    double reaction_hours_ = 0, reaction_litres_ = 0; ///< NaN where unknown
    std::vector<double> energy_, cooling_water_;      ///< by step: kJ and mL for one run; NaN where unknown
    std::vector<double> needed_per_mol_; ///< by step: g of bought reactants for one mol of its product
    std::vector<int> sequence_;          ///< longest linear sequence of steps
    std::vector<Effluent> effluents_;
    std::vector<int> catalysts_; ///< inflows of the only step; none where there are several
    double product_carbon_ = 0;  ///< g of carbon in a gram of the product
    double bromine_ = 0;         ///< g/mol Br2
    NetEquation net_;
};

} // namespace routeweigh
