// SPDX-License-Identifier: MIT
// Numbers that stand in several papers of one experiment: the same id means the same number and the same
// text.
//
// A document puts machine_of(figure) somewhere into its machine data and the text into its blocks; a test
// collects every object with a member "figure" from every document and compares them.
#pragma once

#include "assess/bench/experiment.hpp"
#include "assess/stock/stock_list.hpp"
#include "writing/blocks.hpp"

#include <string>
#include <string_view>

namespace routeweigh::documents {

/// Student: without what the student is to work out. Key: with it.
enum class Edition { student, key };

struct SharedFigure {
    std::string id;    ///< "A3/bromination/1.2/mass"
    std::string label; ///< "mass of acetanilide"
    double value = 0;  ///< in `unit`, unrounded
    std::string unit;
    std::string text;         ///< as every paper prints it, without the unit
    bool to_work_out = false; ///< left blank in the student edition
    bool known = true;        ///< false: money of what has no price

    std::string with_unit() const { return text + "\u00A0" + unit; }
};

/// What a student edition prints where something is to be written.
using writing::blank;

/// {"figure", "label", "value", "unit", "text"}; value and text are null where the edition leaves it blank or
/// it is not known.
writing::MachineTree machine_of(const SharedFigure& figure, Edition edition);

/// The figure as a cell or as text, or a blank.
writing::Cell cell_of(const SharedFigure& figure, Edition edition);
writing::Run text_of(const SharedFigure& figure, Edition edition);

/// Amounts of one charge, for one pot. \pre volume: the charge has one; amount, equivalents: it is counted
SharedFigure mass_of(const Route& route, const bench::BenchStep& step, const bench::Reagent& reagent);
SharedFigure volume_of(const Route& route, const bench::BenchStep& step, const bench::Reagent& reagent);
SharedFigure amount_of(const Route& route, const bench::BenchStep& step, const bench::Reagent& reagent);
SharedFigure equivalents_of(const Route& route, const bench::BenchStep& step, const bench::Reagent& reagent);

/// Of one step, for one pot.
SharedFigure theoretical_amount(const Route& route, const bench::BenchStep& step);
SharedFigure theoretical_mass(const Route& route, const bench::BenchStep& step);
SharedFigure isolated_mass(const Route& route, const bench::BenchStep& step);
SharedFigure isolated_yield(const Route& route, const bench::BenchStep& step);

/// Sodium hydrogencarbonate that makes one stream of a pot ready. \pre one.usual_base()
SharedFigure base_mass(const Route& route, const bench::BenchStep& step,
                       const streams::StreamToNeutralise& one);

/// Of one stream, for one pot: the larger of both readings of the yield.
SharedFigure stream_volume(const Route& route, const streams::StreamAdvice& advice);

/// A stream is measured by eye, so two digits.
std::string stream_volume_text(double millilitres);

/// Of a class: "A3/2 x 12 + 10 %/packs". \param what  id of the figure  \param value  in `unit`
SharedFigure figure_of_class(const Route& route, const stock::ClassPlan& plan, std::string_view what,
                             std::string label, double value, std::string unit, int decimals);
/// What the packs to buy cost the class; not known where no material to buy has a price.
SharedFigure packs_of_class(const Route& route, const stock::StockList& list, const stock::PriceList& prices);

/// Numbers without their unit as the papers print them: grams as a balance shows them, millilitres as a
/// cylinder.
std::string balance_text(double grams);
std::string cylinder_text(double millilitres);

} // namespace routeweigh::documents
