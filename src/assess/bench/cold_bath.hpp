// SPDX-License-Identifier: MIT
// What cools a stage, and the readings of a stage that this rests on. Bench sheet and techniques both ask
// here.
#pragma once

#include "route/route.hpp"

namespace routeweigh::bench {

enum class ColdBath {
    none,   ///< nothing has to, or water of the tap will do
    ice,    ///< above -5 degC
    salt,   ///< ice with salt, -20 degC to -5 degC
    dry_ice ///< below -20 degC
};

/// By the temperature that the stage states, 10 degC at most; a warm pot from which crystals of the product
/// are filtered goes into ice too. What is washed on a filter or only dried stands in no bath. The lines are
/// common practice, no source.
ColdBath cold_bath(const Step& step, const Stage& stage);

/// Stated to be 10 degC or less, and in a pot or under pressure.
bool is_held_cold(const Stage& stage);

/// Stated to be 40 degC or more; common practice, no source.
bool is_warm(const Stage& stage);

/// Crystals of the product are to come from the warm pot before it is filtered.
bool cools_before_filtering(const Step& step, const Stage& stage);

bool separates(const Stage& stage, SeparationMethod method);

/// Nothing but washing on a filter.
bool washes_on_filter(const Stage& stage);

/// Nobody weighs anything in, and what is there is dried.
bool only_dries(const Stage& stage);

} // namespace routeweigh::bench
