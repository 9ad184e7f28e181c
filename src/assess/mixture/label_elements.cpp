// SPDX-License-Identifier: MIT
#include "assess/mixture/label_elements.hpp"

#include "base/list.hpp"
#include "input/field.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace routeweigh {
namespace {

std::string label_text_if_any(const Field& field, std::string_view key) {
    const auto found = field.maybe(key);
    return found ? found->text() : std::string();
}

std::vector<std::string> label_texts_if_any(const Field& field, std::string_view key) {
    const auto found = field.maybe(key);
    return found ? found->texts() : std::vector<std::string>();
}

LabelStatement read_statement(const Field& field) {
    LabelStatement statement;
    statement.statement = field["statement"].text();
    statement.category = label_text_if_any(field, "category");
    statement.text = field["text"].text();
    if (const auto signal = field.maybe("signal")) statement.signal = signal->one_of({"Danger", "Warning"});
    statement.pictogram = label_text_if_any(field, "pictogram");
    statement.group = label_text_if_any(field, "group");
    statement.precautions = label_texts_if_any(field, "precautions");
    if (const auto together = field.maybe("together")) {
        const std::int64_t count = together->integer();
        if (count < 1) together->problem("must be above 0");
        statement.together = static_cast<std::size_t>(std::max<std::int64_t>(count, 1));
    }
    field.close();
    return statement;
}

Omission read_omission(const Field& field, const char* what) {
    Omission omission;
    omission.what = field[what].text();
    omission.groups = label_texts_if_any(field, "groups");
    omission.beside = label_texts_if_any(field, "beside");
    omission.beside_group = label_text_if_any(field, "beside_group");
    omission.source = field["source"].text();
    field.close();
    return omission;
}

} // namespace

LabelElements LabelElements::read(const Source& source) {
    const Document document = Document::parse(source);
    Problems problems;
    const Field root = document.root(problems);
    LabelElements elements;
    root["id"].text();
    root["kind"].one_of({"label elements"});
    root["title"].text();
    root["about"]["source"].text();
    for (const Field& item : root["precautions"].items()) {
        elements.precautions_.emplace(item["code"].text(), item["text"].text());
        item.close();
    }
    for (const char* list : {"hazard_statements", "supplemental_statements"})
        for (const Field& item : root[list].items()) {
            elements.statements_.push_back(read_statement(item));
            for (const std::string& code : elements.statements_.back().precautions)
                if (!elements.precautions_.contains(code))
                    item.problem(fmt::format("no text for the precaution {}", code));
        }
    for (const Field& item : root["covered_precautions"].items()) {
        elements.covered_.emplace_back(item["by"].text(), item["covered"].texts());
        item.close();
    }
    for (const Field& item : root["omitted_statements"].items())
        elements.omitted_statements.push_back(read_omission(item, "statement"));
    for (const Field& item : root["omitted_pictograms"].items())
        elements.omitted_pictograms.push_back(read_omission(item, "pictogram"));
    const std::int64_t most = root["most_precautions"].integer();
    if (most < 1) root["most_precautions"].problem("must be above 0");
    elements.most_precautions = static_cast<std::size_t>(std::max<std::int64_t>(most, 1));
    elements.kept_precautions = root["kept_precautions"].texts();
    if (elements.kept_precautions.size() >= elements.most_precautions)
        root["kept_precautions"].problem("leaves no place for others on the label");
    for (const std::string& code : elements.kept_precautions)
        if (!elements.precautions_.contains(code))
            root["kept_precautions"].problem(fmt::format("no text for the precaution {}", code));
    root.close();
    problems.throw_if_error();
    return elements;
}

const LabelStatement* LabelElements::statement(std::string_view code, std::string_view category) const {
    const LabelStatement* found = nullptr;
    for (const LabelStatement& statement : statements_) {
        if (statement.statement != code) continue;
        if (statement.category == category && !category.empty()) return &statement;
        if (statement.category.empty() && found == nullptr) found = &statement;
    }
    constexpr std::size_t without_letters = 4; // "H360FD" is "H360" and letters
    if (found == nullptr && code.size() > without_letters && code.front() == 'H')
        return statement(code.substr(0, without_letters), category);
    return found;
}

std::string_view LabelElements::text(std::string_view code) const {
    if (const auto precaution = precautions_.find(code); precaution != precautions_.end())
        return precaution->second;
    const LabelStatement* found = statement(code);
    return found != nullptr ? std::string_view(found->text) : std::string_view();
}

bool LabelElements::covers(std::string_view first, std::string_view second) const {
    return first == second || std::any_of(covered_.begin(), covered_.end(), [&](const auto& entry) {
               return entry.first == first && contains(entry.second, second);
           });
}

} // namespace routeweigh
