// SPDX-License-Identifier: MIT
#include "assess/hazard/endpoint_list.hpp"

#include <array>

namespace routeweigh {

std::span<const EndpointFamily> endpoint_families() {
    static const std::array families{inhalation_family, aquatic_family, acute_dose_family, graded_family};
    return families;
}

} // namespace routeweigh
