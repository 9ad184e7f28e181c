// SPDX-License-Identifier: MIT
// Reads one substance of a catalogue file.
#pragma once

#include "chemistry/substance.hpp"
#include "input/field.hpp"

namespace routeweigh {

// Records in the field's collector what is wrong; the substance is good only where nothing was recorded.
Substance read_substance(const Field& field, const AtomicWeights& weights);

// "solid", "liquid" or "gas"; solid where the field is none of them, which is recorded.
Substance::Phase read_phase(const Field& field);

} // namespace routeweigh
