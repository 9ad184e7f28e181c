// SPDX-License-Identifier: MIT
#include "route/equation_reader.hpp"

#include "base/text.hpp"
#include "chemistry/equation.hpp"
#include "route/name_reader.hpp"

#include <fmt/core.h>

#include <algorithm>

namespace routeweigh {
namespace {

/// The equation with other coefficients, as a suggestion.
std::string rewritten(Equation equation, const std::vector<long>& coefficients) {
    std::size_t next = 0;
    for (EquationTerm& term : equation.left)
        term.coefficient = coefficients[next++];
    for (EquationTerm& term : equation.right)
        term.coefficient = coefficients[next++];
    return format_equation(equation);
}

std::string advice(const Equation& equation, std::span<const Formula> left,
                   std::span<const Formula> right) try {
    const Balance result = balance(left, right);
    switch (result.outcome) {
    case Balance::Outcome::unique:
        return fmt::format("; balanced it reads: {}", rewritten(equation, result.solutions.front()));
    case Balance::Outcome::not_unique:
        return fmt::format(
            "; {} independent equations are mixed in it, so its coefficients are not unique: write them "
            "as separate reactions",
            result.dimension);
    case Balance::Outcome::impossible:
        return "; no coefficients balance it: " + result.reason;
    }
    return {};
} catch (const EquationError& error) { // too long, or coefficients nobody could mean
    return fmt::format("; no coefficients are suggested: {}", error.what());
}

/// "2acetic acid" of two acetic acids: the name behind the digits, empty where the catalogue has none such.
/// Names may begin with digits ("2-butanol"), so the space is asked for and not guessed.
std::string glued_name(std::string_view name, const Catalogue& catalogue) {
    const std::size_t digits = std::min(name.find_first_not_of("0123456789"), name.size());
    const std::string_view rest = name.substr(digits);
    return digits > 0 && catalogue.find_substance(name) == nullptr &&
                   catalogue.find_substance(rest) != nullptr
               ? std::string(rest)
               : std::string();
}

void add_part(SubstanceEquation& equation, const Substance* substance, double coefficient) {
    const auto found = std::find_if(equation.parts.begin(), equation.parts.end(),
                                    [&](const auto& part) { return part.substance == substance; });
    if (found == equation.parts.end())
        equation.parts.push_back({substance, coefficient});
    else
        found->coefficient += coefficient;
}

} // namespace

SubstanceEquation read_equation(const Field& field, const Catalogue& catalogue) {
    SubstanceEquation result;
    result.text = field.text();
    result.pointer = field.pointer();
    if (result.text.empty()) return result;
    Equation equation;
    try {
        equation = parse_equation(result.text);
    } catch (const EquationError& error) {
        field.problem(error.what());
        return result;
    }

    std::vector<Formula> left, right;
    bool complete = true;
    const auto take = [&](const std::vector<EquationTerm>& terms, std::vector<Formula>& formulas,
                          double sign) {
        for (const EquationTerm& term : terms) {
            const std::string glued = glued_name(term.name, catalogue);
            if (!glued.empty())
                field.problem(fmt::format("\"{}\" needs a space behind its coefficient: \"{} {}\"", term.name,
                                          term.name.substr(0, term.name.size() - glued.size()), glued));
            const Substance* substance = glued.empty() ? find_named(field, term.name, catalogue) : nullptr;
            if (substance == nullptr) {
                complete = false;
                continue;
            }
            if (!substance->has_formula()) {
                field.problem(
                    fmt::format("\"{}\" has no formula, so it can take no part in a reaction", term.name));
                complete = false;
                continue;
            }
            formulas.push_back(substance->formula);
            add_part(result, substance, sign * static_cast<double>(term.coefficient));
        }
    };
    take(equation.left, left, -1.0);
    take(equation.right, right, 1.0);
    if (!complete) return result;

    const auto differences = imbalance(equation, left, right);
    if (!differences.empty())
        field.problem(fmt::format("the equation does not balance: {}{}", format_imbalance(differences),
                                  field.lists_problems() ? advice(equation, left, right) : std::string()));
    result.parts.erase(std::remove_if(result.parts.begin(), result.parts.end(),
                                      [](const auto& part) { return part.coefficient == 0.0; }),
                       result.parts.end());
    if (result.parts.empty()) field.problem("nothing changes in this equation");
    return result;
}

} // namespace routeweigh
