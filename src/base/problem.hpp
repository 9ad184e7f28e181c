// SPDX-License-Identifier: MIT
// What is wrong with an input: a message, the place it belongs to, and the nearest valid spelling.
#pragma once

#include <exception>
#include <optional>
#include <string>
#include <vector>

namespace routeweigh {

// A place in an input. Lines and columns count from 1; 0 means unknown. The column counts bytes.
struct Place {
    std::string source;  // file name as the user gave it
    std::string pointer; // JSON pointer, "" for the whole document
    int line = 0;
    int column = 0;
    std::string excerpt;    // the line of the source, shortened where long; `column` counts from the start of
                            // the full line
    int excerpt_column = 0; // where in the excerpt the place is; 0 where there is no excerpt
};

enum class Severity { error, warning };

struct Problem {
    Severity severity = Severity::error;
    std::string message; // lower-case start, no full stop
    Place place;
    std::optional<Place> second; // the other place of a contradiction
    std::string nearest;         // a valid spelling close to what was read; "" for none
};

// "routes/x.json:31 /steps/0/charges/2/material: no material "etanol 95 %"; nearest: "ethanol 95 %"". One
// line.
std::string format(const Problem& problem);

// The excerpt and, on the next line, a caret under the place; "" where there is no excerpt.
std::string format_excerpt(const Place& place);

// Thrown by a reading function once it has collected every problem; holds at least one error.
class InputError : public std::exception {
  public:
    explicit InputError(std::vector<Problem> found);
    explicit InputError(Problem found);

    // All problems, one a line.
    const char* what() const noexcept override { return text_.c_str(); }

    std::vector<Problem> problems;

  private:
    std::string text_;
};

} // namespace routeweigh
