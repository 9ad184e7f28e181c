// SPDX-License-Identifier: MIT
#include "assess/results/yield_tally.hpp"

#include <boost/math/distributions/chi_squared.hpp>

#include <algorithm>
#include <cmath>
#include <limits>
#include <numeric>
#include <utility>

namespace routeweigh::results {
namespace {

constexpr double nothing = std::numeric_limits<double>::quiet_NaN();
constexpr auto bin_count = static_cast<std::size_t>(YieldTally::highest / YieldTally::step) + 1;

std::uint64_t count_at(const YieldLevels& levels, std::size_t level, std::optional<std::size_t> section) {
    return section ? levels.by_section(level)[*section] : levels.count(level);
}

std::uint64_t total(const YieldLevels& levels, std::optional<std::size_t> section) {
    std::uint64_t sum = 0;
    for (std::size_t level = 0; level < levels.yields.size(); ++level)
        sum += count_at(levels, level, section);
    return sum;
}

} // namespace

std::uint64_t YieldLevels::count(std::size_t level) const {
    const auto counts_here = by_section(level);
    return std::accumulate(counts_here.begin(), counts_here.end(), std::uint64_t{0});
}

/// Welford's update: exact enough in one pass over any number of values.
void YieldTally::Moments::add(double value) {
    least = count == 0 ? value : std::min(least, value);
    most = count == 0 ? value : std::max(most, value);
    ++count;
    const double before = value - mean;
    mean += before / static_cast<double>(count);
    squares += before * (value - mean);
}

void YieldTally::add(double percent, std::size_t section) {
    all_.add(percent);
    by_section_[section].add(percent);
    if (bins_.empty()) {
        kept_.push_back({percent, static_cast<std::uint32_t>(section)});
        if (kept_.size() <= most_kept) return;
        bins_.resize(1);
        for (const Kept& kept : kept_)
            count_in_steps(kept.percent, kept.section);
        kept_ = {};
        return;
    }
    count_in_steps(percent, section);
}

void YieldTally::count_in_steps(double percent, std::size_t section) {
    if (section >= bins_.size()) bins_.resize(section + 1);
    std::vector<std::uint32_t>& bins = bins_[section];
    if (bins.empty()) bins.resize(bin_count);
    ++bins[static_cast<std::size_t>(std::lround(std::clamp(percent, 0.0, highest) / step))];
}

YieldLevels YieldTally::levels() const {
    YieldLevels levels;
    levels.sections = by_section_.size();
    if (counted_in_steps()) {
        for (std::size_t bin = 0; bin < bin_count; ++bin) {
            const auto count_in = [&](std::size_t section) {
                return section < bins_.size() && !bins_[section].empty() ? bins_[section][bin] : 0U;
            };
            bool any = false;
            for (std::size_t section = 0; section < levels.sections; ++section)
                any = any || count_in(section) > 0;
            if (!any) continue;
            levels.yields.push_back(static_cast<double>(bin) * step);
            for (std::size_t section = 0; section < levels.sections; ++section)
                levels.counts.push_back(count_in(section));
        }
        return levels;
    }
    std::vector<Kept> sorted = kept_;
    std::sort(sorted.begin(), sorted.end(),
              [](const Kept& a, const Kept& b) { return a.percent < b.percent; });
    for (const Kept& kept : sorted) {
        if (levels.yields.empty() || levels.yields.back() != kept.percent) {
            levels.yields.push_back(kept.percent);
            levels.counts.resize(levels.counts.size() + levels.sections);
        }
        ++levels.counts[levels.counts.size() - levels.sections + kept.section];
    }
    return levels;
}

double quantile(const YieldLevels& levels, double p, std::optional<std::size_t> section) {
    const double place = p * static_cast<double>(total(levels, section) - 1);
    const auto lower = static_cast<std::uint64_t>(place);
    double low = nothing;
    std::uint64_t passed = 0;
    for (std::size_t level = 0; level < levels.yields.size(); ++level) {
        passed += count_at(levels, level, section);
        if (std::isnan(low) && passed > lower) {
            low = levels.yields[level];
            if (place == static_cast<double>(lower)) return low;
        }
        if (passed > lower + 1)
            return low + (place - static_cast<double>(lower)) * (levels.yields[level] - low);
    }
    return low;
}

Spread YieldTally::spread(const YieldLevels& levels, std::optional<std::size_t> section) const {
    const Moments moments = section ? by_section_[*section] : all_;
    Spread spread;
    spread.count = moments.count;
    if (moments.count == 0) return {0, nothing, nothing, nothing, nothing, nothing, nothing, nothing};
    spread.mean = moments.mean;
    spread.deviation =
        moments.count > 1 ? std::sqrt(moments.squares / static_cast<double>(moments.count - 1)) : nothing;
    spread.least = moments.least;
    spread.most = moments.most;
    spread.quartile1 = quantile(levels, 0.25, section);
    spread.median = quantile(levels, 0.5, section);
    spread.quartile3 = quantile(levels, 0.75, section);
    return spread;
}

std::optional<SectionTest> compare_sections(const YieldLevels& levels) {
    std::vector<double> ranks(levels.sections), sizes(levels.sections);
    double passed = 0, ties = 0;
    for (std::size_t level = 0; level < levels.yields.size(); ++level) {
        const auto count = static_cast<double>(levels.count(level));
        const double rank = passed + (count + 1) / 2; // of all that share this yield
        ties += count * (count * count - 1);
        passed += count;
        for (std::size_t section = 0; section < levels.sections; ++section) {
            const double here = levels.by_section(level)[section];
            ranks[section] += here * rank;
            sizes[section] += here;
        }
    }
    SectionTest test;
    double sum = 0;
    int sections = 0;
    for (std::size_t section = 0; section < levels.sections; ++section) {
        if (sizes[section] == 0) continue;
        ++sections;
        test.small = test.small || sizes[section] < 5;
        sum += ranks[section] * ranks[section] / sizes[section];
    }
    const double correction = 1 - ties / (passed * (passed * passed - 1));
    if (sections < 2 || !(correction > 0)) return std::nullopt;
    test.degrees = sections - 1;
    test.h = std::max(0.0, (12 / (passed * (passed + 1)) * sum - 3 * (passed + 1)) / correction);
    const boost::math::chi_squared distribution(test.degrees);
    test.p = boost::math::cdf(boost::math::complement(distribution, test.h));
    return test;
}

bool OutlierTest::stands_out(double percent) const {
    return std::abs(score(percent)) > limit;
}

std::optional<OutlierTest> find_outliers(const YieldLevels& levels) {
    const std::uint64_t all = total(levels, std::nullopt);
    if (all < 5) return std::nullopt;
    OutlierTest test;
    test.median = quantile(levels, 0.5);
    std::vector<std::pair<double, std::uint32_t>> distances;
    distances.reserve(levels.yields.size());
    for (std::size_t level = 0; level < levels.yields.size(); ++level)
        distances.emplace_back(std::abs(levels.yields[level] - test.median),
                               static_cast<std::uint32_t>(levels.count(level)));
    std::sort(distances.begin(), distances.end());
    YieldLevels sorted;
    sorted.sections = 1;
    for (const auto& [distance, count] : distances) {
        sorted.yields.push_back(distance);
        sorted.counts.push_back(count);
    }
    test.deviation = quantile(sorted, 0.5);
    if (!(test.deviation > 0)) return std::nullopt;
    for (std::size_t level = 0; level < levels.yields.size(); ++level)
        if (test.stands_out(levels.yields[level])) test.outliers += levels.count(level);
    return test;
}

} // namespace routeweigh::results
