// SPDX-License-Identifier: MIT
#include "assess/bench/bottles.hpp"

#include "assess/hazard/statement.hpp"

#include <algorithm>
#include <array>

namespace routeweigh::bench {
namespace {

struct Urgency {
    int first, last; ///< numbers of statements
    int level;
};

constexpr std::array levels{
    Urgency{200, 211, 5}, Urgency{220, 222, 3}, Urgency{223, 223, 2}, Urgency{224, 225, 3},
    Urgency{226, 229, 2}, Urgency{230, 232, 5}, Urgency{240, 242, 5}, Urgency{250, 250, 5},
    Urgency{251, 251, 3}, Urgency{252, 252, 2}, Urgency{260, 260, 4}, Urgency{261, 261, 3},
    Urgency{270, 272, 3}, Urgency{280, 281, 2}, Urgency{282, 283, 3}, Urgency{284, 284, 2},
    Urgency{290, 290, 1}, Urgency{300, 300, 5}, Urgency{301, 301, 4}, Urgency{302, 305, 2},
    Urgency{310, 310, 5}, Urgency{311, 311, 4}, Urgency{312, 313, 2}, Urgency{314, 314, 5},
    Urgency{315, 316, 1}, Urgency{317, 317, 3}, Urgency{318, 318, 4}, Urgency{319, 320, 1},
    Urgency{330, 330, 5}, Urgency{331, 331, 4}, Urgency{332, 333, 2}, Urgency{334, 334, 3},
    Urgency{335, 336, 1}, Urgency{340, 373, 3}, Urgency{400, 420, 1}};

} // namespace

const MixtureClassification& Bottles::of(const Material& material) {
    auto& known = known_[&material];
    if (!known)
        known = std::make_unique<const MixtureClassification>(classify(mixture_of(material), *rules_));
    return *known;
}

bool carries(const MixtureClassification& bottle, std::initializer_list<int> statements) {
    const auto& on_label = bottle.label.statements;
    return std::any_of(on_label.begin(), on_label.end(), [&](const std::string& statement) {
        return std::find(statements.begin(), statements.end(), statement_number(statement)) !=
               statements.end();
    });
}

bool brings(const Material& material, std::string_view supplemental) {
    return std::any_of(material.components.begin(), material.components.end(), [&](const Component& part) {
        const auto& statements = part.substance->supplemental;
        return std::find(statements.begin(), statements.end(), supplemental) != statements.end();
    });
}

int urgency(std::string_view statement) {
    const int number = statement_number(statement);
    for (const Urgency& range : levels)
        if (number >= range.first && number <= range.last) return range.level;
    return 0;
}

std::vector<std::string> main_statements(const MixtureLabel& label, std::size_t most) {
    std::vector<std::string> statements = label.statements;
    std::stable_sort(statements.begin(), statements.end(),
                     [](const auto& a, const auto& b) { return urgency(a) > urgency(b); });
    if (statements.size() > most) statements.resize(most);
    return statements;
}

} // namespace routeweigh::bench
