// SPDX-License-Identifier: MIT
// A route laid out, a class, a shelf and a price list in; the stockroom's sheet out.
#pragma once

#include "app/class_request.hpp"
#include "assess/bench/experiment.hpp"
#include "input/csv_reader.hpp"
#include "input/field.hpp"
#include "writing/blocks.hpp"

#include <string>

namespace routeweigh {

struct StockRequest {
    ClassRequest size;
    std::string shelf_name; ///< "" where there is no shelf
    ReadBytes shelf;        ///< its bytes
    SourcePtr prices;       ///< nullptr where there are none
};

/// \param problems  receives warnings
/// \throws InputError, CallError
writing::Document stock_document(const bench::Experiment& experiment, const StockRequest& request,
                                 const Catalogue& catalogue, Problems& problems);

} // namespace routeweigh
