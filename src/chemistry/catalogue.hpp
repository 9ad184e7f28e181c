// SPDX-License-Identifier: MIT
// The substances, materials and schemes that a program knows, found by name and read on first use.
//
// A quick skim finds where each entry stands and what it is called; an entry is parsed when somebody asks for
// it. Pointers stay good as long as the catalogue lives, also when it is moved. Finding is safe from several
// threads.
#pragma once

#include "base/problem.hpp"
#include "chemistry/material.hpp"
#include "chemistry/substance.hpp"
#include "input/source.hpp"

#include <memory>
#include <string>
#include <string_view>
#include <vector>

namespace routeweigh {

// What a search found: a substance or a material (the other is nullptr), and the name that matched.
struct Found {
    const Substance* substance = nullptr;
    const Material* material = nullptr;
    std::string matched;
};

class Catalogue {
  public:
    // A source in a folder "schemes" is a scheme. Any other with a "substances" or "materials" array adds to
    // these, and is a scheme without. Throws InputError where a source is no JSON, an entry has no id or
    // name, or two entries share an id, a name, a synonym or a CAS number.
    static Catalogue from_sources(std::vector<Source> sources);
    // The catalogue that is built into the program.
    static const Catalogue& embedded();
    // The same files, read with other atomic weights.
    Catalogue with(AtomicWeights weights) const;

    const AtomicWeights& atomic_weights() const;

    Catalogue(Catalogue&&) noexcept;
    Catalogue& operator=(Catalogue&&) noexcept;
    ~Catalogue();

    // By id, name, synonym or CAS number (case and spacing do not matter), or by a formula that only one
    // substance has. nullptr where there is none. Throws InputError where the entry is faulty.
    const Substance* find_substance(std::string_view name) const;
    // A material by id, name or synonym; else the neat substance that find_substance() finds.
    const Material* find_material(std::string_view name) const;
    // The neat material of a substance of this catalogue.
    const Material& neat(const Substance& substance) const;
    // All substances of this composition.
    std::vector<const Substance*> substances_with_formula(const Formula& formula) const;

    // The name or synonym spelt most like this; "" when nothing is near. A material may also be a neat
    // substance.
    std::string nearest_substance(std::string_view name) const;
    std::string nearest_material(std::string_view name) const;

    // Entries with a name, synonym, id or CAS number that contains the text, and substances of this formula;
    // whole names first, then beginnings, then the rest; each by name.
    std::vector<Found> search(std::string_view text) const;

    // In the order of the files. Everything is parsed. Throw InputError where an entry is faulty.
    std::vector<const Substance*> all_substances() const;
    std::vector<const Material*> all_materials() const; // without the neat substances

    // A scheme by the stem of its file name ("air-bands" for "hazard-data/schemes/air-bands.json"), or
    // nullptr.
    const Source* scheme(std::string_view stem) const;
    std::vector<std::string> scheme_stems() const;

    // Parses everything and returns every problem of the entries; empty where there is none.
    std::vector<Problem> check_all() const;

  private:
    struct State;

    explicit Catalogue(std::unique_ptr<State> state);

    std::unique_ptr<State> state_;
};

} // namespace routeweigh
