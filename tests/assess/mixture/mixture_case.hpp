// SPDX-License-Identifier: MIT
// What the tests of mixtures share: the shipped rules, and substances and mixtures made tersely.
#pragma once

#include "assess/mixture/explain.hpp"
#include "assess/mixture/mixture_classification.hpp"
#include "base/text.hpp"
#include "chemistry/catalogue.hpp"

#include <map>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace routeweigh::test::mixtures {

// The rules as they are shipped.
const MixtureRules& rules(MixtureRegime regime = MixtureRegime::eu);

// "Skin Corr. 1B" split into class and category; a remark in brackets is dropped, but "(narcotic)" tells H336
// from H335. The statement is that of the table in the UN text, written down here a second time.
GhsEntry entry(std::string_view class_and_category);
ConcentrationBand band(std::string_view class_and_category, double from, double below = 100.5);

// A liquid that is assessed and carries these classes.
Substance liquid(std::string name, const std::vector<std::string>& classes = {});

// What is missing to 100 % is an unclassified liquid. Its substances live as long as the program, for a
// classification points to them.
class Mixed {
  public:
    Mixed& add(Substance substance, double percent, IngredientFacts facts = {});
    // By class: Mixed().of("Skin Corr. 1B", 5).of("Skin Irrit. 2", 3).
    Mixed& of(std::string_view class_and_category, double percent);
    MixtureFacts& facts() { return mixture_.facts; }
    Mixture filled_up() const;
    MixtureClassification judged(MixtureRegime regime = MixtureRegime::eu) const;
    MixtureClassification judged(const MixtureRules& by) const { return classify(filled_up(), by); }

  private:
    Mixture mixture_;
};

// The catalogue's substances by name and per cent by mass.
MixtureClassification bottle(const std::vector<std::pair<std::string_view, double>>& percent_by_name,
                             MixtureRegime regime = MixtureRegime::eu);
MixtureClassification bottle(std::string_view material, MixtureRegime regime = MixtureRegime::eu);

// Hazard statements of the label, "H302 H318".
std::string statements(const MixtureClassification& classification);
// "Skin Corr. 1B", or "" where not classified.
std::string found(const MixtureClassification& classification, std::string_view endpoint);
std::string all_lines(const MixtureResult& result);

} // namespace routeweigh::test::mixtures
