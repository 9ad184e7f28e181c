// SPDX-License-Identifier: MIT
// The course over time of what is in the flask, where a route file gives rates.
#pragma once

#include "documents/sections/section.hpp"

namespace routeweigh::documents {

/// Table, chart and sources; of routes with transients and without rates that only the ceiling is known.
void add_flask_courses(const ReportView& view, Blocks& blocks);

} // namespace routeweigh::documents
