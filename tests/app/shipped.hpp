// SPDX-License-Identifier: MIT
// Example routes and small changes of them, for tests.
#pragma once

#include "app/session.hpp"
#include "app/what_if.hpp"

#include <memory>
#include <string>
#include <vector>

namespace routeweigh::test {

const AssessmentRules& rules();

/// A file below routes/, without ".json".
std::unique_ptr<Assessment> shipped(const std::string& name);

/// Every route file below routes/, as names for shipped().
std::vector<std::string> all_shipped();

/// A route from its text.
std::unique_ptr<Assessment> assessed(const std::string& text);

/// What the change of a route reads as. \throws CallError, InputError
std::unique_ptr<Assessment> changed(const Assessment& parent, const std::vector<std::string>& settings,
                                    const std::string& patch = {});

FigurePick pick(const std::string& figure);

} // namespace routeweigh::test
