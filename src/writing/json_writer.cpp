// SPDX-License-Identifier: MIT
#include "writing/json_writer.hpp"

#include "writing/escape.hpp"
#include "writing/number_text.hpp"
#include "writing/tables_of.hpp"

#include <fmt/format.h>

#include <cmath>
#include <cstddef>

namespace routeweigh::writing {
namespace {

/// Appends a tree as text with two spaces a level, straight from the values: a report has tens of thousands.
class JsonText {
  public:
    /// Room for a report: memory that is not touched costs nothing, a text that moves as it grows does.
    JsonText() { text_.reserve(std::size_t{1} << 20U); }

    std::string take() { return std::move(text_); }

    void add(const MachineTree& tree) {
        std::visit([this](const auto& value) { add_value(value); }, tree.value);
    }

  private:
    void add_value(std::monostate) { text_ += "null"; }
    void add_value(bool value) { text_ += value ? "true" : "false"; }
    void add_value(std::int64_t value) { text_ += fmt::format_int(value).c_str(); }
    void add_value(double value) {
        if (!std::isfinite(value)) {
            text_ += "null";
            return;
        }
        const std::size_t start = text_.size();
        text_ += exact_number(value);
        // A number that only happens to be whole stays one with a fraction for languages that tell them
        // apart.
        if (text_.find_first_of(".e", start) == std::string::npos) text_ += ".0";
    }
    void add_value(const std::string& value) { append_json_text(text_, value); }

    void add_value(const MachineList& list) {
        add_items(list, '[', ']', [this](const MachineTree& item) { add(item); });
    }
    void add_value(const MachineObject& object) {
        add_items(object, '{', '}', [this](const Member& member) {
            append_json_text(text_, member.name);
            text_ += ": ";
            add(member.value);
        });
    }

    template<typename Items, typename AddItem>
    void add_items(const Items& items, char open, char close, AddItem add_item) {
        text_ += open;
        depth_ += 2;
        bool first = true;
        for (const auto& item : items) {
            text_ += first ? "\n" : ",\n";
            text_.append(depth_, ' ');
            add_item(item);
            first = false;
        }
        depth_ -= 2;
        if (!first) text_.append(1, '\n').append(depth_, ' ');
        text_ += close;
    }

    std::string text_;
    std::size_t depth_ = 0; // spaces before an item
};

} // namespace

std::string write_json(const Document& document, const WriteOptions&) {
    JsonText text;
    if (document.machine)
        text.add(*document.machine);
    else
        text.add(machine_tree(document));
    return text.take() + "\n";
}

} // namespace routeweigh::writing
