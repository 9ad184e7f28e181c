// SPDX-License-Identifier: MIT
#include "route/spread.hpp"

#include "base/unit_table.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <limits>
#include <string>
#include <vector>

namespace routeweigh {
namespace {

/// A number of the same kind as `written`, in its unit; a problem and nothing where it is of another kind.
std::optional<double> in_unit_of(const WrittenQuantity& written, const Field& field) {
    const WrittenQuantity other = field.quantity();
    const UnitSpelling* ours = find_unit(written.unit);
    const UnitSpelling* theirs = find_unit(other.unit);
    if (!field.is_text() || ours == nullptr || theirs == nullptr) return std::nullopt;
    if (ours->kind != theirs->kind || other.repeat != 1 || other.spread) {
        field.problem(fmt::format("expected one number in {} or the like, as the number that it belongs to",
                                  written.unit));
        return std::nullopt;
    }
    return other.value * theirs->factor / ours->factor;
}

std::optional<Distribution> read_plus_minus(const Field& meaning, const WrittenQuantity& written) {
    const std::string word =
        meaning.one_of({"standard", "expanded k=2", "tolerance", "triangular tolerance"});
    const double value = written.value, spread = *written.spread;
    if (word == "standard") return Normal{value, spread};
    if (word == "expanded k=2") return Normal{value, spread / 2.0};
    if (word == "tolerance") return Rectangular{value - spread, value + spread};
    if (word == "triangular tolerance") return Triangular{value - spread, value, value + spread};
    return std::nullopt;
}

std::optional<Distribution> read_range(const Field& field, const std::string& kind,
                                       const WrittenQuantity& written) {
    const Field from = field["from"], to = field["to"];
    const auto low = in_unit_of(written, from), high = in_unit_of(written, to);
    if (!low || !high) return std::nullopt;
    if (*low > *high) {
        to.contradiction("the range ends below its start", from);
        return std::nullopt;
    }
    if (written.value < *low || written.value > *high) {
        field.problem(fmt::format("{:g} {} lies outside this range", written.value, written.unit));
        return std::nullopt;
    }
    if (kind == "rectangular") return Rectangular{*low, *high};
    if (kind == "triangular") return Triangular{*low, written.value, *high};
    return Pert{*low, written.value, *high};
}

std::optional<Distribution> read_results(const Field& field, const WrittenQuantity& written) {
    const Field values = field["values"];
    Empirical found;
    for (const Field& item : values.items())
        if (const auto value = in_unit_of(written, item)) found.values.push_back(*value);
    if (!values.is_array()) return std::nullopt;
    if (found.values.size() < 2) {
        values.problem(found.values.empty()
                           ? "there are no results in this list"
                           : "one result says nothing of how results scatter: give two or more");
        return std::nullopt;
    }
    const auto [least, greatest] = std::minmax_element(found.values.begin(), found.values.end());
    if (written.value < *least || written.value > *greatest) {
        values.problem(
            fmt::format("{:g} {} lies outside these results, {:g} to {:g} {}: write their mean in its place",
                        written.value, written.unit, *least, *greatest, written.unit));
        return std::nullopt;
    }
    return found;
}

std::optional<Distribution> read_shape(const Field& field, const WrittenQuantity& written) {
    const std::string kind = field["kind"].one_of({"rectangular", "triangular", "PERT", "results"});
    std::optional<Distribution> result;
    if (kind == "results")
        result = read_results(field, written);
    else if (!kind.empty())
        result = read_range(field, kind, written);
    (void)field.maybe("note");
    if (!kind.empty()) field.close();
    return result;
}

/// A normal distribution has no ends; it must leave two deviations on each side.
void check_range(const Field& field, const Distribution& distribution, const PhysicalRange& range) {
    constexpr double slack = 1e-9;
    const bool open =
        distribution.least() != distribution.greatest() &&
        distribution.greatest() - distribution.least() == std::numeric_limits<double>::infinity();
    const double low = open ? distribution.mean() - 2.0 * distribution.deviation() : distribution.least();
    const double high = open ? distribution.mean() + 2.0 * distribution.deviation() : distribution.greatest();
    if (low < range.least - slack || high > range.greatest + slack)
        field.problem(fmt::format("the spread reaches from {:g} to {:g}{}: {}", low, high,
                                  open ? ", two standard deviations on each side" : "", range.words));
}

} // namespace

std::optional<Distribution> read_spread(const Field& parent, const Field& value,
                                        const WrittenQuantity& written, const PhysicalRange& range) {
    const auto stated = parent.maybe("spread");
    if (written.unit.empty()) return std::nullopt; // no quantity was read, which is a problem already
    if (!stated) {
        if (written.spread)
            value.problem("say in \"spread\" what \"+/-\" means here: \"standard\" (a standard deviation), "
                          "\"expanded k=2\", \"tolerance\" or \"triangular tolerance\"");
        return std::nullopt;
    }
    std::optional<Distribution> result;
    if (stated->is_object() && written.spread)
        stated->contradiction("the number has its spread behind \"+/-\" already", value);
    else if (stated->is_object())
        result = read_shape(*stated, written);
    else if (!written.spread && stated->is_text())
        stated->problem("nothing stands behind \"+/-\" in the number that this belongs to");
    else
        result = read_plus_minus(*stated, written);
    if (!result) return std::nullopt;
    check_range(*stated, *result, range);
    if (written.value > 0.0) return result->scaled(1.0 / written.value);
    value.problem("what is 0 as written has no spread");
    return std::nullopt;
}

} // namespace routeweigh
