// SPDX-License-Identifier: MIT
// Where a datum comes from and how well it is known, so that every finding can say it.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace routeweigh {

enum class Standing {
    read,           ///< seen in the source while the file was written
    remembered,     ///< recalled, to be checked against the source
    derived,        ///< follows from formulas or other data by arithmetic
    judgement,      ///< decided by the authors of the data file
    common_practice ///< a fact of the trade for which no source is known
};

/// The words that data files use: "read", "remembered", ... "common practice, no source".
std::string_view words_of(Standing standing);

/// All of these words.
const std::vector<std::string>& standing_words();
/// The standing of these words; a judgement where there is none.
Standing standing_of(std::string_view words);

struct Provenance {
    Standing standing = Standing::judgement;
    std::string source; ///< in words; empty where the standing says it all
};

/// "40 CFR 261.21 (read)", "common practice, no source".
std::string describe(const Provenance& provenance);

/// A value of a data file with its origin.
template<typename T>
struct Sourced {
    T value{};
    Provenance from;
};

} // namespace routeweigh
