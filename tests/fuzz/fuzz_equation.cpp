// SPDX-License-Identifier: MIT
// Equations: what is read can be written and read again; what is balanced balances.
#include "fuzz_driver.hpp"

#include "chemistry/equation.hpp"

#include <algorithm>
#include <vector>

namespace {

using namespace routeweigh;

bool same_terms(const std::vector<EquationTerm>& a, const std::vector<EquationTerm>& b) {
    return std::equal(a.begin(), a.end(), b.begin(), b.end(),
                      [](const EquationTerm& x, const EquationTerm& y) {
                          return x.coefficient == y.coefficient && x.name == y.name;
                      });
}

std::vector<Formula> formulas(const std::vector<EquationTerm>& terms) {
    std::vector<Formula> result;
    for (const EquationTerm& term : terms)
        result.push_back(parse_formula(term.name));
    return result;
}

} // namespace

bool fuzz::try_input(std::string_view input) {
    try {
        Equation equation = parse_equation(input);
        const Equation again = parse_equation(format_equation(equation));
        require(same_terms(equation.left, again.left) && same_terms(equation.right, again.right),
                "written and read again it is another");
        const auto left = formulas(equation.left), right = formulas(equation.right);
        (void)format_imbalance(imbalance(equation, left, right));
        const Balance result = balance(left, right);
        require((result.outcome == Balance::Outcome::impossible) == result.solutions.empty(),
                "solutions where there are none, or none where there are");
        require(result.outcome != Balance::Outcome::impossible || !result.reason.empty(),
                "no reason is given");
        for (const std::vector<long>& solution : result.solutions) {
            std::size_t next = 0;
            for (std::vector<EquationTerm>* side : {&equation.left, &equation.right})
                for (EquationTerm& term : *side) {
                    require(solution.at(next) >= 0, "a negative coefficient");
                    term.coefficient = solution[next++];
                }
            require(imbalance(equation, left, right).empty(), "a solution does not balance");
        }
        return true;
    } catch (const EquationError& error) {
        require(error.what()[0] != '\0', "refused without a word");
    } catch (const FormulaError&) { // a term that is a name
    }
    return false;
}
