// SPDX-License-Identifier: MIT
// Small work on words and numbers in text: joining, lists in a sentence, folding names, nearest spelling,
// significant digits.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace routeweigh {

// "a, b, c".
std::string join(const std::vector<std::string>& parts, std::string_view separator);

// "A1", "A1 and A3", "A1, A2 and A3".
std::string listed(const std::vector<std::string>& names);

// With a capital first letter (ASCII).
std::string capitalised(std::string text);

// A name as names are compared: ASCII letters lower-case, runs of spaces and tabs to one space, none at the
// ends.
std::string fold(std::string_view name);

// The text without spaces, tabs and line ends at its ends.
std::string_view trim(std::string_view text);

// Searches candidates, one at a time, for the one spelt most like a name. Compared folded, by the number of
// letters to insert, drop, change or swap with the neighbour; more than a third of the name is not near. The
// first of equals wins.
class NearestSpelling {
  public:
    explicit NearestSpelling(std::string_view name);

    void offer(std::string_view candidate);

    // The best candidate as it was offered; empty when none was near.
    const std::string& best() const { return best_; }

  private:
    std::string folded_;
    std::string best_;
    std::size_t best_distance_;
};

// The candidate nearest to the name; empty when nothing is near.
std::string nearest(std::string_view name, const std::vector<std::string>& candidates);

// What a call is told that names something unknown: "no format is called "htm"; nearest: "html"; there are:
// terminal, html".
std::string no_such(std::string_view what, std::string_view name, const std::vector<std::string>& all);

// The value rounded to this many significant digits (1..17), trailing zeros kept: significant(2.5, 3) is
// "2.50". Written with an exponent below 1e-6 and from 1e15 on, "1.20e-09".
std::string significant(double value, int digits);

} // namespace routeweigh
