// SPDX-License-Identifier: MIT
#include "chemistry/equation.hpp"

#include "base/text.hpp"
#include "chemistry/element.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <map>

namespace routeweigh {

namespace {

constexpr std::array<std::string_view, 3> arrows = {"->", "\xE2\x86\x92", " = "};

// One space wherever there was white space, so that " + " parts terms however the equation was laid out.
std::string spaced(std::string_view text) {
    std::string result;
    for (const char c : trim(text)) {
        const bool space = c == ' ' || c == '\t' || c == '\n' || c == '\r';
        if (!space)
            result += c;
        else if (result.back() != ' ')
            result += ' ';
    }
    return result;
}

EquationTerm parse_term(std::string_view text, std::string_view whole) {
    text = trim(text);
    if (text.empty()) throw EquationError(fmt::format("a term is missing in \"{}\"", whole));
    EquationTerm term;
    const std::size_t space = text.find(' ');
    if (space != std::string_view::npos) {
        const std::string_view number = text.substr(0, space);
        if (number.find_first_not_of("0123456789./,") == std::string_view::npos) {
            if (number.find_first_not_of("0123456789") != std::string_view::npos || number.size() > 9)
                throw EquationError(fmt::format(
                    "\"{}\" in \"{}\" is no whole coefficient; multiply the whole equation", number, whole));
            term.coefficient = std::stol(std::string(number));
            if (term.coefficient == 0)
                throw EquationError(fmt::format("a coefficient in \"{}\" is 0", whole));
            text = trim(text.substr(space));
        }
    }
    term.name = text;
    return term;
}

std::vector<EquationTerm> parse_side(std::string_view text, std::string_view whole) {
    std::vector<EquationTerm> terms;
    for (;;) {
        const std::size_t plus = text.find(" + ");
        terms.push_back(parse_term(text.substr(0, plus), whole));
        if (plus == std::string_view::npos) return terms;
        text.remove_prefix(plus + 2); // the space stays, for a second plus to be seen
    }
}

std::string format_side(const std::vector<EquationTerm>& terms) {
    std::vector<std::string> parts;
    parts.reserve(terms.size());
    for (const EquationTerm& term : terms)
        parts.push_back(term.coefficient == 1 ? term.name
                                              : fmt::format("{} {}", term.coefficient, term.name));
    return join(parts, " + ");
}

} // namespace

Equation parse_equation(std::string_view text) {
    Equation result;
    result.text = trim(text);
    const std::string line = spaced(text);
    std::size_t at = std::string::npos;
    std::size_t length = 0;
    for (const std::string_view arrow : arrows) {
        const std::size_t found = line.find(arrow);
        if (found == std::string::npos) continue;
        if (at != std::string::npos || line.find(arrow, found + arrow.size()) != std::string::npos)
            throw EquationError(fmt::format("\"{}\" has more than two sides", line));
        at = found;
        length = arrow.size();
    }
    if (at == std::string::npos)
        throw EquationError(fmt::format("\"{}\" has no \"->\" between its sides", line));
    // Spaces at the ends of the sides let a stray " + " there be seen as a missing term.
    const std::string left = line.substr(0, at) + ' ';
    const std::string right = ' ' + line.substr(at + length);
    if (trim(left).ends_with('<'))
        throw EquationError(fmt::format("\"{}\" goes both ways; write one reaction with \"->\"", line));
    result.left = parse_side(left, line);
    result.right = parse_side(right, line);
    return result;
}

std::string format_equation(const Equation& equation) {
    return format_side(equation.left) + " -> " + format_side(equation.right);
}

std::vector<ElementDifference> imbalance(const Equation& equation, std::span<const Formula> left,
                                         std::span<const Formula> right) {
    std::map<int, ElementDifference> counts; // by atomic number; 0 is the charge
    const auto add = [&](const std::vector<EquationTerm>& terms, std::span<const Formula> formulas,
                         std::int64_t ElementDifference::*side) {
        for (std::size_t i = 0; i < terms.size(); ++i) {
            for (const auto& [element, count] : formulas[i].atoms)
                counts[element].*side += terms[i].coefficient * count;
            counts[0].*side += terms[i].coefficient * formulas[i].charge;
        }
    };
    if (left.size() != equation.left.size() || right.size() != equation.right.size())
        throw EquationError("every term of the equation needs one formula");
    add(equation.left, left, &ElementDifference::left);
    add(equation.right, right, &ElementDifference::right);

    std::vector<ElementDifference> result;
    for (auto& [element, difference] : counts) {
        if (difference.left == difference.right) continue;
        difference.element = element == 0 ? "charge" : element_symbol(element);
        result.push_back(difference);
    }
    return result;
}

std::string format_imbalance(const std::vector<ElementDifference>& differences) {
    std::vector<std::string> parts;
    parts.reserve(differences.size());
    for (const ElementDifference& d : differences)
        parts.push_back(fmt::format("{} {} on the left, {} on the right", d.element, d.left, d.right));
    return join(parts, "; ");
}

} // namespace routeweigh
