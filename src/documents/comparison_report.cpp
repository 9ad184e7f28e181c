// SPDX-License-Identifier: MIT
#include "documents/comparison_report.hpp"

#include "documents/comparison_data.hpp"
#include "documents/number.hpp"
#include "documents/report_view.hpp"
#include "documents/sections/improvements.hpp"
#include "documents/sections/section.hpp"
#include "documents/version.hpp"
#include "documents/words.hpp"

#include <fmt/format.h>

namespace routeweigh {
namespace {

using documents::ReportView;

std::string title_of(const ReportView& view) {
    const std::string& product = view.product().name;
    if (view.single()) return fmt::format("{}: route {}", capitalised(product), view.baseline().id);
    return capitalised(documents::counted(view.routes.size(), "way", "ways")) + " to " + product +
           " compared";
}

void add_sections(const ReportView& view, const std::vector<Improvements>* improvements,
                  writing::Document& document) {
    int number = 0;
    const auto open = [&](std::string_view title, std::string_view anchor) {
        document.blocks.push_back(
            writing::Heading{2, fmt::format("{}. {}", ++number, title), std::string(anchor)});
    };
    for (const documents::Section& section : documents::all_sections()) {
        if (section.applies != nullptr && !section.applies(view)) continue;
        if (improvements != nullptr && section.id == "workings") { // what follows is for looking up
            open("What would improve it", "improvements");
            documents::add_improvements(view, *improvements, document.blocks);
        }
        open(section.title, section.id);
        section.add(view, document.blocks);
    }
}

} // namespace

writing::Document comparison_report(const Comparison& comparison, writing::Reader reader,
                                    const ReportStudies& studies) {
    using writing::Reader;
    const auto reads = [reader](Reader one) { return reader == one || reader == Reader::anyone; };
    writing::Document document;
    document.id = "comparison";
    if (reads(Reader::programs)) document.machine = documents::comparison_tree(comparison, studies.certainty);
    if (reads(Reader::spreadsheets)) document.rows = documents::comparison_rows(comparison);
    if (!reads(Reader::people)) return document;
    const ReportView view(comparison, studies.certainty);
    document.title = title_of(view);
    if (!view.single())
        document.subtitle =
            fmt::format("Baseline: {}, {}", view.baseline().id, view.baseline().route().title);
    add_sections(view, studies.improvements, document);
    document.colophon =
        fmt::format("Made by routeweigh {} from the route files and its catalogue; the same files give "
                    "the same report.",
                    program_version());
    return document;
}

} // namespace routeweigh
