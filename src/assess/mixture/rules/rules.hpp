// SPDX-License-Identifier: MIT
// The rules there are, one declaration each.
#pragma once

#include "assess/mixture/rule.hpp"

namespace routeweigh::mixture_rules {

extern const MixtureRule flammable_liquid;
extern const MixtureRule oxidiser;
extern const MixtureRule metal_corrosion;
extern const MixtureRule other_physical;
extern const MixtureRule acute_toxicity;
extern const MixtureRule skin_contact;
extern const MixtureRule eye_contact;
extern const MixtureRule sensitisation;
extern const MixtureRule lasting_harm;
extern const MixtureRule target_organs;
extern const MixtureRule transient_effects;
extern const MixtureRule aspiration;
extern const MixtureRule supplemental_statements;
extern const MixtureRule aquatic;
extern const MixtureRule listed_environment;

} // namespace routeweigh::mixture_rules
