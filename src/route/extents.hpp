// SPDX-License-Identifier: MIT
// How far the reactions of one stage run, all together.
//
// The extents are the greatest xi >= 0 for which no substance turns negative and every reaction uses up at
// most the stated conversion of its named reactant (what is there at the start plus what the stage makes of
// it). Reactions that nothing in the pot can start stay at 0. This is one linear programme a stage. When no
// two reactions compete for a substance that runs out, the result equals letting them fire in any order until
// nothing changes.
#pragma once

#include "route/linear_programme.hpp"

#include <optional>
#include <span>
#include <utility>
#include <vector>

namespace routeweigh {

/// A reaction on the substances of one pot, which are counted 0, 1, 2, ... in that pot.
struct PotReaction {
    std::vector<std::pair<int, double>> change; ///< substance, net coefficient: negative is used up
    double conversion = 1.0;                    ///< of `of`, 0 to 1
    int of = -1;                                ///< needed only when conversion < 1
    std::optional<int> priority;                ///< among competitors, smaller first
    std::optional<double> split;                ///< share in a fixed ratio with the other split reactions
};

/// Two reactions that want more of a substance than there is, and no rule says which goes first.
struct Competition {
    int substance = -1;
    int first = -1, second = -1; ///< indices of the reactions
};

/// The compiled reactions of one stage. Cheap to evaluate again with other amounts.
class Extents {
  public:
    Extents() = default;

    /// \param amounts  nominal amounts (mol) when the reactions begin; 0 means absent for the question what
    /// can start \param unlimited  by substance: drawn from the air, never runs out \param product  substance
    /// whose formation the capped form limits; -1 when the stage does not make it
    Extents(std::vector<PotReaction> reactions, std::span<const double> amounts,
            const std::vector<bool>& present, const std::vector<bool>& unlimited, int product);

    bool empty() const { return columns_.empty(); }
    bool unbounded() const { return unbounded_; }
    bool started(int reaction) const { return started_[static_cast<std::size_t>(reaction)]; }
    const std::optional<Competition>& competition() const { return competition_; }
    bool makes_product() const { return capped_.rows > 0; }

    /// Finds the basis for other amounts and this cap beforehand, so that `react` with about these needs no
    /// search.
    void prepare_cap(std::span<const double> amounts, double product_cap);

    /// True when the greatest extents make the most of this substance: no reaction uses it, and none gives
    /// way to another.
    bool greatest_when_done(int substance) const;

    /// Lets the reactions run: changes the amounts (mol) in place.
    /// \param product_cap  most product (mol) that may form, or a negative number for no cap
    /// \param extents  if not empty, receives one extent (mol) a reaction
    /// \return mol of the product that forms, before any of it reacts on
    double react(std::span<double> amounts, double product_cap = -1.0, std::span<double> extents = {}) const {
        bool alike = true;
        return react(amounts, product_cap, extents, alike);
    }
    /// The same for one or several draws at once. \param alike  see agree()
    template<Number N>
    N react(std::span<N> amounts, const N& product_cap, std::span<N> extents, bool& alike) const;

    /// The largest amount of weighted substances that can be there at once, over all extents that can be
    /// reached. \param weights  substance, weight; e.g. mol of bromine held by one mol of a tribromide
    struct Ceiling {
        std::vector<std::pair<int, double>> weights;
        std::vector<double> gains; ///< by column
        LinearProgramme programme{0, 0};
        std::vector<Optimum> optima; ///< as open_optima_
    };
    Ceiling ceiling(std::vector<std::pair<int, double>> weights, std::span<const double> amounts) const;

    /// \return mol; infinity cannot occur, for an unbounded pot is refused beforehand
    template<Number N>
    N evaluate(const Ceiling& ceiling, std::span<const N> amounts) const;

    /// True when some started reaction makes or uses the substance.
    bool changes(int substance) const;

    /// Substances that some started reaction makes; only their ceiling can exceed what was put in.
    std::vector<int> made() const;

  private:
    struct Row {
        int substance;
        double factor; ///< right-hand side = factor x amount of the substance
    };
    struct Column {
        std::vector<std::pair<int, double>> reactions; ///< reaction, extent of it per unit of the column
        std::vector<std::pair<int, double>> change;    ///< substance, mol per unit of the column
    };
    struct Change {
        int column, substance;
        double coefficient; ///< mol per unit of the column
    };

    std::vector<bool> startable(std::vector<bool> present) const;
    void find_loops();
    void find_seeds(std::span<const double> amounts);
    void build_columns();
    void build_programmes(const std::vector<bool>& unlimited, int product);
    std::vector<std::vector<double>> objectives() const;
    std::size_t rank(std::size_t reaction) const;
    void find_competition(std::span<const double> amounts);
    std::vector<double> right_hand_side(std::span<const double> amounts) const;
    template<Number N>
    bool seeded(std::span<const N> amounts, bool& alike) const;
    void forbid_unstarted(const LinearProgramme& programme, std::span<const double> amounts,
                          double product_cap, std::span<double> x) const;
    template<Number N>
    void limits(std::span<const N> amounts, const N& product_cap, std::span<N> b) const;
    void solve(const LinearProgramme& programme, std::span<const Optimum> bases,
               std::span<const double> amounts, double product_cap, std::span<double> x) const;
    void solve(const LinearProgramme& programme, std::span<const Optimum> bases,
               std::span<const Lanes> amounts, const Lanes& product_cap, std::span<Lanes> x) const;

    std::vector<PotReaction> reactions_;
    std::vector<bool> started_;
    std::vector<Column> columns_;
    std::vector<Change> changes_; ///< of all columns, in one piece
    std::vector<Row> rows_;
    LinearProgramme open_{0, 0};   ///< without the cap on product
    LinearProgramme capped_{0, 0}; ///< the same and one last row, the cap; no rows when no product forms
    // Bases to try before a search: of the nominal amounts and about them, and of those when the yield is
    // lost before the product forms.
    std::vector<Optimum> open_optima_, capped_optima_;
    bool unbounded_ = false;
    std::vector<bool> unlimited_;
    int product_ = -1;
    bool loops_ = false;     ///< some reactions feed each other in a circle
    std::vector<int> seeds_; ///< with these there every reaction can start; empty: not known
    std::optional<Competition> competition_;
};

} // namespace routeweigh
