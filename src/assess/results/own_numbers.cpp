// SPDX-License-Identifier: MIT
// The student's own amount, theoretical yield and percent yield held against the right ones.
#include "assess/results/judgement.hpp"

#include <fmt/format.h>

#include <cmath>

namespace routeweigh::results {
namespace {

constexpr double agreement = 0.005; ///< share; molar masses rounded to whole numbers differ by as much
constexpr double rounding = 0.03;   ///< share within which rounding on the way is the likeliest cause

bool agrees(const CellNumber& own, double other) {
    const double last_digit = 0.5 * std::pow(10.0, -own.decimals);
    return std::abs(own.value - other) <= std::max(last_digit * 1.0001, agreement * std::abs(other));
}

class OwnCheck {
  public:
    OwnCheck(OwnNumber::Kind kind, const CellNumber& own, double right) : own_(own) {
        number_.kind = kind;
        number_.own = own.value;
        number_.right = right;
        open_ = !agrees(own, right);
    }

    /// A right way that starts from a wrong number of the student's own.
    void carried(double value, const char* words) {
        if (!open_ || !agrees(own_, value)) return;
        number_.standing = OwnNumber::Standing::carried;
        number_.words = words;
        open_ = false;
    }

    /// \param before  put before the words
    void mistake(double value, std::string_view words, std::string_view before = {}) {
        if (!open_ || mistakes_ >= 2 || !std::isfinite(value) || !agrees(own_, value)) return;
        number_.standing = OwnNumber::Standing::mistake;
        number_.words += fmt::format("{}{}{}", mistakes_++ == 0 ? "" : "; or ", before, words);
    }

    OwnNumber finish() {
        if (!open_ || mistakes_ > 0) return number_;
        const bool near = std::abs(number_.own - number_.right) <= rounding * std::abs(number_.right);
        number_.standing = near ? OwnNumber::Standing::rounded : OwnNumber::Standing::unexplained;
        number_.words =
            near ? "off by no more than rounding on the way" : "no usual mistake gives this number";
        return number_;
    }

  private:
    CellNumber own_;
    OwnNumber number_;
    bool open_ = true;
    int mistakes_ = 0;
};

/// A mass noted in mg or kg makes no yield wrong that was reckoned in g.
double noted_in_grams(const Judgement& judgement) {
    return *judgement.mass * (judgement.has(Finding::thousandfold_mass)    ? 1e-3
                              : judgement.has(Finding::thousandth_of_mass) ? 1e3
                                                                           : 1);
}

double value_of(const WrongNumber& wrong, double share) {
    return wrong.fixed + wrong.scaled * share;
}

} // namespace

std::vector<OwnNumber> check_own_numbers(const ResultRow& row, const Judgement& judgement,
                                         const Theory& theory) {
    std::vector<OwnNumber> numbers;
    const bool weighed = row.substrate && row.substrate->value > 0 && theory.substrate_grams > 0;
    const double share = weighed ? row.substrate->value / theory.substrate_grams : 1;
    const double limiting_mmol =
        theory.product_per_limiting > 0
            ? 1000 * judgement.theory / theory.product->molar_mass / theory.product_per_limiting
            : theory.limiting_mmol;

    if (row.own_amount && theory.limiting != nullptr) {
        OwnCheck check(OwnNumber::Kind::amount, *row.own_amount, limiting_mmol);
        for (const WrongNumber& wrong : theory.wrong_amounts)
            check.mistake(value_of(wrong, share), wrong.mistake);
        numbers.push_back(check.finish());
    }
    if (row.own_theory) {
        OwnCheck check(OwnNumber::Kind::theory, *row.own_theory, judgement.theory);
        if (row.own_amount)
            check.carried(row.own_amount->value / 1000 * theory.product_per_limiting *
                              theory.product->molar_mass,
                          "right from the student's own amount");
        for (const WrongNumber& wrong : theory.wrong_theories)
            check.mistake(value_of(wrong, share), wrong.mistake);
        if (judgement.mass) check.mistake(*judgement.mass, "the mass that was isolated stands here");
        numbers.push_back(check.finish());
    }
    if (row.own_yield && judgement.mass) {
        const double mass = noted_in_grams(judgement);
        OwnCheck check(OwnNumber::Kind::yield, *row.own_yield, 100 * mass / judgement.theory);
        if (row.own_theory && row.own_theory->value > 0)
            check.carried(100 * mass / row.own_theory->value,
                          "right from the student's own theoretical yield");
        if (const auto weighed_mass = row.mass(); weighed_mass && *weighed_mass != *judgement.mass)
            check.carried(100 * *weighed_mass / judgement.theory, "right from the mass before drying");
        check.mistake(100 * judgement.theory / mass,
                      "the fraction is upside down: theoretical over isolated");
        check.mistake(mass / judgement.theory, "the fraction is not turned into per cent");
        if (mass != *judgement.mass)
            check.mistake(100 * *judgement.mass / judgement.theory, "the mass is not turned into g");
        if (row.boat_and_product)
            check.mistake(100 * row.boat_and_product->value / judgement.theory, "the boat is not taken off");
        if (row.boat && !row.boat_and_product)
            check.mistake(100 * (mass + row.boat->value) / judgement.theory, "the boat is not taken off");
        for (const WrongNumber& wrong : theory.wrong_theories)
            check.mistake(100 * mass / value_of(wrong, share), wrong.mistake,
                          "related to a wrong theoretical yield: ");
        numbers.push_back(check.finish());
    }
    return numbers;
}

} // namespace routeweigh::results
