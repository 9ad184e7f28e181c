// SPDX-License-Identifier: MIT
// Signal words, pictograms, texts and precautions of the hazard statements, and which of them gives way to
// which.
#pragma once

#include "input/source.hpp"

#include <cstddef>
#include <map>
#include <string>
#include <string_view>
#include <vector>

namespace routeweigh {

struct LabelStatement {
    std::string statement;
    std::string category; // where the category decides; "" for all others
    std::string text;
    std::string signal;                   // "Danger", "Warning" or ""
    std::string pictogram;                // "GHS05" or ""
    std::string group;                    // by which pictograms give way
    std::vector<std::string> precautions; // most urgent first
    std::size_t together = 1;             // so many of these do not wait for those of other statements
};

// A statement or a pictogram that is left out beside others.
struct Omission {
    std::string what;
    std::vector<std::string> groups; // of a pictogram: only where these ask for it; empty for all
    std::vector<std::string> beside; // statements or pictograms
    std::string beside_group;        // or statements of this group
    std::string source;
};

class LabelElements {
  public:
    // Throws InputError with every problem of the file.
    static LabelElements read(const Source& source);

    // By statement and category; by the number alone where the letters are unknown. nullptr where there is
    // none.
    const LabelStatement* statement(std::string_view code, std::string_view category = {}) const;
    // Of a hazard statement, a supplemental statement or a precaution; "" where unknown.
    std::string_view text(std::string_view code) const;
    // Does the first precaution say all that the second says?
    bool covers(std::string_view first, std::string_view second) const;

    std::vector<Omission> omitted_statements, omitted_pictograms;
    std::size_t most_precautions = 0;
    std::vector<std::string> kept_precautions; // those wanted are always chosen

  private:
    std::vector<LabelStatement> statements_;
    std::map<std::string, std::string, std::less<>> precautions_;
    std::vector<std::pair<std::string, std::vector<std::string>>> covered_;
};

} // namespace routeweigh
