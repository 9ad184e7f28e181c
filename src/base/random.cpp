// SPDX-License-Identifier: MIT
#include "base/random.hpp"

namespace routeweigh {
namespace {

constexpr std::uint32_t multiplier_0 = 0xD2511F53, multiplier_1 = 0xCD9E8D57;
constexpr std::uint32_t weyl_0 = 0x9E3779B9, weyl_1 = 0xBB67AE85; // golden ratio, root of three less one
constexpr int rounds = 10;

constexpr std::uint64_t wide(std::uint32_t a, std::uint32_t b) {
    return std::uint64_t{a} * b;
}

} // namespace

PhiloxBlock philox(PhiloxBlock counter, std::array<std::uint32_t, 2> key) {
    for (int round = 0; round < rounds; ++round) {
        const std::uint64_t first = wide(multiplier_0, counter[0]), second = wide(multiplier_1, counter[2]);
        counter = {static_cast<std::uint32_t>(second >> 32) ^ counter[1] ^ key[0],
                   static_cast<std::uint32_t>(second),
                   static_cast<std::uint32_t>(first >> 32) ^ counter[3] ^ key[1],
                   static_cast<std::uint32_t>(first)};
        key[0] += weyl_0;
        key[1] += weyl_1;
    }
    return counter;
}

// Thirty-two counters are carried through the rounds side by side, which a compiler turns into vector
// instructions. The words are those of philox(), block after block.
void PhiloxStream::refill() {
    constexpr std::size_t lanes = 32;
    std::array<std::uint64_t, lanes> c0{}, c1{}, c2{}, c3{}; // 32 bits each, kept wide for the products
    for (std::size_t i = 0; i < lanes; ++i) {
        c0[i] = static_cast<std::uint32_t>(place_ + i);
        c1[i] = quantity_;
        c2[i] = static_cast<std::uint32_t>(run_);
        c3[i] = run_ >> 32;
    }
    place_ += lanes;
    std::uint32_t k0 = key_[0], k1 = key_[1];
    for (int round = 0; round < rounds; ++round) {
        for (std::size_t i = 0; i < lanes; ++i) {
            const std::uint64_t first = multiplier_0 * c0[i], second = multiplier_1 * c2[i];
            c0[i] = (second >> 32) ^ c1[i] ^ k0;
            c1[i] = second & 0xFFFFFFFF;
            c2[i] = (first >> 32) ^ c3[i] ^ k1;
            c3[i] = first & 0xFFFFFFFF;
        }
        k0 += weyl_0;
        k1 += weyl_1;
    }
    for (std::size_t i = 0; i < lanes; ++i) {
        buffer_[2 * i] = c0[i] | c1[i] << 32;
        buffer_[2 * i + 1] = c2[i] | c3[i] << 32;
    }
    next_ = 0;
}

} // namespace routeweigh
