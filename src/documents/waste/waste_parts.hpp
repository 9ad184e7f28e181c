// SPDX-License-Identifier: MIT
// The parts of what is said about waste. The document of the command and the section of the comparison report
// are made from them.
#pragma once

#include "documents/waste/waste_document.hpp"

#include <string>
#include <vector>

namespace routeweigh::documents {

using WasteBlocks = std::vector<writing::Block>;

/// Streams whose handout names another container, then those whose words are not understood or missing.
void add_handout(const WasteSubject& subject, WasteBlocks& blocks);

/// Every stream with its container.
writing::Table containers_table(const streams::ClassWaste& one);
/// The same, and behind each stream the way to its container.
void add_containers(const streams::ClassWaste& one, WasteBlocks& blocks);
/// "Why: filtrate and washes to aqueous, neutral", folded.
writing::Folded why_block(const streams::StreamAdvice& advice);

void add_meetings(const streams::ClassWaste& one, const streams::StreamRules& rules, WasteBlocks& blocks);

/// Quench and neutralisation of one step. Nothing where nothing is to be done.
void add_quench(const streams::QuenchPlan& plan, const streams::ClassWaste& one,
                const streams::StreamRules& rules, WasteBlocks& blocks);
/// True where something is to be destroyed or neutralised, or a quench is planned.
bool needs_work(const streams::QuenchPlan& plan);

void add_fit(const streams::ClassWaste& one, const streams::StreamRules& rules, WasteBlocks& blocks);

/// What no composition describes, spills, and the lines of the house.
void add_house(const WasteSubject& subject, WasteBlocks& blocks);

writing::Caution waste_cautions();

writing::MachineTree waste_tree(const WasteSubject& subject);
writing::DataRows waste_rows(const WasteSubject& subject);

} // namespace routeweigh::documents
