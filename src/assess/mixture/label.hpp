// SPDX-License-Identifier: MIT
// What a label of the mixture would print: the classification thinned by the rules of precedence.
//
// The classification keeps everything; what is left out here is listed with what it gives way to.
#pragma once

#include "assess/mixture/mixture_rules.hpp"
#include "assess/mixture/resolved_mixture.hpp"
#include "assess/mixture/result.hpp"

#include <string>
#include <string_view>
#include <vector>

namespace routeweigh {

struct OmittedElement {
    std::string what;   // "H318"
    std::string beside; // "H314"
    std::string_view source;
};

struct MixtureLabel {
    std::string signal;                    // "Danger", "Warning" or ""
    std::vector<std::string> pictograms;   // "GHS05", ascending
    std::vector<std::string> statements;   // "H314", ascending: physical, health, environment
    std::vector<std::string> supplemental; // "EUH071"
    std::vector<std::string> precautions;  // at most six, and P273
    std::vector<OmittedElement> omitted;
    std::vector<const Substance*> named;       // that decide a health class: they belong on the label
    std::vector<const Substance*> sensitisers; // that EUH208 names
};

MixtureLabel make_label(const std::vector<MixtureResult>& results, const MixtureRules& rules);

// The text of a statement on this label; EUH208 names its sensitisers, H370 to H373 their organ where one is
// named.
std::string statement_text(std::string_view code, const MixtureLabel& label,
                           const std::vector<MixtureResult>& results, const LabelElements& elements);

} // namespace routeweigh
