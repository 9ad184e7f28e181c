// SPDX-License-Identifier: MIT
#include "chemistry/catalogue.hpp"

#include "base/text.hpp"
#include "chemistry/catalogue_index.hpp"
#include "chemistry/embedded_sources.hpp"
#include "chemistry/material_reader.hpp"
#include "chemistry/substance_reader.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <mutex>
#include <optional>
#include <tuple>
#include <utility>

namespace routeweigh {

namespace {

using Kind = CatalogueEntry::Kind;

Material neat_material(const Substance& substance) {
    Material material;
    material.id = substance.id;
    material.name = substance.name;
    material.synonyms = substance.synonyms;
    material.components = {{&substance, 1.0, false}};
    material.density = substance.density;
    material.density_at = substance.density_at;
    material.basis = "neat";
    if (const auto found = substance.sources.find("density_g_per_mL"); found != substance.sources.end())
        material.sources.insert(*found);
    return material;
}

std::optional<Formula> formula_in(std::string_view text) {
    try {
        Formula formula = parse_formula(text);
        if (!formula.atoms.empty()) return formula;
    } catch (const FormulaError&) { // most names are no formulas
    }
    return std::nullopt;
}

std::vector<SourcePtr> checked(std::vector<Source> sources) {
    std::vector<SourcePtr> result;
    for (Source& source : sources) {
        check_source(source);
        result.push_back(make_source(std::move(source.name), std::move(source.text)));
    }
    return result;
}

// How well a name matches a search: 0 the whole of it, 1 its beginning, 2 some part, 3 not at all.
int match(const std::string& name, const std::string& wanted) {
    const std::size_t at = fold(name).find(wanted);
    if (at == std::string::npos) return 3;
    if (at > 0) return 2;
    return fold(name).size() == wanted.size() ? 0 : 1;
}

} // namespace

// What has been read so far. Entries are read on first use, under the lock.
struct Catalogue::State {
    explicit State(std::vector<SourcePtr> files, AtomicWeights atomic_weights = {})
        : sources(std::move(files)), weights(std::move(atomic_weights)), index(sources),
          substances(index.entries().size()), materials(index.entries().size()) {}

    std::size_t position(const CatalogueEntry& entry) const {
        return static_cast<std::size_t>(&entry - index.entries().data());
    }

    template<typename Read>
    static auto read_entry(const CatalogueEntry& entry, const Read& read) {
        const Document document = Document::parse_part(entry.source, entry.begin, entry.end, entry.pointer);
        Problems problems;
        auto result =
            std::make_unique<decltype(read(document.root(problems)))>(read(document.root(problems)));
        problems.throw_if_error();
        return result;
    }

    const Substance& substance(const CatalogueEntry& entry) {
        auto& slot = substances[position(entry)];
        if (!slot)
            slot = read_entry(entry, [this](const Field& field) { return read_substance(field, weights); });
        return *slot;
    }

    // A material of the files, or the neat material of a substance.
    const Material& material(const CatalogueEntry& entry) {
        auto& slot = materials[position(entry)];
        if (slot) return *slot;
        if (entry.kind == Kind::substance) {
            slot = std::make_unique<Material>(neat_material(substance(entry)));
            return *slot;
        }
        const ComponentLookup lookup = {[this](std::string_view id) -> const Substance* {
                                            const CatalogueEntry* const found = index.find(id);
                                            const bool by_id = found != nullptr &&
                                                               found->kind == Kind::substance &&
                                                               found->id == id;
                                            return by_id ? &substance(*found) : nullptr;
                                        },
                                        [this](std::string_view id) {
                                            NearestSpelling search(id);
                                            for (const CatalogueEntry& candidate : index.entries())
                                                if (candidate.kind == Kind::substance)
                                                    search.offer(candidate.id);
                                            return search.best();
                                        }};
        slot = read_entry(entry, [&](const Field& field) { return read_material(field, lookup); });
        return *slot;
    }

    // The substances of a composition; formulas are read at the first such question.
    std::vector<const CatalogueEntry*> of_composition(const Formula& formula) {
        if (formulas.empty()) {
            formulas.resize(index.entries().size());
            for (const CatalogueEntry& entry : index.entries())
                if (entry.kind == Kind::substance) formulas[position(entry)] = formula_in(entry.formula);
        }
        std::vector<const CatalogueEntry*> result;
        for (const CatalogueEntry& entry : index.entries()) {
            const auto& candidate = formulas[position(entry)];
            if (candidate && same_composition(*candidate, formula)) result.push_back(&entry);
        }
        return result;
    }

    // By name, else by a formula that only one substance has.
    const CatalogueEntry* find(std::string_view name) {
        if (const CatalogueEntry* const entry = index.find(name)) return entry;
        const auto formula = formula_in(name);
        if (!formula) return nullptr;
        const auto found = of_composition(*formula);
        return found.size() == 1 ? found.front() : nullptr;
    }

    std::string nearest(std::string_view name, bool with_materials) const {
        NearestSpelling search(name);
        for (const CatalogueEntry& entry : index.entries()) {
            if (entry.kind == Kind::material && !with_materials) continue;
            search.offer(entry.name);
            for (const std::string& synonym : entry.synonyms)
                search.offer(synonym);
        }
        return search.best();
    }

    std::mutex mutex;
    std::vector<SourcePtr> sources;
    AtomicWeights weights;
    CatalogueIndex index;
    std::vector<std::unique_ptr<Substance>> substances; // by entry
    std::vector<std::unique_ptr<Material>> materials;
    std::vector<std::optional<Formula>> formulas;
};

Catalogue::Catalogue(std::unique_ptr<State> state) : state_(std::move(state)) {}
Catalogue::Catalogue(Catalogue&&) noexcept = default;
Catalogue& Catalogue::operator=(Catalogue&&) noexcept = default;
Catalogue::~Catalogue() = default;

Catalogue Catalogue::from_sources(std::vector<Source> sources) {
    return Catalogue(std::make_unique<State>(checked(std::move(sources))));
}

const Catalogue& Catalogue::embedded() {
    static const Catalogue catalogue(std::make_unique<State>(embedded_sources()));
    return catalogue;
}

Catalogue Catalogue::with(AtomicWeights weights) const {
    return Catalogue(std::make_unique<State>(state_->sources, std::move(weights)));
}

const AtomicWeights& Catalogue::atomic_weights() const {
    return state_->weights;
}

const Substance* Catalogue::find_substance(std::string_view name) const {
    const std::lock_guard lock(state_->mutex);
    const CatalogueEntry* const entry = state_->find(name);
    return entry != nullptr && entry->kind == Kind::substance ? &state_->substance(*entry) : nullptr;
}

const Material* Catalogue::find_material(std::string_view name) const {
    const std::lock_guard lock(state_->mutex);
    const CatalogueEntry* const entry = state_->find(name);
    return entry != nullptr ? &state_->material(*entry) : nullptr;
}

const Material& Catalogue::neat(const Substance& substance) const {
    const std::lock_guard lock(state_->mutex);
    return state_->material(*state_->index.find(substance.id));
}

std::vector<const Substance*> Catalogue::substances_with_formula(const Formula& formula) const {
    const std::lock_guard lock(state_->mutex);
    std::vector<const Substance*> result;
    for (const CatalogueEntry* const entry : state_->of_composition(formula))
        result.push_back(&state_->substance(*entry));
    return result;
}

std::string Catalogue::nearest_substance(std::string_view name) const {
    return state_->nearest(name, false);
}

std::string Catalogue::nearest_material(std::string_view name) const {
    return state_->nearest(name, true);
}

std::vector<Found> Catalogue::search(std::string_view text) const {
    struct Hit {
        int quality;
        std::string folded_name;
        const CatalogueEntry* entry;
        std::string matched;
    };
    const std::lock_guard lock(state_->mutex);
    const std::string wanted = fold(text);
    std::vector<const CatalogueEntry*> of_formula;
    if (const auto formula = formula_in(text)) of_formula = state_->of_composition(*formula);
    std::vector<Hit> hits;
    for (const CatalogueEntry& entry : state_->index.entries()) {
        Hit best{3, fold(entry.name), &entry, {}};
        const auto offer = [&](const std::string& name) {
            const int quality = wanted.empty() ? 3 : match(name, wanted);
            if (quality < best.quality) {
                best.quality = quality;
                best.matched = name;
            }
        };
        offer(entry.name);
        for (const std::string& synonym : entry.synonyms)
            offer(synonym);
        offer(entry.id);
        offer(entry.cas);
        if (best.quality > 0 && std::find(of_formula.begin(), of_formula.end(), &entry) != of_formula.end()) {
            best.quality = 0;
            best.matched = entry.formula;
        }
        if (best.quality < 3) hits.push_back(std::move(best));
    }
    std::sort(hits.begin(), hits.end(), [](const Hit& a, const Hit& b) {
        return std::tie(a.quality, a.folded_name) < std::tie(b.quality, b.folded_name);
    });
    std::vector<Found> result;
    for (Hit& hit : hits) {
        Found found;
        if (hit.entry->kind == Kind::substance)
            found.substance = &state_->substance(*hit.entry);
        else
            found.material = &state_->material(*hit.entry);
        found.matched = std::move(hit.matched);
        result.push_back(std::move(found));
    }
    return result;
}

std::vector<const Substance*> Catalogue::all_substances() const {
    const std::lock_guard lock(state_->mutex);
    std::vector<const Substance*> result;
    for (const CatalogueEntry& entry : state_->index.entries())
        if (entry.kind == Kind::substance) result.push_back(&state_->substance(entry));
    return result;
}

std::vector<const Material*> Catalogue::all_materials() const {
    const std::lock_guard lock(state_->mutex);
    std::vector<const Material*> result;
    for (const CatalogueEntry& entry : state_->index.entries())
        if (entry.kind == Kind::material) result.push_back(&state_->material(entry));
    return result;
}

const Source* Catalogue::scheme(std::string_view stem) const {
    for (const Scheme& scheme : state_->index.schemes())
        if (scheme.stem == stem) return scheme.source.get();
    return nullptr;
}

std::vector<std::string> Catalogue::scheme_stems() const {
    std::vector<std::string> result;
    for (const Scheme& scheme : state_->index.schemes())
        result.push_back(scheme.stem);
    return result;
}

std::vector<Problem> Catalogue::check_all() const {
    const std::lock_guard lock(state_->mutex);
    std::vector<Problem> result;
    for (const CatalogueEntry& entry : state_->index.entries()) {
        try {
            if (entry.kind == Kind::substance)
                state_->substance(entry);
            else
                state_->material(entry);
        } catch (const InputError& error) {
            // A material repeats the problems of its components.
            for (const Problem& problem : error.problems) {
                const bool known = std::any_of(result.begin(), result.end(), [&](const Problem& p) {
                    return format(p) == format(problem);
                });
                if (!known) result.push_back(problem);
            }
        }
    }
    return result;
}

} // namespace routeweigh
