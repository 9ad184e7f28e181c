// SPDX-License-Identifier: MIT
// What programs read: a small tree for JSON and flat rows for CSV, chosen by the document and printed by
// writers.
#pragma once

#include <cstddef>
#include <cstdint>
#include <iterator>
#include <string>
#include <utility>
#include <variant>
#include <vector>

namespace routeweigh::writing {

struct MachineTree;
struct Member;
using MachineList = std::vector<MachineTree>;
using MachineObject = std::vector<Member>; ///< members keep the order in which they were added

/// Null, truth value, number, text, list or object. Numbers stay unrounded; what is not finite prints as
/// null.
struct MachineTree {
    std::variant<std::monostate, bool, std::int64_t, double, std::string, MachineList, MachineObject> value;

    MachineTree() = default;
    MachineTree(bool truth);
    MachineTree(int number);
    MachineTree(std::int64_t number);
    MachineTree(double number);
    MachineTree(const char* text);
    MachineTree(std::string text);
    MachineTree(MachineList list);
    MachineTree(MachineObject object);
};

struct Member {
    std::string name;
    MachineTree value;
};

// Only here is Member complete, which clang asks for where a list of members is made.
inline MachineTree::MachineTree(bool truth) : value(truth) {}
inline MachineTree::MachineTree(int number) : value(std::int64_t{number}) {}
inline MachineTree::MachineTree(std::int64_t number) : value(number) {}
inline MachineTree::MachineTree(double number) : value(number) {}
inline MachineTree::MachineTree(const char* text) : value(std::string(text)) {}
inline MachineTree::MachineTree(std::string text) : value(std::move(text)) {}
inline MachineTree::MachineTree(MachineList list) : value(std::move(list)) {}
inline MachineTree::MachineTree(MachineObject object) : value(std::move(object)) {}

/// An object of these members: object({{"id", id}, {"grams", 2.5}}). They are moved, where the list of a
/// vector would copy each with all that is below it.
template<std::size_t N>
MachineObject object(Member (&&members)[N]) {
    return {std::make_move_iterator(std::begin(members)), std::make_move_iterator(std::end(members))};
}

inline MachineList text_list(const std::vector<std::string>& texts) {
    MachineList list;
    for (const std::string& text : texts)
        list.emplace_back(text);
    return list;
}

/// An empty cell, an unrounded number, or text (which CSV guards against being read as a formula).
using DataCell = std::variant<std::monostate, double, std::string>;

struct DataRows {
    std::vector<std::string> columns;
    std::vector<std::vector<DataCell>> rows;

    bool empty() const { return columns.empty(); }
};

} // namespace routeweigh::writing
