// SPDX-License-Identifier: MIT
// Random numbers that depend on where they stand and not on who asked before: Philox4x32-10 (J. K. Salmon,
// M. A. Moraes, R. O. Dror, D. E. Shaw, Parallel random numbers: as easy as 1, 2, 3, SC11, 2011,
// doi:10.1145/2063384.2063405).
//
// A block of four words is a function of a counter and a key. The key is the seed; the counter holds the
// number of a quantity, the number of a run of draws, and the place in it. So a sample is the same on any
// number of threads, and one more quantity changes nothing in the others.
#pragma once

#include <array>
#include <cstddef>
#include <cstdint>

namespace routeweigh {

using PhiloxBlock = std::array<std::uint32_t, 4>;

// Ten rounds.
PhiloxBlock philox(PhiloxBlock counter, std::array<std::uint32_t, 2> key);

// 64 random bits at a time, as the distributions of Boost.Random and of the standard take them.
class PhiloxStream {
  public:
    using result_type = std::uint64_t;

    // The numbers of one quantity in one run of draws; other numbers for any other seed, quantity or run.
    PhiloxStream(std::uint64_t seed, std::uint32_t quantity, std::uint64_t run)
        : key_{static_cast<std::uint32_t>(seed), static_cast<std::uint32_t>(seed >> 32)}, quantity_(quantity),
          run_(run) {}

    static constexpr result_type min() { return 0; }
    static constexpr result_type max() { return ~result_type{0}; }

    result_type operator()() {
        if (next_ == buffer_.size()) refill();
        return buffer_[next_++];
    }

  private:
    void refill();

    std::array<std::uint32_t, 2> key_;
    std::uint32_t quantity_;
    std::uint64_t run_;
    std::uint32_t place_ = 0; // 2^32 blocks in one run of one quantity
    std::array<std::uint64_t, 64> buffer_{};
    std::size_t next_ = buffer_.size();
};

} // namespace routeweigh
