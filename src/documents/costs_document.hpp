// SPDX-License-Identifier: MIT
// What an experiment costs a class in time, energy, water and money, every assumption beside its number.
#pragma once

#include "assess/course/class_use.hpp"
#include "writing/blocks.hpp"

namespace routeweigh {

/// \param session_minutes  length of one class; 0: not asked
writing::Document costs_document(const course::ClassUse& use, const course::House& house,
                                 double session_minutes);

} // namespace routeweigh
