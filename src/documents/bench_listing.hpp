// SPDX-License-Identifier: MIT
// Names with whose they are, and what of them comes and goes: the hazard statements of a bench before all.
#pragma once

#include "documents/bench.hpp"

#include <map>
#include <set>
#include <string>
#include <vector>

namespace routeweigh::documents {

/// Names of what is there, and for each whose it is: a statement with its bottles.
using Listing = std::map<std::string, std::set<std::string>>;

/// What the second does not have, with whose it is: "H330 (bromine)".
std::vector<std::string> only_in(const Listing& one, const Listing& other);

std::string not_assessed(const BenchBottle& bottle); ///< "bromine: not assessed"

/// Every statement of a label on the bench, supplemental ones too, with its bottles.
Listing statements_on_bench(const std::vector<BenchBottle>& bench);

/// The same, and every bottle that nobody has assessed, as "bromine: not assessed": that a bottle has no
/// statements is no gain where nobody has looked.
Listing hazards_on_bench(const std::vector<BenchBottle>& bench);

/// What hazard statements do not say, and by whose limits they were found.
std::string limits_of_statements(const MixtureRules& classified_by);

} // namespace routeweigh::documents
