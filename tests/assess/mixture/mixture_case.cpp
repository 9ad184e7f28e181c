// SPDX-License-Identifier: MIT
#include "mixture_case.hpp"

#include <deque>
#include <stdexcept>
#include <tuple>

namespace routeweigh::test::mixtures {
namespace {

// Statements of classes: UN GHS, annex 3 (memory).
std::string statement_of(const std::string& hazard_class, const std::string& category, bool narcotic) {
    const bool first = !category.empty() && category.front() == '1';
    if (hazard_class == "Skin Corr.") return "H314";
    if (hazard_class == "Skin Irrit.") return category == "3" ? "H316" : "H315";
    if (hazard_class == "Eye Dam.") return "H318";
    if (hazard_class == "Eye Irrit.") return category == "2B" ? "H320" : "H319";
    if (hazard_class == "Resp. Sens.") return "H334";
    if (hazard_class == "Skin Sens.") return "H317";
    if (hazard_class == "Muta.") return first ? "H340" : "H341";
    if (hazard_class == "Carc.") return first ? "H350" : "H351";
    if (hazard_class == "Repr.") return first ? "H360" : "H361";
    if (hazard_class == "Lact.") return "H362";
    if (hazard_class == "STOT SE")
        return category == "1" ? "H370" : category == "2" ? "H371" : narcotic ? "H336" : "H335";
    if (hazard_class == "STOT RE") return category == "1" ? "H372" : "H373";
    if (hazard_class == "Asp. Tox.") return category == "1" ? "H304" : "H305";
    if (hazard_class == "Aquatic Acute") return category == "1" ? "H400" : category == "2" ? "H401" : "H402";
    if (hazard_class == "Aquatic Chronic") return "H41" + std::to_string(category.front() - '1');
    if (hazard_class == "Ozone") return "H420";
    if (hazard_class == "Ox. Liq.") return category == "1" ? "H271" : "H272";
    if (hazard_class == "Flam. Liq.") return category == "1" ? "H224" : category == "2" ? "H225" : "H226";
    if (hazard_class == "Met. Corr.") return "H290";
    throw std::logic_error("no statement for " + hazard_class);
}

std::pair<std::string, std::string> split(std::string_view text) {
    std::string_view bare = text.substr(0, text.find(" ("));
    const std::size_t space = bare.rfind(' ');
    const std::string last(bare.substr(space + 1));
    if (last.empty() || last.front() < '0' || last.front() > '9') return {std::string(bare), ""};
    return {std::string(bare.substr(0, space)), last};
}

} // namespace

const MixtureRules& rules(MixtureRegime regime) {
    static const MixtureRules eu = read_mixture_rules(Catalogue::embedded());
    static const MixtureRules un = read_mixture_rules(Catalogue::embedded(), MixtureRegime::un);
    static const MixtureRules us = read_mixture_rules(Catalogue::embedded(), MixtureRegime::us);
    return regime == MixtureRegime::eu ? eu : regime == MixtureRegime::un ? un : us;
}

GhsEntry entry(std::string_view class_and_category) {
    GhsEntry made;
    std::tie(made.hazard_class, made.category) = split(class_and_category);
    const bool narcotic = class_and_category.find("narcotic") != std::string_view::npos;
    made.statement = statement_of(made.hazard_class, made.category, narcotic);
    return made;
}

ConcentrationBand band(std::string_view class_and_category, double from, double below) {
    const GhsEntry of_class = entry(class_and_category);
    ConcentrationBand made;
    made.hazard_class = of_class.hazard_class;
    made.category = of_class.category;
    made.statement = of_class.statement;
    made.min_percent = from;
    if (below <= 100) made.max_percent = below;
    return made;
}

Substance liquid(std::string name, const std::vector<std::string>& classes) {
    Substance made;
    made.id = made.name = std::move(name);
    made.phase = Substance::Phase::liquid;
    made.molar_mass = 100;
    made.assessed = true;
    for (const std::string& one : classes)
        made.ghs.push_back(entry(one));
    return made;
}

Mixed& Mixed::add(Substance substance, double percent, IngredientFacts facts) {
    static std::deque<Substance> kept;
    kept.push_back(std::move(substance));
    mixture_.ingredients.push_back({&kept.back(), percent / 100, false, std::move(facts)});
    return *this;
}

Mixed& Mixed::of(std::string_view class_and_category, double percent) {
    return add(liquid("ingredient " + std::to_string(mixture_.ingredients.size() + 1),
                      {std::string(class_and_category)}),
               percent);
}

Mixture Mixed::filled_up() const {
    static const Substance rest = liquid("not classified rest");
    Mixture filled = mixture_;
    double sum = 0;
    for (const Ingredient& ingredient : filled.ingredients)
        sum += ingredient.mass_fraction;
    if (sum < 1 - 1e-12) filled.ingredients.push_back({&rest, 1 - sum, false, {}});
    return filled;
}

MixtureClassification Mixed::judged(MixtureRegime regime) const {
    return classify(filled_up(), rules(regime));
}

MixtureClassification bottle(const std::vector<std::pair<std::string_view, double>>& percent_by_name,
                             MixtureRegime regime) {
    return classify(mixture_of(Catalogue::embedded(), "bottle", percent_by_name), rules(regime));
}

MixtureClassification bottle(std::string_view material, MixtureRegime regime) {
    const Material* found = Catalogue::embedded().find_material(material);
    if (found == nullptr) throw std::logic_error("no material " + std::string(material));
    return classify(mixture_of(*found), rules(regime));
}

std::string statements(const MixtureClassification& classification) {
    return join(classification.label.statements, " ");
}

std::string found(const MixtureClassification& classification, std::string_view endpoint) {
    const MixtureResult* result = classification.result(endpoint);
    return result == nullptr ? std::string("no such endpoint") : result->class_and_category();
}

std::string all_lines(const MixtureResult& result) {
    return join(explain(result), "\n");
}

} // namespace routeweigh::test::mixtures
