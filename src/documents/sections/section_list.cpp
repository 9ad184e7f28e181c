// SPDX-License-Identifier: MIT
#include "documents/sections/sections.hpp"

#include <array>

namespace routeweigh::documents {
namespace {

constexpr std::array list{
    Section{"compared", "What is compared", add_compared},
};

} // namespace

std::span<const Section> all_sections() {
    return list;
}

} // namespace routeweigh::documents
