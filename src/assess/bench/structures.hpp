// SPDX-License-Identifier: MIT
// The structural formulae of substances, drawn beforehand by scripts/draw-structures.
#pragma once

#include "chemistry/substance.hpp"
#include "input/source.hpp"

#include <map>
#include <string>

namespace routeweigh::bench {

/// SVG path data; lengths in the drawing's own unit.
struct Structure {
    double width = 0, height = 0;
    std::string lines;  ///< to stroke
    std::string shapes; ///< to fill
};

class Structures {
  public:
    /// \throws InputError with every problem of the file, path data that is none among them
    static Structures read(const Source& source);

    /// nullptr where the substance has no drawing, or its SMILES is not the one that was drawn.
    const Structure* find(const Substance& substance) const;

  private:
    struct Entry {
        std::string smiles;
        Structure structure;
    };
    std::map<std::string, Entry, std::less<>> entries_;
};

} // namespace routeweigh::bench
