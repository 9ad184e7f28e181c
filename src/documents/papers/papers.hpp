// SPDX-License-Identifier: MIT
// Parts that the papers of the bench are put together from.
#pragma once

#include "documents/shared_figure.hpp"

#include <string>
#include <vector>

namespace routeweigh::documents {

using Blocks = std::vector<writing::Block>;

/// Where a part stands: which step of which experiment, in which edition.
struct Paper {
    const bench::Experiment& experiment;
    const bench::BenchStep& step;
    Edition edition;

    const Route& route() const { return experiment.route(); }
    bool key() const { return edition == Edition::key; }
};

/// Of a part of the paper: below the heading of its step where there are several.
int heading_level(const Paper& paper);

/// How often a step is run for one run of the last: "7.6 times", in the student edition "7 to 8 times", for
/// more would tell the yield that the route file assumes. "" where it is once.
std::string runs_text(double runs, Edition edition);

/// One row a charge, grouped by stage, and the product.
void add_reagents(const Paper& paper, Blocks& blocks);
writing::MachineTree reagents_tree(const Paper& paper);

/// Signal word and main statements of each bottle in words.
void add_bottle_hazards(const Paper& paper, Blocks& blocks);

/// Supplies of the reactants, limiting reagent, theoretical yield, with working in the key.
void add_theory(const Paper& paper, Blocks& blocks);
writing::MachineTree theory_tree(const Paper& paper);

/// Glassware, stages to tick, cautions.
void add_stages(const Paper& paper, Blocks& blocks);
writing::MachineTree stages_tree(const Paper& paper);

/// Streams and their containers.
void add_streams(const Paper& paper, Blocks& blocks);
writing::MachineTree streams_tree(const Paper& paper);

/// What to weigh and to write down at the end.
void add_results(const Paper& paper, Blocks& blocks);

/// "Danger: H225, H319", "not classified", "not assessed".
std::string hazard_codes(const MixtureClassification& bottle, std::size_t most);

/// As people write it, without zeros that say nothing: "25", "78.2", with a true minus.
std::string plain_number(double value);

} // namespace routeweigh::documents
