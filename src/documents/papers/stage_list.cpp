// SPDX-License-Identifier: MIT
#include "assess/bench/equipment.hpp"
#include "base/text.hpp"
#include "documents/destination.hpp"
#include "documents/number.hpp"
#include "documents/papers/papers.hpp"
#include "documents/words.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <map>

namespace routeweigh::documents {
namespace {

using writing::Text;

/// What the hand does with a charge of this role.
std::string_view verb_of(std::string_view role) {
    struct Verb {
        std::string_view role, words;
    };
    constexpr std::array verbs{Verb{"quench", "Quench with"},
                               Verb{"neutraliser", "Neutralise with"},
                               Verb{"drown-out", "Bring together with"},
                               Verb{"flask rinse", "Rinse the flask with"},
                               Verb{"wash", "Wash with"},
                               Verb{"rinse", "Rinse with"},
                               Verb{"extraction", "Extract with"},
                               Verb{"drying agent", "Dry over"},
                               Verb{"adsorbent", "Filter through"},
                               Verb{"recrystallisation solvent", "Dissolve hot in"},
                               Verb{"antisolvent", "Bring down with"},
                               Verb{"eluent", "Elute with"},
                               Verb{"decolourising agent", "Decolourise with"}};
    const auto found =
        std::find_if(verbs.begin(), verbs.end(), [&](const Verb& verb) { return verb.role == role; });
    return found == verbs.end() ? "Put in" : found->words;
}

Text charge_line(const Paper& paper, const bench::BenchStage& stage, const bench::Reagent& reagent) {
    const std::string_view role = reagent.charge->role->name;
    const bool poured =
        role == "drown-out" && std::any_of(stage.cautions.begin(), stage.cautions.end(),
                                           [](const auto& one) { return one.rule == "pour"; });
    const std::string_view verb = poured             ? "Pour the mixture into"
                                  : reagent.is_gas() ? "Take in"
                                                     : verb_of(role);
    Text line{std::string(verb) + " ", writing::strong(reagent.material().name), ": ",
              text_of(mass_of(paper.route(), paper.step, reagent), paper.edition)};
    if (reagent.millilitres) {
        line.runs.emplace_back(" (");
        line.runs.push_back(text_of(volume_of(paper.route(), paper.step, reagent), paper.edition));
        line.runs.emplace_back(")");
    }
    if (reagent.charge->amount.repeat > 1)
        line.runs.emplace_back(fmt::format(", in {} equal portions", reagent.charge->amount.repeat));
    if (reagent.made_before) line.runs.emplace_back(", from the step before");
    if (const std::string& given = reagent.charge->given_as; paper.key() && !given.empty())
        line.runs.emplace_back(", given as " + given);
    if (const std::string& note = reagent.charge->note; !note.empty()) line.runs.emplace_back("; " + note);
    return line;
}

std::string separation_line(const Paper& paper, const Separation& separation) {
    const auto goes_to = [&]() -> std::string {
        for (const streams::StreamAdvice* advice : paper.step.streams)
            if (advice->stream.name == separation.to)
                return fmt::format("{} (to: {})", separation.to, destination(advice->decision));
        return separation.to;
    };
    switch (separation.by) {
    case SeparationMethod::filtration:
        return fmt::format("Filter; what runs through is: {}", goes_to());
    case SeparationMethod::decantation:
        return fmt::format("Decant; what is poured off is: {}", goes_to());
    case SeparationMethod::extraction:
        return fmt::format("Let the layers part and separate them; what leaves is: {}", goes_to());
    case SeparationMethod::distillation:
        return fmt::format("Distil off: {}", goes_to());
    case SeparationMethod::evaporation:
        return fmt::format("Take off the solvent: {}", goes_to());
    case SeparationMethod::drying:
        return fmt::format("Dry to constant mass; what leaves is: {}", goes_to());
    case SeparationMethod::sublimation:
        return fmt::format("Sublime; what stays behind is: {}", goes_to());
    }
    return {};
}

std::string minutes_text(Duration time) {
    const double minutes = time.in(unit::min);
    return minutes >= 120 && std::abs(minutes / 60 - std::round(minutes / 60)) < 1e-9
               ? fmt::format("{:.0f} h", minutes / 60)
               : fmt::format("{:g} min", minutes);
}

std::string stage_heading(const bench::StageFacts& facts) {
    std::string text = fmt::format("{}. {}", facts.index + 1, capitalised(facts.stage->title));
    if (facts.stage->temperature)
        text += fmt::format(", {} °C", plain_number(facts.stage->temperature->celsius()));
    if (facts.stage->time) text += ", " + minutes_text(*facts.stage->time);
    return text;
}

std::string condition_line(const bench::StageFacts& facts) {
    const Stage& stage = *facts.stage;
    if (!stage.temperature && !stage.time) return {};
    std::string line = stage.temperature
                           ? fmt::format("Hold {} °C", plain_number(stage.temperature->celsius()))
                           : std::string("Give it time");
    if (stage.time) line += (stage.temperature ? " for " : ": ") + minutes_text(*stage.time) + " in all";
    return line + "; begun at ........, ended at ........";
}

void add_glassware(const Paper& paper, Blocks& blocks) {
    writing::BulletList list;
    list.boxes = true;
    for (const bench::Equipment& one : bench::equipment_of(paper.step, paper.experiment.rules())) {
        std::string line = one.name;
        if (!one.uses.empty()) line += ", for " + join(one.uses, "; ");
        if (one.holds > 0) line += fmt::format(" (up to {} mL in it)", digits(one.holds, 2));
        list.items.emplace_back(std::move(line));
    }
    if (list.items.empty()) return;
    blocks.push_back(writing::Heading{heading_level(paper), "Glassware and apparatus"});
    blocks.push_back(std::move(list));
    blocks.push_back(writing::Paragraph{
        {fmt::format("Standard sizes, none filled above {}; at least {} times the contents where gas is set "
                     "free. What every stage needs, such as clamps and stirring, is not listed. Common "
                     "practice, no source.",
                     percent(paper.experiment.rules().glassware.most_full),
                     plain_number(paper.experiment.rules().glassware.when_foams))},
        true});
}

} // namespace

void add_stages(const Paper& paper, Blocks& blocks) {
    add_glassware(paper, blocks);
    blocks.push_back(writing::Heading{heading_level(paper), "Stages"});
    for (const bench::BenchStage& stage : paper.step.stages) {
        blocks.push_back(writing::Heading{heading_level(paper) + 1, stage_heading(stage.facts)});
        if (!stage.cautions.empty()) {
            writing::Caution caution{"Here", {}};
            for (const bench::StageCaution& one : stage.cautions)
                caution.items.emplace_back(one.words);
            blocks.push_back(std::move(caution));
        }
        writing::BulletList list;
        list.boxes = true;
        if (stage.vessel) list.items.emplace_back("Vessel: " + bench::name_of(*stage.vessel));
        if (stage.facts.takes_in_gas())
            list.items.emplace_back(
                "Vessel: none is proposed here. Gas under pressure or from a cylinder: only "
                "with equipment and permission for it");
        for (const bench::Reagent* reagent : stage.facts.charged)
            list.items.push_back(charge_line(paper, stage, *reagent));
        if (const std::string line = condition_line(stage.facts); !line.empty())
            list.items.emplace_back(line);
        if (stage.facts.cools_before_filtering())
            list.items.emplace_back(
                "Let it cool to room temperature, then in ice, until crystals have come; only then filter");
        for (const Separation& separation : stage.facts.stage->separations)
            list.items.emplace_back(separation_line(paper, separation));
        blocks.push_back(std::move(list));
    }
}

writing::MachineTree stages_tree(const Paper& paper) {
    writing::MachineList list;
    for (const bench::BenchStage& stage : paper.step.stages) {
        const Stage& written = *stage.facts.stage;
        writing::MachineList cautions;
        for (const bench::StageCaution& caution : stage.cautions)
            cautions.emplace_back(
                writing::MachineObject{{"rule", std::string(caution.rule)}, {"words", caution.words}});
        writing::MachineTree vessel;
        if (stage.vessel)
            vessel = writing::MachineObject{{"kind", stage.vessel->name},
                                            {"size_mL", stage.vessel->size > 0
                                                            ? writing::MachineTree(stage.vessel->size)
                                                            : writing::MachineTree()},
                                            {"holds_mL", stage.vessel->holds}};
        list.emplace_back(writing::MachineObject{
            {"title", written.title},
            {"temperature_C", written.temperature ? writing::MachineTree(written.temperature->celsius())
                                                  : writing::MachineTree()},
            {"minutes",
             written.time ? writing::MachineTree(written.time->in(unit::min)) : writing::MachineTree()},
            {"vessel", std::move(vessel)},
            {"cautions", std::move(cautions)}});
    }
    return list;
}

} // namespace routeweigh::documents
