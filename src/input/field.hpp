// SPDX-License-Identifier: MIT
// A typed cursor over a JSON document that knows its place in the file and collects what is wrong with it.
//
// A read that fails records a problem and returns a neutral value (0, "", empty), so that readers go on and
// all problems of a file are reported together. What is below a missing or wrongly typed value reads as
// neutral without a further problem. Fields refer into their Document and into the Problems given to root();
// both must outlive them.
#pragma once

#include "base/problem.hpp"
#include "base/quantity.hpp"
#include "base/quantity_text.hpp"
#include "input/source.hpp"

#include <cstddef>
#include <cstdint>
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace routeweigh {

// What readers found. The reading function on top throws InputError when it holds an error.
class Problems {
  public:
    void add(Problem problem) { all.push_back(std::move(problem)); }
    bool any_error() const;
    // Throws InputError with all problems, warnings included, where one of them is an error.
    void throw_if_error() const;

    std::vector<Problem> all;
};

// What becomes of the "+/-" of a number.
enum class PlusMinus { refused, read };

class Field;

namespace detail {
struct DocumentState;
struct Node;
} // namespace detail

class Document {
  public:
    // Throws InputError with file and line: too large, too deep, not UTF-8, no JSON, a comment, a key that
    // stands twice.
    static Document parse(SourcePtr source);
    static Document parse(Source source);

    // Part of a source: the value from byte `begin` to byte `end`, which stands at `pointer` in the whole.
    // Places are those in the whole. The source must have been checked before.
    static Document parse_part(SourcePtr source, std::size_t begin, std::size_t end, std::string pointer);

    Document(Document&&) noexcept;
    Document& operator=(Document&&) noexcept;
    ~Document();

    const Source& source() const;

    // The cursor at the top. Each call starts anew with the keys that have been asked for. At most 100
    // problems of one document are recorded, and then one that says so.
    Field root(Problems& problems) const;

  private:
    explicit Document(std::unique_ptr<detail::DocumentState> state);

    std::unique_ptr<detail::DocumentState> state_;
};

class Field {
  public:
    // A required member of an object. Missing: a problem at this object, and a neutral field.
    Field operator[](std::string_view key) const;
    // An optional member; empty where it is missing or null.
    std::optional<Field> maybe(std::string_view key) const;
    // The elements of an array.
    std::vector<Field> items() const;
    // The keys of an object, in alphabetical order.
    std::vector<std::string> keys() const;

    std::string text() const;               // never empty when it was read
    double number() const;                  // finite
    std::int64_t integer() const;           // a number without fraction, at most 9e15
    int integer(int least, int most) const; // within these bounds; least when it was not
    bool boolean() const;
    // The elements of an array of texts.
    std::vector<std::string> texts() const;
    // A text that must be one of these; the problem otherwise lists them and offers the nearest. "" then.
    std::string one_of(const std::vector<std::string>& allowed) const;

    bool is_text() const;
    bool is_number() const;
    bool is_boolean() const;
    bool is_object() const;
    bool is_array() const;
    bool is_null() const;

    // A text read as a quantity. Neutral: zero, no unit. A "+/-" is a problem unless the caller reads it.
    // \param example  for who wrote none at all
    WrittenQuantity quantity(PlusMinus allowed = PlusMinus::refused,
                             std::string_view example = "2.5 g") const;
    // A text read as a quantity of this dimension, as as_mass() and its kin read it. Neutral: zero (0 degC).
    Mass mass(PlusMinus allowed = PlusMinus::refused) const;
    Volume volume() const;
    Amount amount() const;
    Duration duration() const;
    Energy energy() const;
    Power power() const;
    Temperature temperature() const;
    double fraction(PlusMinus allowed = PlusMinus::refused) const; // 0..1
    double mass_ratio() const;                                     // g/g

    // Records an error, or a warning, at this place. Nothing is recorded at a value that failed to be read
    // before.
    void problem(std::string message, std::string nearest = {}) const;
    void warning(std::string message, std::string nearest = {}) const;
    // Whether another error here would still be listed; else whoever has to search for a helpful message need
    // not.
    bool lists_problems() const;
    // Records an error that has two places: this one, and the one it contradicts.
    void contradiction(std::string message, const Field& other) const;

    // The place in the file; the line is searched for on each call.
    Place place() const;
    // JSON pointer of this place in the whole source.
    std::string pointer() const;

    // Refuses the keys that nobody asked for, at their places, with the nearest key that somebody did ask
    // for.
    void close() const;

  private:
    friend class Document;

    explicit Field(detail::Node* node) : node_(node) {}

    detail::Node* node_;
};

} // namespace routeweigh
