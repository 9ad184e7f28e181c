// SPDX-License-Identifier: MIT
// Random draws that are the same on every machine.
#pragma once

#include <cstddef>
#include <random>
#include <utility>
#include <vector>

namespace routeweigh::documents {

/// The generator and its seeding are fixed by the C++ standard; its distributions are not, so the draws are
/// made here.
class Dice {
  public:
    Dice(int seed, int version, int stream) {
        std::seed_seq sequence{seed, version, stream};
        engine_.seed(sequence);
    }

    /// 0 to count - 1. \pre count > 0
    std::size_t below(std::size_t count) { return engine_() % count; }
    /// low to high.
    double between(double low, double high) {
        return low + (high - low) * static_cast<double>(engine_()) / 4294967295.0;
    }
    template<typename T>
    const T& one_of(const std::vector<T>& list) {
        return list[below(list.size())];
    }
    template<typename T>
    void shuffle(std::vector<T>& list) {
        for (std::size_t i = list.size(); i > 1; --i)
            std::swap(list[i - 1], list[below(i)]);
    }

  private:
    std::mt19937 engine_;
};

} // namespace routeweigh::documents
