// SPDX-License-Identifier: MIT
// A route with something changed: the text of the file is patched and read again as any other, so every check
// of a route file applies to it.
#pragma once

#include "assess/figure_pick.hpp"
#include "chemistry/catalogue.hpp"
#include "compare/comparison.hpp"
#include "compare/improvement.hpp"
#include "compare/numeric_input.hpp"
#include "compare/trial.hpp"
#include "input/field.hpp"
#include "input/patch.hpp"
#include "route/route.hpp"

#include <optional>
#include <string>
#include <vector>

namespace routeweigh {

/// What is to be changed: single places in their order, then a merge patch.
struct RouteChange {
    std::vector<Assignment> places;
    SourcePtr patch;    ///< nullptr: none
    std::string id;     ///< of the changed route; empty: "-changed" behind that of its parent
    std::string schema; ///< where its folder finds the schema; empty: as in the parent
};

/// As find_input(). \param problems  receives a warning where the words are only a part of its name
/// \throws CallError
NumericInput input_named(const Route& route, const std::string& words, Problems& problems);

/// \throws CallError that names the nearest id
FigurePick figure_named(const std::string& id, const AssessmentRules& rules);

/// "PLACE=VALUE" as the command line takes it. PLACE is a JSON pointer or the name of a numeric input, see
/// input_named(). VALUE is JSON, or else a text. \throws CallError
Assignment read_assignment(const std::string& words, const Route& parent, Problems& problems);

/// The text of a route file with the changes in it and the record of its parentage. Figures of the parent
/// are not those of the changed route: it counts as never run, and its yields as assumed, except where the
/// change itself says otherwise. \throws CallError for a pointer that leads nowhere, InputError for a faulty
/// patch
SourcePtr changed_source(const Route& parent, const RouteChange& change);

/// Reads a changed route. The problems name pointers and lines of the changed text, which nobody has seen, so
/// they carry no line number. \throws InputError
Route read_changed(const SourcePtr& changed, const Catalogue& catalogue, Problems& problems);

/// Puts values into the parent and nothing else; fast, for searches. The parent, the catalogue and the rules
/// must outlive it.
Apply apply_to(const Route& parent, const Catalogue& catalogue, const AssessmentRules& rules);

/// What would improve each route of a comparison, for the report: by mass, without pairs.
std::vector<Improvements> improvements_of(const Comparison& comparison, const Catalogue& catalogue,
                                          const AssessmentRules& rules);

/// What would lower the complete E-factor of a route, for questions about it; none where it has no value.
std::optional<Improvements> waste_improvements_of(const Assessment& route);

} // namespace routeweigh
