// SPDX-License-Identifier: MIT
// Percent yields of a class of any size in constant memory, and what is said of them.
//
// Up to 65 536 yields are kept as they are. From then on they are counted in steps of 0.01 per cent between 0
// and 300 %, so that order statistics are off by at most 0.005 per cent; mean, deviation and extremes stay
// exact. Quantiles interpolate linearly between the two neighbours in order (type 7 of Hyndman and Fan, Am.
// Stat. 1996, 50, 361; from memory).
#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
#include <span>
#include <vector>

namespace routeweigh::results {

/// Distinct yields in ascending order with how often each section had them.
struct YieldLevels {
    std::vector<double> yields;        ///< per cent
    std::vector<std::uint32_t> counts; ///< yields.size() times sections, by yield and then section
    std::size_t sections = 0;

    std::uint64_t count(std::size_t level) const; ///< over all sections
    std::span<const std::uint32_t> by_section(std::size_t level) const {
        return {counts.data() + level * sections, sections};
    }
};

/// NaN where there are too few yields.
struct Spread {
    std::uint64_t count = 0;
    double mean = 0, deviation = 0; ///< of the sample, n - 1
    double least = 0, quartile1 = 0, median = 0, quartile3 = 0, most = 0;
};

class YieldTally {
  public:
    static constexpr std::size_t most_kept = 65536;
    static constexpr double step = 0.01, highest = 300; ///< per cent

    /// The next section; what follows may be added to it.
    void add_section() { by_section_.emplace_back(); }
    /// \pre section is below the number of sections
    /// \param percent  what is outside 0 to 300 counts at the end of the scale once yields are only counted
    void add(double percent, std::size_t section);

    std::uint64_t count() const { return all_.count; }
    bool counted_in_steps() const { return !bins_.empty(); }

    YieldLevels levels() const;
    /// Of all, or of one section.
    Spread spread(const YieldLevels& levels, std::optional<std::size_t> section = {}) const;

  private:
    struct Kept {
        double percent;
        std::uint32_t section;
    };
    struct Moments {
        std::uint64_t count = 0;
        double mean = 0, squares = 0, least = 0, most = 0;
        void add(double value);
    };
    void count_in_steps(double percent, std::size_t section);

    std::vector<Kept> kept_;
    std::vector<std::vector<std::uint32_t>> bins_; ///< by section
    Moments all_;
    std::vector<Moments> by_section_;
};

/// Value at the share p of the order, 0 to 1. \pre there is one
double quantile(const YieldLevels& levels, double p, std::optional<std::size_t> section = {});

/// Kruskal and Wallis' test whether sections differ, ties corrected: H is compared with chi squared of one
/// degree less than there are sections (J. Am. Stat. Assoc. 1952, 47, 583; from memory).
struct SectionTest {
    double h = 0, p = 1;
    int degrees = 0;
    bool small = false; ///< a section has fewer than 5 yields, and p is rough
};
/// Empty for fewer than two sections with yields, or when all yields are equal.
std::optional<SectionTest> compare_sections(const YieldLevels& levels);

/// The modified z-score M = 0.6745 (x - median) / MAD, MAD the median of |x - median|; |M| above 3.5 stands
/// out (Iglewicz and Hoaglin, How to Detect and Handle Outliers, 1993; from memory).
struct OutlierTest {
    static constexpr double factor = 0.6745, limit = 3.5;
    double median = 0, deviation = 0; ///< MAD, per cent
    std::uint64_t outliers = 0;

    double score(double percent) const { return factor * (percent - median) / deviation; }
    bool stands_out(double percent) const;
};
/// Empty for fewer than five yields, or when more than half of them are equal.
std::optional<OutlierTest> find_outliers(const YieldLevels& levels);

} // namespace routeweigh::results
