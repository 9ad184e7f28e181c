// SPDX-License-Identifier: MIT
// Numbers of tables and figures, the same in every format: what stands in a fold is not numbered, so that
// none is missing where the fold stays closed.
#pragma once

#include <string>

namespace routeweigh::writing {

class CaptionNumbers {
  public:
    /// "Table 3." for the next table; empty within a fold.
    std::string table() { return depth_ > 0 ? std::string() : "Table " + std::to_string(++tables_) + "."; }
    std::string figure() { return depth_ > 0 ? std::string() : "Figure " + std::to_string(++figures_) + "."; }

    void enter_fold() { ++depth_; }
    void leave_fold() { --depth_; }
    bool in_fold() const { return depth_ > 0; }

  private:
    int tables_ = 0, figures_ = 0, depth_ = 0;
};

} // namespace routeweigh::writing
