// SPDX-License-Identifier: MIT
#include "base/text.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <cstdlib>

namespace routeweigh {

namespace {

bool is_space(char c) {
    return c == ' ' || c == '\t' || c == '\n' || c == '\r';
}

// Number of insertions, deletions, changes and swaps of neighbours that turn a into b, or `limit` when it is
// not less.
std::size_t edit_distance(std::string_view a, std::string_view b, std::size_t limit) {
    if ((a.size() > b.size() ? a.size() - b.size() : b.size() - a.size()) >= limit) return limit;
    std::vector<std::size_t> before_last(b.size() + 1);
    std::vector<std::size_t> last(b.size() + 1);
    std::vector<std::size_t> row(b.size() + 1);
    for (std::size_t j = 0; j <= b.size(); ++j)
        last[j] = j;
    for (std::size_t i = 1; i <= a.size(); ++i) {
        row[0] = i;
        std::size_t smallest = i;
        for (std::size_t j = 1; j <= b.size(); ++j) {
            const std::size_t change = last[j - 1] + (a[i - 1] == b[j - 1] ? 0 : 1);
            row[j] = std::min({last[j] + 1, row[j - 1] + 1, change});
            if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1])
                row[j] = std::min(row[j], before_last[j - 2] + 1);
            smallest = std::min(smallest, row[j]);
        }
        if (smallest >= limit) return limit;
        std::swap(before_last, last);
        std::swap(last, row);
    }
    return std::min(last[b.size()], limit);
}

} // namespace

std::string join(const std::vector<std::string>& parts, std::string_view separator) {
    std::string result;
    for (const std::string& part : parts) {
        if (&part != &parts.front()) result += separator;
        result += part;
    }
    return result;
}

std::string listed(const std::vector<std::string>& names) {
    std::string text;
    for (std::size_t i = 0; i < names.size(); ++i) {
        if (i > 0) text += i + 1 == names.size() ? " and " : ", ";
        text += names[i];
    }
    return text;
}

std::string capitalised(std::string text) {
    if (!text.empty() && text.front() >= 'a' && text.front() <= 'z')
        text.front() = static_cast<char>(text.front() - 'a' + 'A');
    return text;
}

std::string fold(std::string_view name) {
    std::string result;
    result.reserve(name.size());
    for (const char c : trim(name)) {
        if (is_space(c)) {
            if (result.back() != ' ') result += ' ';
        } else {
            result += c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
        }
    }
    return result;
}

std::string_view trim(std::string_view text) {
    while (!text.empty() && is_space(text.front()))
        text.remove_prefix(1);
    while (!text.empty() && is_space(text.back()))
        text.remove_suffix(1);
    return text;
}

NearestSpelling::NearestSpelling(std::string_view name)
    : folded_(fold(name)), best_distance_(std::max<std::size_t>(1, folded_.size() / 3) + 1) {}

void NearestSpelling::offer(std::string_view candidate) {
    if (folded_.empty()) return;
    const std::string other = fold(candidate);
    const std::size_t distance = edit_distance(folded_, other, best_distance_);
    // A candidate that shares no letter with the name ("g" for "L") is no help however short both are.
    if (distance >= best_distance_ || distance >= std::max(folded_.size(), other.size())) return;
    best_distance_ = distance;
    best_ = candidate;
}

std::string nearest(std::string_view name, const std::vector<std::string>& candidates) {
    NearestSpelling search(name);
    for (const std::string& candidate : candidates)
        search.offer(candidate);
    return search.best();
}

std::string no_such(std::string_view what, std::string_view name, const std::vector<std::string>& all) {
    const std::string near = nearest(name, all);
    return fmt::format("no {} is called \"{}\"{}; there are: {}", what, name,
                       near.empty() ? "" : fmt::format("; nearest: \"{}\"", near), join(all, ", "));
}

std::string significant(double value, int digits) {
    if (value == 0 || !std::isfinite(value))
        return fmt::format("{:.{}f}", value, value == 0 ? digits - 1 : 0);
    // The exponent is taken after rounding, so that 9.996 to three digits is 10.0 and not 10.00.
    std::string scientific = fmt::format("{:.{}e}", value, digits - 1);
    const int exponent = std::atoi(scientific.c_str() + scientific.find('e') + 1);
    if (exponent < -6 || exponent >= 15) return scientific;
    if (exponent < digits) return fmt::format("{:.{}f}", value, digits - 1 - exponent);
    // More digits before the point than are significant: round there, and fill with zeros.
    const double step = std::pow(10.0, exponent - digits + 1);
    return fmt::format("{:.0f}", std::round(value / step) * step);
}

} // namespace routeweigh
