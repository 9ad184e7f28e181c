// SPDX-License-Identifier: MIT
// The nine hazard pictograms of the Globally Harmonized System: a black symbol on white in a red diamond.
//
// The symbols are drawn here after the standard's description (UN GHS 1.4.10.4 and Annex 1; CLP Annex V), for
// labels of a teaching laboratory; a supplier's printed label comes first.
#pragma once

#include <span>
#include <string>
#include <string_view>

namespace routeweigh::writing {

struct Pictogram {
    std::string_view code;   ///< "GHS05"
    std::string_view name;   ///< "corrosion", the standard's word
    std::string_view shows;  ///< what is seen, for those who cannot see it
    std::string_view symbol; ///< SVG shapes in a square of 100 by 100, drawn in black
};

/// GHS01 to GHS09, ascending.
std::span<const Pictogram> pictogram_list();

/// nullptr where the code is none of the nine.
const Pictogram* find_pictogram(std::string_view code);

/// "GHS05 corrosion"; the code alone where it is none of the nine.
std::string pictogram_words(std::string_view code);

/// Inline SVG, `side` pixels wide and high, with its name and what it shows as text alternative. `id` makes
/// the ids inside unique within the page.
std::string pictogram_svg(const Pictogram& pictogram, std::string_view id, double side = 72);

} // namespace routeweigh::writing
