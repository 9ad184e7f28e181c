// SPDX-License-Identifier: MIT
// What left a pot as a mixture to be classified: acids and bases paired off, gases that stayed taken as
// dissolved, the flash point screened.
#pragma once

#include "assess/mixture/mixture.hpp"
#include "assess/streams/acid_base.hpp"
#include "assess/streams/mixed_liquids.hpp"
#include "assess/streams/pairing.hpp"
#include "route/flat_route.hpp"

#include <string>

namespace routeweigh {

/// A composition as a mixture. A gas in what is no gas counts as dissolved; vapour is taken as what
/// condenses.
Mixture mixture_of(const streams::Composition& composition, std::string name, StreamKind kind);

/// The same the other way round: 100 g of the mixture. What its shares leave open is left out.
streams::Composition composition_of(const Mixture& mixture);

/// States the flash point of a watery liquid by the screening that sorts waste, with its method, so that one
/// liquid has one flash point in all that is said of it. Leaves a stated one alone, and halogenated solvents.
void screen_flash_point(Mixture& mixture, const streams::MixedLiquids& liquids);

} // namespace routeweigh
