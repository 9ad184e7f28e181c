// SPDX-License-Identifier: MIT
// The sheet that lies on the bench: reagents, theoretical yield, stages to tick, where each stream goes,
// results. The student edition leaves blank what the student is to work out.
#pragma once

#include "documents/shared_figure.hpp"

namespace routeweigh {

writing::Document bench_sheet(const bench::Experiment& experiment, documents::Edition edition);

} // namespace routeweigh
