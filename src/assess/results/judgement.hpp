// SPDX-License-Identifier: MIT
// Is a result plausible, to be checked, or not possible; with likely causes and what to test next.
//
// Never a verdict on a student: a finding names what the numbers show. Lines without a source are common
// practice and stand here as constants.
#pragma once

#include "assess/results/result_row.hpp"
#include "assess/results/theory.hpp"

#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace routeweigh::results {

enum class Verdict { plausible, check, not_possible };
std::string_view words_of(Verdict verdict);

/// Bits of a set.
enum class Finding : std::uint32_t {
    no_mass = 1U << 0U,
    mass_not_above_zero = 1U << 1U,
    above_theory = 1U << 2U,
    slightly_above = 1U << 3U,
    thousandfold_mass = 1U << 4U,
    thousandth_of_mass = 1U << 5U,
    boat_weighed_too = 1U << 6U,
    masses_disagree = 1U << 7U,
    still_drying = 1U << 8U,
    lighter_once_dried = 1U << 9U,
    very_low = 1U << 10U,
    melts_low = 1U << 11U,
    melts_over_a_broad_range = 1U << 12U,
    melts_high = 1U << 13U,
    melts_backwards = 1U << 14U,
    bench_again = 1U << 15U,
    row_again = 1U << 16U,
    gained_mass = 1U << 17U,
    melts_as_substrate = 1U << 18U,
};

struct FindingKind {
    Finding finding;
    std::string_view id;    ///< "above_theory", for programs
    std::string_view words; ///< what is seen
    Verdict verdict;
    std::string_view causes; ///< likely ones, the likeliest first
    std::string_view tests;  ///< what to do next
};

std::span<const FindingKind> finding_kinds();

inline constexpr double broad_range = 3; ///< K between first liquid and clear; common practice, no source
inline constexpr double far_from_melting = 3; ///< K from a melting point of the catalogue; likewise
inline constexpr double very_low_yield = 0.05;
inline constexpr double constant_mass = 0.01; ///< share by which drying may still change the mass

struct Judgement {
    Verdict verdict = Verdict::plausible;
    std::uint32_t findings = 0;
    std::optional<double> mass;  ///< g that the yield is of: the dried mass where there is one
    double reading = 0;          ///< of that mass, by the last digit written, g
    std::optional<double> yield; ///< per cent
    double theory = 0;           ///< g for this row

    bool has(Finding finding) const { return (findings & static_cast<std::uint32_t>(finding)) != 0; }
    /// Is its yield one of the class? A copied row would count it twice.
    bool is_counted() const { return yield && verdict != Verdict::not_possible && !has(Finding::row_again); }
    void add(Finding finding);
};

Judgement judge(const ResultRow& row, const Theory& theory);

/// A number of the student's own beside the right one.
struct OwnNumber {
    enum class Kind { amount, theory, yield };
    enum class Standing { right, carried, rounded, mistake, unexplained };
    Kind kind = Kind::amount;
    Standing standing = Standing::right;
    double own = 0, right = 0;
    std::string words; ///< which mistake gives the number; "" where it is right
};

/// Only the numbers that the row has. Right is what agrees to the last digit written or to 0.5 %.
std::vector<OwnNumber> check_own_numbers(const ResultRow& row, const Judgement& judgement,
                                         const Theory& theory);

} // namespace routeweigh::results
