// SPDX-License-Identifier: MIT
#include "assess/results/judgement.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace routeweigh::results {
namespace {

// Common practice, no source, but for what follows from arithmetic.
constexpr std::array kinds{
    FindingKind{Finding::no_mass, "no_mass", "no mass of product", Verdict::check,
                "not weighed yet, or the empty boat was not noted", "weigh the product and the empty boat"},
    FindingKind{Finding::mass_not_above_zero, "mass_not_above_zero", "the mass is not above zero",
                Verdict::not_possible, "the two weighings are exchanged, or the boat is another one",
                "weigh boat and product again"},
    FindingKind{
        Finding::above_theory, "above_theory", "more than the theoretical yield", Verdict::not_possible,
        "still wet with solvent or water; salt or drying agent in it; reagent or by-product in it; the "
        "boat weighed with it; the wrong amount taken for the limiting reagent",
        "dry until two weighings agree, then take the melting range; weigh the empty boat; shake a little "
        "with water, filter, dry and weigh: what is lost was salt"},
    FindingKind{Finding::slightly_above, "slightly_above",
                "above the theoretical yield by no more than the reading of the balance", Verdict::check,
                "the last digit of the balance, or a trace of solvent", "dry and weigh once more"},
    FindingKind{Finding::thousandfold_mass, "thousandfold_mass", "about 1000 times too large",
                Verdict::not_possible,
                "noted in a smaller unit than the heading has: mg under g; a slip of the decimal sign",
                "compare with the notebook"},
    FindingKind{
        Finding::thousandth_of_mass, "thousandth_of_mass", "about 1000 times too small", Verdict::check,
        "noted in a larger unit than the heading has: g under mg, kg under g; a slip of the decimal sign",
        "compare with the notebook"},
    FindingKind{Finding::boat_weighed_too, "boat_weighed_too", "plausible once the boat is taken off",
                Verdict::not_possible, "the weighing boat was not taken off", "weigh the empty boat"},
    FindingKind{Finding::masses_disagree, "masses_disagree",
                "the mass of product is not the difference of the two weighings", Verdict::check,
                "a slip in the subtraction or in copying", "compare with the notebook"},
    FindingKind{Finding::still_drying, "still_drying", "the second drying still changed the mass",
                Verdict::check, "not dry yet", "dry until two weighings agree"},
    FindingKind{Finding::lighter_once_dried, "lighter_once_dried", "lost mass in the oven", Verdict::check,
                "the product was weighed wet", "use the mass after drying"},
    FindingKind{Finding::gained_mass, "gained_mass", "gained mass in the drying, which drying cannot do",
                Verdict::check, "weighings exchanged; wet again; another boat",
                "compare with the notebook; weigh the empty boat; dry until two weighings agree"},
    FindingKind{Finding::very_low, "very_low", "less than 5 % of the theoretical yield", Verdict::check,
                "lost in a filtrate, a layer or on the filter; a slip of the decimal sign",
                "look at filtrates and layers before they are thrown away; compare with the notebook"},
    FindingKind{
        Finding::melts_low, "melts_low", "melts below the melting point of the product", Verdict::check,
        "wet, or impure with reagent, isomer or by-product; heated too fast; thermometer not checked",
        "dry and repeat with 1 to 2 K a minute near the melting point; thin-layer chromatography beside "
        "the starting material; melt a mixture with known product"},
    FindingKind{Finding::melts_as_substrate, "melts_as_substrate", "melts where the starting material melts",
                Verdict::check,
                "it is likely starting material: nothing reacted, or the wrong solid was kept",
                "melt a mixture with starting material, and one with known product; thin-layer "
                "chromatography beside both; look for product in the filtrate"},
    FindingKind{Finding::melts_over_a_broad_range, "melts_over_a_broad_range", "melts over more than 3 K",
                Verdict::check, "impure or wet; heated too fast; too much in the tube",
                "dry and repeat slowly; recrystallise a little and compare the range"},
    FindingKind{
        Finding::melts_high, "melts_high", "melts above the melting point of the product", Verdict::check,
        "thermometer not checked; another substance; another crystal form; it decomposed before it melted",
        "check the thermometer with a standard; melt a mixture with known product"},
    FindingKind{Finding::melts_backwards, "melts_backwards", "the melting range ends below its start",
                Verdict::not_possible, "the two temperatures are exchanged", "compare with the notebook"},
    FindingKind{Finding::bench_again, "bench_again", "this bench stands in an earlier row with other numbers",
                Verdict::check, "entered twice, or a wrong bench code", "ask which row counts"},
    FindingKind{Finding::row_again, "row_again", "a copy of an earlier row", Verdict::check, "entered twice",
                "take one of them out"},
};

/// A yield that a class can have, in shares of the theory.
bool believable(double share) {
    return share >= very_low_yield && share <= 1.02;
}

void judge_mass(const ResultRow& row, const std::optional<double>& weighed, Judgement& judgement) {
    const double theory = judgement.theory;
    const double share = *weighed / theory;
    if (!(*weighed > 0)) return judgement.add(Finding::mass_not_above_zero);
    if (row.product && row.boat_and_product && row.boat) {
        const double difference = row.boat_and_product->value - row.boat->value;
        if (std::abs(difference - *weighed) > row.reading() + 0.01 * std::abs(*weighed))
            judgement.add(Finding::masses_disagree);
    }
    if (row.product && !row.boat_and_product && row.boat && share > 1 &&
        believable((*weighed - row.boat->value) / theory))
        judgement.add(Finding::boat_weighed_too);
    if (share > 3 && believable(share / 1000)) judgement.add(Finding::thousandfold_mass);
    if (share < 0.0011 && believable(share * 1000)) judgement.add(Finding::thousandth_of_mass);
}

/// What two weighings of one product may differ by. Each is read to half its last digit; the half beyond
/// keeps "1.5" and "1.6" together.
double weighing_tolerance(const CellNumber& number) {
    return std::max(constant_mass * number.value, 1.5 * std::pow(10.0, -number.decimals));
}

void judge_drying(const ResultRow& row, const std::optional<double>& weighed, Judgement& judgement) {
    const auto& dried = row.dried_again ? row.dried_again : row.dried_once;
    if (!dried) return;
    const double tolerance = weighing_tolerance(*dried);
    if (row.dried_once && row.dried_again) {
        const double gain = row.dried_again->value - row.dried_once->value;
        if (gain > tolerance) judgement.add(Finding::gained_mass);
        if (gain < -tolerance) judgement.add(Finding::still_drying);
    }
    if (weighed) {
        if (*weighed > dried->value * (1 + constant_mass) + row.reading())
            judgement.add(Finding::lighter_once_dried);
        const auto& first = row.dried_once ? row.dried_once : row.dried_again;
        if (first->value > *weighed + std::max(tolerance, 1.5 * row.reading()))
            judgement.add(Finding::gained_mass);
    }
    if (!(dried->value > 0)) return;
    judgement.mass = dried->value;
    judgement.reading = last_digit(dried);
}

void judge_melting(const ResultRow& row, const Theory& theory, Judgement& judgement) {
    if (!row.melts_to) return;
    const double to = row.melts_to->value;
    if (row.melts_from) {
        if (row.melts_from->value > to) return judgement.add(Finding::melts_backwards);
        if (to - row.melts_from->value > broad_range) judgement.add(Finding::melts_over_a_broad_range);
    }
    if (theory.product == nullptr || !theory.product->melting_point) return;
    const double product = *theory.product->melting_point;
    if (std::abs(to - product) <= far_from_melting) return;
    judgement.add(to < product ? Finding::melts_low : Finding::melts_high);
    const Substance* const substrate = theory.reference;
    if (substrate != nullptr && substrate->melting_point &&
        std::abs(to - *substrate->melting_point) <= far_from_melting)
        judgement.add(Finding::melts_as_substrate);
}

} // namespace

std::span<const FindingKind> finding_kinds() {
    return kinds;
}

std::string_view words_of(Verdict verdict) {
    switch (verdict) {
    case Verdict::plausible:
        return "plausible";
    case Verdict::check:
        return "check";
    case Verdict::not_possible:
        break;
    }
    return "not possible";
}

void Judgement::add(Finding finding) {
    findings |= static_cast<std::uint32_t>(finding);
    for (const FindingKind& kind : kinds)
        if (kind.finding == finding && kind.verdict > verdict) verdict = kind.verdict;
}

Judgement judge(const ResultRow& row, const Theory& theory) {
    Judgement judgement;
    const double share = row.substrate && row.substrate->value > 0 && theory.substrate_grams > 0
                             ? row.substrate->value / theory.substrate_grams
                             : 1;
    judgement.theory = theory.grams_at(share);
    const std::optional<double> weighed = row.mass();
    judgement.mass = weighed;
    judgement.reading = row.reading();
    judge_drying(row, weighed, judgement);
    if (weighed) judge_mass(row, weighed, judgement);
    if (!judgement.mass) judgement.add(Finding::no_mass);
    if (judgement.mass && *judgement.mass > 0) {
        const double yield = *judgement.mass / judgement.theory;
        judgement.yield = 100 * yield;
        const double above = *judgement.mass - judgement.theory;
        if (above > 0)
            judgement.add(above > judgement.reading ? Finding::above_theory : Finding::slightly_above);
        if (yield < very_low_yield) judgement.add(Finding::very_low);
    }
    judge_melting(row, theory, judgement);
    return judgement;
}

} // namespace routeweigh::results
