// SPDX-License-Identifier: MIT
#include "base/distribution.hpp"

#include <boost/random/beta_distribution.hpp>
#include <boost/random/normal_distribution.hpp>
#include <boost/random/triangle_distribution.hpp>
#include <boost/random/uniform_int_distribution.hpp>
#include <boost/random/uniform_real_distribution.hpp>

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <limits>
#include <stdexcept>
#include <utility>

namespace routeweigh {
namespace {

void require(bool holds, const char* otherwise) {
    if (!holds) throw std::domain_error(otherwise);
}

void require_order(double low, double likely, double high) {
    require(std::isfinite(low) && std::isfinite(likely) && std::isfinite(high),
            "a distribution needs finite numbers");
    require(low <= high, "the lower end of a distribution lies above its upper end");
    require(low <= likely && likely <= high, "the most likely value of a distribution lies outside its ends");
}

template<typename Drawn>
void fill(Drawn drawn, PhiloxStream& stream, std::span<double> values) {
    for (double& value : values)
        value = drawn(stream);
}

// One function a kind; the ends are not drawn from where they coincide.
struct Draw {
    PhiloxStream& stream;
    std::span<double> values;

    void constant(double value) const { std::fill(values.begin(), values.end(), value); }

    void operator()(const Normal& normal) const {
        if (normal.deviation == 0.0) return constant(normal.mean);
        fill(boost::random::normal_distribution<double>(normal.mean, normal.deviation), stream, values);
    }
    void operator()(const Rectangular& range) const {
        if (range.low == range.high) return constant(range.low);
        fill(boost::random::uniform_real_distribution<double>(range.low, range.high), stream, values);
    }
    void operator()(const Triangular& range) const {
        if (range.low == range.high) return constant(range.low);
        fill(boost::random::triangle_distribution<double>(range.low, range.likely, range.high), stream,
             values);
    }
    void operator()(const Pert& range) const {
        const double width = range.high - range.low;
        if (width == 0.0) return constant(range.low);
        const double left = 1.0 + 4.0 * (range.likely - range.low) / width;
        fill(boost::random::beta_distribution<double>(left, 6.0 - left), stream, values);
        for (double& value : values)
            value = range.low + width * value;
    }
    void operator()(const Empirical& found) const {
        boost::random::uniform_int_distribution<std::size_t> which(0, found.values.size() - 1);
        for (double& value : values)
            value = found.values[which(stream)];
    }
};

struct Scale {
    double factor;

    Distribution operator()(const Normal& n) const { return Normal{factor * n.mean, factor * n.deviation}; }
    Distribution operator()(const Rectangular& r) const {
        return Rectangular{factor * r.low, factor * r.high};
    }
    Distribution operator()(const Triangular& t) const {
        return Triangular{factor * t.low, factor * t.likely, factor * t.high};
    }
    Distribution operator()(const Pert& p) const {
        return Pert{factor * p.low, factor * p.likely, factor * p.high};
    }
    Distribution operator()(Empirical found) const {
        for (double& value : found.values)
            value *= factor;
        return found;
    }
};

constexpr double infinite = std::numeric_limits<double>::infinity();

} // namespace

Distribution::Distribution(Normal normal) : kind_(normal), mean_(normal.mean), deviation_(normal.deviation) {
    require(std::isfinite(normal.mean) && std::isfinite(normal.deviation),
            "a distribution needs finite numbers");
    require(normal.deviation >= 0.0, "a standard deviation is not negative");
    least_ = greatest_ = mean_;
    if (deviation_ > 0.0) {
        least_ = -infinite;
        greatest_ = infinite;
    }
}

Distribution::Distribution(Rectangular range)
    : kind_(range), mean_((range.low + range.high) / 2.0),
      deviation_((range.high - range.low) / std::sqrt(12.0)), least_(range.low), greatest_(range.high) {
    require_order(range.low, mean_, range.high);
}

Distribution::Distribution(Triangular range)
    : kind_(range), mean_((range.low + range.likely + range.high) / 3.0), least_(range.low),
      greatest_(range.high) {
    require_order(range.low, range.likely, range.high);
    const double left = range.likely - range.low, width = range.high - range.low;
    deviation_ = std::sqrt((width * width - left * (width - left)) / 18.0);
}

Distribution::Distribution(Pert range)
    : kind_(range), mean_((range.low + 4.0 * range.likely + range.high) / 6.0), least_(range.low),
      greatest_(range.high) {
    require_order(range.low, range.likely, range.high);
    deviation_ = std::sqrt((mean_ - range.low) * (range.high - mean_) / 7.0);
}

Distribution::Distribution(Empirical found) : kind_(std::move(found)) {
    const std::vector<double>& values = std::get<Empirical>(kind_).values;
    require(!values.empty(), "there are no results to draw from");
    require(std::all_of(values.begin(), values.end(), [](double value) { return std::isfinite(value); }),
            "a distribution needs finite numbers");
    const auto count = static_cast<double>(values.size());
    for (const double value : values)
        mean_ += value / count;
    for (const double value : values)
        deviation_ += (value - mean_) * (value - mean_) / count;
    deviation_ = std::sqrt(deviation_);
    least_ = *std::min_element(values.begin(), values.end());
    greatest_ = *std::max_element(values.begin(), values.end());
}

const char* Distribution::name() const {
    constexpr const char* names[] = {"normal", "rectangular", "triangular", "PERT", "results"};
    return names[kind_.index()];
}

Distribution Distribution::scaled(double factor) const {
    return std::visit(Scale{factor}, kind_);
}

void Distribution::draw(PhiloxStream& stream, std::span<double> values) const {
    std::visit(Draw{stream, values}, kind_);
}

} // namespace routeweigh
