// SPDX-License-Identifier: MIT
// Comparisons of the shipped routes, and what can be read off a document without its words.
#pragma once

#include "compare/comparison.hpp"
#include "writing/blocks.hpp"

#include <string>
#include <string_view>
#include <vector>

namespace routeweigh::test {

/// Read once.
const AssessmentRules& shipped_rules();

/// Every folder of routes/ with the baseline its reports take.
struct RouteSet {
    std::string folder, baseline;
};
const std::vector<RouteSet>& shipped_sets();

/// The routes of a folder of routes/, or of texts, compared; read anew each time.
Comparison compare_folder(const std::string& folder, const std::string& baseline);
Comparison compare_texts(const std::vector<std::string>& texts);

/// All text of a document that a reader sees, one piece a line.
std::string text_of(const writing::Document& document);

/// Every table of a document, those in folded blocks too.
std::vector<writing::Table> tables_in(const std::vector<writing::Block>& blocks);

/// Anchors that lead somewhere, and anchors that are led to.
struct Anchors {
    std::vector<std::string> places, targets;
};
Anchors anchors_of(const std::vector<writing::Block>& blocks);

/// A member of an object of machine data. \pre there is one
const writing::MachineTree& member(const writing::MachineTree& tree, std::string_view name);
double number_of(const writing::MachineTree& tree);

/// The value of a figure of one route in the data of a comparison; NaN for null.
double figure_of(const writing::MachineTree& comparison, std::string_view route, std::string_view figure);

} // namespace routeweigh::test
