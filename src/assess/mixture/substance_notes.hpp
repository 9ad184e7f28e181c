// SPDX-License-Identifier: MIT
// What the rules for mixtures need to know of substances and classes beyond a classification: which are acids
// and bases, for which limits do not add up, what may be carried over to a mixture, which test decides.
#pragma once

#include "input/source.hpp"

#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace routeweigh {

enum class AcidBase { unknown, acid, base, neither };

// A statement or class of an ingredient that a mixture shows from this share on, for no rule dilutes it.
struct CarriedStatement {
    std::string statement; // "EUH031"
    double percent = 0;
    bool on_label = false; // else only named
    std::string source;
};

// A physical class that composition does not decide, and the test that does.
struct PhysicalTest {
    std::string hazard_class;
    std::string test;
};

// Class of dangerous goods of a solution by its strength.
struct TransportBand {
    std::string substance; // id
    double from_percent = 0;
    std::optional<double> below_percent;
    std::string transport_class; // "5.1, packing group II"
    std::string statement;       // that goes with it
    std::string source;
};

class SubstanceNotes {
  public:
    // Throws InputError with every problem of the file.
    static SubstanceNotes read(const Source& source);

    AcidBase nature(std::string_view substance_id) const;
    // Why skin and eye limits do not add up for it; "" where they do or nobody knows.
    std::string_view why_not_additive(std::string_view substance_id) const;

    std::vector<CarriedStatement> carried;
    std::vector<PhysicalTest> physical_tests;
    std::vector<TransportBand> transport_bands;
    double physical_percent = 0; // from which share on a physical class of an ingredient is named

  private:
    std::map<std::string, AcidBase, std::less<>> natures_;
    std::map<std::string, std::string, std::less<>> not_additive_;
};

} // namespace routeweigh
