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
#include <span>
#include <vector>

namespace routeweigh {

// Grams at or below this, per gram of product, are rounding of the ledger and no substance.
inline constexpr double absent_below = 1e-9;

// The columns of grams behind the places: the waste is read twice, see Evaluation.
enum class HazardColumn { bottle, flask, waste, waste_unreacted, product };
inline constexpr std::size_t column_count = 5;
HazardColumn column_of(HazardPlace place); // the nominal reading of the waste

// By cell, see cell_index(). Only the waste knows two readings, so elsewhere low equals value.
struct HazardValues {
    std::vector<double> value;      // low end, nominal reading
    std::vector<double> low;        // lower of both readings
    std::vector<double> high;       // greater of both readings; infinite where nothing bounds it
    std::vector<double> short_term; // against ceilings and short-term limits, nominal reading; in no sum
    std::vector<double> grams;      // per gram of product, by column and carrier
};

class HazardMap {
  public:
    // The scheme, the banding and the substances are kept by reference and must outlive the map; the route
    // need not.
    HazardMap(const FlatRoute& route, const HazardScheme& scheme, const Banding& banding);

    const HazardScheme& scheme() const { return *scheme_; }
    const Banding& banding() const { return *banding_; }

    void evaluate(const Evaluation& evaluation, HazardValues& values) const;
    HazardValues evaluate(const Evaluation& evaluation) const;

    // What carries hazard in this route: substances by the entry that holds.
    std::span<const HazardEntry> carriers() const { return carriers_; }
    const HazardContribution& contribution(std::size_t endpoint, std::size_t carrier) const {
        return contributions_[endpoint * carriers_.size() + carrier];
    }
    double grams(const HazardValues& values, HazardColumn column, std::size_t carrier) const {
        return values.grams[static_cast<std::size_t>(column) * carriers_.size() + carrier];
    }

  private:
    friend class HazardMapCompiler;

    struct Pick {
        std::size_t from; // index in an array of the evaluation
        std::size_t carrier;
    };
    struct Term {
        std::size_t carrier;
        double low;   // figure per gram
        double extra; // high - low, may be infinite
        double short_term;
    };

    void gather(const Evaluation& evaluation, std::vector<double>& grams) const;

    const HazardScheme* scheme_;
    const Banding* banding_;
    std::vector<HazardEntry> carriers_;
    std::vector<HazardContribution> contributions_; // by endpoint and carrier
    std::vector<Pick> bottle_, flask_, waste_;
    std::size_t product_ = 0;             // carrier of the product; carriers_.size() where it carries nothing
    std::vector<Term> terms_;             // in the order of the endpoints
    std::vector<std::size_t> first_term_; // by endpoint, and one past the last
};

} // namespace routeweigh
