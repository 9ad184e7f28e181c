// SPDX-License-Identifier: MIT
// A classified mixture as documents show it: the label, what is open, and behind a fold why.
#pragma once

#include "assess/mixture/mixture_classification.hpp"
#include "assess/streams/pairing.hpp"
#include "writing/blocks.hpp"

#include <string>
#include <vector>

namespace routeweigh::documents {

using Blocks = std::vector<writing::Block>;

/// What nobody has assessed is less than counts in a mixture.
bool is_assessed(const MixtureClassification& classification);

/// "Danger", "Warning" or "none".
std::string signal_word(const MixtureClassification& classification);

/// Statements of the label, the supplemental ones among them: "H302 H318 EUH071"; "none" without one.
std::string statement_codes(const MixtureClassification& classification);

/// "2.4" per cent that nobody has assessed; "0" where all of it is.
std::string unassessed_text(const MixtureClassification& classification);

/// Classes and categories of all that is classified: "Skin Corr. 1B, Eye Dam. 1".
std::string classes_text(const MixtureClassification& classification);

/// Pictograms, classes, signal word, each statement with its text, precautions, what is not assessed and what
/// composition cannot tell; then, folded, each hazard with ingredients, limits and sums.
/// \param paired  the pairing before it; nullptr where nothing was paired
void add_classified(const MixtureClassification& classification, const LabelElements& elements,
                    const streams::PairedComposition* paired, Blocks& blocks);

/// The same for programs.
writing::MachineObject classified_tree(const MixtureClassification& classification,
                                       const LabelElements& elements);
writing::MachineObject pairing_tree(const streams::PairedComposition& paired);

/// Columns and cells of a classified mixture in CSV.
std::vector<std::string> classified_columns();
std::vector<writing::DataCell> classified_cells(const MixtureClassification& classification);

/// What a classification from composition is and is not, one paragraph in small print.
writing::Paragraph standing_of_classification(bool waste);

/// "Judged by EU CLP." with the building blocks that are on.
std::string judged_by(const MixtureRules& rules);

} // namespace routeweigh::documents
