// SPDX-License-Identifier: MIT
#include "documents/classified_mixture.hpp"

#include "assess/mixture/explain.hpp"
#include "base/text.hpp"
#include "documents/number.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace routeweigh::documents {
namespace {

std::vector<std::string> titles_of(const MixtureClassification& classification, MixtureOutcome outcome) {
    std::vector<std::string> titles;
    for (const MixtureResult& result : classification.results)
        if (result.outcome == outcome) titles.emplace_back(result.title);
    return titles;
}

std::vector<std::string> names_unassessed(const MixtureClassification& classification) {
    std::vector<std::string> names;
    for (const ResolvedIngredient& ingredient : classification.mixture.ingredients)
        if (!ingredient.assessed()) names.push_back(ingredient.substance->name);
    if (classification.mixture.unstated_percent > 0) names.emplace_back("what is not stated");
    return names;
}

/// The share of unknown toxicity to people or water that a label must state.
std::string unknown_toxicity(const MixtureClassification& classification) {
    constexpr double stated_from = 1; // per cent; CLP Annex I, 3.1.3.6.2.2 (read) and 4.1.3.6 (remembered)
    double most = 0;
    for (const MixtureResult& result : classification.results)
        if (result.endpoint.starts_with("acute_") || result.endpoint.starts_with("aquatic_"))
            most = std::max(most, result.unknown_percent);
    return reaches(most, stated_from) ? fmt::format("{} %, which a label states", digits(most))
                                      : std::string();
}

std::string flash_point_text(const MixtureClassification& classification) {
    const MixtureResult* result = classification.result("flammable_liquid");
    if (result == nullptr) return {};
    if (classification.mixture.facts.flashes_above)
        return fmt::format("above {:.0f} \u00B0C, if it flashes at all; screened and not measured",
                           *classification.mixture.facts.flash_point);
    if (!result->estimate) return {};
    return fmt::format("{:.0f} \u00B0C, {}", *result->estimate,
                       result->screened ? "screened and not measured" : "stated or of the neat substance");
}

writing::KeyValueList label_list(const MixtureClassification& classification, const LabelElements& elements) {
    writing::KeyValueList list;
    const auto add = [&](std::string key, std::string value) {
        if (!value.empty()) list.entries.push_back({std::move(key), writing::Text(std::move(value))});
    };
    const MixtureLabel& label = classification.label;
    const auto text = [&](const std::string& code) {
        return statement_text(code, label, classification.results, elements);
    };
    const std::string classes = classes_text(classification);
    add("Classification", classes.empty() ? "no class found by this method" : classes);
    add("Signal word", signal_word(classification));
    for (const std::string& code : label.statements)
        add(code, text(code));
    for (const std::string& code : label.supplemental)
        add(code, text(code));
    for (const std::string& code : label.precautions)
        add(code, std::string(elements.text(code)));
    std::vector<std::string> omitted;
    for (const OmittedElement& element : label.omitted)
        omitted.push_back(fmt::format("{} beside {}", element.what, element.beside));
    add("Left out", join(omitted, "; "));
    add("Flash point", flash_point_text(classification));
    const std::vector<std::string> unassessed = names_unassessed(classification);
    add("Not assessed",
        unassessed.empty()
            ? "0 % of its mass"
            : fmt::format("{} % of its mass: {}", unassessed_text(classification), join(unassessed, ", ")));
    add("Of unknown toxicity", unknown_toxicity(classification));
    add("A test decides", join(titles_of(classification, MixtureOutcome::test_needed), "; "));
    add("Cannot be judged", join(titles_of(classification, MixtureOutcome::not_judged), "; "));
    return list;
}

/// What was done before the limits were applied.
std::vector<writing::Text> steps_before(const MixtureClassification& classification,
                                        const streams::PairedComposition* paired) {
    std::vector<writing::Text> steps;
    if (paired != nullptr) {
        for (const streams::PairingStep& step : paired->steps)
            steps.push_back({"Acids and bases paired off: ", writing::code(step.equation),
                             fmt::format(" ({} mmol; {})", digits(1000 * step.moles), step.words)});
        for (const std::string& pair : paired->left_unpaired)
            steps.push_back(writing::Text("Not paired, for the catalogue knows no such salt: " + pair));
        for (const streams::Portion& gas : paired->gas.portions())
            steps.push_back(writing::Text(
                fmt::format("Leaves as gas, at most: {} g {}", digits(gas.grams), gas.substance->name)));
    }
    for (const ResolvedIngredient& ingredient : classification.mixture.ingredients)
        if (ingredient.solution)
            steps.push_back(writing::Text(fmt::format("{} takes the entry of its solution ({})",
                                                      ingredient.substance->name,
                                                      ingredient.substance->ghs_solution->applies_to)));
    return steps;
}

bool has_reasons(const MixtureResult& result) {
    return !result.tests.empty() || !result.notes.empty() || result.classified();
}

std::vector<writing::Text> reasons(const MixtureClassification& classification) {
    std::vector<writing::Text> items;
    std::vector<std::string> silent;
    for (const MixtureResult& result : classification.results) {
        if (!has_reasons(result)) {
            if (result.outcome == MixtureOutcome::not_classified) silent.emplace_back(result.title);
            continue;
        }
        const std::vector<std::string> lines = explain(result);
        std::vector<std::string> rest(lines.begin() + 1, lines.end());
        items.push_back({writing::strong(lines.front()), rest.empty() ? "" : ". " + join(rest, "; ")});
    }
    if (!silent.empty())
        items.push_back(writing::Text(
            "No ingredient of a known class reaches the share from which it counts: " + join(silent, "; ")));
    const std::vector<std::string> uncovered = titles_of(classification, MixtureOutcome::not_covered);
    if (!uncovered.empty())
        items.push_back(writing::Text("These rules have no such class: " + join(uncovered, "; ")));
    return items;
}

/// What nobody assessed may not pass for harmless.
std::string none_or_unknown(const MixtureClassification& classification) {
    return is_assessed(classification) ? "none" : "unknown";
}

} // namespace

bool is_assessed(const MixtureClassification& classification) {
    constexpr double counts_from =
        1; // per cent: the general cut-off of mixture rules (CLP Annex I, Table 1.1, memory)
    return classification.unassessed_percent < counts_from;
}

std::string signal_word(const MixtureClassification& classification) {
    return classification.label.signal.empty() ? none_or_unknown(classification)
                                               : classification.label.signal;
}

std::string statement_codes(const MixtureClassification& classification) {
    std::vector<std::string> codes = classification.label.statements;
    codes.insert(codes.end(), classification.label.supplemental.begin(),
                 classification.label.supplemental.end());
    return codes.empty() ? none_or_unknown(classification) : join(codes, " ");
}

std::string unassessed_text(const MixtureClassification& classification) {
    const double percent = classification.unassessed_percent;
    return percent > 0 ? digits(percent, 2) : "0";
}

std::string classes_text(const MixtureClassification& classification) {
    std::vector<std::string> classes;
    for (const MixtureResult& result : classification.results) {
        if (!result.classified()) continue;
        const std::string one = result.class_and_category();
        if (std::find(classes.begin(), classes.end(), one) == classes.end()) classes.push_back(one);
    }
    return join(classes, ", ");
}

void add_classified(const MixtureClassification& classification, const LabelElements& elements,
                    const streams::PairedComposition* paired, Blocks& blocks) {
    if (!classification.label.pictograms.empty())
        blocks.push_back(writing::Pictograms{classification.label.pictograms, 52});
    blocks.push_back(label_list(classification, elements));
    std::vector<writing::Text> before = steps_before(classification, paired);
    if (!before.empty()) blocks.push_back(writing::BulletList{std::move(before)});
    writing::Folded why{"Why: ingredients, limits and sums of each hazard", {}};
    why.blocks.push_back(writing::BulletList{reasons(classification)});
    blocks.push_back(std::move(why));
}

writing::Paragraph standing_of_classification(bool waste) {
    std::string text =
        "An estimate from the composition, for planning: data of the mixture itself, and the label "
        "of the supplier, go before it. What carries no statement is not thereby without hazard.";
    if (waste)
        text +=
            " The rules for mixtures are no rules for waste: in the EU they do not apply to waste, which has "
            "hazard properties of its own (HP 1 to HP 15), and elsewhere waste has codes of its own too; a "
            "class "
            "printed here is no waste code.";
    return {writing::Text(std::move(text)), true};
}

std::string judged_by(const MixtureRules& rules) {
    std::vector<std::string> on, off;
    for (const BuildingBlock& block : rules.limits.blocks)
        (block.on ? on : off).push_back(block.title);
    std::string text = "Judged by " + rules.limits.title;
    if (!on.empty()) text += ", with " + join(on, "; ");
    if (!off.empty()) text += "; without " + join(off, "; ");
    return text + ".";
}

} // namespace routeweigh::documents
