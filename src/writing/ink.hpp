// SPDX-License-Identifier: MIT
// Bold and dim for a terminal that shows them, nothing otherwise.
#pragma once

#include <string>
#include <string_view>

namespace routeweigh::writing {

struct Ink {
    bool colour = false;

    std::string bold(std::string_view text) const { return styled("1", text); }
    std::string dim(std::string_view text) const { return styled("2", text); }

  private:
    std::string styled(std::string_view code, std::string_view text) const {
        if (!colour || text.empty()) return std::string(text);
        return "\x1b[" + std::string(code) + "m" + std::string(text) + "\x1b[0m";
    }
};

} // namespace routeweigh::writing
