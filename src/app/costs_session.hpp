// SPDX-License-Identifier: MIT
// A route, a class and a price list in; what they cost in time, energy, water and money out, as a paper or as
// a spreadsheet.
#pragma once

#include "app/class_request.hpp"
#include "app/session.hpp"
#include "assess/streams/local_rules.hpp"
#include "writing/blocks.hpp"
#include "writing/workbook.hpp"

#include <string>

namespace routeweigh {

struct CostsRequest {
    ClassRequest size;
    std::string session;       ///< "180 min"; "" where not asked
    streams::LocalRules local; ///< that sort the waste
    SourcePtr prices;          ///< nullptr where there are none
};

/// \throws CallError a class that cannot be, as class_plan() of its size, or a session that is no time
stock::ClassPlan class_plan(const CostsRequest& request);

/// \throws InputError, CallError
writing::Document costs_document(const Assessment& route, const CostsRequest& request,
                                 const Catalogue& catalogue);

/// The route with stock, packs and costs of that class. \throws InputError, CallError
writing::Workbook class_workbook(const Assessment& route, const CostsRequest& request,
                                 const Catalogue& catalogue);

} // namespace routeweigh
