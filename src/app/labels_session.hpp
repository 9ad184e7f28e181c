// SPDX-License-Identifier: MIT
// A route, a class and a sheet of labels in; labels for bottles and waste containers out.
#pragma once

#include "app/class_request.hpp"
#include "assess/assessment.hpp"
#include "assess/streams/local_rules.hpp"
#include "input/field.hpp"
#include "writing/blocks.hpp"

#include <string>

namespace routeweigh {

struct LabelRequest {
    ClassRequest size;
    std::string sheet = "a4-8"; ///< name of a sheet
    SourcePtr sheets;           ///< a file of sheets of one's own; nullptr: those of the catalogue
    streams::LocalRules local;  ///< that sort the waste, and say whose limits classify
    std::string course, contact, date;
    int first = 1, copies = 1;
    bool bottles = true, waste = true;
};

/// \throws InputError, CallError
writing::Document labels_document(const Assessment& route, const LabelRequest& request,
                                  const Catalogue& catalogue);

} // namespace routeweigh
