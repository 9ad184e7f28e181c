// SPDX-License-Identifier: MIT
#include "chemistry/element.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <stdexcept>
#include <string>

namespace routeweigh {

namespace {

struct Element {
    std::string_view symbol;
    std::string_view name;
    double weight;      // g/mol; 0: no standard atomic weight
    double uncertainty; // g/mol
};

// By atomic number. Weights and uncertainties are the abridged standard atomic weights of IUPAC 2021
// (Prohaska et al., Pure Appl. Chem. 2022, 94, 573), entered from memory; tests compare them with tables read
// elsewhere.
constexpr std::array<Element, element_count> table = {{
    {"H", "hydrogen", 1.0080, 0.0002},
    {"He", "helium", 4.0026, 0.0001},
    {"Li", "lithium", 6.94, 0.06},
    {"Be", "beryllium", 9.0122, 0.0001},
    {"B", "boron", 10.81, 0.02},
    {"C", "carbon", 12.011, 0.002},
    {"N", "nitrogen", 14.007, 0.001},
    {"O", "oxygen", 15.999, 0.001},
    {"F", "fluorine", 18.998, 0.001},
    {"Ne", "neon", 20.180, 0.001},
    {"Na", "sodium", 22.990, 0.001},
    {"Mg", "magnesium", 24.305, 0.002},
    {"Al", "aluminium", 26.982, 0.001},
    {"Si", "silicon", 28.085, 0.001},
    {"P", "phosphorus", 30.974, 0.001},
    {"S", "sulfur", 32.06, 0.02},
    {"Cl", "chlorine", 35.45, 0.01},
    {"Ar", "argon", 39.95, 0.16},
    {"K", "potassium", 39.098, 0.001},
    {"Ca", "calcium", 40.078, 0.004},
    {"Sc", "scandium", 44.956, 0.001},
    {"Ti", "titanium", 47.867, 0.001},
    {"V", "vanadium", 50.942, 0.001},
    {"Cr", "chromium", 51.996, 0.001},
    {"Mn", "manganese", 54.938, 0.001},
    {"Fe", "iron", 55.845, 0.002},
    {"Co", "cobalt", 58.933, 0.001},
    {"Ni", "nickel", 58.693, 0.001},
    {"Cu", "copper", 63.546, 0.003},
    {"Zn", "zinc", 65.38, 0.02},
    {"Ga", "gallium", 69.723, 0.001},
    {"Ge", "germanium", 72.630, 0.008},
    {"As", "arsenic", 74.922, 0.001},
    {"Se", "selenium", 78.971, 0.008},
    {"Br", "bromine", 79.904, 0.003},
    {"Kr", "krypton", 83.798, 0.002},
    {"Rb", "rubidium", 85.468, 0.001},
    {"Sr", "strontium", 87.62, 0.01},
    {"Y", "yttrium", 88.906, 0.001},
    {"Zr", "zirconium", 91.224, 0.002},
    {"Nb", "niobium", 92.906, 0.001},
    {"Mo", "molybdenum", 95.95, 0.01},
    {"Tc", "technetium", 0, 0},
    {"Ru", "ruthenium", 101.07, 0.02},
    {"Rh", "rhodium", 102.91, 0.01},
    {"Pd", "palladium", 106.42, 0.01},
    {"Ag", "silver", 107.87, 0.01},
    {"Cd", "cadmium", 112.41, 0.01},
    {"In", "indium", 114.82, 0.01},
    {"Sn", "tin", 118.71, 0.01},
    {"Sb", "antimony", 121.76, 0.01},
    {"Te", "tellurium", 127.60, 0.03},
    {"I", "iodine", 126.90, 0.01},
    {"Xe", "xenon", 131.29, 0.01},
    {"Cs", "caesium", 132.91, 0.01},
    {"Ba", "barium", 137.33, 0.01},
    {"La", "lanthanum", 138.91, 0.01},
    {"Ce", "cerium", 140.12, 0.01},
    {"Pr", "praseodymium", 140.91, 0.01},
    {"Nd", "neodymium", 144.24, 0.01},
    {"Pm", "promethium", 0, 0},
    {"Sm", "samarium", 150.36, 0.02},
    {"Eu", "europium", 151.96, 0.01},
    {"Gd", "gadolinium", 157.25, 0.03},
    {"Tb", "terbium", 158.93, 0.01},
    {"Dy", "dysprosium", 162.50, 0.01},
    {"Ho", "holmium", 164.93, 0.01},
    {"Er", "erbium", 167.26, 0.01},
    {"Tm", "thulium", 168.93, 0.01},
    {"Yb", "ytterbium", 173.05, 0.02},
    {"Lu", "lutetium", 174.97, 0.01},
    {"Hf", "hafnium", 178.49, 0.01},
    {"Ta", "tantalum", 180.95, 0.01},
    {"W", "tungsten", 183.84, 0.01},
    {"Re", "rhenium", 186.21, 0.01},
    {"Os", "osmium", 190.23, 0.03},
    {"Ir", "iridium", 192.22, 0.01},
    {"Pt", "platinum", 195.08, 0.02},
    {"Au", "gold", 196.97, 0.01},
    {"Hg", "mercury", 200.59, 0.01},
    {"Tl", "thallium", 204.38, 0.01},
    {"Pb", "lead", 207.2, 1.1},
    {"Bi", "bismuth", 208.98, 0.01},
    {"Po", "polonium", 0, 0},
    {"At", "astatine", 0, 0},
    {"Rn", "radon", 0, 0},
    {"Fr", "francium", 0, 0},
    {"Ra", "radium", 0, 0},
    {"Ac", "actinium", 0, 0},
    {"Th", "thorium", 232.04, 0.01},
    {"Pa", "protactinium", 231.04, 0.01},
    {"U", "uranium", 238.03, 0.01},
    {"Np", "neptunium", 0, 0},
    {"Pu", "plutonium", 0, 0},
    {"Am", "americium", 0, 0},
    {"Cm", "curium", 0, 0},
    {"Bk", "berkelium", 0, 0},
    {"Cf", "californium", 0, 0},
    {"Es", "einsteinium", 0, 0},
    {"Fm", "fermium", 0, 0},
    {"Md", "mendelevium", 0, 0},
    {"No", "nobelium", 0, 0},
    {"Lr", "lawrencium", 0, 0},
    {"Rf", "rutherfordium", 0, 0},
    {"Db", "dubnium", 0, 0},
    {"Sg", "seaborgium", 0, 0},
    {"Bh", "bohrium", 0, 0},
    {"Hs", "hassium", 0, 0},
    {"Mt", "meitnerium", 0, 0},
    {"Ds", "darmstadtium", 0, 0},
    {"Rg", "roentgenium", 0, 0},
    {"Cn", "copernicium", 0, 0},
    {"Nh", "nihonium", 0, 0},
    {"Fl", "flerovium", 0, 0},
    {"Mc", "moscovium", 0, 0},
    {"Lv", "livermorium", 0, 0},
    {"Ts", "tennessine", 0, 0},
    {"Og", "oganesson", 0, 0},
}};

const Element& row(int element) {
    if (element < 1 || element > element_count)
        throw std::out_of_range(fmt::format("no element has the atomic number {}", element));
    return table[static_cast<std::size_t>(element - 1)];
}

const Element& weighed_row(int element) {
    const Element& found = row(element);
    if (found.weight == 0)
        throw std::domain_error(
            fmt::format("{} ({}) has no standard atomic weight", found.name, found.symbol));
    return found;
}

} // namespace

std::optional<int> element_by_symbol(std::string_view symbol) {
    const auto found =
        std::find_if(table.begin(), table.end(), [&](const Element& e) { return e.symbol == symbol; });
    if (found == table.end()) return std::nullopt;
    return static_cast<int>(found - table.begin()) + 1;
}

std::string_view element_symbol(int element) {
    return row(element).symbol;
}

std::string_view element_name(int element) {
    return row(element).name;
}

bool element_has_weight(int element) {
    return row(element).weight > 0;
}

double element_weight(int element) {
    return weighed_row(element).weight;
}

double element_weight_uncertainty(int element) {
    return weighed_row(element).uncertainty;
}

} // namespace routeweigh
