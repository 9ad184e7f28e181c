// SPDX-License-Identifier: MIT
// The charges of a route with all that a candidate for improvement asks of one.
#pragma once

#include "assess/assessment.hpp"

#include <string>
#include <vector>

namespace routeweigh {

struct ChargePlace {
    const Step* step;
    const Stage* stage;
    const Charge* charge;
    int step_index;
    double grams; ///< as the step is written

    std::string_view role() const { return charge->role->name; }
    const std::string& material() const { return charge->material->name; }
    /// For what and where: "solvent, in the stage \"reaction\""; with the step where there are several.
    std::string purpose(const Route& route) const;
};

/// The same for charges of one role in one step: "solvent, in the stages "reaction" and "filtration"".
std::string purpose_of(const std::vector<ChargePlace>& places, const Route& route);

/// Every charge that is weighed or measured, in the order of the file.
std::vector<ChargePlace> charge_places(const Assessment& assessment);

/// mol of what the material is charged for, per mol of the reference; 0 where moles cannot be told.
double equivalents(const ChargePlace& place);

/// The amount as written, times a factor: its text, and the same as JSON.
std::string amount_text(const Charge& charge, double factor);
std::string amount_json(const Charge& charge, double factor);

/// A plain text as JSON; escapes what must be.
std::string json_quoted(std::string_view text);

/// "3.24 g": four significant digits.
std::string grams_text(double grams);

} // namespace routeweigh
