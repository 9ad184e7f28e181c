// SPDX-License-Identifier: MIT
#include "assess/mixture/mixture_reader.hpp"

#include "base/list.hpp"
#include "base/quantity_text.hpp"
#include "base/text.hpp"
#include "chemistry/catalogue.hpp"
#include "input/file_kind.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <functional>

namespace routeweigh {
namespace {

/// One line of the statement, before materials are split into their components.
struct Stated {
    const Material* material = nullptr;
    std::optional<double> share;
    bool dissolved = false;
    IngredientFacts facts = {};
    std::function<void(std::string)> complain; ///< at the place of this ingredient
};

const std::vector<std::string> phases{"solid", "liquid", "gas"};

Substance::Phase phase_named(const std::string& word) {
    return word == "gas"      ? Substance::Phase::gas
           : word == "liquid" ? Substance::Phase::liquid
                              : Substance::Phase::solid;
}

/// Gives the open share what is left, and splits materials; complains where the shares cannot be.
std::vector<Ingredient> ingredients_of(const std::vector<Stated>& stated) {
    double sum = 0;
    const Stated* open = nullptr;
    std::vector<const Material*> seen;
    for (const Stated& line : stated) {
        if (contains(seen, line.material)) {
            line.complain(fmt::format("\"{}\" stands twice; give it one share", line.material->name));
            return {};
        }
        seen.push_back(line.material);
        sum += line.share.value_or(0);
        if (line.share) continue;
        if (open != nullptr) {
            line.complain(fmt::format("only one ingredient may leave its share open, and \"{}\" does too",
                                      open->material->name));
            return {};
        }
        open = &line;
    }
    if (open != nullptr && sum >= 1) {
        open->complain(fmt::format("nothing is left for \"{}\": the other shares sum to {:.6g} %",
                                   open->material->name, 100 * sum));
        return {};
    }
    std::vector<Ingredient> ingredients;
    for (const Stated& line : stated)
        for (const Component& component : line.material->components)
            ingredients.push_back({component.substance,
                                   line.share.value_or(1 - sum) * component.mass_fraction,
                                   line.dissolved || !line.material->is_neat(),
                                   component.carrier ? IngredientFacts{} : line.facts});
    return ingredients;
}

class MixtureFileReader {
  public:
    MixtureFileReader(const Field& root, const Catalogue& catalogue) : catalogue_(catalogue) {
        root.maybe("$schema");
        mixture_.name = root["name"].text();
        for (const char* remark : {"source", "note"})
            if (const auto field = root.maybe(remark)) field->text();
        read_facts(root);
        std::vector<Stated> stated;
        const std::vector<Field> items = root["ingredients"].items();
        for (const Field& item : items)
            read_ingredient(item, stated);
        if (items.empty()) root["ingredients"].problem("the mixture has no ingredients");
        root.close();
        // With an unknown ingredient nothing can be said of the rest.
        if (stated.size() == items.size()) mixture_.ingredients = ingredients_of(stated);
    }

    Mixture take() { return std::move(mixture_); }

  private:
    static std::optional<double> celsius(const Field& root, const char* key) {
        const auto field = root.maybe(key);
        return field ? std::optional(field->temperature().celsius()) : std::nullopt;
    }

    void read_facts(const Field& root) {
        MixtureFacts& facts = mixture_.facts;
        if (const auto phase = root.maybe("phase")) facts.phase = phase_named(phase->one_of(phases));
        if (const auto ph = root.maybe("pH")) facts.ph = ph->number();
        facts.flash_point = celsius(root, "flash_point");
        facts.boiling_point = celsius(root, "boiling_point");
        if (const auto viscosity = root.maybe("viscosity_mm2_per_s")) facts.viscosity = viscosity->number();
        if (const auto form = root.maybe("inhaled_form"))
            facts.inhaled_form = form->one_of({"gases", "vapours", "dusts or mists"});
        if (const auto volume = root.maybe("by_volume")) facts.by_volume = volume->boolean();
    }

    void read_ingredient(const Field& item, std::vector<Stated>& stated) {
        Stated line;
        const Field name = item["material"];
        const std::string words = name.text();
        line.material = words.empty() ? nullptr : catalogue_.find_material(words);
        if (line.material == nullptr && !words.empty())
            name.problem(fmt::format("no material \"{}\"", words),
                         name.lists_problems() ? catalogue_.nearest_material(words) : std::string());
        if (const auto share = item.maybe("share")) line.share = share->fraction();
        if (const auto dissolved = item.maybe("dissolved")) line.dissolved = dissolved->boolean();
        if (const auto ph = item.maybe("pH")) line.facts.ph = ph->number();
        if (const auto additive = item.maybe("additive")) line.facts.additive = additive->boolean();
        AquaticToxicity& aquatic = line.facts.aquatic;
        if (const auto dose = item.maybe("lc50_mg_per_litre")) aquatic.acute_mg_per_litre = positive(*dose);
        if (const auto dose = item.maybe("noec_mg_per_litre")) aquatic.chronic_mg_per_litre = positive(*dose);
        if (const auto rapidly = item.maybe("rapidly_degradable"))
            aquatic.rapidly_degradable = rapidly->boolean();
        if (const auto note = item.maybe("note")) note->text();
        item.close();
        line.complain = [item](std::string message) { item.problem(std::move(message)); };
        if (line.material != nullptr) stated.push_back(std::move(line));
    }

    static double positive(const Field& field) {
        const double value = field.number();
        if (!(value > 0)) field.problem(fmt::format("{:g} mg/L is no toxicity; it lies above 0", value));
        return value;
    }

    const Catalogue& catalogue_;
    Mixture mixture_;
};

} // namespace

Mixture read_mixture(const SourcePtr& source, const Catalogue& catalogue) {
    const Document document = Document::parse(source);
    Problems problems;
    const Field root = document.root(problems);
    expect_kind(root, FileKind::mixture);
    Mixture mixture = MixtureFileReader(root, catalogue).take();
    if (!problems.any_error())
        for (Problem& problem : problems_of(mixture)) {
            problem.place = root["ingredients"].place();
            problems.add(std::move(problem));
        }
    problems.throw_if_error();
    return mixture;
}

Mixture read_mixture(const std::vector<std::string>& words, const Catalogue& catalogue) {
    Problems problems;
    std::vector<Stated> stated;
    for (const std::string& word : words) {
        const auto complain = [&problems, word](const std::string& message, std::string near = {}) {
            problems.add(
                {Severity::error, fmt::format("\"{}\": {}", word, message), {}, {}, std::move(near)});
        };
        const std::size_t sign = word.rfind('=');
        const std::string name(trim(word.substr(0, sign)));
        Stated line;
        line.material = catalogue.find_material(name);
        line.complain = [complain](const std::string& message) { complain(message); };
        if (line.material == nullptr)
            complain(fmt::format("no material \"{}\"", name), catalogue.nearest_material(name));
        if (sign != std::string::npos) {
            try {
                line.share = as_fraction(parse_written(word.substr(sign + 1)));
            } catch (const QuantityError& error) {
                complain(error.what(), error.nearest);
            }
        }
        stated.push_back(std::move(line));
    }
    Mixture mixture;
    for (const Stated& line : stated) {
        if (line.material == nullptr) continue;
        if (!mixture.name.empty()) mixture.name += ", ";
        if (line.share) mixture.name += fmt::format("{:g} % ", 100 * *line.share);
        mixture.name += line.material->name;
    }
    if (!problems.any_error()) mixture.ingredients = ingredients_of(stated);
    problems.throw_if_error();
    return mixture;
}

} // namespace routeweigh
