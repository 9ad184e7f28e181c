// SPDX-License-Identifier: MIT
// Which kind of file a JSON text is, so that one put in the place of another is told in one line and not by
// every key that it lacks.
#pragma once

#include "input/field.hpp"

namespace routeweigh {

enum class FileKind { route, course, price_list, container_log, mixture, rules };

/// Does the key stand at the top by which this kind is known? A route has "steps", a course "experiments".
bool is_kind(const Field& root, FileKind kind);

/// \throws InputError where the text is known as another kind and not as this one; a text that is known as
/// none is left to its reader
void expect_kind(const Field& root, FileKind kind);

} // namespace routeweigh
