// SPDX-License-Identifier: MIT
// Route files for tests, written tersely: each function gives a piece of the JSON that a user would write.
#pragma once

#include "chemistry/catalogue.hpp"
#include "input/field.hpp"
#include "route/flat_route.hpp"
#include "route/route.hpp"

#include <initializer_list>
#include <string>
#include <string_view>
#include <vector>

namespace routeweigh::test {

using Items = std::vector<std::string>;

inline constexpr std::string_view bromination_equation =
    "acetanilide + bromine -> 4-bromoacetanilide + hydrogen bromide";
inline constexpr std::string_view peroxide_equation =
    "hydrogen peroxide + 2 hydrogen bromide -> bromine + 2 water";

/// \param more  further members of the object, as JSON: R"("bought": true)"
std::string charge(std::string_view material, std::string_view amount, std::string_view role,
                   std::string_view more = {});
std::string reaction(std::string_view equation, std::string_view more = {});
std::string filtration(std::string_view to, std::string_view more);
std::string stage(std::string_view phase, const Items& charges, const Items& reactions = {},
                  const Items& separations = {}, std::string_view more = {});
/// The id of a step is its product unless \p more says otherwise with an "id"; the yield is 100 % likewise.
std::string step(std::string_view product, std::string_view reference, std::string_view overall,
                 const Items& stages, std::string_view more = {});
std::string route(std::string_view product, const Items& steps, std::string_view more = {});

/// A one-step route with one reaction stage and nothing after it.
std::string one_pot(std::string_view product, std::string_view reference, std::string_view overall,
                    const Items& charges, const Items& reactions, std::string_view more = {});

/// The same for an equation alone: as many mol of each reactant as its coefficient says.
std::string equation_only(std::string_view overall, std::string_view product, std::string_view more = {});

/// A route that was read, and its compiled form. \throws InputError
struct Built {
    explicit Built(std::string text, const Catalogue& catalogue = Catalogue::embedded());
    Built(const Built&) = delete;
    Built& operator=(const Built&) = delete;

    Problems problems; ///< warnings
    Route route;
    FlatRoute flat;
    Evaluation nominal;

    /// g in one stream, of one substance or of all; 0 for a substance that is not there.
    double out(std::string_view stream, std::string_view substance = {}, bool unreacted = false) const;
    /// mmol in one stream.
    double mmol_out(std::string_view stream, std::string_view substance, bool unreacted = false) const;
    /// g put in, gross, of one substance or of all; intermediates do not count.
    double in(std::string_view substance = {}) const;
    /// mmol of one substance in the flask at one time at most, as one run of the last step needs it.
    double mmol_in_flask(std::string_view substance, int step = 0) const;
    const StepResult& step(int index = 0) const { return nominal.steps[static_cast<std::size_t>(index)]; }
    double closure(bool unreacted = false) const;
    bool has_stream(std::string_view name) const;
};

/// Every problem of a route file, each as the program prints it; empty for a file without fault. Warnings
/// too.
std::vector<std::string> problems_of(const std::string& text,
                                     const Catalogue& catalogue = Catalogue::embedded());

/// True when one of the lines holds all of the parts.
bool any_holds(const std::vector<std::string>& lines, std::initializer_list<std::string_view> parts);

/// A catalogue of invented substances: "name | formula | phase | density", the last two optional (solid,
/// none).
Catalogue catalogue_of(std::initializer_list<std::string_view> substances);

} // namespace routeweigh::test
