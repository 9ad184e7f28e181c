// SPDX-License-Identifier: MIT
// Questions before and after an experiment, for students, or with answers, workings and common mistakes.
#pragma once

#include "documents/questions/question.hpp"
#include "documents/shared_figure.hpp"

namespace routeweigh {

writing::Document question_sheet(const bench::Experiment& experiment, const documents::QuestionSet& set,
                                 documents::Edition edition);

} // namespace routeweigh
