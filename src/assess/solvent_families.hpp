// SPDX-License-Identifier: MIT
// Solvents that may be tried in place of one another, as the scheme "solvents" of the catalogue lists them.
#pragma once

#include "assess/streams/stream_rules.hpp"
#include "chemistry/catalogue.hpp"

#include <string>
#include <string_view>
#include <vector>

namespace routeweigh {

struct SolventFamily {
    std::string title;
    bool mixes_with_water = false;
    std::vector<std::string> purposes; ///< roles of charges
    std::vector<const Substance*> members;

    bool has(const Substance& solvent, std::string_view role) const;
};

struct SolventFamilies {
    std::vector<SolventFamily> families;

    /// The others that may be tried for this purpose; none twice.
    std::vector<const Substance*> others(const Substance& solvent, std::string_view role) const;
};

/// What decides whether one solvent may be suggested in place of another, or be recovered. Stays where it was
/// made; the catalogue must outlive it.
struct SolventRules {
    SolventFamilies families;
    streams::StreamRules waste; ///< local rules of the United States: both that are shipped stop the same
};

/// \throws InputError when a scheme is missing or faulty
SolventRules read_solvent_rules(const Catalogue& catalogue);

} // namespace routeweigh
