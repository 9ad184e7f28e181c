// SPDX-License-Identifier: MIT
// Everything that the classification of mixtures reads from data files.
#pragma once

#include "assess/mixture/flash_point_data.hpp"
#include "assess/mixture/jurisdiction.hpp"
#include "assess/mixture/label_elements.hpp"
#include "assess/mixture/limits.hpp"
#include "assess/mixture/substance_notes.hpp"

#include <map>
#include <string>

namespace routeweigh {

class Catalogue;

struct MixtureRules {
    MixtureRegime regime = MixtureRegime::eu;
    MixtureLimits limits;
    SubstanceNotes notes;
    FlashPointData flash_points;
    LabelElements labels;
};

// From the schemes of the catalogue. `blocks` switches building blocks of the UN on or off by id. Throws
// InputError where a scheme is missing or faulty, or a block is unknown.
MixtureRules read_mixture_rules(const Catalogue& catalogue, MixtureRegime regime = MixtureRegime::eu,
                                const std::map<std::string, bool>& blocks = {});

} // namespace routeweigh
