// SPDX-License-Identifier: MIT
// A writer turns any document into text of one format.
#pragma once

#include "writing/blocks.hpp"

#include <string>
#include <string_view>

namespace routeweigh::writing {

/// What the front end found out about the place where the text will be read; files keep the defaults.
struct WriteOptions {
    bool colour = false; ///< a terminal that shows bold and dim; otherwise no escape sequence is written
    int width = 80;      ///< columns of the terminal, at least 40
    bool unfold = false; ///< a terminal has nothing to click: print what is folded away, too
    std::string unfold_by = {}; ///< how the reader asks for that, "--working"
};

struct Writer {
    std::string_view name;  ///< as in --format
    std::string_view about; ///< one line for the help
    Reader reader;          ///< for whom; the writer needs no more of a document than that
    std::string (*write)(const Document&, const WriteOptions&);
};

} // namespace routeweigh::writing
