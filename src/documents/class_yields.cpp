// SPDX-License-Identifier: MIT
#include "documents/class_yields.hpp"

#include "documents/number.hpp"
#include "documents/words.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <string>
#include <utility>

namespace routeweigh::documents {
namespace {

using results::ClassResults;
using results::Spread;

std::string section_name(const ClassResults& results, std::size_t section) {
    const std::string& name = results.sections[section];
    return name.empty() ? std::string("no section named") : name;
}

writing::Table yield_table(const ClassResults& results) {
    writing::Table table;
    table.caption = "Percent yields of the rows that are possible";
    const auto column = [](const char* heading, writing::Align align = writing::Align::decimal) {
        writing::Column made;
        made.heading = heading;
        made.align = align;
        return made;
    };
    table.columns = {column("", writing::Align::left),
                     column("rows", writing::Align::right),
                     column("lowest"),
                     column("quartile 1"),
                     column("median"),
                     column("quartile 3"),
                     column("highest"),
                     column("mean"),
                     column("standard deviation")};
    const auto add = [&](std::string name, const Spread& spread, writing::RowKind kind) {
        std::vector<writing::Cell> cells{
            writing::Cell(std::move(name)),
            writing::Cell(std::to_string(spread.count), static_cast<double>(spread.count))};
        for (const double value : {spread.least, spread.quartile1, spread.median, spread.quartile3,
                                   spread.most, spread.mean, spread.deviation})
            cells.push_back(std::isnan(value) ? writing::missing("too few rows") : number_cell(value, 1));
        table.rows.push_back({std::move(cells), kind});
    };
    if (results.by_section.size() > 1)
        for (std::size_t i = 0; i < results.by_section.size(); ++i)
            add(section_name(results, i), results.by_section[i], writing::RowKind::plain);
    add("all", results.all,
        results.by_section.size() > 1 ? writing::RowKind::total : writing::RowKind::plain);
    return table;
}

/// A width of bins that people read, with 40 bins at most.
double bin_width(double from, double to) {
    constexpr std::array widths{1.0, 2.0, 5.0, 10.0};
    for (const double width : widths)
        if ((to - from) / width <= 40) return width;
    return 20;
}

writing::Dots dots_of(const ClassResults& results) {
    constexpr std::uint64_t most_dots = 12;
    writing::Dots dots;
    dots.quantity = "percent yield";
    dots.unit = "%";
    dots.bin = bin_width(results.all.least, std::min(results.all.most, results::YieldTally::highest));
    std::uint64_t highest = 1;
    for (std::size_t section = 0; section < results.levels.sections; ++section) {
        if (results.by_section[section].count == 0) continue;
        writing::Dots::Group group;
        group.label = results.levels.sections == 1 ? std::string("class") : section_name(results, section);
        const Spread& spread = results.by_section[section];
        group.quartile1 = spread.quartile1;
        group.median = spread.median;
        group.quartile3 = spread.quartile3;
        for (std::size_t level = 0; level < results.levels.yields.size(); ++level) {
            const std::uint64_t count = results.levels.by_section(level)[section];
            if (count == 0) continue;
            const double from = dots.bin * std::floor(results.levels.yields[level] / dots.bin);
            if (group.stacks.empty() || group.stacks.back().from != from) group.stacks.push_back({from, 0});
            group.stacks.back().count += count;
            highest = std::max(highest, group.stacks.back().count);
        }
        dots.groups.push_back(std::move(group));
    }
    dots.per_dot = (highest + most_dots - 1) / most_dots;
    return dots;
}

writing::Figure yield_figure(const ClassResults& results) {
    writing::Figure figure;
    figure.caption = "Percent yields, with quartiles and median below the dots";
    figure.alternative = fmt::format(
        "Dots over a scale of per cent yield; the middle half of all lies between {} and {} %, the "
        "median is {} %.",
        fixed(results.all.quartile1, 1), fixed(results.all.quartile3, 1), fixed(results.all.median, 1));
    figure.chart = dots_of(results);
    return figure;
}

std::string p_text(double p) {
    return p < 0.001 ? std::string("below 0.001") : fixed(p, 3);
}

std::string section_words(const ClassResults& results) {
    if (!results.section_test) return "Sections are not compared: there are fewer than two with yields.";
    const results::SectionTest& test = *results.section_test;
    std::string words = fmt::format(
        "Kruskal-Wallis test over the sections: H = {}, {}, p {}{}. ", digits(test.h),
        counted(static_cast<std::size_t>(test.degrees), "degree of freedom", "degrees of freedom"),
        test.p < 0.001 ? "" : "= ", p_text(test.p));
    words += test.p < 0.05
                 ? "The sections differ by more than chance makes likely; the test does not say why."
                 : "Differences like these may have come about by chance: the test shows no difference "
                   "between the "
                   "sections, and it does not show that there is none.";
    if (test.small) words += " A section has fewer than five yields, so p is rough.";
    return words;
}

std::string outlier_words(const ClassResults& results) {
    if (!results.outlier_test)
        return "Outliers are not looked for: that takes five yields, of which fewer than half are equal.";
    const results::OutlierTest& test = *results.outlier_test;
    return fmt::format(
        "{} out by the modified z-score (0.6745 times the distance from the median {} %, over the "
        "median distance {}; the line is 3.5). An outlier stays in the figures until somebody finds "
        "its cause.",
        test.outliers == 0 ? std::string("No yield stands")
                           : capitalised(counted(test.outliers, "yield stands", "yields stand")),
        fixed(test.median, 1), digits(test.deviation));
}

} // namespace

void add_class_yields(const ClassResults& results, std::vector<writing::Block>& blocks) {
    blocks.push_back(writing::Heading{2, "Yields", "yields"});
    blocks.push_back(yield_table(results));
    blocks.push_back(yield_figure(results));
    if (results.by_section.size() > 1) blocks.push_back(writing::Paragraph{section_words(results)});
    blocks.push_back(writing::Paragraph{outlier_words(results)});
}

} // namespace routeweigh::documents
