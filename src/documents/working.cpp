// SPDX-License-Identifier: MIT
#include "documents/working.hpp"

#include "documents/number.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace routeweigh::documents {
namespace {

struct Line {
    std::string words, numbers;
};

/// "100 x a" with the sign of multiplication.
std::string with_times_signs(std::string text) {
    for (std::size_t at = text.find(" x "); at != std::string::npos; at = text.find(" x ", at))
        text.replace(at, 3, " \u00D7 ");
    return text;
}

/// The sum of one term, put on the list unless it is there: above and below the line may stand the same.
const WorkingSum& listed_sum(const Assessment& route, const Term& term, std::vector<WorkingSum>& sums) {
    const auto found = std::find_if(sums.begin(), sums.end(), [&](const WorkingSum& sum) {
        return sum.total == term.total && sum.name == term.words;
    });
    if (found != sums.end()) return *found;
    return sums.emplace_back(working_sum(route, term.total, term.words));
}

/// A sum of terms, in brackets where it has more than one.
Line side_of(const Assessment& route, std::span<const Term> terms, std::vector<WorkingSum>& sums) {
    Line line;
    for (const Term& term : terms) {
        const WorkingSum& sum = listed_sum(route, term, sums);
        const char* joint = term.sign < 0.0 ? " \u2212 " : line.words.empty() ? "" : " + ";
        line.words += joint + std::string(term.words);
        line.numbers += joint + sum.text + " " + sum.unit;
    }
    if (terms.size() > 1) {
        line.words = "(" + line.words + ")";
        line.numbers = "(" + line.numbers + ")";
    }
    return line;
}

Working of_ratio(const Assessment& route, const Metric& metric) {
    Working working;
    const Line above = side_of(route, metric.above, working.sums);
    working.formula = above.words;
    working.numbers = above.numbers;
    if (metric.factor != 1.0) {
        working.formula = fmt::format("{:g} \u00D7 ", metric.factor) + working.formula;
        working.numbers = fmt::format("{:g} \u00D7 ", metric.factor) + working.numbers;
    }
    if (!metric.below.empty()) {
        const Line below = side_of(route, metric.below, working.sums);
        working.formula += " / " + below.words;
        working.numbers += " / " + below.numbers;
    }
    return working;
}

/// A derived figure: the names of the figures in its formula replaced by their values.
Working of_figures(const Assessment& route, const Metric& metric) {
    Working working;
    working.formula = std::string(metric.formula);
    working.numbers = working.formula;
    for (const std::string_view id : metric.from) {
        working.from.push_back(id);
        const Metric& source = *all_metrics()[static_cast<std::size_t>(metric_index(id))];
        std::string name(source.name);
        if (name.front() >= 'A' && name.front() <= 'Z')
            name.front() = static_cast<char>(name.front() - 'A' + 'a');
        const std::size_t at = working.numbers.find(name);
        if (at == std::string::npos) continue;
        std::string number = figure_text(route.metric(id), source.decimals);
        if (!source.unit.empty()) number += " " + std::string(source.unit);
        working.numbers.replace(at, name.size(), number);
    }
    return working;
}

} // namespace

Working working_of(const Assessment& route, const Metric& metric) {
    Working working = metric.derive != nullptr ? of_figures(route, metric) : of_ratio(route, metric);
    for (std::string* text : {&working.formula, &working.numbers})
        *text = with_times_signs(*text);
    const double value = route.metric(metric.id);
    working.result = std::isnan(value) ? "no value: " + std::string(metric.missing)
                                       : quantity(value, metric.decimals, metric.unit).text;
    return working;
}

} // namespace routeweigh::documents
