// SPDX-License-Identifier: MIT
#include "assess/streams/stream_description.hpp"

#include "chemistry/element.hpp"

#include <algorithm>
#include <map>

namespace routeweigh::streams {
namespace {

constexpr double solid_aid_from = 0.2; // by mass: a wet drying agent is a solid, whatever it drips

StreamForm form_of(const StreamDescription& stream, StreamKind kind, double solid_aid) {
    if (stream.grams <= 0) return StreamForm::nothing;
    if (kind == StreamKind::gas) return StreamForm::gas;
    if (kind == StreamKind::vapour) return StreamForm::vapour;
    double liquid = 0, organic = 0;
    for (const Portion& portion : stream.as_left.portions()) {
        if (portion.substance->phase == Substance::Phase::liquid) liquid += portion.grams;
        if (is_organic(*portion.substance)) organic += portion.grams;
    }
    if (solid_aid > solid_aid_from * stream.grams || liquid < 0.5 * stream.grams) return StreamForm::solid;
    // Strong mineral acids and peroxide count with the water: half of it organic makes an organic liquid.
    return organic > 0.5 * stream.grams ? StreamForm::organic : StreamForm::aqueous;
}

class Describer {
  public:
    Describer(const Composition& composition, const DescriptionRules& rules,
              const std::vector<const Reducer*>& planned)
        : rules_(rules), planned_(planned) {
        stream_.as_left = composition;
        stream_.paired = pair_acids_and_bases(composition, rules.acid_base, rules.catalogue);
        stream_.grams = composition.total();
        stream_.volume = stream_.paired.composition.volume();
        stream_.acid_at_bench = &rules.quench.acid_at_bench;
    }

    StreamDescription run(StreamKind kind, double solid_aid) {
        stream_.form = form_of(stream_, kind, solid_aid);
        for (const Portion& portion : all().portions()) {
            see_organic(portion);
            see_quench(portion);
            see_gas(portion);
        }
        stream_.water_share = all().share(all().grams("water"));
        find_layers();
        see_acid();
        see_metals();
        see_stops();
        stream_.flash = screen_flash_point(all(), rules_.liquids);
        stream_.flash_without_alcohols = screen_flash_point(all(), rules_.liquids, true);
        return std::move(stream_);
    }

  private:
    const Composition& all() const { return stream_.paired.composition; }

    void see_organic(const Portion& portion) {
        const Substance& substance = *portion.substance;
        if (is_organic(substance)) stream_.organic_share += all().share(portion.grams);
        if (is_halogenated_organic(substance)) {
            stream_.halogenated_share += all().share(portion.grams);
            stream_.halogenated.push_back(&substance);
        }
        const MixedLiquid* liquid = rules_.liquids.find(substance.id);
        if (liquid != nullptr && liquid->alcohol && stream_.volume.millilitres > 0) {
            stream_.alcohol_by_volume += millilitres(portion) / stream_.volume.millilitres;
            stream_.alcohols.push_back(&substance);
        }
    }

    void see_quench(const Portion& portion) {
        const std::string& id = portion.substance->id;
        if (const QuenchRow* row = rules_.quench.oxidiser(id)) see_oxidant(portion, *row);
        if (const QuenchRow* row = rules_.quench.reducer_left(id))
            stream_.strong_reducers.push_back({portion.substance, row, portion.moles()});
        const Reducer* reducer = rules_.quench.reducer(id);
        if (reducer != nullptr && reducer->sulfur_dioxide > 0)
            stream_.sulfites.push_back({portion.substance, nullptr, portion.moles()});
    }

    /// Hydrogen bromide in water is an acid, hydrogen is a gas.
    void see_gas(const Portion& portion) {
        const std::string& id = portion.substance->id;
        if (portion.substance->phase != Substance::Phase::gas || portion.trace) return;
        const AcidBaseSubstance* entry = rules_.acid_base.substance(id);
        const bool acid_or_base = entry != nullptr && (entry->acid > 0 || entry->base > 0);
        if (acid_or_base || rules_.acid_base.hydrolysing_acid(id) != nullptr) return;
        if (rules_.quench.oxidiser(id) == nullptr) stream_.gases.push_back(portion);
    }

    void see_oxidant(const Portion& portion, const QuenchRow& row) {
        const QuenchTable& table = rules_.quench;
        const Reducer* quencher = QuenchTable::first_suited(row, planned_);
        if (quencher == nullptr && row.by_sulfite()) quencher = table.reducer("sodium-bisulfite");
        double acid = row.acid_per_mol();
        if (quencher != nullptr) acid += row.electrons() * table.more_acid_per_electron(*quencher);
        const double moles = portion.moles();
        stream_.oxidants.push_back({portion.substance, &row, moles, quencher, std::max(0.0, moles * acid)});
    }

    /// What mixes with water only partly and is there above its solubility.
    void find_layers() {
        const double water = all().grams("water");
        if (water <= 0) return;
        for (const Portion& portion : all().portions()) {
            const MixedLiquid* liquid = rules_.liquids.find(portion.substance->id);
            const bool chlorinated = liquid == nullptr && is_halogenated_organic(*portion.substance) &&
                                     portion.substance->phase == Substance::Phase::liquid;
            const double soluble = liquid != nullptr ? liquid->soluble.value_or(1e9)
                                   : chlorinated     ? 1.0
                                                     : 1e9;
            if (100 * portion.grams / water > soluble) stream_.layers.push_back(portion.substance->name);
        }
    }

    void see_acid() {
        stream_.acid_base = count_acid_and_base(all(), rules_.acid_base);
        const AcidBaseLeft& left = stream_.acid_base;
        const double litres = stream_.volume.millilitres / 1000.0;
        if (litres <= 0) return;
        const double line = rules_.local.weak_from.value * litres;
        stream_.strong_acid_per_litre = std::max(0.0, left.strong_acid - left.strong_base) / litres;
        stream_.strong_base_per_litre = std::max(0.0, left.strong_base - left.strong_acid) / litres;
        if (left.strong_acid - left.strong_base > line)
            stream_.acid_class = AcidClass::strong_acid;
        else if (left.strong_base - left.strong_acid > line)
            stream_.acid_class = AcidClass::strong_base;
        else if (left.weak_acid > line && left.weak_acid >= left.weak_base)
            stream_.acid_class = AcidClass::weak_acid;
        else if (left.weak_base > line)
            stream_.acid_class = AcidClass::weak_base;
    }

    void see_metals() {
        std::map<std::string, MetalLeft> found;
        for (const std::string& symbol : rules_.local.toxic_metals) {
            const auto element = element_by_symbol(symbol);
            if (!element) continue;
            for (const Portion& portion : all().portions()) {
                const int atoms = atoms_of(portion.substance->formula, *element);
                if (atoms == 0 || portion.trace) continue;
                MetalLeft& metal = found[symbol];
                metal.symbol = symbol;
                metal.grams += portion.moles() * atoms * element_weight(*element);
                metal.in.push_back(portion.substance->name);
            }
        }
        for (auto& [symbol, metal] : found) {
            metal.share = all().share(metal.grams);
            if (metal.share >= rules_.local.metal_from.value) stream_.metals.push_back(std::move(metal));
        }
        std::sort(stream_.metals.begin(), stream_.metals.end(),
                  [](const MetalLeft& a, const MetalLeft& b) { return a.grams > b.grams; });
    }

    /// The first row of the list that fits a substance counts.
    void see_stops() {
        const auto fits = [&](const StopRule& rule, const Participant& part) {
            if (!rule.set.holds(part)) return false;
            if (rule.not_in_water && stream_.form == StreamForm::aqueous) return false;
            // A reducer with an equation of its own is destroyed by that.
            return !(rule.destroy && rules_.quench.reducer_left(part.substance->id) != nullptr);
        };
        for (const Participant& part : participants_of(all(), rules_.groups)) {
            if (part.member == nullptr) stream_.not_assigned.push_back(part.name);
            if (part.trace) continue;
            for (const StopRule& rule : rules_.local.stops)
                if (fits(rule, part)) {
                    stream_.stops.push_back({&rule, part.substance, part.grams, part.share});
                    break;
                }
        }
    }

    const DescriptionRules& rules_;
    const std::vector<const Reducer*>& planned_;
    StreamDescription stream_;
};

} // namespace

std::string_view words_of(StreamForm form) {
    switch (form) {
    case StreamForm::nothing:
        return "nothing";
    case StreamForm::gas:
        return "gas";
    case StreamForm::vapour:
        return "vapour";
    case StreamForm::solid:
        return "solid";
    case StreamForm::aqueous:
        return "aqueous";
    case StreamForm::organic:
        return "organic";
    }
    return "";
}

std::string_view words_of(AcidClass acid) {
    switch (acid) {
    case AcidClass::strong_acid:
        return "strong acid left";
    case AcidClass::weak_acid:
        return "weak acid left";
    case AcidClass::neither:
        return "neither acid nor base left";
    case AcidClass::weak_base:
        return "weak base left";
    case AcidClass::strong_base:
        return "strong base left";
    }
    return "";
}

StreamDescription describe_stream(const Composition& composition, StreamKind kind, double solid_aid,
                                  const DescriptionRules& rules, const std::vector<const Reducer*>& planned) {
    return Describer(composition, rules, planned).run(kind, solid_aid);
}

} // namespace routeweigh::streams
