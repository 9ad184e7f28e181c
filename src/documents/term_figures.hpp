// SPDX-License-Identifier: MIT
// The figures of an experiment worked by a class, all of them better when smaller; whatever is said of a term
// takes them from here.
#pragma once

#include "assess/course/course_use.hpp"
#include "assess/stock/price_list.hpp"
#include "documents/shared_figure.hpp"
#include "writing/blocks.hpp"

#include <span>
#include <string>
#include <string_view>

namespace routeweigh::documents {

struct TermFigure {
    std::string_view id, name, unit; ///< unit: empty for money, see unit_of()
    int decimals;
    bool money;
    double (*of)(const course::ClassUse&);
    /// Something has no price or states no time and is left out: the figure is a lower bound. nullptr: never.
    bool (*lacks)(const course::ClassUse&) = nullptr;
    bool spare = false; ///< holds the extra of the plan
};

/// In reading order.
std::span<const TermFigure> term_figures();

/// Of money the currency of the price list.
std::string unit_of(const TermFigure& figure, const stock::PriceList& prices);

/// Money is shown only where there are prices, what a session lacks only where its length is said.
bool is_shown(const TermFigure& figure, const stock::ClassPlan& plan, const stock::PriceList& prices);

/// Of all weeks: the sum, but for the packs, which are bought once.
double of_term(const TermFigure& figure, const course::CourseUse& term, const stock::PriceList& prices);

/// Min by which the stages of a run are longer than the session; 0 where they fit or none is said.
double minutes_lacking(const course::ClassUse& use);

/// What the extra of the plan is and which figures hold it; "" where the plan has none.
std::string extra_words(const stock::ClassPlan& plan);

/// Money of which nothing has a price is not 0. \param lacking  some of it is not known
bool is_missing(const TermFigure& figure, double value, bool lacking);

/// The figure of the class as every paper states it.
SharedFigure figure_of(const TermFigure& figure, const course::ClassUse& use, const stock::PriceList& prices);

/// The difference of two values as they are printed: -1, 0 or 1.
int printed_sign(double difference, int decimals);

} // namespace routeweigh::documents
