// SPDX-License-Identifier: MIT
#include "documents/improvement_words.hpp"

#include "base/text.hpp"
#include "compare/charge_place.hpp"
#include "documents/number.hpp"
#include "documents/words.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace routeweigh::documents {

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
    std::vector<std::string> parts;
    for (const AddedHazard& added : entry.added)
        parts.push_back(fmt::format("{}, {} (d {} to {})", added.endpoint, added.place,
                                    fixed(added.before, 2), fixed(added.after, 2)));
    std::string text = parts.empty() ? "none seen by this method" : listed(parts);
    for (const LeftOver& left : entry.left_over)
        text += fmt::format("; left over then: {} {} ({} before)", grams_text(left.after), left.substance,
                            grams_text(left.before));
    return text;
}

std::string dangers_and_tests(const Candidate& candidate) {
    return (candidate.dangers.empty() ? std::string() : " Look out: " + join(candidate.dangers, "; ") + ".") +
           " To test: " + join(candidate.cautions, "; ") + ".";
}

bool changes_yield(const Improvements& improvements) {
    return std::any_of(improvements.ranked.begin(), improvements.ranked.end(),
                       [](const Improvement& entry) { return entry.candidate.kind == "better_yield"; });
}

std::string standing_of(const Improvements& improvements) {
    return std::string(untested) +
           (changes_yield(improvements) ? ", save where the yield is what changes" : "");
}

void tell_found_yields(const Assessment& route, std::vector<writing::Block>& blocks) {
    for (const Step& step : route.route().steps)
        if (const Isolated& isolated = step.isolated;
            !isolated.assumed && !isolated.note.empty() && isolated.yield)
            blocks.push_back(writing::Paragraph{
                fmt::format("Yield of {}: {}, {}.", step.id, percent(*isolated.yield), isolated.note), true});
}

} // namespace routeweigh::documents
