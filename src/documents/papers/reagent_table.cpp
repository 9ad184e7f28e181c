// SPDX-License-Identifier: MIT
#include "documents/number.hpp"
#include "documents/papers/papers.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <optional>
#include <set>
#include <utility>

namespace routeweigh::documents {
namespace {

using writing::Cell;

constexpr std::size_t most_codes = 4;

std::string formula_of(const Substance& substance) {
    return substance.common_formula.empty() ? substance.formula.text : substance.common_formula;
}

/// The substance that a bottle is named for: what is counted, else the only one that is no carrier.
const Substance* pictured(const bench::Reagent& reagent) {
    if (reagent.counted != nullptr) return reagent.counted;
    const Component* active = reagent.material().only_active();
    return active != nullptr ? active->substance : reagent.material().components.front().substance;
}

/// Puts the structures of a table's substances into it, each once.
class Drawings {
  public:
    Drawings(const Paper& paper, writing::Table& table) : paper_(&paper), table_(&table) {}

    Cell name_cell(const std::string& name, const Substance& substance) {
        Cell cell(name);
        const bench::Structure* structure = paper_->experiment.rules().structures.find(substance);
        if (structure != nullptr && drawn_.insert(&substance).second) {
            cell.drawing = static_cast<int>(table_->drawings.size());
            table_->drawings.push_back(
                {structure->width, structure->height, unit, pen, structure->lines, structure->shapes,
                 fmt::format("structural formula of {}, {}", substance.name, formula_of(substance))});
        } else if (structure == nullptr && substance.has_formula()) {
            cell.text += ", " + formula_of(substance);
        }
        return cell;
    }

  private:
    /// Pixels on the page per unit of a drawing, the same for all of them: a capital letter, 76 units, is 1.2
    /// mm high on paper.
    static constexpr double unit = 0.06;
    static constexpr double pen = 13;

    const Paper* paper_;
    writing::Table* table_;
    std::set<const Substance*> drawn_;
};

Cell temperature_cell(const std::optional<double>& degrees) {
    return degrees ? Cell(plain_number(*degrees), *degrees) : writing::missing("not in the catalogue");
}

Cell melting_cell(const Substance& substance) {
    return substance.decomposes
               ? writing::missing(fmt::format("decomposes, {} °C", plain_number(*substance.decomposes)))
               : temperature_cell(substance.melting_point);
}

Cell boiling_cell(const Substance& substance) {
    Cell cell = temperature_cell(substance.boiling_point);
    if (substance.boiling_range_end) cell.text += "\u2013" + plain_number(*substance.boiling_range_end);
    return cell;
}

writing::Row charge_row(const Paper& paper, const bench::Reagent& reagent, Drawings& drawings) {
    const Material& material = reagent.material();
    const Substance& substance = *pictured(reagent);
    writing::Row row;
    row.cells.push_back(drawings.name_cell(material.name, substance));
    if (reagent.counted != nullptr || material.is_neat()) {
        Cell molar_mass(fixed(substance.molar_mass, 2), substance.molar_mass);
        row.cells.push_back(substance.has_formula() ? molar_mass : writing::missing("no formula"));
    } else {
        row.cells.emplace_back("");
    }
    if (material.is_neat()) {
        row.cells.push_back(melting_cell(substance));
        row.cells.push_back(boiling_cell(substance));
    } else {
        row.cells.emplace_back("");
        row.cells.emplace_back("");
    }
    row.cells.push_back(material.density ? Cell(digits(*material.density, 4), *material.density)
                                         : writing::missing("not in the catalogue"));
    row.cells.push_back(cell_of(mass_of(paper.route(), paper.step, reagent), paper.edition));
    row.cells.push_back(reagent.millilitres
                            ? cell_of(volume_of(paper.route(), paper.step, reagent), paper.edition)
                            : Cell(""));
    const bool counted = reagent.counted != nullptr;
    row.cells.push_back(counted ? cell_of(amount_of(paper.route(), paper.step, reagent), paper.edition)
                                : Cell(""));
    row.cells.push_back(counted && reagent.equivalents
                            ? cell_of(equivalents_of(paper.route(), paper.step, reagent), paper.edition)
                            : Cell(""));
    row.cells.emplace_back(std::string(blank));
    row.cells.emplace_back(hazard_codes(paper.experiment.bottle(material), most_codes));
    return row;
}

writing::Row product_row(const Paper& paper, Drawings& drawings) {
    const Substance& product = *paper.step.step->product;
    // Written once, below the table: a blank here would make it too wide for a sheet.
    Cell mass =
        paper.key() ? cell_of(theoretical_mass(paper.route(), paper.step), Edition::key) : Cell("below");
    return {drawings.name_cell(product.name, product),
            Cell(fixed(product.molar_mass, 2), product.molar_mass),
            melting_cell(product),
            boiling_cell(product),
            product.density ? Cell(digits(*product.density, 4), *product.density)
                            : writing::missing("not in the catalogue"),
            std::move(mass),
            Cell(""),
            cell_of(theoretical_amount(paper.route(), paper.step), paper.edition),
            Cell(""),
            Cell(""),
            Cell(hazard_codes(paper.experiment.product(paper.step), most_codes))};
}

writing::MachineTree number_or_null(const std::optional<double>& number) {
    return number ? writing::MachineTree(*number) : writing::MachineTree();
}

} // namespace

std::string plain_number(double value) {
    std::string text = fixed(value, 1);
    if (text.ends_with(".0")) text.erase(text.size() - 2);
    return text;
}

std::string hazard_codes(const MixtureClassification& bottle, std::size_t most) {
    const std::vector<std::string> codes = bench::main_statements(bottle.label, most);
    std::string text;
    for (const std::string& code : codes)
        text += (text.empty() ? "" : ", ") + code;
    if (codes.size() < bottle.label.statements.size()) text += ", ...";
    if (text.empty()) return bottle.unassessed_percent > 0 ? "not assessed" : "not classified";
    return bottle.label.signal.empty() ? text : bottle.label.signal + ": " + text;
}

void add_reagents(const Paper& paper, Blocks& blocks) {
    writing::Table table;
    table.caption = paper.key() ? "Reagents, amounts for one pot; key"
                                : "Reagents, amounts for one pot; fill in what is left open";
    table.columns = {{.heading = "name and structure"},
                     {.heading = "M", .align = decimal, .unit = "g/mol"},
                     {.heading = "m.p.", .align = decimal, .unit = "°C"},
                     {.heading = "b.p.", .align = decimal, .unit = "°C"},
                     {.heading = "density", .align = decimal, .unit = "g/mL"},
                     {.heading = "mass", .align = decimal, .unit = "g"},
                     {.heading = "volume", .align = decimal, .unit = "mL"},
                     {.heading = "amount", .align = decimal, .unit = "mmol"},
                     {.heading = "equiv.", .align = decimal},
                     {.heading = "used", .note = "what you really took, written down while you take it"},
                     {.heading = "hazard"}};
    Drawings drawings(paper, table);
    int stage = -1;
    for (const bench::Reagent& reagent : paper.step.reagents) {
        if (reagent.stage != stage) {
            stage = reagent.stage;
            table.rows.push_back(
                writing::group(paper.step.step->stages[static_cast<std::size_t>(stage)].title));
        }
        table.rows.push_back(charge_row(paper, reagent, drawings));
    }
    table.rows.push_back(writing::group("product (theoretical yield)"));
    table.rows.push_back(product_row(paper, drawings));
    table.remarks = {
        "M, amount and equivalents of a solution are those of the substance in it, not of its water or "
        "solvent; melting and boiling points are listed for what is no mixture. Equivalents are counted "
        "from the reference substance of the route file, which need not be the limiting one."};
    blocks.push_back(std::move(table));
}

void add_bottle_hazards(const Paper& paper, Blocks& blocks) {
    writing::Table table;
    table.caption = "Main hazards of the bottles and of the product, in words";
    table.columns = {{.heading = "what is in it"}, {.heading = "signal word"}, {.heading = "says"}};
    std::set<const Material*> seen;
    std::vector<std::string> unclassified;
    const auto add = [&](const std::string& name, const MixtureClassification& bottle) {
        std::string words;
        for (const std::string& code : bench::main_statements(bottle.label, most_codes))
            words += (words.empty() ? "" : "; ") +
                     fmt::format("{} {}", code,
                                 statement_text(code, bottle.label, bottle.results,
                                                paper.experiment.rules().mixture.labels));
        for (const std::string& code : bottle.label.supplemental)
            words += (words.empty() ? "" : "; ") +
                     fmt::format("{} {}", code,
                                 statement_text(code, bottle.label, bottle.results,
                                                paper.experiment.rules().mixture.labels));
        if (words.empty() && bottle.unassessed_percent <= 0) {
            unclassified.push_back(name);
            return;
        }
        if (words.empty()) words = "not assessed: nothing is known, which is not the same as harmless";
        table.rows.push_back({name, bottle.label.signal, words});
    };
    for (const bench::Reagent& reagent : paper.step.reagents)
        if (const Material& material = reagent.material(); seen.insert(&material).second)
            add(material.name, paper.experiment.bottle(material));
    add(paper.step.step->product->name + " (product)", paper.experiment.product(paper.step));
    std::string remark =
        fmt::format("Worked out from the composition by the rules for mixtures ({}); the supplier's data "
                    "sheet goes before.",
                    paper.experiment.rules().mixture.regime == MixtureRegime::us ? "OSHA" : "CLP");
    if (!unclassified.empty()) {
        remark += " Not classified by these rules:";
        for (std::size_t i = 0; i < unclassified.size(); ++i)
            remark += (i == 0 ? " " : "; ") + unclassified[i];
        remark += ".";
    }
    table.remarks = {remark};
    blocks.push_back(std::move(table));
}

writing::MachineTree reagents_tree(const Paper& paper) {
    writing::MachineList list;
    for (const bench::Reagent& reagent : paper.step.reagents) {
        const Material& material = reagent.material();
        writing::MachineObject object{{"stage", reagent.stage + 1},
                                      {"material", material.name},
                                      {"role", std::string(reagent.charge->role->name)}};
        const Substance& substance = *pictured(reagent);
        object.push_back({"counted", reagent.counted != nullptr ? writing::MachineTree(reagent.counted->name)
                                                                : writing::MachineTree()});
        object.push_back({"molar_mass_g_per_mol", reagent.counted != nullptr || material.is_neat()
                                                      ? writing::MachineTree(substance.molar_mass)
                                                      : writing::MachineTree()});
        object.push_back({"melting_point_C", material.is_neat() ? number_or_null(substance.melting_point)
                                                                : writing::MachineTree()});
        object.push_back({"decomposes_C", material.is_neat() ? number_or_null(substance.decomposes)
                                                             : writing::MachineTree()});
        object.push_back({"boiling_point_C", material.is_neat() ? number_or_null(substance.boiling_point)
                                                                : writing::MachineTree()});
        object.push_back({"density_g_per_mL", number_or_null(material.density)});
        object.push_back({"mass", machine_of(mass_of(paper.route(), paper.step, reagent), paper.edition)});
        if (reagent.millilitres)
            object.push_back(
                {"volume", machine_of(volume_of(paper.route(), paper.step, reagent), paper.edition)});
        if (reagent.counted != nullptr) {
            object.push_back(
                {"amount", machine_of(amount_of(paper.route(), paper.step, reagent), paper.edition)});
            if (reagent.equivalents)
                object.push_back(
                    {"equivalents",
                     machine_of(equivalents_of(paper.route(), paper.step, reagent), paper.edition)});
        }
        const MixtureClassification& bottle = paper.experiment.bottle(material);
        writing::MachineList statements;
        for (const std::string& code : bottle.label.statements)
            statements.emplace_back(code);
        object.push_back({"signal", bottle.label.signal});
        object.push_back({"statements", std::move(statements)});
        object.push_back({"unassessed_percent", bottle.unassessed_percent});
        list.emplace_back(std::move(object));
    }
    return list;
}

} // namespace routeweigh::documents
