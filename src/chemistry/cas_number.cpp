// SPDX-License-Identifier: MIT
#include "chemistry/cas_number.hpp"

namespace routeweigh {

bool is_cas_number(std::string_view text) {
    const std::size_t size = text.size();
    if (size < 7 || size > 12 || text[0] == '0') return false;
    int sum = 0;
    int place = 0;
    for (std::size_t from_right = 0; from_right < size; ++from_right) {
        const char c = text[size - 1 - from_right];
        if (from_right == 1 || from_right == 4) {
            if (c != '-') return false;
            continue;
        }
        if (c < '0' || c > '9') return false;
        sum += place++ * (c - '0');
    }
    return sum % 10 == text[size - 1] - '0';
}

} // namespace routeweigh
