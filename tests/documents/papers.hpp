// SPDX-License-Identifier: MIT
// Routes laid out for the bench, and the numbers that papers share.
#pragma once

#include "app/laid_out.hpp"
#include "writing/blocks.hpp"

#include <map>
#include <memory>
#include <string>
#include <vector>

namespace routeweigh::test {

/// Every route file of routes/, as "4-bromoacetanilide/A3.json".
std::vector<std::string> shipped_routes();
std::string text_of_route(const std::string& file);

std::unique_ptr<LaidOutRoute> lay_out_text(const std::string& text, const std::string& jurisdiction = "US");
std::unique_ptr<LaidOutRoute> lay_out_file(const std::string& file);

/// A number as one paper states it.
struct Stated {
    bool open = false; ///< null: to be worked out
    double value = 0;
    std::string unit, text;
};

/// Every object with a member "figure" in the machine data of a document, by that id.
std::map<std::string, std::vector<Stated>> shared_figures(const writing::Document& document);

/// The document in every format, one after the other.
std::string in_every_format(const writing::Document& document);

} // namespace routeweigh::test
