// SPDX-License-Identifier: MIT
// Reads one material of a catalogue file.
#pragma once

#include "chemistry/material.hpp"
#include "input/field.hpp"

#include <functional>
#include <string>
#include <string_view>

namespace routeweigh {

// How a reader comes from the id of a component to its substance.
struct ComponentLookup {
    std::function<const Substance*(std::string_view id)> find; // nullptr where there is none
    std::function<std::string(std::string_view id)> nearest;   // "" where nothing is near
};

// Records in the field's collector what is wrong; the material is good only where nothing was recorded.
Material read_material(const Field& field, const ComponentLookup& lookup);

} // namespace routeweigh
