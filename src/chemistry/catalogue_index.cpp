// SPDX-License-Identifier: MIT
#include "chemistry/catalogue_index.hpp"

#include "base/text.hpp"
#include "input/field.hpp"
#include "input/skim.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <utility>

namespace routeweigh {

namespace {

struct FileName {
    std::string folder; // the last one
    std::string stem;
};

FileName file_name(std::string_view path) {
    FileName result;
    const std::size_t slash = path.find_last_of("/\\");
    std::string_view file = slash == std::string_view::npos ? path : path.substr(slash + 1);
    if (file.ends_with(".json")) file.remove_suffix(5);
    result.stem = file;
    if (slash == std::string_view::npos) return result;
    const std::string_view before = path.substr(0, slash);
    const std::size_t other = before.find_last_of("/\\");
    result.folder = other == std::string_view::npos ? before : before.substr(other + 1);
    return result;
}

// Takes the string at the cursor; skips anything else.
std::string take_text(Skim& skim) {
    if (skim.peek() == '"') return unescape(skim.raw_string());
    skim.skip_value();
    return {};
}

void take_names(Skim& skim, CatalogueEntry& entry) {
    for (skim.open('{'); skim.next();) {
        const std::string_view key = skim.key();
        if (key == "id") {
            entry.id = take_text(skim);
        } else if (key == "name") {
            entry.name = take_text(skim);
        } else if (key == "cas") {
            entry.cas = take_text(skim);
        } else if (key == "formula") {
            entry.formula = take_text(skim);
        } else if (key == "synonyms" && skim.peek() == '[') {
            for (skim.open('['); skim.next();)
                entry.synonyms.push_back(take_text(skim));
        } else {
            skim.skip_value();
        }
    }
}

} // namespace

CatalogueIndex::CatalogueIndex(const std::vector<SourcePtr>& sources) {
    for (const SourcePtr& source : sources)
        add_source(source);
    add_names();
    if (!problems_.empty()) throw InputError(std::move(problems_));
}

void CatalogueIndex::add_source(const SourcePtr& source) {
    const FileName file = file_name(source->name);
    if (file.folder == "schemes") {
        const bool clash = std::any_of(schemes_.begin(), schemes_.end(),
                                       [&](const Scheme& scheme) { return scheme.stem == file.stem; });
        if (clash) {
            Problem two;
            two.message = fmt::format("a second scheme \"{}\"", file.stem);
            two.place.source = source->name;
            problems_.push_back(std::move(two));
        }
        schemes_.push_back({file.stem, source});
        return;
    }
    Skim skim(source->text);
    bool any_list = false;
    bool good = true;
    for (skim.open('{'); good && skim.next();) {
        const std::string_view key = skim.key();
        const bool substances = key == "substances";
        if ((substances || key == "materials") && skim.peek() == '[') {
            good = add_list(source, skim,
                            substances ? CatalogueEntry::Kind::substance : CatalogueEntry::Kind::material);
            any_list = true;
        } else {
            skim.skip_value();
        }
    }
    if (good && skim.ok() && any_list) return;
    // The skim lost its way; the full reader knows how to say why.
    Document::parse_part(source, 0, source->text.size(), {});
    Problem problem;
    problem.message = "the file has neither a list \"substances\" nor a list \"materials\" of objects";
    problem.place.source = source->name;
    throw InputError(std::move(problem));
}

bool CatalogueIndex::add_list(const SourcePtr& source, Skim& skim, CatalogueEntry::Kind kind) {
    int index = 0;
    for (skim.open('['); skim.next(); ++index) {
        CatalogueEntry entry;
        entry.kind = kind;
        entry.source = source;
        entry.pointer = fmt::format(
            "/{}/{}", kind == CatalogueEntry::Kind::substance ? "substances" : "materials", index);
        if (skim.peek() != '{') return false;
        entry.begin = skim.offset();
        take_names(skim, entry);
        entry.end = skim.offset();
        if (!skim.ok()) return false;
        entries_.push_back(std::move(entry));
    }
    return skim.ok();
}

void CatalogueIndex::problem(const CatalogueEntry& entry, std::string message, const CatalogueEntry* second) {
    Problem problem;
    problem.message = std::move(message);
    problem.place = place_at(*entry.source, entry.begin, entry.pointer);
    if (second != nullptr) problem.second = place_at(*second->source, second->begin, second->pointer);
    problems_.push_back(std::move(problem));
}

void CatalogueIndex::add_names() {
    by_name_.reserve(6 * entries_.size());
    for (std::size_t i = 0; i < entries_.size(); ++i) {
        const CatalogueEntry& entry = entries_[i];
        const auto add = [&](const std::string& name) {
            const auto [found, added] = by_name_.try_emplace(fold(name), i);
            if (added || found->second == i) return;
            const CatalogueEntry& first = entries_[found->second];
            problem(entry, fmt::format("\"{}\" already names \"{}\"", name, first.id), &first);
        };
        if (entry.id.empty() || entry.name.empty()) problem(entry, "an entry needs an \"id\" and a \"name\"");
        add(entry.id);
        add(entry.name);
        for (const std::string& synonym : entry.synonyms)
            add(synonym);
        if (!entry.cas.empty()) add(entry.cas);
    }
}

const CatalogueEntry* CatalogueIndex::find(std::string_view name) const {
    const auto found = by_name_.find(fold(name));
    return found == by_name_.end() ? nullptr : &entries_[found->second];
}

} // namespace routeweigh
