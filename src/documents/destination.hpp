// SPDX-License-Identifier: MIT
// Where a stream goes, as every paper says it.
#pragma once

#include "assess/streams/container_decision.hpp"

#include <string>

namespace routeweigh::documents {

/// "heavy metal"; where no container is right "STOP: own bottle, marked cyanide, kept basic; ask the safety
/// office", so that a stop is seen as one.
std::string destination(const streams::Decision& decision);

/// "quench first ...; base as the reducer goes in ...": what comes before that, one after the other; "" for
/// nothing. \param with_amounts  false where they are to be worked out
std::string first_words(const streams::Decision& decision, bool with_amounts = true);

} // namespace routeweigh::documents
