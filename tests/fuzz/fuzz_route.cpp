// SPDX-License-Identifier: MIT
// Route files: a file is refused with reasons, or its ledger closes, its figures are numbers and it can be
// reported in every format.
#include "fuzz_driver.hpp"

#include "app/session.hpp"
#include "documents/comparison_report.hpp"
#include "writing/writer_list.hpp"

#include <cmath>
#include <utility>

namespace {

using namespace routeweigh;

void check_figures(const Assessment& route) {
    for (const Figure& figure : route.figures()) {
        if (std::isnan(figure.value)) {
            fuzz::require(!figure.note.empty(), "a figure is missing without a reason");
            continue;
        }
        fuzz::require(std::isfinite(figure.value), "a figure is not finite");
        const double room = 1e-9 * std::abs(figure.value);
        fuzz::require(figure.low <= figure.value + room && figure.value <= figure.high + room,
                      "a figure lies outside of its bounds");
    }
    fuzz::require(route.ledger(false).closure_error() < 1e-9, "the ledger does not close");
    fuzz::require(route.ledger(true).closure_error() < 1e-9,
                  "the ledger of the other reading does not close");
}

} // namespace

bool fuzz::try_input(std::string_view input) {
    static const AssessmentRules rules = read_assessment_rules(Catalogue::embedded());
    static int accepted = 0;
    try {
        Problems problems;
        std::vector<Route> routes =
            read_routes({make_source("x.json", std::string(input))}, Catalogue::embedded(), problems);
        const Comparison comparison = compare_routes(std::move(routes), "", rules);
        check_figures(*comparison.routes().front());
        if (++accepted % 20 != 1) return true; // reports take longer
        const writing::Document document = comparison_report(comparison);
        for (const writing::Writer& writer : writing::writer_list())
            require(!writer.write(document, {}).empty(), "an empty report");
        return true;
    } catch (const InputError& error) {
        require(!error.problems.empty(), "refused without a word");
        for (const Problem& problem : error.problems)
            require(!format(problem).empty(), "refused without a word");
        return false;
    }
}
