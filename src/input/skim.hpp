// SPDX-License-Identifier: MIT
// A cursor that walks over JSON text without building anything, to find where things stand.
//
// It checks no more than it needs to find its way; whether the text is JSON is for Document to say.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>

namespace routeweigh {

class Skim {
  public:
    explicit Skim(std::string_view text, std::size_t offset = 0) : text_(text), offset_(offset) {}

    std::size_t offset() const { return offset_; }
    // False once something stood where it must not; the cursor then no longer moves.
    bool ok() const { return ok_; }

    // The next character that is no white space (and no byte order mark at the start), '\0' at the end; not
    // taken.
    char peek();
    // Takes the character if it is the next; otherwise leaves the cursor where it is.
    bool take(char wanted);
    // Takes a string and returns what stands between the quotes, escapes as they are.
    std::string_view raw_string();
    // Takes a value of any kind.
    void skip_value();

    // To walk an object or array: `open('{')`, then while `next()` one key or element at a time.
    bool open(char bracket);
    bool next();
    // Takes a key and its colon; returns the raw key.
    std::string_view key();

  private:
    void fail() { ok_ = false; }

    std::string_view text_;
    std::size_t offset_;
    bool ok_ = true;
    bool at_start_ = false; // just behind an opening bracket, where no comma is due
};

// The text of a raw string with its escapes resolved.
std::string unescape(std::string_view raw);

} // namespace routeweigh
