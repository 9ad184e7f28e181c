// SPDX-License-Identifier: MIT
// Questions for a learning platform, in open formats. They hold the answers: they are for the platform, not
// for students.
#pragma once

#include "documents/questions/question.hpp"

#include <fmt/format.h>

#include <string>
#include <vector>

namespace routeweigh {

struct ExportedFile {
    std::string name; ///< within the folder of the export
    std::string text;
};

/// As both formats are given a number.
inline std::string platform_number(double value) {
    return fmt::format("{:.6g}", value);
}

/// IMS Question and Test Interoperability 2.1 (1EdTech, final specification of 2012): one assessment item a
/// question and a manifest. A common wrong answer is met with what led to it.
std::vector<ExportedFile> export_qti(const documents::QuestionSet& set);

/// The XML in which Moodle documents its import of questions ("Moodle XML format"): one file.
std::string export_moodle_xml(const bench::Experiment& experiment, const documents::QuestionSet& set);

} // namespace routeweigh
