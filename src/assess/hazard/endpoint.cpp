// SPDX-License-Identifier: MIT
#include "assess/hazard/endpoint.hpp"

#include "base/text.hpp"

#include <fmt/format.h>

#include <cstddef>

namespace routeweigh {
namespace {

bool says_memory(std::string_view text) {
    return text.find("memory") != std::string_view::npos;
}

// The source of a datum: what the entry's own list says, else the text beside the datum.
bool datum_from_memory(const Substance& substance, const std::string& datum, const std::string& beside) {
    const auto found = substance.sources.find(datum);
    return says_memory(beside) || (found != substance.sources.end() && says_memory(found->second));
}

std::string words_of(const GhsEntry& entry) {
    std::string text = entry.statement;
    if (!entry.category.empty()) text += " category " + entry.category;
    if (!entry.condition.empty()) text += " (" + entry.condition + ")";
    return text;
}

std::string words_of(const ExposureLimit& limit) {
    return fmt::format("{:g} {}, {}", limit.value, limit.unit, limit.kind_text);
}

} // namespace

std::span<const GhsEntry> HazardEntry::ghs() const {
    return solution ? std::span<const GhsEntry>(substance->ghs_solution->ghs)
                    : std::span<const GhsEntry>(substance->ghs);
}

const std::string& HazardEntry::source() const {
    return solution ? substance->ghs_solution->source : substance->ghs_source;
}

bool HazardEntry::from_memory() const {
    if (solution) return says_memory(substance->ghs_solution->source);
    return datum_from_memory(*substance, "ghs", substance->ghs_source);
}

HazardEntry entry_in_water(const Substance& substance) {
    return {&substance, substance.ghs_solution.has_value()};
}

HazardEntry entry_neat(const Substance& substance) {
    return {&substance, false};
}

HazardContribution unassessed_contribution(const EndpointRule& rule) {
    HazardContribution result;
    result.high = rule.worst;
    result.unassessed = true;
    result.basis = HazardBasis::unassessed;
    return result;
}

std::vector<std::string> level_names(const EndpointRule& rule, const Banding& banding) {
    std::vector<std::string> names;
    for (const HazardLevel& level : rule.levels)
        names.push_back(level.name);
    if (rule.levels.empty())
        for (std::size_t i = banding.bands.size(); i-- > 0;)
            names.push_back(banding.bands[i].letter);
    return names;
}

HazardProvenance provenance(const HazardContribution& contribution, const HazardEntry& entry,
                            const Banding& banding) {
    const Substance& substance = *entry.substance;
    HazardProvenance result{"", entry.source(), entry.from_memory()};
    switch (contribution.basis) {
    case HazardBasis::limit:
    case HazardBasis::short_term_limit:
        result.datum = words_of(*substance.exposure_limit);
        result.source = substance.exposure_limit->source;
        result.from_memory = datum_from_memory(substance, "oel", substance.exposure_limit->source);
        break;
    case HazardBasis::band:
        result.datum = fmt::format("{}, band {} of {}", words_of(*contribution.entry),
                                   banding.bands[static_cast<std::size_t>(contribution.row->band)].letter,
                                   banding.title);
        break;
    case HazardBasis::category:
        result.datum = words_of(*contribution.entry);
        if (contribution.m_factor_assumed) result.datum += ", M-factor not known, 1 taken";
        break;
    case HazardBasis::not_classified:
        result.datum = "not classified here";
        break;
    case HazardBasis::unassessed:
        result.datum = contribution.entry != nullptr ? words_of(*contribution.entry) + " has no limit"
                       : entry.assessed()            ? "no molar mass to convert with"
                                                     : "no data";
        break;
    }
    return result;
}

} // namespace routeweigh
