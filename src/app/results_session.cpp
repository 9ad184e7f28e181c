// SPDX-License-Identifier: MIT
#include "app/results_session.hpp"

#include "app/session.hpp"
#include "base/index.hpp"
#include "base/text.hpp"
#include "documents/class_results_document.hpp"
#include "documents/class_results_workbook.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace routeweigh {
namespace {

std::size_t index_of_step(const Assessment& route, const std::string& id) {
    if (id.empty()) return at(route.flat().final_step());
    const std::vector<Step>& steps = route.route().steps;
    const auto found =
        std::find_if(steps.begin(), steps.end(), [&](const Step& step) { return step.id == id; });
    if (found != steps.end()) return static_cast<std::size_t>(found - steps.begin());
    std::vector<std::string> ids;
    for (const Step& step : steps)
        ids.push_back(step.id);
    throw CallError(no_such("step of " + route.route().id, id, ids));
}

} // namespace

results::ClassResults read_results(const Assessment& route, const std::string& step, const std::string& file,
                                   const ReadBytes& bytes, Problems& problems) {
    const results::Theory theory = results::theory_of(route, index_of_step(route, step));
    CsvReader rows(file, bytes);
    return read_class_results(rows, theory, problems);
}

writing::Document results_document(const Assessment& route, const results::ClassResults& results) {
    return class_results_document(route, results);
}

writing::Workbook results_workbook(const Assessment& route, const results::ClassResults& results) {
    if (!results.all_kept)
        throw CallError(fmt::format("a spreadsheet holds up to {} results, and there are {}",
                                    results::ClassResults::most_kept, results.rows));
    return class_results_workbook(route.route(), results);
}

} // namespace routeweigh
