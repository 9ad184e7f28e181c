// SPDX-License-Identifier: MIT
#include "documents/sections/sections.hpp"

#include <array>

namespace routeweigh::documents {
namespace {

constexpr std::array section_list{
    Section{"compared", "What is compared", add_compared},
    Section{"in-short", "In short", add_in_short},
    Section{"figures", "Figures by route", add_figures},
    Section{"mass", "Where one gram of product comes from and goes", add_mass_flow},
    Section{"reactions", "The reactions", add_reactions},
    Section{"hazard", "Hazard", add_hazard},
    Section{"bottles", "Bottles and streams", add_bottles_and_streams},
    Section{"waste", "Where the waste goes", add_waste, has_waste_tables},
    Section{"flask", "What is in the flask", add_flask},
    Section{"certainty", "How sure one may be", add_certainty,
            [](const ReportView& view) { return view.certainty != nullptr; }},
    Section{"workings", "Workings and ledgers", add_workings},
    Section{"sources", "Sources, assumptions, cautions", add_sources},
};

} // namespace

std::span<const Section> all_sections() {
    return section_list;
}

} // namespace routeweigh::documents
