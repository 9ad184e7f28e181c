// SPDX-License-Identifier: MIT
// Does it fit, what has no composition, and the rules of the house.
#include "base/text.hpp"
#include "documents/number.hpp"
#include "documents/waste/waste_parts.hpp"

#include <fmt/format.h>

namespace routeweigh::documents {
namespace {

using streams::ContainerFit;
using streams::LocalRules;

writing::Row fit_row(const ContainerFit& fit) {
    std::string after = fit.call ? "call for pickup" : "";
    if (!fit.vent.empty()) after += after.empty() ? "vented cap" : ", vented cap";
    if (fit.usable <= 0)
        return {fit.container->name,
                digits_cell(fit.per_pot),
                digits_cell(fit.volume / 1000),
                "-",
                "-",
                "-",
                after};
    return {fit.container->name,
            digits_cell(fit.per_pot),
            digits_cell(fit.volume / 1000),
            fit.present > 0 ? digits_cell(fit.room / 1000) : writing::Cell("-"),
            fit.fits ? writing::Cell("fits into what is there", 0)
                     : writing::Cell(fmt::format("{} of {} L", fit.containers,
                                                 significant(fit.container->size / 1000, 2)),
                                     fit.containers),
            digits_cell(100 * fit.last_full),
            after};
}

writing::Table fit_table(const streams::ClassWaste& one, const LocalRules& local) {
    writing::Table table;
    table.caption =
        fmt::format("Containers for {:g} {} of {}", one.pots, one.pots == 1 ? "pot" : "pots", one.route->id);
    table.columns = {{.heading = "container"},
                     {.heading = "one pot", .align = decimal, .unit = "mL"},
                     {.heading = "the class", .align = decimal, .unit = "L"},
                     {.heading = "room left by its log", .align = decimal, .unit = "L"},
                     {.heading = "needed"},
                     {.heading = "the last ends full to", .align = decimal, .unit = "%"},
                     {.heading = "then"}};
    for (const ContainerFit& fit : one.fits)
        table.rows.push_back(fit_row(fit));
    for (const streams::OwnBottle& bottle : one.own_bottles)
        table.rows.push_back({"own bottle: " + bottle.stream, digits_cell(bottle.per_pot),
                              digits_cell(bottle.volume / 1000), "-", "1", "-", "ask first"});
    table.remarks = {fmt::format("Volumes are added up though some liquids shrink on mixing; {} more for "
                                 "spills and rinses. Containers "
                                 "are filled to {} ({}). A vented cap stays on until no more gas comes.",
                                 percent(local.allowance.value), percent(local.fill_limit.value),
                                 describe(local.fill_limit.from))};
    return table;
}

std::string line_text(double value, const char* unit) {
    return fmt::format("{} {}", digits(value), unit);
}

writing::Table rules_table(const LocalRules& local) {
    writing::Table table;
    table.caption = fmt::format("Lines of {}", local.title);
    table.columns = {{.heading = "line"}, {.heading = "value"}, {.heading = "source"}};
    const auto row = [&](const char* name, const Sourced<double>& line, double factor, const char* unit) {
        table.rows.push_back({name, line_text(factor * line.value, unit), describe(line.from)});
    };
    row("halogenated from", local.halogenated_from, 100, "% by mass");
    row("ignitable below, flash point", local.ignitable_below, 1, "degC");
    row("watery from", local.aqueous_from, 100, "% water by mass");
    if (local.alcohol_exempt_below)
        row("alcohol in water is exempt below", *local.alcohol_exempt_below, 100, "% by volume");
    else
        table.rows.push_back({"alcohol in water", "no exemption", ""});
    row("corrosive acid from", local.corrosive_acid_from, 1, "mol/L");
    row("corrosive base from", local.corrosive_base_from, 1, "mol/L");
    row("weakly acid or basic from", local.weak_from, 1, "mol/L");
    table.rows.push_back({"neutral window",
                          fmt::format("pH {:g} to {:g}", local.neutral_low, local.neutral_high),
                          describe(local.neutral_from)});
    row("fill limit", local.fill_limit, 100, "%");
    row("allowance for spills and rinses", local.allowance, 100, "%");
    row("call for pickup from", local.call_at, 100, "% full");
    row("neutralised at a bench at one time, at most", local.bench_most, 1, "mL");
    row("oxidiser counts from", local.oxidant_from, 100, "% by mass");
    row("toxic metal counts from", local.metal_from, 100, "% by mass");
    table.rows.push_back(
        {"drain", local.drain_permitted ? "permitted for what is neutral" : "not permitted", ""});
    table.remarks = {"A copy of the rules file is edited for each house; law and contractor rank above it."};
    return table;
}

} // namespace

void add_fit(const streams::ClassWaste& one, const streams::StreamRules& rules, WasteBlocks& blocks) {
    if (one.fits.empty() && one.own_bottles.empty()) {
        blocks.emplace_back(writing::Paragraph{"No stream of this route goes into a container."});
        return;
    }
    blocks.emplace_back(fit_table(one, rules.local));
    writing::BulletList vents;
    for (const ContainerFit& fit : one.fits)
        for (const std::string& why : fit.vent)
            vents.items.emplace_back(fmt::format("{}: no tight cap. {}", fit.container->name, why));
    if (!vents.items.empty()) blocks.emplace_back(std::move(vents));
}

void add_house(const WasteSubject& subject, WasteBlocks& blocks) {
    const LocalRules& local = subject.rules->local;
    writing::Table things;
    things.caption = "What no composition describes";
    things.columns = {
        {.heading = "thing"}, {.heading = "goes to"}, {.heading = "note"}, {.heading = "source"}};
    for (const streams::Thing& thing : local.things)
        things.rows.push_back(
            {thing.name, local.container(thing.kind)->name, thing.note, describe(thing.from)});
    blocks.emplace_back(std::move(things));
    blocks.emplace_back(writing::Paragraph{
        fmt::format("Spilt acid is taken up with {} ({}).",
                    subject.rules->catalogue.find_material(subject.rules->quench.spill_material)->name,
                    describe(subject.rules->quench.spill_from))});
    blocks.emplace_back(
        writing::Folded{writing::Text("The rules used, line by line"),
                        {rules_table(local),
                         writing::Paragraph{"Flash points: " + flash_point_method(subject.rules->liquids)}}});
}

writing::Caution waste_cautions() {
    return {
        "Before anybody pours anything",
        {"This is a suggestion for planning by a person who knows the room. National, state and local law, "
         "the institution's safety office, the acceptance rules of the licensed waste contractor and the "
         "current data sheets rank above it; where they disagree, they are followed.",
         "A method that finds no conflict clears nothing: it knows neither amount nor concentration nor "
         "time, and only the substances that the route file names.",
         "Where anything is not known: stop, own bottle, label, ask. Never mix streams on the word of a "
         "program.",
         "Label from the first drop, in full names with percentages, water among them; containers stay "
         "closed except when something is added, and vented while gas may come."}};
}

} // namespace routeweigh::documents
