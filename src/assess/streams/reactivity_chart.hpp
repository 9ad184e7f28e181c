// SPDX-License-Identifier: MIT
// What two reactivity groups do when they meet: the chart of pairs and the groups that may meet nothing.
#pragma once

#include "base/provenance.hpp"
#include "input/source.hpp"

#include <map>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace routeweigh::streams {

struct ChartCell {
    std::vector<std::string> codes;
    Provenance from;
    std::string confidence; ///< high, medium, low
};

class ReactivityChart {
  public:
    struct Code {
        std::string code, meaning;
    };
    std::vector<Code> codes; ///< worst first

    void add(int a, int b, ChartCell cell);
    void add_never(int group, ChartCell cell);
    /// The same for (a, b) and (b, a); nullptr: the chart names no consequence.
    const ChartCell* find(int a, int b) const;
    const std::map<std::pair<int, int>, ChartCell>& cells() const { return cells_; }

    std::string_view meaning(std::string_view code) const;
    /// Without doubles, worst first.
    std::vector<std::string> sorted(std::vector<std::string> list) const;

  private:
    std::map<std::pair<int, int>, ChartCell> cells_; ///< smaller number first
    std::map<int, ChartCell> never_;
};

/// \throws InputError with every problem of the file
ReactivityChart read_reactivity_chart(const Source& source);

} // namespace routeweigh::streams
