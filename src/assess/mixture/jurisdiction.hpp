// SPDX-License-Identifier: MIT
// Whose limits decide a classification.
#pragma once

#include <map>
#include <string>
#include <string_view>

namespace routeweigh {

enum class MixtureRegime {
    eu, // CLP
    un, // the globally harmonised system, building blocks switchable
    us  // OSHA hazard communication
};
std::string_view words(MixtureRegime regime); // "eu"

struct Jurisdiction {
    MixtureRegime regime = MixtureRegime::eu;
    std::map<std::string, bool> blocks; // of the UN, by id: switched on or off
};

} // namespace routeweigh
