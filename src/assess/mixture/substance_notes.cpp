// SPDX-License-Identifier: MIT
#include "assess/mixture/substance_notes.hpp"

#include "input/field.hpp"

#include <fmt/format.h>

namespace routeweigh {
namespace {

double share_in_percent(const Field& field) {
    const double value = field.number();
    if (!(value >= 0 && value <= 100)) field.problem(fmt::format("{:g} is no share in per cent", value));
    return value;
}

CarriedStatement read_carried(const Field& field) {
    CarriedStatement carried{field["statement"].text(), share_in_percent(field["from_pct"]),
                             field["on_label"].boolean(), field["source"].text()};
    field.close();
    return carried;
}

TransportBand read_transport_band(const Field& field) {
    TransportBand band;
    band.substance = field["substance"].text();
    band.from_percent = share_in_percent(field["from_pct"]);
    if (const auto below = field.maybe("below_pct")) band.below_percent = share_in_percent(*below);
    band.transport_class = field["transport_class"].text();
    band.statement = field["statement"].text();
    band.source = field["source"].text();
    field.close();
    return band;
}

} // namespace

AcidBase SubstanceNotes::nature(std::string_view substance_id) const {
    const auto found = natures_.find(substance_id);
    return found == natures_.end() ? AcidBase::unknown : found->second;
}

std::string_view SubstanceNotes::why_not_additive(std::string_view substance_id) const {
    const auto found = not_additive_.find(substance_id);
    return found == not_additive_.end() ? std::string_view() : std::string_view(found->second);
}

SubstanceNotes SubstanceNotes::read(const Source& source) {
    const Document document = Document::parse(source);
    Problems problems;
    const Field root = document.root(problems);
    SubstanceNotes notes;
    root["id"].text();
    root["kind"].one_of({"mixture notes"});
    root["title"].text();
    root["about"]["source"].text();
    const std::vector<std::pair<const char*, AcidBase>> natures{
        {"acids", AcidBase::acid}, {"bases", AcidBase::base}, {"neither_acid_nor_base", AcidBase::neither}};
    for (const auto& [key, nature] : natures)
        for (const Field& id : root[key].items())
            if (!notes.natures_.emplace(id.text(), nature).second)
                id.problem(fmt::format("\"{}\" stands twice among acids, bases and neither", id.text()));
    for (const Field& group : root["not_additive"].items()) {
        const std::string why = group["why"].text();
        group["source"].text();
        for (const std::string& id : group["substances"].texts())
            notes.not_additive_.emplace(id, why);
        group.close();
    }
    for (const Field& item : root["carried"].items())
        notes.carried.push_back(read_carried(item));
    const Field physical = root["physical"];
    notes.physical_percent = share_in_percent(physical["named_from_pct"]);
    physical["source"].text();
    for (const Field& item : physical["tests"].items()) {
        notes.physical_tests.push_back({item["class"].text(), item["test"].text()});
        item.close();
    }
    physical.close();
    for (const Field& item : root["transport_bands"].items())
        notes.transport_bands.push_back(read_transport_band(item));
    root.close();
    problems.throw_if_error();
    return notes;
}

} // namespace routeweigh
