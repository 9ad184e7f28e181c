// SPDX-License-Identifier: MIT
// What an experiment costs a class in time, energy, water and money, every assumption beside its number.
#pragma once

#include "assess/course/class_use.hpp"
#include "writing/blocks.hpp"

namespace routeweigh {

writing::Document costs_document(const course::ClassUse& use, const course::House& house);

} // namespace routeweigh
