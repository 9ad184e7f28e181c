// SPDX-License-Identifier: MIT
// Short lists that are searched from front to back.
#pragma once

#include <algorithm>

namespace routeweigh {

template<typename List, typename Value>
bool contains(const List& list, const Value& value) {
    return std::find(list.begin(), list.end(), value) != list.end();
}

template<typename List, typename Value>
void add_once(List& list, const Value& value) {
    if (!contains(list, value)) list.emplace_back(value);
}

} // namespace routeweigh
