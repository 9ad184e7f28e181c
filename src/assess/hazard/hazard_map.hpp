// SPDX-License-Identifier: MIT
// The hazard figures of one route as sparse linear maps of an evaluation, compiled once.
//
// Per place the grams of each substance per gram of product are gathered, then multiplied with what one gram
// of it adds to each endpoint. Water and all else that adds nothing is left out when the map is compiled.
// Evaluating again allocates nothing and touches no text.
#pragma once

#include "assess/hazard/endpoint.hpp"
#include "assess/hazard/scheme.hpp"
#include "route/flat_route.hpp"

#include <cstddef>
#include <set>
#include <span>
#include <vector>

namespace routeweigh {

// Grams at or below this, per gram of product, are rounding of the ledger and no substance.
inline constexpr double absent_below = 1e-9;

// The columns of grams behind the places: the waste is read twice, see Evaluation. The product is always one
// gram.
enum class HazardColumn { bottle, flask, waste, waste_unreacted, product };
inline constexpr std::size_t varying_columns = 4;
HazardColumn column_of(HazardPlace place); // the nominal reading of the waste

// By cell, see cell_index(). Only the waste knows two readings, so elsewhere low equals value.
template<Number N>
struct HazardValuesOf {
    std::vector<N> value;      // low end, nominal reading
    std::vector<N> low;        // lower of both readings
    std::vector<N> high;       // greater of both readings; infinite where nothing bounds it
    std::vector<N> short_term; // against ceilings and short-term limits, nominal reading; in no sum
    std::vector<N> grams;      // per gram of product, by carrier and varying column
};
using HazardValues = HazardValuesOf<double>;

// Water is in the pot of the step at some time. What the step makes or leaves is then judged as dissolved in
// it; how much water was there at that moment is not asked.
bool holds_water(const FlatStep& step);
// Those of which some pot holds water too.
std::set<const Substance*> substances_beside_water(const FlatRoute& route);

class HazardMap {
  public:
    // The scheme, the banding and the substances are kept by reference and must outlive the map; the route
    // need not.
    HazardMap(const FlatRoute& route, const HazardScheme& scheme, const Banding& banding);

    const HazardScheme& scheme() const { return *scheme_; }
    const Banding& banding() const { return *banding_; }

    // Figures per gram of product, in the units of their endpoints.
    template<Number N>
    void evaluate(const EvaluationOf<N>& evaluation, HazardValuesOf<N>& values) const;
    HazardValues evaluate(const Evaluation& evaluation) const;

    // What carries hazard in this route: substances by the entry that holds.
    std::span<const HazardEntry> carriers() const { return carriers_; }
    // What one gram of a carrier adds to an endpoint, and why. Worked out anew each time, for an evaluation
    // needs only the numbers, and most of what is said here nobody asks for.
    HazardContribution contribution(std::size_t endpoint, std::size_t carrier) const;
    double grams(const HazardValues& values, HazardColumn column, std::size_t carrier) const {
        if (column == HazardColumn::product) return carrier == product_ ? 1.0 : 0.0;
        return values.grams[carrier * varying_columns + static_cast<std::size_t>(column)];
    }

  private:
    friend class HazardMapCompiler;

    struct Pick {
        std::size_t from; // index in an array of the evaluation
        std::size_t carrier;
    };
    // Sparse rows, one an endpoint: what one gram of a carrier adds.
    struct Rows {
        struct Term {
            std::size_t carrier;
            double per_gram;
        };
        std::vector<Term> terms;
        std::vector<std::size_t> first{0}; // of each row, and one past the last
    };

    template<Number N>
    void gather(const EvaluationOf<N>& evaluation, std::vector<N>& grams) const;

    const HazardScheme* scheme_;
    const Banding* banding_;
    std::vector<HazardEntry> carriers_;
    std::vector<HazardContribution> of_product_; // by endpoint; nothing where the product carries nothing
    std::vector<Pick> bottle_, flask_, waste_;
    std::size_t product_ = 0; // carrier of the product; carriers_.size() where it carries nothing
    Rows low_, short_term_;
    Rows extra_; // high less low; may be infinite
};

} // namespace routeweigh
