// SPDX-License-Identifier: MIT
#include "documents/balance_document.hpp"

#include "base/problem.hpp"
#include "chemistry/equation.hpp"
#include "documents/number.hpp"
#include "documents/words.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <optional>
#include <utility>

namespace routeweigh {
namespace {

using writing::MachineList;
using writing::MachineObject;

[[noreturn]] void refuse(std::string message, std::string nearest = {}) {
    throw InputError(
        Problem{Severity::error, std::move(message), {"equation", {}, 0, 0, {}, 0}, {}, std::move(nearest)});
}

bool is_formula(std::string_view name) {
    try {
        (void)parse_formula(name);
        return true;
    } catch (const FormulaError&) {
        return false;
    }
}

/// Books write "2H2O" and "H2O(l)"; where only the rest is a formula, the digits are the coefficient and the
/// letters in brackets a state.
EquationTerm plain_term(EquationTerm term) {
    for (const std::string_view state : {"(s)", "(l)", "(g)", "(aq)"})
        if (term.name.size() > state.size() && term.name.ends_with(state))
            term.name.erase(term.name.size() - state.size());
    const std::size_t digits = term.name.find_first_not_of("0123456789");
    if (term.coefficient == 1 && digits > 0 && digits <= 9 && digits < term.name.size() &&
        !is_formula(term.name) && is_formula(std::string_view(term.name).substr(digits)) &&
        term.name[0] != '0') {
        term.coefficient = std::stol(term.name.substr(0, digits));
        term.name.erase(0, digits);
    }
    return term;
}

Equation plain_equation(Equation equation) {
    for (std::vector<EquationTerm>* side : {&equation.left, &equation.right})
        for (EquationTerm& term : *side)
            term = plain_term(std::move(term));
    return equation;
}

/// The formula of a term: of the catalogue when it knows the name, else the term itself read as a formula.
Formula formula_of(const std::string& name, const Catalogue& catalogue) {
    std::optional<Formula> read;
    std::string why;
    try {
        read = parse_formula(name);
    } catch (const FormulaError& error) {
        why = error.what();
    }
    if (read) return *read;
    const Substance* substance = catalogue.find_substance(name);
    if (substance == nullptr)
        refuse(fmt::format("\"{}\" is no formula ({}) and no substance of the catalogue", name, why),
               catalogue.nearest_substance(name));
    if (!substance->has_formula())
        refuse(fmt::format("\"{}\" is a mixture without a formula, so it cannot be balanced", name));
    return substance->formula;
}

std::vector<Formula> formulas_of(const std::vector<EquationTerm>& terms, const Catalogue& catalogue) {
    std::vector<Formula> formulas;
    for (const EquationTerm& term : terms)
        formulas.push_back(formula_of(term.name, catalogue));
    return formulas;
}

/// The equation with other coefficients; a term with 0 has no part in it.
std::string with_coefficients(const Equation& equation, const std::vector<long>& coefficients) {
    Equation result;
    std::size_t next = 0;
    for (const auto& [from, to] : {std::pair{&equation.left, &result.left}, {&equation.right, &result.right}})
        for (const EquationTerm& term : *from)
            if (const long coefficient = coefficients[next++]; coefficient > 0)
                to->push_back({coefficient, term.name});
    return format_equation(result);
}

class BalancePage {
  public:
    BalancePage(std::string_view text, const Catalogue& catalogue) try
        : equation_(plain_equation(parse_equation(text))), left_(formulas_of(equation_.left, catalogue)),
          right_(formulas_of(equation_.right, catalogue)), balance_(balance(left_, right_)) {
    } catch (const EquationError& error) {
        refuse(error.what());
    }

    writing::Document print() {
        document_.id = "balance";
        document_.title = "Balancing an equation";
        document_.subtitle = writing::Text(writing::code(equation_.text));
        switch (balance_.outcome) {
        case Balance::Outcome::unique:
            unique();
            break;
        case Balance::Outcome::not_unique:
            not_unique();
            break;
        case Balance::Outcome::impossible:
            impossible();
            break;
        }
        terms();
        document_.machine = machine();
        return std::move(document_);
    }

  private:
    template<class Content>
    void add(Content content) {
        document_.blocks.emplace_back(std::move(content));
    }

    void unique() {
        const std::string solved = with_coefficients(equation_, balance_.solutions.front());
        add(writing::Paragraph{{writing::code(solved)}});
        const auto differences = imbalance(equation_, left_, right_);
        if (differences.empty())
            add(writing::Paragraph{
                "The equation as written is balanced. Its coefficients are the only ones up to a "
                "common factor."});
        else
            add(writing::Paragraph{
                "These coefficients are the only ones up to a common factor. As written the equation "
                "is not balanced: " +
                format_imbalance(differences) + "."});
    }

    void not_unique() {
        add(writing::Paragraph{
            fmt::format("The coefficients are not unique: {} are independent, and every sum of them balances "
                        "as well. Which one is "
                        "meant is chemistry, and no arithmetic can tell.",
                        documents::counted(balance_.solutions.size(), "solution", "solutions"))});
        writing::BulletList list;
        for (const auto& solution : balance_.solutions)
            list.items.push_back(writing::Text(writing::code(with_coefficients(equation_, solution))));
        add(std::move(list));
    }

    void impossible() {
        add(writing::Paragraph{"No coefficients balance this equation: " + balance_.reason + "."});
        for (const auto& [elements, side] :
             {std::pair{&balance_.left_only, "right"}, std::pair{&balance_.right_only, "left"}})
            if (!elements->empty())
                add(writing::Paragraph{fmt::format("A substance that carries {} is missing on the {}.",
                                                   listed(*elements), side)});
    }

    /// What each term is, so that a name read as the wrong isomer or hydrate is seen.
    void terms() {
        writing::Table table;
        table.caption = "The terms";
        table.columns = {{.heading = "term"},
                         {.heading = "side"},
                         {.heading = "read as"},
                         {.heading = "molar mass", .align = writing::Align::decimal, .unit = "g/mol"}};
        const auto add_side = [&](const std::vector<EquationTerm>& side, const std::vector<Formula>& formulas,
                                  const char* name) {
            for (std::size_t i = 0; i < side.size(); ++i) {
                const double mass = molar_mass(formulas[i]);
                table.rows.push_back({side[i].name, name, hill_text(formulas[i]),
                                      writing::Cell(documents::fixed(mass, 3), mass)});
            }
        };
        add_side(equation_.left, left_, "left");
        add_side(equation_.right, right_, "right");
        add(std::move(table));
    }

    writing::MachineTree machine() const {
        MachineList solutions;
        for (const auto& solution : balance_.solutions) {
            MachineList coefficients;
            for (const long coefficient : solution)
                coefficients.emplace_back(std::int64_t{coefficient});
            solutions.emplace_back(MachineObject{{"equation", with_coefficients(equation_, solution)},
                                                 {"coefficients", std::move(coefficients)}});
        }
        MachineList one_sided;
        for (const auto* side : {&balance_.left_only, &balance_.right_only})
            for (const std::string& element : *side)
                one_sided.emplace_back(element);
        const char* outcome = balance_.outcome == Balance::Outcome::unique       ? "unique"
                              : balance_.outcome == Balance::Outcome::not_unique ? "not_unique"
                                                                                 : "impossible";
        return MachineObject{{"equation", equation_.text},
                             {"balanced", imbalance(equation_, left_, right_).empty()},
                             {"outcome", outcome},
                             {"solutions", std::move(solutions)},
                             {"one_sided", std::move(one_sided)},
                             {"reason", balance_.reason}};
    }

    Equation equation_;
    std::vector<Formula> left_, right_;
    Balance balance_;
    writing::Document document_;
};

} // namespace

writing::Document balance_document(std::string_view equation, const Catalogue& catalogue) {
    return BalancePage(equation, catalogue).print();
}

} // namespace routeweigh
