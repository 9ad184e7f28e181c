// SPDX-License-Identifier: MIT
// A pot for tests: substances by name, reactions as equations, amounts in any one unit.
#pragma once

#include "chemistry/equation.hpp"
#include "route/extents.hpp"

#include <algorithm>
#include <map>
#include <string>
#include <utility>
#include <vector>

namespace routeweigh::test {

class Pot {
  public:
    /// Puts an amount in; a reaction only has to name what it changes.
    Pot& put(const std::string& substance, double amount) {
        amounts_[index(substance)] += amount;
        return *this;
    }
    /// Never runs out, as oxygen from the air.
    Pot& from_air(const std::string& substance) {
        unlimited_[index(substance)] = true;
        amounts_[index(substance)] = 1.0;
        return *this;
    }
    /// A reaction; the functions below change the one added last.
    Pot& reaction(const std::string& text) {
        const Equation equation = parse_equation(text);
        PotReaction& added = reactions_.emplace_back();
        const auto add = [&](const std::vector<EquationTerm>& terms, double sign) {
            for (const EquationTerm& term : terms) {
                const int substance = static_cast<int>(index(term.name));
                const double change = sign * static_cast<double>(term.coefficient);
                const auto found = std::find_if(added.change.begin(), added.change.end(),
                                                [&](const auto& part) { return part.first == substance; });
                if (found == added.change.end())
                    added.change.emplace_back(substance, change);
                else
                    found->second += change;
            }
        };
        add(equation.left, -1.0);
        add(equation.right, 1.0);
        return *this;
    }
    Pot& conversion(double share, const std::string& of) {
        reactions_.back().conversion = share;
        reactions_.back().of = static_cast<int>(index(of));
        return *this;
    }
    Pot& priority(int value) {
        reactions_.back().priority = value;
        return *this;
    }
    Pot& split(double share) {
        reactions_.back().split = share;
        return *this;
    }
    Pot& product(const std::string& substance) {
        product_ = static_cast<int>(index(substance));
        return *this;
    }

    Extents compile() const {
        std::vector<bool> present;
        for (const double amount : amounts_)
            present.push_back(amount > 0.0);
        return Extents(reactions_, amounts_, present, unlimited_, product_);
    }

    struct Result {
        std::map<std::string, double> left;
        std::vector<double> extents;
    };
    /// Lets the reactions run; \p cap as in Extents::react.
    Result react(double cap = -1.0) const { return react(compile(), cap); }
    Result react(const Extents& compiled, double cap = -1.0) const {
        std::vector<double> amounts = amounts_;
        Result result;
        result.extents.resize(reactions_.size());
        compiled.react(amounts, cap, result.extents);
        for (std::size_t i = 0; i < names_.size(); ++i)
            result.left[names_[i]] = amounts[i];
        return result;
    }
    /// The most of one substance that can be there at once.
    double ceiling(const std::string& substance) {
        const int counted = static_cast<int>(index(substance));
        const Extents compiled = compile();
        return compiled.evaluate<double>(compiled.ceiling({{counted, 1.0}}, amounts_), amounts_);
    }
    std::string name(int substance) const {
        return substance < 0 ? "none" : names_[static_cast<std::size_t>(substance)];
    }
    const std::vector<PotReaction>& reactions() const { return reactions_; }
    const std::vector<double>& amounts() const { return amounts_; }

  private:
    std::size_t index(const std::string& substance) {
        const auto found = std::find(names_.begin(), names_.end(), substance);
        if (found != names_.end()) return static_cast<std::size_t>(found - names_.begin());
        names_.push_back(substance);
        amounts_.push_back(0.0);
        unlimited_.push_back(false);
        return names_.size() - 1;
    }

    std::vector<std::string> names_;
    std::vector<double> amounts_;
    std::vector<bool> unlimited_;
    std::vector<PotReaction> reactions_;
    int product_ = -1;
};

} // namespace routeweigh::test
