// SPDX-License-Identifier: MIT
#include "assess/streams/composition.hpp"

#include "chemistry/element.hpp"

#include <algorithm>
#include <array>
#include <cctype>
#include <cstddef>
#include <string>
#include <string_view>

namespace routeweigh::streams {
namespace {

int atoms(const Substance& substance, std::string_view symbol) {
    const auto element = element_by_symbol(symbol);
    return element ? atoms_of(substance.formula, *element) : 0;
}

bool any_halogen(const Substance& substance) {
    for (const char* symbol : {"F", "Cl", "Br", "I"})
        if (atoms(substance, symbol) > 0) return true;
    return false;
}

bool lower(char c) {
    return std::islower(static_cast<unsigned char>(c)) != 0;
}

/// What one part of a line notation (SMILES) holds. Ions stand in brackets; outside them an atom is neutral.
struct PartOfMolecule {
    bool carbon = false, halogen = false;

    explicit PartOfMolecule(std::string_view text) {
        for (std::size_t i = 0; i < text.size(); ++i) {
            if (text[i] == '[') {
                const std::size_t end = std::min(text.find(']', i), text.size());
                std::string_view atom = text.substr(i + 1, end - i - 1);
                while (!atom.empty() && std::isdigit(static_cast<unsigned char>(atom.front())) != 0)
                    atom.remove_prefix(1);
                if (!atom.empty() && (atom[0] == 'C' || atom[0] == 'c') &&
                    (atom.size() == 1 || !lower(atom[1])))
                    carbon = true;
                i = end;
            } else if (text.substr(i, 2) == "Cl" || text.substr(i, 2) == "Br") {
                halogen = true;
                ++i;
            } else if (text[i] == 'F' || text[i] == 'I') {
                halogen = true;
            } else if (text[i] == 'C' || text[i] == 'c') {
                carbon = true;
            }
        }
    }
};

} // namespace

void Composition::add(const Substance& substance, double grams, bool trace) {
    if (!(grams > 0.0)) return;
    for (Portion& portion : portions_)
        if (portion.substance == &substance) {
            portion.grams += grams;
            portion.trace = portion.trace && trace;
            return;
        }
    portions_.push_back({&substance, grams, trace});
}

double Composition::total() const {
    double sum = 0;
    for (const Portion& portion : portions_)
        sum += portion.grams;
    return sum;
}

double Composition::grams(const Substance& substance) const {
    for (const Portion& portion : portions_)
        if (portion.substance == &substance) return portion.grams;
    return 0;
}

double Composition::grams(std::string_view id) const {
    for (const Portion& portion : portions_)
        if (portion.substance->id == id) return portion.grams;
    return 0;
}

double Composition::share(double grams_of_it) const {
    const double all = total();
    return all > 0 ? grams_of_it / all : 0.0;
}

VolumeSum Composition::volume() const {
    VolumeSum sum;
    for (const Portion& portion : portions_) {
        sum.millilitres += millilitres(portion);
        if (!portion.substance->density) sum.assumed += millilitres(portion);
    }
    return sum;
}

Composition Composition::times(double factor) const {
    Composition result;
    for (const Portion& portion : portions_)
        result.add(*portion.substance, portion.grams * factor, portion.trace);
    return result;
}

double millilitres(const Portion& portion) {
    return portion.grams / portion.substance->density.value_or(1.0);
}

bool is_organic(const Substance& substance) {
    if (!substance.has_formula()) return true; // petroleum fractions and the like
    if (atoms(substance, "C") == 0) return false;
    return atoms(substance, "H") > 1 || is_halogenated_organic(substance);
}

bool is_halogenated_organic(const Substance& substance) {
    if (atoms(substance, "C") == 0 || !any_halogen(substance)) return false;
    if (substance.smiles.empty()) return true; // a halogen and carbon, and nothing that says it is a salt
    std::string_view rest = substance.smiles;
    while (!rest.empty()) {
        const std::size_t dot = std::min(rest.find('.'), rest.size());
        const PartOfMolecule part(rest.substr(0, dot));
        if (part.carbon && part.halogen) return true;
        rest.remove_prefix(std::min(dot + 1, rest.size()));
    }
    return false;
}

} // namespace routeweigh::streams
