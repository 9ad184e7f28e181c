// SPDX-License-Identifier: MIT
#include "input/field.hpp"

#include "base/text.hpp"
#include "input/document_state.hpp"
#include "input/locate.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <utility>

namespace routeweigh {

namespace {

using detail::Node;
using nlohmann::json;

constexpr int most_recorded = 100; // errors, and as many warnings, of one reading

std::string_view describe(const json& value) {
    switch (value.type()) {
    case json::value_t::null:
        return "null";
    case json::value_t::object:
        return "an object";
    case json::value_t::array:
        return "a list";
    case json::value_t::string:
        return "a text";
    case json::value_t::boolean:
        return value.get<bool>() ? "true" : "false";
    default:
        return "a number";
    }
}

Node* child(Node& parent, const json* value, std::string_view key, std::size_t index = 0) {
    Node& node = parent.reading->nodes.emplace_back();
    node.reading = parent.reading;
    node.value = value;
    node.parent = &parent;
    node.key = key;
    node.index = index;
    return &node;
}

// The member of an object, noted as asked for; nullptr where it is missing.
Node* member(Node& object, std::string_view key) {
    if (const auto asked = object.members.find(key); asked != object.members.end()) return asked->second;
    const auto found = object.value->find(key);
    Node* const node = found == object.value->end() ? nullptr : child(object, &*found, found.key());
    object.members.emplace(key, node);
    return node;
}

std::string relative_pointer(const Node& node) {
    if (node.parent == nullptr) return {};
    const std::string token =
        node.parent->value->is_array() ? std::to_string(node.index) : pointer_token(node.key);
    return relative_pointer(*node.parent) + '/' + token;
}

Place place_of(const Node& node) {
    const detail::DocumentState& document = *node.reading->document;
    const std::string pointer = relative_pointer(node);
    const std::size_t offset = locate(document.text(), pointer).value_or(0);
    return place_at(*document.source, document.begin + offset, document.prefix + pointer);
}

void record(Node& node, Severity severity, std::string message, std::string nearest = {},
            const Node* other = nullptr) {
    if (node.value == nullptr || node.failed) return;
    detail::Reading& reading = *node.reading;
    int& count = severity == Severity::error ? reading.errors : reading.warnings;
    if (++count > most_recorded + 1) return;
    Problem problem;
    problem.severity = severity;
    if (count > most_recorded) {
        problem.message = fmt::format("more than {} problems; the others are not listed", most_recorded);
        problem.place.source = reading.document->source->name;
    } else {
        problem.message = std::move(message);
        problem.nearest = std::move(nearest);
        problem.place = place_of(node);
        if (other != nullptr && other->value != nullptr) problem.second = place_of(*other);
    }
    reading.problems->add(std::move(problem));
}

// True where the value is there and of the type; otherwise records what it is instead, once.
bool is_a(Node& node, bool (json::*type)() const noexcept, std::string_view expected) {
    if (node.value == nullptr || node.failed) return false;
    if ((node.value->*type)()) return true;
    record(node, Severity::error, fmt::format("expected {}, found {}", expected, describe(*node.value)));
    node.failed = true;
    return false;
}

bool holds(const Node& node, bool (json::*type)() const noexcept) {
    return node.value != nullptr && (node.value->*type)();
}

// The text of the node, read as a quantity and turned into what is asked for.
template<typename Result, typename Convert>
Result converted(Node& node, Result neutral, Convert convert, PlusMinus allowed = PlusMinus::refused,
                 std::string_view example = "2.5 g") {
    if (!holds(node, &json::is_string)) {
        is_a(node, &json::is_string, fmt::format("a quantity in double quotes such as \"{}\"", example));
        return neutral;
    }
    if (node.failed) return neutral;
    try {
        const WrittenQuantity written = parse_written(node.value->get_ref<const std::string&>());
        if (written.spread && allowed == PlusMinus::refused)
            throw QuantityError(
                "no \"+/-\" is read here: nothing reckons with how exactly this number is known");
        return convert(written);
    } catch (const QuantityError& error) {
        record(node, Severity::error, error.what(), error.nearest);
        node.failed = true;
        return neutral;
    }
}

} // namespace

bool Problems::any_error() const {
    return std::any_of(all.begin(), all.end(),
                       [](const Problem& p) { return p.severity == Severity::error; });
}

void Problems::throw_if_error() const {
    if (any_error()) throw InputError(all);
}

Field Field::operator[](std::string_view key) const {
    Node* const neutral = &node_->reading->neutral;
    if (!is_a(*node_, &json::is_object, "an object")) return Field(neutral);
    const bool asked_before = node_->members.contains(key);
    Node* const found = member(*node_, key);
    if (found == nullptr && !asked_before)
        record(*node_, Severity::error, fmt::format("the key \"{}\" is missing", key));
    return Field(found == nullptr ? neutral : found);
}

std::optional<Field> Field::maybe(std::string_view key) const {
    if (!is_a(*node_, &json::is_object, "an object")) return std::nullopt;
    Node* const found = member(*node_, key);
    if (found == nullptr || found->value->is_null()) return std::nullopt;
    return Field(found);
}

std::vector<Field> Field::items() const {
    std::vector<Field> result;
    if (!is_a(*node_, &json::is_array, "a list")) return result;
    if (node_->elements.empty()) {
        for (const json& element : *node_->value)
            node_->elements.push_back(child(*node_, &element, {}, node_->elements.size()));
    }
    for (Node* const element : node_->elements)
        result.push_back(Field(element));
    return result;
}

std::vector<std::string> Field::keys() const {
    std::vector<std::string> result;
    if (!is_a(*node_, &json::is_object, "an object")) return result;
    for (auto it = node_->value->begin(); it != node_->value->end(); ++it)
        result.push_back(it.key());
    return result;
}

std::string Field::text() const {
    if (!is_a(*node_, &json::is_string, "a text")) return {};
    std::string read = node_->value->get<std::string>();
    if (!trim(read).empty()) return read;
    problem("expected a text, found an empty one");
    node_->failed = true;
    return {};
}

double Field::number() const {
    return is_a(*node_, &json::is_number, "a number") ? node_->value->get<double>() : 0;
}

std::int64_t Field::integer() const {
    const double value = number();
    if (value == std::floor(value) && std::abs(value) <= 9e15) return static_cast<std::int64_t>(value);
    problem(fmt::format("expected a whole number, found {}", value));
    node_->failed = true;
    return 0;
}

int Field::integer(int least, int most) const {
    const std::int64_t value = integer();
    if (value >= least && value <= most) return static_cast<int>(value);
    problem(fmt::format("{} is no whole number from {} to {}", value, least, most));
    return least;
}

bool Field::boolean() const {
    return is_a(*node_, &json::is_boolean, "true or false") && node_->value->get<bool>();
}

std::vector<std::string> Field::texts() const {
    std::vector<std::string> result;
    for (const Field& item : items())
        result.push_back(item.text());
    return result;
}

std::string Field::one_of(const std::vector<std::string>& allowed) const {
    std::string read = text();
    if (node_->value == nullptr || node_->failed) return {};
    if (std::find(allowed.begin(), allowed.end(), read) != allowed.end()) return read;
    problem(fmt::format("\"{}\" is none of: \"{}\"", read, join(allowed, "\", \"")), nearest(read, allowed));
    node_->failed = true;
    return {};
}

bool Field::is_text() const {
    return holds(*node_, &json::is_string);
}
bool Field::is_number() const {
    return holds(*node_, &json::is_number);
}
bool Field::is_boolean() const {
    return holds(*node_, &json::is_boolean);
}
bool Field::is_object() const {
    return holds(*node_, &json::is_object);
}
bool Field::is_array() const {
    return holds(*node_, &json::is_array);
}
bool Field::is_null() const {
    return holds(*node_, &json::is_null);
}

WrittenQuantity Field::quantity(PlusMinus allowed, std::string_view example) const {
    return converted(
        *node_, WrittenQuantity{}, [](const WrittenQuantity& written) { return written; }, allowed, example);
}
Mass Field::mass(PlusMinus allowed) const {
    return converted(*node_, Mass{}, as_mass, allowed);
}
Volume Field::volume() const {
    return converted(*node_, Volume{}, as_volume);
}
Amount Field::amount() const {
    return converted(*node_, Amount{}, as_amount);
}
Duration Field::duration() const {
    return converted(*node_, Duration{}, as_duration);
}
Energy Field::energy() const {
    return converted(*node_, Energy{}, as_energy);
}
Power Field::power() const {
    return converted(*node_, Power{}, as_power);
}
Temperature Field::temperature() const {
    return converted(*node_, Temperature::from_celsius(0), as_temperature);
}
double Field::fraction(PlusMinus allowed) const {
    return converted(*node_, 0.0, as_fraction, allowed, "70 %");
}
double Field::mass_ratio() const {
    return converted(*node_, 0.0, as_mass_ratio);
}

void Field::problem(std::string message, std::string nearest) const {
    record(*node_, Severity::error, std::move(message), std::move(nearest));
}

void Field::warning(std::string message, std::string nearest) const {
    record(*node_, Severity::warning, std::move(message), std::move(nearest));
}

bool Field::lists_problems() const {
    return node_->value != nullptr && !node_->failed && node_->reading->errors < most_recorded;
}

void Field::contradiction(std::string message, const Field& other) const {
    record(*node_, Severity::error, std::move(message), {}, other.node_);
}

Place Field::place() const {
    return place_of(*node_);
}

std::string Field::pointer() const {
    return node_->reading->document->prefix + relative_pointer(*node_);
}

void Field::close() const {
    if (!is_object() || node_->failed) return;
    for (auto it = node_->value->begin(); it != node_->value->end(); ++it) {
        if (node_->members.contains(it.key())) continue;
        NearestSpelling search(it.key());
        for (const auto& asked : node_->members)
            search.offer(asked.first);
        record(*child(*node_, &*it, it.key()), Severity::error, fmt::format("unknown key \"{}\"", it.key()),
               search.best());
    }
}

} // namespace routeweigh
