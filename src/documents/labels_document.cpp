// SPDX-License-Identifier: MIT
#include "documents/labels_document.hpp"

#include "assess/mixture/mixture_classification.hpp"
#include "assess/stock/stock_list.hpp"
#include "base/list.hpp"
#include "base/text.hpp"
#include "documents/composition_text.hpp"
#include "documents/version.hpp"
#include "documents/words.hpp"

#include <fmt/format.h>

#include <optional>
#include <utility>

namespace routeweigh {
namespace {

using documents::PrintedShare;
using writing::LabelSheet;

/// One label with what programs read of it.
struct Labelled {
    LabelSheet::Label label;
    std::string kind; ///< "bottle", "waste", "recovery" for a solvent to be used again, or "waiting" for what
                      ///< is in a waste container once it is quenched
    std::vector<PrintedShare> shares;
    bool shares_known = true; ///< false for washings: how much water is in them nobody planned
    int copies = 1;
};

std::string statement_words(const MixtureClassification& found, const MixtureRules& rules) {
    std::vector<std::string> words;
    for (const auto* codes : {&found.label.statements, &found.label.supplemental})
        for (const std::string& code : *codes)
            words.push_back(
                fmt::format("{} {}", code, statement_text(code, found.label, found.results, rules.labels)));
    std::string text = join(words, ". ");
    if (!text.empty() && text.back() != '.') text += '.';
    return text;
}

/// Signal word, pictograms and statements; or why there are none.
void add_hazards(LabelSheet::Label& label, const Mixture& mixture, const MixtureRules& rules) {
    std::optional<MixtureClassification> found;
    try {
        found = classify(mixture, rules);
    } catch (const InputError& error) {
        label.statements =
            fmt::format("Hazards not classified: {}. Ask before use.", error.problems.front().message);
        return;
    }
    label.signal = found->label.signal;
    label.pictograms = found->label.pictograms;
    label.statements = statement_words(*found, rules);
    if (found->unassessed_percent > 0)
        label.statements += fmt::format("{}Hazards not assessed for {:.3g} % of it.",
                                        label.statements.empty() ? "" : " ", found->unassessed_percent);
    else if (label.statements.empty())
        label.statements =
            "No hazard class follows from the composition, which does not say that there is none.";
}

void add_foot(LabelSheet::Label& label, const LabelWords& words, std::string_view date_of) {
    constexpr std::string_view to_write = "______________";
    label.foot.push_back(fmt::format("{}: {}", date_of, words.date.empty() ? to_write : words.date));
    label.foot.push_back(fmt::format("Course: {}", words.course.empty() ? to_write : words.course));
    label.foot.push_back(fmt::format("Contact: {}", words.contact.empty() ? to_write : words.contact));
}

Labelled bottle_label(const Material& material, const MixtureRules& rules, const LabelWords& words) {
    Labelled made;
    made.kind = "bottle";
    made.copies = words.copies;
    std::vector<std::pair<const Substance*, double>> grams;
    for (const Component& component : material.components)
        grams.emplace_back(component.substance, component.mass_fraction);
    made.shares = documents::printed_shares(grams);
    made.label.name = material.name;
    made.label.contents = "By mass: " + composition_text(made.shares);
    add_hazards(made.label, mixture_of(material), rules);
    add_foot(made.label, words, "Filled on");
    return made;
}

std::string_view done_to_it(streams::Treatment::Kind kind) {
    using Kind = streams::Treatment::Kind;
    switch (kind) {
    case Kind::let_gas_leave:
        return "gas let off";
    case Kind::destroy:
        return "destroyed";
    case Kind::quench:
        return "quenched";
    case Kind::add_base:
    case Kind::add_acid:
        return "neutralised";
    case Kind::part_layers:
        return "layers parted";
    }
    return "";
}

/// The composition is what the streams leave the pot with, not what is done to them first.
std::string contents_heading(const streams::ContainerContents& contents) {
    if (contents.awaits_quench) return "As planned, by mass, until it is quenched: ";
    if (contents.washings)
        return "Washings of what is named here, with its hazards; how much water is in them is not planned: ";
    std::vector<std::string> done;
    for (const streams::Treatment::Kind kind : contents.before)
        add_once(done, std::string(done_to_it(kind)));
    if (done.empty()) return "As planned, by mass: ";
    return fmt::format("As planned, by mass and with the hazards of that, before what is done first ({}): ",
                       join(done, ", "));
}

std::string names_text(const std::vector<PrintedShare>& shares) {
    std::vector<std::string> names;
    for (const PrintedShare& share : shares)
        names.push_back(documents::name_in_water(*share.substance));
    return join(names, ", ");
}

/// What is in a bottle of its own that gives a toxic gas with acid (EUH031, EUH032; not every jurisdiction
/// prints them). What may meet in a shared container is for its own rules to say.
std::string frees_gas_with_acid(const streams::ContainerContents& contents) {
    if (contents.container != nullptr) return {};
    std::vector<std::string> names;
    for (const streams::Portion& portion : contents.composition.portions())
        for (const std::string& statement : portion.substance->supplemental)
            if (statement == "EUH031" || statement == "EUH032") add_once(names, portion.substance->name);
    return listed(names);
}

Labelled waste_label(const streams::ContainerContents& contents, const MixtureRules& rules,
                     const LabelWords& words) {
    Labelled made;
    made.kind = contents.awaits_quench ? "waiting" : contents.is_for_recovery() ? "recovery" : "waste";
    made.copies = contents.containers;
    made.shares_known = !contents.washings;
    std::vector<std::pair<const Substance*, double>> grams;
    for (const streams::Portion& portion : contents.composition.portions())
        grams.emplace_back(portion.substance, portion.grams);
    made.shares = documents::printed_shares(grams);
    Mixture mixture;
    mixture.name = contents.name;
    const double total = contents.composition.total();
    for (const auto& [substance, mass] : grams)
        mixture.ingredients.push_back(
            {substance, mass / total, substance->phase == Substance::Phase::gas, IngredientFacts{}});
    made.label.heading =
        contents.is_for_recovery() ? "To be used again, nothing else into it" : "Hazardous waste";
    made.label.name = contents.name;
    made.label.contents = contents_heading(contents) +
                          (contents.washings ? names_text(made.shares) : composition_text(made.shares));
    add_hazards(made.label, mixture, rules);
    add_foot(made.label, words, "Started on");
    if (contents.container != nullptr && !contents.container->waste_code.empty())
        made.label.foot.push_back("Waste code: " + contents.container->waste_code);
    if (contents.vented) made.label.foot.emplace_back("Vented cap: do not close tightly");
    if (const std::string names = frees_gas_with_acid(contents); !names.empty())
        made.label.foot.push_back(fmt::format("No acid into it: {} would set a toxic gas free", names));
    return made;
}

writing::MachineTree tree_of(const Labelled& made) {
    writing::MachineList shares, pictograms;
    for (const PrintedShare& share : made.shares)
        shares.emplace_back(writing::MachineObject{
            {"substance", share.substance->name},
            {"grams", made.kind != "bottle" ? writing::MachineTree(share.grams) : writing::MachineTree()},
            {"percent", made.shares_known ? writing::MachineTree(static_cast<double>(share.tenths) / 10)
                                          : writing::MachineTree()}});
    for (const std::string& code : made.label.pictograms)
        pictograms.emplace_back(code);
    return writing::MachineObject{{"kind", made.kind},
                                  {"name", made.label.name},
                                  {"copies", made.copies},
                                  {"contents", std::move(shares)},
                                  {"signal_word", made.label.signal},
                                  {"pictograms", std::move(pictograms)},
                                  {"statements", made.label.statements}};
}

writing::DataRows rows_of(const std::vector<Labelled>& labels) {
    writing::DataRows data;
    data.columns = {"kind", "name", "copies", "contents", "signal word", "pictograms", "statements", "foot"};
    for (const Labelled& made : labels)
        data.rows.push_back({made.kind, made.label.name, static_cast<double>(made.copies),
                             made.label.contents, made.label.signal, join(made.label.pictograms, " "),
                             made.label.statements, join(made.label.foot, "; ")});
    return data;
}

LabelSheet sheet_of(const stock::LabelSheetSize& size, int first) {
    LabelSheet sheet;
    sheet.paper = size.paper;
    sheet.paper_width = size.paper_width;
    sheet.paper_height = size.paper_height;
    sheet.columns = size.columns;
    sheet.rows = size.rows;
    sheet.width = size.width;
    sheet.height = size.height;
    sheet.left = size.left;
    sheet.top = size.top;
    sheet.across = size.across;
    sheet.down = size.down;
    sheet.skip = first - 1;
    return sheet;
}

} // namespace

writing::Document labels_document(const Assessment& route,
                                  const std::vector<streams::ContainerContents>& contents,
                                  const MixtureRules& rules, const stock::LabelSheetSize& sheet,
                                  const LabelWords& words) {
    std::vector<Labelled> labels;
    if (words.bottles)
        for (const stock::Need& need : stock::needs_of_run(route))
            labels.push_back(bottle_label(*need.material, rules, words));
    if (words.waste)
        for (const streams::ContainerContents& container : contents)
            labels.push_back(waste_label(container, rules, words));

    writing::Document document;
    document.id = "labels";
    document.title = "Labels: " + route.route().title;
    document.subtitle = fmt::format("Sheets {}, {:g} x {:g} mm", sheet.name, sheet.width, sheet.height);
    document.blocks.push_back(
        writing::Paragraph{"Print at 100 %, without scaling and without margins of the printer's own, and "
                           "try on plain paper first. Hazards are those of the composition by the rules for "
                           "mixtures of " +
                           rules.limits.title +
                           ": an estimate for planning. The supplier's label and data sheet come first, and "
                           "what really stands in a waste container is what was written on its log. Local "
                           "rules, the safety office and licensed waste contractors decide."});
    LabelSheet block = sheet_of(sheet, words.first);
    writing::MachineList machine;
    for (const Labelled& made : labels) {
        machine.push_back(tree_of(made));
        for (int copy = 0; copy < made.copies; ++copy)
            block.labels.push_back(made.label);
    }
    document.blocks.emplace_back(std::move(block));
    document.machine = writing::MachineObject{{"routeweigh", std::string(program_version())},
                                              {"route", route.route().id},
                                              {"sheet", sheet.name},
                                              {"labels", std::move(machine)}};
    document.rows = rows_of(labels);
    document.colophon = "routeweigh " + std::string(program_version());
    return document;
}

} // namespace routeweigh
