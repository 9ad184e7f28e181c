// SPDX-License-Identifier: MIT
#include "assess/streams/scheme_file.hpp"

#include "base/text.hpp"
#include "chemistry/catalogue.hpp"
#include "input/file_kind.hpp"

#include <fmt/core.h>

namespace routeweigh::streams {
SchemeFile::SchemeFile(const Source& source, std::string_view kind)
    : document_(Document::parse(source)), root_(document_.root(problems_)) {
    expect_kind(root_, FileKind::rules);
    // A file of another kind lacks everything else as well, which need not be said.
    const Field own_kind = root_["kind"];
    if (own_kind.one_of({std::string(kind)}).empty() && own_kind.is_text()) problems_.throw_if_error();
    id_ = root_["id"].text();
    title_ = root_["title"].text();
    const Field about = root_["about"];
    about["source"].text();
    if (const auto sources = about.maybe("sources"))
        for (const std::string& key : sources->keys())
            sources_[key] = (*sources)[key].text();
}

Provenance SchemeFile::provenance(const Field& row) const {
    Provenance result;
    result.standing = standing_of(row["standing"].one_of(standing_words()));
    const std::string source = row["source"].text();
    const auto known = sources_.find(source);
    result.source = known == sources_.end() ? source : known->second;
    return result;
}

Sourced<double> SchemeFile::number(std::string_view key) const {
    const Field field = root_[key];
    Sourced<double> result{field["value"].number(), provenance(field)};
    field.close();
    return result;
}

void SchemeFile::finish() const {
    root_.close();
    problems_.throw_if_error();
}

int group_number(const Field& field) {
    return field.integer(1, 999);
}

std::string text_or_empty(const Field& object, std::string_view key) {
    const auto field = object.maybe(key);
    return field ? field->text() : std::string();
}

const Source& required_scheme(const Catalogue& catalogue, std::string_view stem) {
    const Source* source = catalogue.scheme(stem);
    if (source != nullptr) return *source;
    Problem problem;
    problem.message = fmt::format("no scheme \"{}\" in the catalogue", stem);
    problem.nearest = nearest(stem, catalogue.scheme_stems());
    throw InputError(problem);
}

} // namespace routeweigh::streams
