// SPDX-License-Identifier: MIT
#include "assess/mixture/explain.hpp"
#include "base/text.hpp"
#include "documents/classified_mixture.hpp"

namespace routeweigh::documents {
namespace {

using writing::MachineList;
using writing::MachineObject;
using writing::MachineTree;
using writing::text_list;

std::string_view outcome_word(MixtureOutcome outcome) {
    switch (outcome) {
    case MixtureOutcome::classified:
        return "classified";
    case MixtureOutcome::test_needed:
        return "test needed";
    case MixtureOutcome::not_judged:
        return "not judged";
    case MixtureOutcome::not_covered:
        return "not covered";
    case MixtureOutcome::not_classified:
        break;
    }
    return "not classified";
}

MachineObject result_tree(const MixtureResult& result) {
    MachineObject object{{"endpoint", std::string(result.endpoint)},
                         {"title", std::string(result.title)},
                         {"outcome", std::string(outcome_word(result.outcome))},
                         {"class", result.hazard_class},
                         {"category", result.category},
                         {"statement", result.statement},
                         {"estimate", result.estimate ? MachineTree(*result.estimate) : MachineTree()},
                         {"unit", std::string(result.estimate_unit)},
                         {"screened", result.screened},
                         {"unknown_percent", result.unknown_percent}};
    std::vector<std::string> lines = explain(result);
    lines.erase(lines.begin()); // title and outcome stand above
    object.push_back({"reasons", text_list(lines)});
    return object;
}

} // namespace

MachineObject classified_tree(const MixtureClassification& classification, const LabelElements& elements) {
    const MixtureLabel& label = classification.label;
    MachineList statements, precautions, results, ingredients;
    for (const std::vector<std::string>* list : {&label.statements, &label.supplemental})
        for (const std::string& code : *list)
            statements.emplace_back(MachineObject{
                {"code", code}, {"text", statement_text(code, label, classification.results, elements)}});
    for (const std::string& code : label.precautions)
        precautions.emplace_back(MachineObject{{"code", code}, {"text", std::string(elements.text(code))}});
    for (const MixtureResult& result : classification.results)
        results.emplace_back(result_tree(result));
    for (const ResolvedIngredient& ingredient : classification.mixture.ingredients)
        ingredients.emplace_back(MachineObject{{"substance", ingredient.substance->id},
                                               {"percent", ingredient.percent},
                                               {"entry_of_solution", ingredient.solution},
                                               {"assessed", ingredient.assessed()}});
    return {{"jurisdiction", std::string(classification.regime)},
            {"building_blocks", text_list(classification.blocks)},
            {"signal_word", label.signal},
            {"pictograms", text_list(label.pictograms)},
            {"statements", std::move(statements)},
            {"precautions", std::move(precautions)},
            {"unassessed_percent", classification.unassessed_percent},
            {"ingredients", std::move(ingredients)},
            {"results", std::move(results)},
            {"notes", text_list(classification.notes())}};
}

MachineObject pairing_tree(const streams::PairedComposition& paired) {
    MachineList steps, gas;
    for (const streams::PairingStep& step : paired.steps)
        steps.emplace_back(MachineObject{{"equation", step.equation}, {"mol", step.moles}});
    for (const streams::Portion& portion : paired.gas.portions())
        gas.emplace_back(MachineObject{{"substance", portion.substance->id}, {"grams", portion.grams}});
    return {{"steps", std::move(steps)},
            {"gas_at_most", std::move(gas)},
            {"not_paired", text_list(paired.left_unpaired)}};
}

std::vector<std::string> classified_columns() {
    return {"jurisdiction", "signal_word",        "statements", "supplemental",
            "pictograms",   "unassessed_percent", "undecided"};
}

std::vector<writing::DataCell> classified_cells(const MixtureClassification& classification) {
    const MixtureLabel& label = classification.label;
    std::vector<std::string> undecided;
    for (const std::string_view title : classification.undecided())
        undecided.emplace_back(title);
    return {regime_text(classification), label.signal,
            join(label.statements, " "), join(label.supplemental, " "),
            join(label.pictograms, " "), classification.unassessed_percent,
            join(undecided, "; ")};
}

} // namespace routeweigh::documents
