// SPDX-License-Identifier: MIT
#include "documents/catalogue_document.hpp"

#include "base/text.hpp"
#include "documents/cautions.hpp"
#include "documents/number.hpp"
#include "documents/recalled.hpp"
#include "documents/words.hpp"

#include <fmt/format.h>

#include <cmath>
#include <utility>

namespace routeweigh {
namespace {

using documents::digits;
using documents::fixed;

/// More hits than this are listed and not described.
constexpr std::size_t most_described = 6;

std::string source_text(const std::string& source) {
    if (source.empty()) return "no source stated";
    // Recalled data are the ones to check first, so they must not look like the others.
    return source.find("memory") != std::string::npos ? documents::from_memory(source) : source;
}

std::string stated_source(const std::map<std::string, std::string>& sources, const std::string& datum) {
    const auto found = sources.find(datum);
    return source_text(found == sources.end() ? std::string() : found->second);
}

std::string_view state_words(Substance::Phase phase) {
    switch (phase) {
    case Substance::Phase::solid:
        return "solid";
    case Substance::Phase::liquid:
        return "liquid";
    case Substance::Phase::gas:
        break;
    }
    return "gas";
}

std::string_view status_words(AssessmentStatus status) {
    switch (status) {
    case AssessmentStatus::harmonised:
        return "harmonised classification";
    case AssessmentStatus::harmonised_group:
        return "harmonised classification of its group";
    case AssessmentStatus::supplier:
        return "classification of suppliers";
    case AssessmentStatus::not_classified:
        return "assessed and not classified";
    case AssessmentStatus::no_data:
        break;
    }
    return "no classification was found, which does not mean that there is no hazard";
}

/// As the catalogue states it, with a true minus.
std::string stated_number(double value) {
    return (value < 0.0 ? "\u2212" : "") + fmt::format("{:g}", std::abs(value));
}

/// A table of data, each with its source.
class DataTable {
  public:
    DataTable() { table_.columns = {{.heading = "datum"}, {.heading = "value"}, {.heading = "source"}}; }
    void add(const char* name, const std::string& value, const std::string& source) {
        if (!value.empty()) table_.rows.push_back({name, value, source});
    }
    void add(const char* name, const std::optional<double>& value, const char* unit,
             const std::string& source) {
        if (value) add(name, fmt::format("{} {}", stated_number(*value), unit), source);
    }
    writing::Table take() { return std::move(table_); }

  private:
    writing::Table table_;
};

std::string entry_text(const GhsEntry& entry) {
    std::string text = entry.statement + ": " + entry.hazard_class;
    if (!entry.category.empty()) text += " " + entry.category;
    if (entry.m_factor) text += fmt::format(", M-factor {:g}", *entry.m_factor);
    if (entry.acute_toxicity)
        text += fmt::format(", acute toxicity estimate {:g} {} ({})", entry.acute_toxicity->value,
                            entry.acute_toxicity->unit, entry.acute_toxicity->route);
    if (!entry.target.empty()) text += ", " + entry.target;
    if (!entry.condition.empty()) text += ", " + entry.condition;
    for (const ConcentrationBand& band : entry.specific_limits)
        text += fmt::format("; {} from {:g} %", band.statement, band.min_percent);
    return text;
}

std::string limit_text(const ExposureLimit& limit) {
    std::string text = fmt::format("{:g} {}, {}", limit.value, limit.unit, limit.kind_text);
    if (limit.short_term)
        text += fmt::format("; short term {:g} {}", limit.short_term->value, limit.short_term->unit);
    if (limit.ceiling) text += fmt::format("; ceiling {:g} {}", limit.ceiling->value, limit.ceiling->unit);
    return limit.skin ? text + "; taken up through the skin" : text;
}

void describe(const Substance& substance, std::vector<writing::Block>& blocks) {
    blocks.push_back(writing::Heading{3, substance.name, "substance-" + substance.id});
    DataTable table;
    const auto& sources = substance.sources;
    table.add("other names", join(substance.synonyms, "; "), "");
    table.add("CAS number", substance.cas, stated_source(sources, "cas"));
    table.add("formula", substance.has_formula() ? substance.formula.text : std::string("none: a mixture"),
              stated_source(sources, "formula"));
    if (substance.has_formula())
        table.add("molar mass", fixed(substance.molar_mass, 3) + " g/mol",
                  "from the formula, standard atomic weights of IUPAC 2021, abridged");
    table.add("at 25 \u00B0C", std::string(state_words(substance.phase)),
              stated_source(sources, "phase_at_25C"));
    table.add("density", substance.density, "g/mL", stated_source(sources, "density_g_per_mL"));
    table.add("melting point", substance.melting_point, "\u00B0C", stated_source(sources, "melting_point_C"));
    table.add("decomposes at", substance.decomposes, "\u00B0C", stated_source(sources, "decomposes_C"));
    table.add("boiling point", substance.boiling_point, "\u00B0C", stated_source(sources, "boiling_point_C"));
    table.add("flash point", substance.flash_point, "\u00B0C", stated_source(sources, "flash_point_C"));
    table.add("classification", std::string(status_words(substance.status)),
              source_text(substance.ghs_source));
    for (const GhsEntry& entry : substance.ghs)
        table.add("hazard", entry_text(entry), source_text(substance.ghs_source));
    if (substance.ghs_solution)
        for (const GhsEntry& entry : substance.ghs_solution->ghs)
            table.add("hazard in solution", entry_text(entry), source_text(substance.ghs_solution->source));
    for (const GhsEntry& entry : substance.supplier_additions)
        table.add("suppliers add", entry_text(entry), "from memory; in no figure");
    table.add("supplemental", join(substance.supplemental, ", "), source_text(substance.ghs_source));
    if (substance.exposure_limit)
        table.add("exposure limit", limit_text(*substance.exposure_limit),
                  source_text(substance.exposure_limit->source));
    if (substance.free_bromine > 0)
        table.add("free bromine", fmt::format("{:g} mol Br2 per mol", substance.free_bromine),
                  "from the formula");
    if (substance.carried_bromine > 0)
        table.add("carried bromine", fmt::format("{:g} mol Br2 per mol", substance.carried_bromine),
                  "from the formula");
    table.add("note", substance.ghs_note, "");
    table.add("remark", substance.notes, "");
    blocks.push_back(table.take());
}

void describe(const Material& material, std::vector<writing::Block>& blocks) {
    blocks.push_back(writing::Heading{3, material.name, "material-" + material.id});
    DataTable table;
    table.add("other names", join(material.synonyms, "; "), "");
    for (const Component& component : material.components)
        table.add("holds",
                  fmt::format("{} % {} by mass", digits(100.0 * component.mass_fraction),
                              component.substance->name),
                  stated_source(material.sources, "composition"));
    table.add("density", material.density, "g/mL", stated_source(material.sources, "density_g_per_mL"));
    table.add("strength means", material.basis, "");
    if (material.typical) table.add("composition", "typical; it varies between suppliers", "");
    table.add("remark", material.notes, "");
    blocks.push_back(table.take());
}

writing::Table list_of(const std::vector<Found>& hits) {
    writing::Table table;
    table.caption = "What matches";
    table.columns = {
        {.heading = "name"}, {.heading = "kind"}, {.heading = "formula or contents"}, {.heading = "CAS"}};
    for (const Found& hit : hits) {
        if (hit.substance != nullptr) {
            table.rows.push_back(
                {hit.substance->name, "substance", hit.substance->formula.text, hit.substance->cas});
            continue;
        }
        std::vector<std::string> parts;
        for (const Component& component : hit.material->components)
            parts.push_back(component.substance->name);
        table.rows.push_back({hit.material->name, "material", join(parts, ", "), ""});
    }
    return table;
}

writing::MachineTree hazard_codes(const std::vector<GhsEntry>& entries) {
    writing::MachineList list;
    for (const GhsEntry& entry : entries)
        list.emplace_back(writing::MachineObject{
            {"statement", entry.statement}, {"class", entry.hazard_class}, {"category", entry.category}});
    return list;
}

writing::MachineTree machine(const std::vector<Found>& hits) {
    const auto optional = [](const std::optional<double>& value) {
        return value ? writing::MachineTree(*value) : writing::MachineTree();
    };
    writing::MachineList substances, materials;
    for (const Found& hit : hits) {
        if (const Substance* found = hit.substance) {
            writing::MachineObject sources;
            for (const auto& [datum, source] : found->sources)
                sources.push_back({datum, source});
            substances.emplace_back(writing::MachineObject{{"id", found->id},
                                                           {"name", found->name},
                                                           {"cas", found->cas},
                                                           {"formula", found->formula.text},
                                                           {"molar_mass", found->molar_mass},
                                                           {"density", optional(found->density)},
                                                           {"assessed", found->assessed},
                                                           {"ghs", hazard_codes(found->ghs)},
                                                           {"ghs_source", found->ghs_source},
                                                           {"sources", std::move(sources)}});
            continue;
        }
        writing::MachineList components;
        for (const Component& component : hit.material->components)
            components.emplace_back(writing::MachineObject{{"substance", component.substance->id},
                                                           {"mass_fraction", component.mass_fraction}});
        materials.emplace_back(writing::MachineObject{{"id", hit.material->id},
                                                      {"name", hit.material->name},
                                                      {"density", optional(hit.material->density)},
                                                      {"components", std::move(components)}});
    }
    return writing::MachineObject{{"substances", std::move(substances)}, {"materials", std::move(materials)}};
}

} // namespace

writing::Document catalogue_document(const Catalogue& catalogue, std::string_view text) {
    const std::vector<Found> hits = catalogue.search(text);
    writing::Document document;
    document.id = "catalogue";
    document.title = fmt::format("What the catalogue knows of \"{}\"", text);
    document.machine = machine(hits);
    if (hits.empty()) {
        const std::string near = catalogue.nearest_material(text);
        document.blocks.push_back(writing::Paragraph{
            near.empty() ? "Nothing matches."
                         : fmt::format("Nothing matches. The nearest name is \"{}\".", near)});
        return document;
    }
    if (hits.size() > 1) document.blocks.push_back(list_of(hits));
    for (std::size_t i = 0; i < hits.size() && i < most_described; ++i) {
        if (hits[i].substance != nullptr)
            describe(*hits[i].substance, document.blocks);
        else
            describe(*hits[i].material, document.blocks);
    }
    if (hits.size() > most_described)
        document.blocks.push_back(writing::Paragraph{
            fmt::format("The first {} are described; a longer name describes the others.", most_described),
            true});
    document.blocks.push_back(documents::usual_cautions());
    return document;
}

} // namespace routeweigh
