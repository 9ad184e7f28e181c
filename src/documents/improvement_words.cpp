// SPDX-License-Identifier: MIT
#include "documents/improvement_words.hpp"

#include "documents/number.hpp"
#include "documents/words.hpp"

#include <fmt/format.h>

#include <cmath>

namespace routeweigh::documents {

std::string value_text(const FigurePick& figure, double value) {
    const std::string text = figure_text(value, figure.decimals());
    return figure.unit().empty() ? text : text + " " + unit_text(figure.unit());
}

std::string effect_text(const FigurePick& figure, double before, double change) {
    std::string text = difference_text(before + change, before, figure.decimals());
    if (figure.unit() == "%" || before == 0.0) return text;
    const double share = 100.0 * change / before;
    return fmt::format("{} ({} %)", text, difference_text(share, std::abs(share) < 9.95 ? 1 : 0));
}

std::vector<writing::Column> effect_columns(const FigurePick& figure) {
    return {{.heading = "then", .align = decimal, .unit = unit_text(figure.unit())},
            {.heading = "difference", .align = decimal},
            {.heading = "change", .align = decimal, .unit = "%"},
            {.heading = "eaten by",
             .align = decimal,
             .unit = "points of yield",
             .note = "the loss of yield, in the step that is changed, that would eat the gain"}};
}

std::vector<writing::Cell> effect_cells(const FigurePick& figure, const Improvement& entry) {
    const double change = entry.after - entry.before, share = 100.0 * change / entry.before;
    std::vector<writing::Cell> cells{
        number_cell(entry.after, figure.decimals()),
        {difference_text(entry.after, entry.before, figure.decimals()), change},
        std::isfinite(share) ? writing::Cell(difference_text(share, std::abs(share) < 9.95 ? 1 : 0), share)
                             : writing::Cell("")};
    if (!entry.yield_at_par) {
        cells.push_back(writing::missing("no loss of yield eats it"));
        return cells;
    }
    const double points = 100.0 * (entry.yield - *entry.yield_at_par);
    cells.push_back(number_cell(points, points < 10.0 ? 1 : 0));
    return cells;
}

std::string added_text(const Improvement& entry) {
    if (entry.added.empty()) return "none seen by this method";
    std::vector<std::string> parts;
    for (const AddedHazard& added : entry.added)
        parts.push_back(fmt::format("{}, {} (d {} to {})", added.endpoint, added.place,
                                    fixed(added.before, 2), fixed(added.after, 2)));
    return listed(parts);
}

} // namespace routeweigh::documents
