// SPDX-License-Identifier: MIT
#include "assess/mixture/explain.hpp"

#include "base/text.hpp"

#include <fmt/format.h>

namespace routeweigh {
namespace {

std::string number(double value) {
    return fmt::format("{:.4g}", value);
}

std::string name_of(const MixturePart& part) {
    std::string name = part.substance != nullptr ? part.substance->name : "ingredients of measured toxicity";
    if (!part.hazard_class.empty())
        name += fmt::format(" ({}{}{})", part.hazard_class, part.category.empty() ? "" : " ", part.category);
    return name;
}

std::string remark_of(const MixturePart& part) {
    return part.remark.empty() ? std::string() : fmt::format(" [{}]", part.remark);
}

std::string ratio_text(const MixturePart& part) {
    return fmt::format("{} % {} / {} %{}{}", number(part.percent), name_of(part), number(part.divisor),
                       part.specific ? " (specific)" : "", remark_of(part));
}

std::string estimate_term(const MixturePart& part, std::string_view unit) {
    return fmt::format("{} % {} / {} {}{}{}", number(part.percent), name_of(part), number(part.divisor), unit,
                       part.specific ? "" : " (point of the category)", remark_of(part));
}

std::string weighted_term(const MixturePart& part) {
    std::string term = part.factor == 1 ? std::string() : number(part.factor) + " x ";
    return term + fmt::format("{} % {}{}", number(part.percent), name_of(part), remark_of(part));
}

std::string joined(const MixtureTest& test) {
    std::vector<std::string> terms;
    for (const MixturePart& part : test.parts)
        terms.push_back(test.kind == TestKind::estimate       ? estimate_term(part, test.unit)
                        : test.kind == TestKind::weighted_sum ? weighted_term(part)
                                                              : ratio_text(part));
    return join(terms, test.kind == TestKind::each ? "; " : " + ");
}

} // namespace

std::string outcome_text(const MixtureResult& result) {
    switch (result.outcome) {
    case MixtureOutcome::classified:
        return fmt::format("{} ({})", result.class_and_category(), result.statement);
    case MixtureOutcome::test_needed:
        return "a test decides";
    case MixtureOutcome::not_judged:
        return "cannot be judged from composition";
    case MixtureOutcome::not_covered:
        return "no class in these rules";
    case MixtureOutcome::not_classified:
        break;
    }
    return result.supplemental.empty() ? "not classified" : "no class, but a supplemental statement";
}

std::string test_text(const MixtureTest& test) {
    switch (test.kind) {
    case TestKind::sum_of_ratios:
        return fmt::format("{}: {} = {}, {} {}", test.what, joined(test), number(test.value),
                           test.met ? "at least" : "below", number(test.limit));
    case TestKind::each:
        return fmt::format("{}{}{}, each by itself: {}; {}", test.what,
                           test.category.empty() ? "" : ", category ", test.category, joined(test),
                           test.met ? "the limit is reached" : "no limit is reached");
    case TestKind::estimate:
        return fmt::format("{}: {} give an estimate of {} {} for the mixture, {} {}", test.what, joined(test),
                           number(test.value), test.unit, test.met ? "at most" : "above", number(test.limit));
    case TestKind::weighted_sum:
        return fmt::format("{}, category {}: {} = {} %, {} {} %", test.what, test.category, joined(test),
                           number(test.value), test.met ? "at least" : "below", number(test.limit));
    case TestKind::value:
        break;
    }
    std::string text = fmt::format("{} {}{}{}: {}, {}", test.what, number(test.limit),
                                   test.unit.empty() ? "" : " ", test.unit, number(test.value),
                                   test.met               ? "met"
                                   : test.besides.empty() ? "not met"
                                                          : test.besides);
    for (const MixturePart& part : test.parts)
        text += fmt::format("; {} % {}{}", number(part.percent), name_of(part), remark_of(part));
    return text;
}

std::vector<std::string> explain(const MixtureResult& result) {
    std::vector<std::string> lines{fmt::format("{}: {}", result.title, outcome_text(result))};
    if (!result.supplemental.empty()) lines.push_back("adds " + join(result.supplemental, ", "));
    for (std::size_t i = 0; i < result.tests.size(); ++i) {
        const MixtureTest& test = result.tests[i];
        // Tests of one source name it together.
        const bool named_later = i + 1 < result.tests.size() && result.tests[i + 1].source == test.source;
        lines.push_back(test.source.empty() || named_later
                            ? test_text(test)
                            : fmt::format("{} [{}]", test_text(test), test.source));
    }
    lines.insert(lines.end(), result.notes.begin(), result.notes.end());
    if (result.unknown_percent > 0)
        lines.push_back(fmt::format("{} % is of unknown hazard here", number(result.unknown_percent)));
    return lines;
}

} // namespace routeweigh
