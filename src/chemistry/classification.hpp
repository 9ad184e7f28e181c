// SPDX-License-Identifier: MIT
// What is known of the hazards of a substance: GHS classes with their limits, and exposure limits of the
// workplace air.
//
// Codes and class names are those of the UN's Globally Harmonized System as the EU regulation (EC) No
// 1272/2008 abbreviates them: "Flam. Liq." 2 H225.
#pragma once

#include <optional>
#include <string>
#include <vector>

namespace routeweigh {

// A specific concentration limit: from this share of the substance on, a mixture has this class.
struct ConcentrationBand {
    std::string hazard_class;
    std::string category;              // "" where the class has none
    std::string statement;             // "H314"
    double min_percent = 0;            // by mass
    std::optional<double> max_percent; // below this; none means no upper end
    bool min_exclusive = false;        // true: above min_percent, not from it on
    std::vector<std::string> flags;
};

struct AcuteToxicityEstimate {
    std::string route; // oral, dermal, inhalation
    double value = 0;
    std::string unit; // "mg/kg bw", "mg/L", "ppm"
    std::string form; // of inhalation: vapours, dusts or mists, gases; else ""
};

struct GhsEntry {
    std::string hazard_class;
    std::string category;  // "" where the class has none
    std::string statement; // "H314", with its suffix letters: "H360FD"
    std::string statement_note;
    std::optional<double> m_factor; // harmonised; a missing one is not 1
    std::optional<AcuteToxicityEstimate> acute_toxicity;
    std::vector<ConcentrationBand> specific_limits;
    std::vector<std::string> flags;
    std::string target;    // organ of H370 to H373, where named
    std::string condition; // under which the entry applies, where it does not always
};

// From this share of the substance on, a mixture carries a supplemental statement.
struct SupplementalLimit {
    std::string statement; // "EUH031"
    double min_percent = 0;
};

// The separate entry of the aqueous solution; it replaces that of the pure substance for solutions.
struct SolutionClassification {
    std::string applies_to;
    std::optional<double> max_percent; // strength up to which it applies, by mass
    std::vector<GhsEntry> ghs;
    std::vector<std::string> supplemental; // EUH statements
    std::string source;
};

struct AirLimit {
    double value = 0;
    std::string unit; // "ppm" or "mg/m3"
};

struct ExposureLimit {
    enum class Kind { time_weighted, ceiling, short_term };

    double value = 0;
    std::string unit; // "ppm" or "mg/m3"
    Kind kind = Kind::time_weighted;
    std::string kind_text; // as the source prints it: "8 h time-weighted average"
    std::optional<AirLimit> short_term;
    std::optional<AirLimit> ceiling;
    bool skin = false; // noted as taken up through the skin
    std::string source;
};

// Where the classification comes from.
enum class AssessmentStatus { harmonised, harmonised_group, supplier, not_classified, no_data };

} // namespace routeweigh
