// SPDX-License-Identifier: MIT
// One page for the five minutes before class: three hazards, what to do, two streams, what to look for.
#pragma once

#include "documents/shared_figure.hpp"

namespace routeweigh {

writing::Document talk_card(const bench::Experiment& experiment);

} // namespace routeweigh
