// SPDX-License-Identifier: MIT
// What is known of a quantity beyond one number: the probability distributions of JCGM 101:2008, clause 6.4.
#pragma once

#include "base/random.hpp"

#include <span>
#include <variant>
#include <vector>

namespace routeweigh {

// A standard uncertainty or an expanded one over its coverage factor.
struct Normal {
    double mean = 0;
    double deviation = 0; // standard deviation, 0 or above
};

// A tolerance of which nothing else is known: any value between the ends is as likely as any other.
struct Rectangular {
    double low = 0, high = 0;
};

// A tolerance whose middle is more likely than its ends.
struct Triangular {
    double low = 0, likely = 0, high = 0;
};

// Least, most likely and greatest, as people estimate: the beta distribution with mean
// (low + 4 likely + high) / 6 (D. G. Malcolm et al., Operations Research 1959, 7, 646; remembered).
struct Pert {
    double low = 0, likely = 0, high = 0;
};

// What was found, each value as likely as the others. Not empty.
struct Empirical {
    std::vector<double> values;
};

class Distribution {
  public:
    // Throw std::domain_error with what is wrong: a negative deviation, ends in the wrong order, no values, a
    // number that is not finite.
    Distribution(Normal normal);           // NOLINT(google-explicit-constructor): each is a distribution
    Distribution(Rectangular rectangular); // NOLINT(google-explicit-constructor)
    Distribution(Triangular triangular);   // NOLINT(google-explicit-constructor)
    Distribution(Pert pert);               // NOLINT(google-explicit-constructor)
    Distribution(Empirical empirical);     // NOLINT(google-explicit-constructor)

    double mean() const { return mean_; }
    double deviation() const {
        return deviation_;
    } // standard deviation; of Empirical that of its values as drawn
    // What can be drawn lies between these; infinite for a normal distribution that varies.
    double least() const { return least_; }
    double greatest() const { return greatest_; }
    const char* name() const; // "normal", "rectangular", "triangular", "PERT", "results"

    // Of the quantity times a factor above 0.
    Distribution scaled(double factor) const;

    // Independent values, as many as the span holds.
    void draw(PhiloxStream& stream, std::span<double> values) const;

  private:
    std::variant<Normal, Rectangular, Triangular, Pert, Empirical> kind_;
    double mean_ = 0, deviation_ = 0, least_ = 0, greatest_ = 0;
};

} // namespace routeweigh
