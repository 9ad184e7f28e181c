// SPDX-License-Identifier: MIT
// The results of a class, read row by row: what they sum up to, and the rows that somebody has to look at.
//
// Memory does not grow with the file: yields are tallied, at most 500 rows are kept to be shown, and a bench
// code is looked for among the first 65 536 rows.
#pragma once

#include "assess/results/judgement.hpp"
#include "assess/results/yield_tally.hpp"

#include <array>
#include <cstdint>
#include <string>
#include <vector>

namespace routeweigh::results {

struct KeptRow {
    std::size_t line = 0;
    std::string bench, section;
    Judgement judgement;
    std::optional<double> melts_from, melts_to;
    std::size_t earlier_line = 0; ///< of the same bench; 0 for none
    std::vector<OwnNumber> own;   ///< all numbers that the row states
    bool stands_out = false;      ///< by the test for outliers
};

struct ClassResults {
    static constexpr std::size_t most_kept = 500, most_sections = 64, most_benches = 65536;

    Theory theory;
    std::string file;
    std::uint64_t rows = 0;
    std::array<std::uint64_t, 3> verdicts{};           ///< by Verdict
    std::vector<std::uint64_t> findings;               ///< in the order of finding_kinds()
    std::array<std::array<std::uint64_t, 5>, 3> own{}; ///< by OwnNumber::Kind and OwnNumber::Standing
    std::vector<KeptRow> kept; ///< every row, or where they are many those not plausible
    bool all_kept = true;
    bool all_benches_known = true; ///< false: only those of the first 65 536 rows

    std::vector<std::string> sections; ///< "" for rows without one
    YieldLevels levels;                ///< of rows that are possible
    bool in_steps = false;             ///< the yields are counted in steps of 0.01 per cent
    Spread all;
    std::vector<Spread> by_section;
    std::optional<SectionTest> section_test;
    std::optional<OutlierTest> outlier_test;

    /// The yields of the rows that are possible, shares of 1 in ascending order, for whoever samples them:
    /// all of them, or where they are more than `most` so many quantiles.
    std::vector<double> yields(std::size_t most = 2000) const;
};

/// \param problems  receives every fault; rows with one are left out
/// \throws InputError headings that cannot be read, more than 64 sections, no row without a fault
ClassResults read_class_results(CsvReader& rows, const Theory& theory, Problems& problems);

} // namespace routeweigh::results
