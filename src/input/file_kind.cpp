// SPDX-License-Identifier: MIT
#include "input/file_kind.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <iterator>
#include <string>
#include <utility>
#include <vector>

namespace routeweigh {
namespace {

struct KnownKind {
    FileKind kind;
    const char* key; ///< that this kind needs and no other has
    const char* words;
};

constexpr KnownKind known_kinds[] = {
    {FileKind::route, "steps", "a route file"},
    {FileKind::course, "experiments", "a course file"},
    {FileKind::price_list, "packs", "a price list"},
    {FileKind::container_log, "additions", "the log of a container"},
    {FileKind::mixture, "ingredients", "a mixture"},
    {FileKind::rules, "kind", "a file of rules"},
};

const KnownKind& known(FileKind kind) {
    return *std::find_if(std::begin(known_kinds), std::end(known_kinds),
                         [&](const KnownKind& one) { return one.kind == kind; });
}

} // namespace

bool is_kind(const Field& root, FileKind kind) {
    if (!root.is_object()) return false;
    const std::vector<std::string> keys = root.keys();
    return std::find(keys.begin(), keys.end(), known(kind).key) != keys.end();
}

void expect_kind(const Field& root, FileKind kind) {
    if (is_kind(root, kind)) return;
    for (const KnownKind& other : known_kinds)
        if (is_kind(root, other.kind)) {
            Problem problem;
            problem.message = fmt::format("this is {}, and {} is wanted", other.words, known(kind).words);
            problem.place = root[other.key].place();
            throw InputError(std::move(problem));
        }
}

} // namespace routeweigh
