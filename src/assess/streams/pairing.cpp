// SPDX-License-Identifier: MIT
#include "assess/streams/pairing.hpp"

#include "base/text.hpp"
#include "chemistry/catalogue.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <map>
#include <optional>
#include <set>

namespace routeweigh::streams {
namespace {

using Moles = std::map<std::string, double>; // by id of the substance, or by species

/// A proton transfer written in substances: net coefficients, negative on the left.
struct Transfer {
    const Couple* from = nullptr;
    const Couple* to = nullptr;
    int protons = 1; ///< that one base takes
    Moles net;
};

class Pairer {
  public:
    Pairer(const Composition& composition, const AcidBaseTable& table, const Catalogue& catalogue)
        : table_(table), catalogue_(catalogue) {
        for (const Portion& portion : composition.portions())
            if (table_.substance(portion.substance->id) != nullptr)
                moles_[portion.substance->id] = portion.moles();
            else
                result_.composition.add(*portion.substance, portion.grams, portion.trace);
        for (const Portion& portion : composition.portions())
            if (portion.trace) traces_.insert(portion.substance->id);
        dust_ = 1e-12 * std::max(1e-30, composition.total());
    }

    PairedComposition run() {
        // Each transfer uses up an acid or a base; what forms is weaker. The bound only guards against a
        // faulty table.
        for (int round = 0; round < 1000; ++round) {
            const auto transfer = next();
            if (!transfer) break;
            apply(*transfer);
        }
        for (const auto& [id, moles] : moles_) {
            const Substance* substance = catalogue_.find_substance(id);
            if (substance != nullptr && moles > 0)
                result_.composition.add(*substance, moles * substance->molar_mass, traces_.contains(id));
        }
        return std::move(result_);
    }

  private:
    struct Site {
        const AcidBaseSubstance* substance;
        const Couple* couple;
    };

    std::vector<Site> sites(bool acids) const {
        std::vector<Site> found;
        for (const auto& [id, moles] : moles_) {
            if (!(moles > dust_)) continue;
            const AcidBaseSubstance* substance = table_.substance(id);
            for (const auto& [species, count] : substance->species) {
                const Couple* couple = acids ? table_.as_acid(species) : table_.as_base(species);
                if (couple == nullptr || (!acids && couple->pKa <= table_.no_base_at_most.value)) continue;
                found.push_back({substance, couple});
            }
        }
        std::stable_sort(found.begin(), found.end(), [acids](const Site& a, const Site& b) {
            return acids ? a.couple->pKa < b.couple->pKa : a.couple->pKa > b.couple->pKa;
        });
        return found;
    }

    std::optional<Transfer> next() {
        const std::vector<Site> bases = sites(false);
        for (const Site& acid : sites(true))
            for (const Site& base : bases) {
                if (base.couple->pKa - acid.couple->pKa < table_.least_gap.value) break;
                for (const int protons : {1, 2})
                    if (auto transfer = write(acid, base, protons)) return transfer;
                const std::string words =
                    fmt::format("{} with {}", name(acid.substance->id), name(base.substance->id));
                auto& list = result_.left_unpaired;
                if (std::find(list.begin(), list.end(), words) == list.end()) list.push_back(words);
            }
        return std::nullopt;
    }

    /// The equation of one base with as many acids as it takes protons; empty where a product has no entry.
    std::optional<Transfer> write(const Site& acid, const Site& base, int protons) const {
        Transfer transfer{acid.couple, base.couple, protons, {}};
        Moles pool; // species
        const auto pour = [&](const AcidBaseSubstance& substance, double count) {
            for (const auto& [species, n] : substance.species)
                pool[species] += n * count;
            transfer.net[substance.id] -= count;
        };
        pour(*acid.substance, protons);
        pour(*base.substance, 1);
        const Couple* taker = base.couple;
        for (int p = 0; p < protons; ++p) {
            if (taker == nullptr || taker->pKa - acid.couple->pKa < table_.least_gap.value)
                return std::nullopt;
            pool[acid.couple->acid] -= 1;
            pool[acid.couple->base] += 1;
            pool[taker->base] -= 1;
            pool[taker->acid] += 1;
            taker = table_.as_base(taker->acid);
        }
        if (!collect(std::move(pool), transfer)) return std::nullopt;
        const bool all_known =
            std::all_of(transfer.net.begin(), transfer.net.end(), [this](const auto& part) {
                return catalogue_.find_substance(part.first) != nullptr;
            });
        return all_known ? std::optional(transfer) : std::nullopt;
    }

    /// Writes the species of the pool as substances into the transfer.
    bool collect(const Moles& pool, Transfer& transfer) const {
        std::vector<std::string> cations, anions;
        for (const auto& [species, count] : pool) {
            if (std::abs(count) < 1e-12) continue;
            const int charge = table_.charge(species);
            if (charge > 0) cations.push_back(species);
            if (charge < 0) anions.push_back(species);
            if (charge == 0 && !book_neutral(species, count, transfer)) return false;
        }
        // One order of cations and anions may leave a salt that nobody has; then another is tried.
        do {
            do {
                Transfer attempt = transfer;
                if (join_ions(pool, cations, anions, attempt)) {
                    transfer = attempt;
                    return true;
                }
            } while (std::next_permutation(cations.begin(), cations.end()));
        } while (std::next_permutation(anions.begin(), anions.end()));
        return false;
    }

    bool book_neutral(const std::string& species, double count, Transfer& transfer) const {
        for (const DecayingSpecies& decaying : table_.decaying)
            if (decaying.species == species) {
                for (const auto& [id, n] : decaying.substances)
                    transfer.net[id] += n * count;
                return true;
            }
        for (const AcidBaseSubstance& substance : table_.substances)
            if (substance.species.size() == 1 && substance.species[0].first == species) {
                transfer.net[substance.id] += count / substance.species[0].second;
                return true;
            }
        return false;
    }

    const AcidBaseSubstance* salt(const std::string& cation, const std::string& anion) const {
        for (const AcidBaseSubstance& substance : table_.substances) {
            if (substance.species.size() != 2) continue;
            const auto has = [&](const std::string& species) {
                return substance.species[0].first == species || substance.species[1].first == species;
            };
            if (has(cation) && has(anion)) return &substance;
        }
        return nullptr;
    }

    bool join_ions(Moles pool, const std::vector<std::string>& cations,
                   const std::vector<std::string>& anions, Transfer& transfer) const {
        for (const std::string& anion : anions)
            for (const std::string& cation : cations) {
                const double positive = pool[cation] * table_.charge(cation);
                const double negative = -pool[anion] * table_.charge(anion);
                const double charge = std::min(positive, negative);
                if (charge < 1e-12) continue;
                const AcidBaseSubstance* unit = salt(cation, anion);
                if (unit == nullptr) continue;
                for (const auto& [species, n] : unit->species)
                    if (species == cation) transfer.net[unit->id] += charge / table_.charge(cation) / n;
                pool[cation] -= charge / table_.charge(cation);
                pool[anion] += charge / table_.charge(anion);
            }
        return std::all_of(pool.begin(), pool.end(), [this](const auto& part) {
            return table_.charge(part.first) == 0 || std::abs(part.second) < 1e-9;
        });
    }

    void apply(const Transfer& transfer) {
        double extent = HUGE_VAL;
        for (const auto& [id, coefficient] : transfer.net)
            if (coefficient < -1e-12) extent = std::min(extent, moles_[id] / -coefficient);
        std::vector<std::string> left, right;
        for (const auto& [id, coefficient] : transfer.net) {
            if (std::abs(coefficient) < 1e-12) continue;
            const double count = std::abs(coefficient);
            const std::string term =
                std::abs(count - 1) < 1e-9 ? name(id) : fmt::format("{:g} {}", count, name(id));
            (coefficient < 0 ? left : right).push_back(term);
            book(id, coefficient * extent);
        }
        result_.steps.push_back(
            {join(left, " + ") + " -> " + join(right, " + "),
             fmt::format("{} gives its proton to {}", transfer.from->acid, transfer.to->base),
             extent * transfer.protons, transfer.from->pKa, transfer.to->pKa});
    }

    void book(const std::string& id, double moles) {
        for (const DecayingSpecies& decaying : table_.decaying)
            if (decaying.gas == id) {
                const Substance* gas = catalogue_.find_substance(id);
                if (gas != nullptr) result_.gas.add(*gas, moles * gas->molar_mass);
                return;
            }
        double& amount = moles_[id];
        amount += moles;
        if (amount < dust_) amount = 0;
        if (moles > 0) traces_.erase(id);
    }

    std::string name(const std::string& id) const {
        const Substance* substance = catalogue_.find_substance(id);
        return substance == nullptr ? id : substance->name;
    }

    const AcidBaseTable& table_;
    const Catalogue& catalogue_;
    PairedComposition result_;
    Moles moles_;
    std::set<std::string> traces_;
    double dust_ = 0;
};

} // namespace

PairedComposition pair_acids_and_bases(const Composition& composition, const AcidBaseTable& table,
                                       const Catalogue& catalogue) {
    return Pairer(composition, table, catalogue).run();
}

} // namespace routeweigh::streams
