// SPDX-License-Identifier: MIT
#include "assess/streams/amounts_in_words.hpp"
#include "assess/streams/quench_words.hpp"
#include "assess/streams/treatment_supplies.hpp"
#include "base/text.hpp"
#include "documents/amount_text.hpp"
#include "documents/destination.hpp"
#include "documents/number.hpp"
#include "documents/papers/papers.hpp"
#include "documents/words.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace routeweigh::documents {
namespace {

/// A liquid to pour, and more than a trace.
bool has_volume(const streams::StreamAdvice& advice) {
    return !advice.stream.is_gas() && advice.largest_volume() >= 0.1; // mL
}

/// What stays on the crystals goes nowhere by itself, so nothing is done to it.
bool is_treated(const streams::StreamAdvice& advice) {
    return !advice.decision.first.empty() &&
           advice.decision.outcome != streams::Decision::Outcome::on_product;
}

bool holds_carbonate(const streams::Composition& composition) {
    const auto& portions = composition.portions();
    return std::any_of(portions.begin(), portions.end(), [](const streams::Portion& portion) {
        return portion.substance->id.find("carbonate") != std::string::npos;
    });
}

/// What is done to it may give a gas. Acid that takes up a base gives none, unless there is carbonate; base
/// for acid is hydrogencarbonate, and what destroys an oxidiser is left in doubt.
bool may_give_gas(const streams::StreamAdvice& advice) {
    using Kind = streams::Treatment::Kind;
    const auto& first = advice.decision.first;
    return std::any_of(first.begin(), first.end(), [&](const streams::Treatment& treatment) {
        if (treatment.kind == Kind::add_acid)
            return holds_carbonate(advice.nominal.as_left) || holds_carbonate(advice.unreacted.as_left);
        return treatment.kind != Kind::part_layers;
    });
}

streams::TreatmentSupplies supplies_of(const Paper& paper) {
    const streams::StreamRules& rules = paper.experiment.rules().streams;
    return treatment_supplies(*paper.step.quench, rules.quench, rules.catalogue);
}

std::string ready_words(const Paper& paper) {
    const streams::TreatmentSupplies supplies = supplies_of(paper);
    std::vector<std::string> names;
    for (const streams::TreatmentSupply& one : supplies.weighed)
        names.push_back(one.material->name +
                        (paper.key() ? " (" + amount_text(one.grams, *one.material) + ")" : ""));
    names.insert(names.end(), supplies.unweighed.begin(), supplies.unweighed.end());
    return join(names, "; "); // names have commas in them
}

/// What is done to one stream, and where it goes then.
writing::Text treatment_line(const Paper& paper, const streams::StreamAdvice& advice) {
    writing::Text line{writing::strong(advice.stream.name), ": "};
    // A student works out amounts, so the words must not give them away.
    line.runs.emplace_back(first_words(advice.decision, paper.key()) + "; ");
    for (const streams::StreamToNeutralise& one : paper.step.quench->to_neutralise) {
        if (one.stream != advice.stream.name || one.usual_base() == nullptr) continue;
        line.runs.emplace_back(one.usual_base()->base->name + ", in portions: ");
        line.runs.push_back(text_of(base_mass(paper.route(), paper.step, one), paper.edition));
        line.runs.emplace_back(paper.key() ? fmt::format(", in a vessel of at least {}; ",
                                                         streams::liquid_words(one.base.vessel))
                                           : ", in a vessel that leaves room for the gas; ");
    }
    line.runs.emplace_back("then: " + destination(advice.decision));
    return line;
}

/// What the waste plan says of destroying what is left: how, and what its heat may do.
void add_quench_caution(const Paper& paper, Blocks& blocks) {
    using Kind = streams::Treatment::Kind;
    if (std::none_of(
            paper.step.streams.begin(), paper.step.streams.end(), [](const streams::StreamAdvice* advice) {
                return is_treated(*advice) &&
                       (advice->decision.needs(Kind::quench) || advice->decision.needs(Kind::destroy));
            }))
        return;
    writing::Caution caution{"Before anything is quenched or destroyed", {}};
    for (const std::string& line : paper.step.quench->how)
        caution.items.emplace_back(capitalised(line));
    for (const std::string& line : streams::heat_words(*paper.step.quench, paper.key()))
        caution.items.emplace_back(capitalised(line));
    if (!caution.items.empty()) blocks.push_back(std::move(caution));
}

/// One line to tick for each stream that does not leave the bench as it is.
void add_treatments(const Paper& paper, Blocks& blocks) {
    if (std::none_of(paper.step.streams.begin(), paper.step.streams.end(),
                     [](const streams::StreamAdvice* advice) { return is_treated(*advice); }))
        return;
    writing::BulletList list;
    list.boxes = true;
    if (const std::string ready = ready_words(paper); !ready.empty())
        list.items.emplace_back("Have at hand: " + ready);
    for (const streams::StreamAdvice* advice : paper.step.streams)
        if (is_treated(*advice)) list.items.push_back(treatment_line(paper, *advice));
    const bool gas =
        std::any_of(paper.step.streams.begin(), paper.step.streams.end(),
                    [](const auto* advice) { return is_treated(*advice) && may_give_gas(*advice); });
    list.items.emplace_back(
        gas ? "Wait until no more gas comes, then test with paper; a vented cap until then"
            : "Test with paper");
    blocks.push_back(writing::Heading{heading_level(paper) + 1, "Before the streams leave the bench"});
    add_quench_caution(paper, blocks);
    blocks.push_back(std::move(list));
}

} // namespace

void add_streams(const Paper& paper, Blocks& blocks) {
    writing::Table table;
    table.caption = "Where each stream goes";
    table.columns = {{.heading = "stream"},
                     {.heading = "about", .align = writing::Align::decimal, .unit = "mL"},
                     {.heading = "goes to"},
                     {.heading = "before that"}};
    for (const streams::StreamAdvice* advice : paper.step.streams) {
        std::string first;
        if (is_treated(*advice)) first = "what the list below says";
        if (!advice->decision.vent.empty())
            first += (first.empty() ? "" : "; ") + ("no tight cap: " + join(advice->decision.vent, "; "));
        table.rows.push_back({advice->stream.name,
                              has_volume(*advice)
                                  ? cell_of(stream_volume(paper.route(), *advice), paper.edition)
                                  : writing::Cell(""),
                              destination(advice->decision), first});
    }
    table.remarks = {fmt::format(
        "Containers by {}; ask {} where anything differs from what you see. No conflict "
        "found by this method is no permission.",
        paper.experiment.rules().streams.local.title, paper.experiment.rules().streams.local.contact)};
    blocks.push_back(std::move(table));
    add_treatments(paper, blocks);
}

writing::MachineTree streams_tree(const Paper& paper) {
    writing::MachineList list;
    for (const streams::StreamAdvice* advice : paper.step.streams) {
        writing::MachineObject object{{"name", advice->stream.name}, {"goes_to", advice->decision.goes_to}};
        if (has_volume(*advice))
            object.push_back({"volume", machine_of(stream_volume(paper.route(), *advice), paper.edition)});
        writing::MachineList first;
        for (const streams::Treatment& treatment : advice->decision.first)
            first.emplace_back(paper.key() ? treatment.words : treatment.without_amounts);
        object.push_back({"first", std::move(first)});
        for (const streams::StreamToNeutralise& one : paper.step.quench->to_neutralise)
            if (one.stream == advice->stream.name && one.usual_base() != nullptr)
                object.push_back(
                    {"base", machine_of(base_mass(paper.route(), paper.step, one), paper.edition)});
        list.emplace_back(std::move(object));
    }
    return list;
}

int heading_level(const Paper& paper) {
    return paper.experiment.steps().size() == 1 ? 2 : 3;
}

} // namespace routeweigh::documents
