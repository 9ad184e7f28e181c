// SPDX-License-Identifier: MIT
#include "assess/streams/local_rules.hpp"

#include "assess/streams/scheme_file.hpp"
#include "base/text.hpp"
#include "chemistry/element.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <array>

namespace routeweigh::streams {
namespace {

constexpr std::array kinds{
    ContainerKind::halogenated,    ContainerKind::flammable,     ContainerKind::flammable_aqueous,
    ContainerKind::aqueous_acidic, ContainerKind::aqueous_basic, ContainerKind::aqueous_neutral,
    ContainerKind::oxidiser,       ContainerKind::metal,         ContainerKind::solids,
    ContainerKind::sharps,         ContainerKind::product,       ContainerKind::recovery};

std::vector<std::string> kind_ids() {
    std::vector<std::string> ids;
    for (const ContainerKind kind : kinds)
        ids.emplace_back(id_of(kind));
    return ids;
}

ContainerKind read_kind(const Field& field) {
    const std::string id = field.one_of(kind_ids());
    for (const ContainerKind kind : kinds)
        if (id_of(kind) == id) return kind;
    return ContainerKind::flammable;
}

class RulesReader {
  public:
    RulesReader(const Source& source, const Catalogue& catalogue) : file_(source, "local rules") {
        if (const auto base = root().maybe("based_on")) {
            const std::string jurisdiction = base->one_of({"US", "EU"});
            edits_ = true;
            if (!jurisdiction.empty()) rules_ = shipped_local_rules(catalogue, jurisdiction);
        }
        root().maybe("$schema");
        rules_.id = file_.id();
        rules_.title = file_.title();
    }

    LocalRules run() {
        if (says("jurisdiction")) rules_.jurisdiction = root()["jurisdiction"].text();
        if (says("contact")) rules_.contact = root()["contact"].text();
        const auto share = [](const Field& field) { return field.fraction(); };
        const auto celsius = [](const Field& field) { return field.temperature().celsius(); };
        const auto millilitres = [](const Field& field) { return field.volume().in(unit::mL); };
        const auto molar = [](const Field& field) {
            const WrittenQuantity written = field.quantity();
            if (written.unit != "mol/L") field.problem("is not in mol/L");
            return written.value;
        };
        read("halogenated_from", rules_.halogenated_from, share);
        read("ignitable_below", rules_.ignitable_below, celsius);
        read("aqueous_from", rules_.aqueous_from, share);
        if (root().maybe("alcohol_exempt_below"))
            read("alcohol_exempt_below", rules_.alcohol_exempt_below.emplace(), share);
        read("corrosive_acid_from", rules_.corrosive_acid_from, molar);
        read("corrosive_base_from", rules_.corrosive_base_from, molar);
        read("weak_from", rules_.weak_from, molar);
        read("fill_limit", rules_.fill_limit, share);
        if (!(rules_.fill_limit.value > 0)) root()["fill_limit"].problem("is not above 0");
        read("allowance", rules_.allowance, share);
        read("call_for_pickup_at", rules_.call_at, share);
        read("bench_neutralisation_at_most", rules_.bench_most, millilitres);
        read("oxidant_from", rules_.oxidant_from, share);
        read("metal_from", rules_.metal_from, share);
        read_metals();
        read_window_and_drain();
        read_containers();
        read_words();
        read_stops();
        read_things();
        file_.finish();
        return std::move(rules_);
    }

  private:
    const Field& root() const { return file_.root(); }

    /// Whether to read this member: a house file that edits the shipped rules says only what differs.
    bool says(std::string_view key) const { return !edits_ || root().maybe(key).has_value(); }

    /// A house need not say where its own line comes from.
    Provenance from(const Field& row) const {
        if (edits_ && !row.maybe("source") && !row.maybe("standing")) return {Standing::read, file_.title()};
        return file_.provenance(row);
    }

    template<typename Reader>
    void read(std::string_view key, Sourced<double>& line, const Reader& value_of) const {
        if (!says(key)) return;
        const Field field = root()[key];
        line = {value_of(field["value"]), from(field)};
        field.maybe("note");
        field.close();
    }

    void read_metals() {
        if (!says("toxic_metals")) return;
        rules_.toxic_metals.clear();
        for (const Field& symbol : root()["toxic_metals"].items()) {
            rules_.toxic_metals.push_back(symbol.text());
            if (!element_by_symbol(rules_.toxic_metals.back())) symbol.problem("is no symbol of an element");
        }
    }

    void read_window_and_drain() {
        if (says("neutral_window")) {
            const Field window = root()["neutral_window"];
            rules_.neutral_low = window["low"].number();
            rules_.neutral_high = window["high"].number();
            if (!(rules_.neutral_low < rules_.neutral_high)) window.problem("low is not below high");
            rules_.neutral_from = from(window);
            window.close();
        }
        if (says("drain")) {
            const Field drain = root()["drain"];
            rules_.drain_permitted = drain["permitted"].boolean();
            rules_.flush_volumes = drain["flush_volumes"].number();
            from(drain);
            drain.maybe("note");
            drain.close();
        }
    }

    void read_containers() {
        if (!says("containers")) return;
        std::vector<ContainerKind> seen;
        for (const Field& row : root()["containers"].items()) {
            const ContainerKind kind = read_kind(row["kind"]);
            if (std::find(seen.begin(), seen.end(), kind) != seen.end()) row["kind"].problem("stands twice");
            seen.push_back(kind);
            const auto known = std::find_if(rules_.containers.begin(), rules_.containers.end(),
                                            [&](const Container& one) { return one.kind == kind; });
            const bool fresh = known == rules_.containers.end();
            Container container = fresh ? Container{kind, "", "", 0, ""} : *known;
            if (fresh || row.maybe("name")) container.name = row["name"].text();
            if (fresh || row.maybe("takes")) container.takes = row["takes"].text();
            if (const auto size = row.maybe("size")) container.size = size->volume().in(unit::mL);
            if (const auto code = row.maybe("waste_code")) container.waste_code = code->text();
            row.close();
            if (fresh)
                rules_.containers.push_back(std::move(container));
            else
                *known = std::move(container);
        }
        // The decision needs these; a house may leave the others out.
        for (const ContainerKind kind : kinds)
            if (kind != ContainerKind::flammable_aqueous && rules_.container(kind) == nullptr)
                root()["containers"].problem(fmt::format("no container \"{}\"", id_of(kind)));
    }

    /// A house's words go before the shipped ones, for the first that fits counts.
    void read_words() {
        if (!says("handout_words")) return;
        std::vector<std::string> outcomes = kind_ids();
        outcomes.insert(outcomes.end(), {"air", "trap", "drain", "own_bottle"});
        std::vector<HandoutWords> list;
        for (const Field& row : root()["handout_words"].items()) {
            HandoutWords words{fold(row["says"].text()), {}};
            for (const Field& meaning : row["means"].items())
                words.means.push_back(meaning.one_of(outcomes));
            row.close();
            list.push_back(std::move(words));
        }
        rules_.handout_words.insert(rules_.handout_words.begin(), list.begin(), list.end());
    }

    /// A house's rows go before the shipped ones, for the first that fits a substance counts.
    void read_stops() {
        if (!says("stop")) return;
        std::vector<StopRule> list;
        for (const Field& row : root()["stop"].items()) {
            StopRule stop;
            stop.what = row["what"].text();
            stop.why = row["why"].text();
            stop.bottle = row["bottle"].text();
            stop.set = read_substance_set(row);
            stop.from = from(row);
            if (const auto flag = row.maybe("destroy")) stop.destroy = flag->boolean();
            if (const auto flag = row.maybe("not_in_water")) stop.not_in_water = flag->boolean();
            if (const auto flag = row.maybe("vented")) stop.vented = flag->boolean();
            row.close();
            list.push_back(std::move(stop));
        }
        rules_.stops.insert(rules_.stops.begin(), list.begin(), list.end());
    }

    void read_things() {
        if (!says("things")) return;
        for (const Field& row : root()["things"].items()) {
            rules_.things.push_back(
                {row["thing"].text(), read_kind(row["kind"]), text_or_empty(row, "note"), from(row)});
            row.close();
        }
    }

    SchemeFile file_;
    LocalRules rules_;
    bool edits_ = false; ///< the file says only what differs from shipped rules
};

} // namespace

std::string_view id_of(ContainerKind kind) {
    switch (kind) {
    case ContainerKind::halogenated:
        return "halogenated";
    case ContainerKind::flammable:
        return "flammable";
    case ContainerKind::flammable_aqueous:
        return "flammable_aqueous";
    case ContainerKind::aqueous_acidic:
        return "aqueous_acidic";
    case ContainerKind::aqueous_basic:
        return "aqueous_basic";
    case ContainerKind::aqueous_neutral:
        return "aqueous_neutral";
    case ContainerKind::oxidiser:
        return "oxidiser";
    case ContainerKind::metal:
        return "metal";
    case ContainerKind::solids:
        return "solids";
    case ContainerKind::sharps:
        return "sharps";
    case ContainerKind::product:
        return "product";
    case ContainerKind::recovery:
        return "recovery";
    }
    return "";
}

const Container* LocalRules::container(ContainerKind kind) const {
    for (const Container& one : containers)
        if (one.kind == kind) return &one;
    return nullptr;
}

const Thing* LocalRules::thing(std::string_view name) const {
    for (const Thing& one : things)
        if (one.name == fold(name)) return &one;
    return nullptr;
}

LocalRules read_local_rules(const Source& source, const Catalogue& catalogue) {
    return RulesReader(source, catalogue).run();
}

LocalRules shipped_local_rules(const Catalogue& catalogue, std::string_view jurisdiction) {
    return read_local_rules(required_scheme(catalogue, fmt::format("local_rules_{}", fold(jurisdiction))),
                            catalogue);
}

} // namespace routeweigh::streams
