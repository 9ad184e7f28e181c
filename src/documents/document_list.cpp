// SPDX-License-Identifier: MIT
#include "documents/balance_document.hpp"
#include "documents/bench_sheet.hpp"
#include "documents/catalogue_document.hpp"
#include "documents/comparison_report.hpp"
#include "documents/document.hpp"
#include "documents/explain_figure.hpp"
#include "documents/question_sheet.hpp"
#include "documents/talk_card.hpp"

#include <algorithm>
#include <array>

namespace routeweigh {
namespace {

const std::array document_kinds{
    DocumentKind{"comparison", "Routes side by side", "routes to one product",
                 [](const Subject& subject) { return comparison_report(*subject.comparison); }},
    DocumentKind{"figure", "One figure explained", "a route and the id of a figure",
                 [](const Subject& subject) {
                     return explain_figure(*subject.comparison, subject.route, subject.words);
                 }},
    DocumentKind{
        "catalogue", "What the catalogue knows", "a text to look for",
        [](const Subject& subject) { return catalogue_document(*subject.catalogue, subject.words); }},
    DocumentKind{"balance", "An equation balanced", "an equation",
                 [](const Subject& subject) { return balance_document(subject.words, *subject.catalogue); }},
    DocumentKind{"bench_sheet", "Bench sheet", "a route, and \"key\" for the key edition",
                 [](const Subject& subject) {
                     return bench_sheet(*subject.experiment, subject.words == "key"
                                                                 ? documents::Edition::key
                                                                 : documents::Edition::student);
                 }},
    DocumentKind{"questions", "Questions", "a route, and \"key\" for the answers; seed 1, version 1",
                 [](const Subject& subject) {
                     return question_sheet(
                         *subject.experiment, documents::make_questions(*subject.experiment, 1, 1),
                         subject.words == "key" ? documents::Edition::key : documents::Edition::student);
                 }},
    DocumentKind{"talk_card", "Talk card", "a route",
                 [](const Subject& subject) { return talk_card(*subject.experiment); }},
};

} // namespace

std::span<const DocumentKind> all_documents() {
    return document_kinds;
}

const DocumentKind* find_document(std::string_view id) {
    const auto found = std::find_if(document_kinds.begin(), document_kinds.end(),
                                    [id](const DocumentKind& kind) { return kind.id == id; });
    return found == document_kinds.end() ? nullptr : &*found;
}

} // namespace routeweigh
