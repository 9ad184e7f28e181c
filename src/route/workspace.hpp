// SPDX-License-Identifier: MIT
// Room for the numbers of one solution, on the stack while a stage is of ordinary size: evaluation should not
// allocate.
#pragma once

#include <array>
#include <cstddef>
#include <span>
#include <vector>

namespace routeweigh {

class Workspace {
  public:
    /// The numbers are not set to anything.
    explicit Workspace(std::size_t size) {
        if (size > small_.size()) large_.resize(size);
        numbers_ = size > small_.size() ? std::span<double>(large_) : std::span<double>(small_).first(size);
    }
    Workspace(const Workspace&) = delete;
    Workspace& operator=(const Workspace&) = delete;
    std::span<double> numbers() const { return numbers_; }

  private:
    std::array<double, 48> small_;
    std::vector<double> large_;
    std::span<double> numbers_;
};

} // namespace routeweigh
