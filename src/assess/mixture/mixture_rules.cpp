// SPDX-License-Identifier: MIT
#include "assess/mixture/mixture_rules.hpp"

#include "assess/mixture/limits_reader.hpp"
#include "base/text.hpp"

#include "chemistry/catalogue.hpp"

#include <fmt/format.h>

namespace routeweigh {
namespace {

const Source& required(const Catalogue& catalogue, const std::string& stem) {
    const Source* source = catalogue.scheme(stem);
    if (source != nullptr) return *source;
    Problem problem;
    problem.message = fmt::format("no scheme \"{}\" in the catalogue", stem);
    problem.nearest = nearest(stem, catalogue.scheme_stems());
    throw InputError(problem);
}

} // namespace

std::string_view words(MixtureRegime regime) {
    switch (regime) {
    case MixtureRegime::un:
        return "un";
    case MixtureRegime::us:
        return "us";
    default:
        return "eu";
    }
}

MixtureRules read_mixture_rules(const Catalogue& catalogue, MixtureRegime regime,
                                const std::map<std::string, bool>& blocks) {
    MixtureRules rules;
    rules.regime = regime;
    rules.limits =
        read_mixture_limits(required(catalogue, "ghs_limits_" + std::string(words(regime))), blocks);
    rules.notes = SubstanceNotes::read(required(catalogue, "ghs_mixture_notes"));
    rules.flash_points = FlashPointData::read(required(catalogue, "ghs_flash_points"));
    rules.labels = LabelElements::read(required(catalogue, "ghs_label_elements"));
    return rules;
}

} // namespace routeweigh
