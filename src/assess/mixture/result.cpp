// SPDX-License-Identifier: MIT
#include "assess/mixture/result.hpp"

namespace routeweigh {

std::string MixtureResult::class_and_category() const {
    return category.empty() ? hazard_class : hazard_class + " " + category;
}

const MixtureResult* find_result(const std::vector<MixtureResult>& results, std::string_view endpoint) {
    for (const MixtureResult& result : results)
        if (result.endpoint == endpoint) return &result;
    return nullptr;
}

} // namespace routeweigh
