// SPDX-License-Identifier: MIT
#include "assess/streams/local_rules.hpp"

#include "assess/streams/scheme_file.hpp"
#include "base/text.hpp"
#include "chemistry/element.hpp"

#include <fmt/core.h>

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
    explicit RulesReader(const Source& source) : file_(source, "local rules") {}

    LocalRules run() {
        rules_.id = file_.id();
        rules_.title = file_.title();
        rules_.jurisdiction = root()["jurisdiction"].text();
        rules_.contact = root()["contact"].text();
        rules_.halogenated_from = share("halogenated_from");
        rules_.ignitable_below =
            sourced("ignitable_below", [](const Field& f) { return f.temperature().celsius(); });
        rules_.aqueous_from = share("aqueous_from");
        if (root().maybe("alcohol_exempt_below")) rules_.alcohol_exempt_below = share("alcohol_exempt_below");
        rules_.corrosive_acid_from = concentration("corrosive_acid_from");
        rules_.corrosive_base_from = concentration("corrosive_base_from");
        rules_.weak_from = concentration("weak_from");
        read_fill();
        rules_.allowance = share("allowance");
        rules_.call_at = share("call_for_pickup_at");
        rules_.bench_most =
            sourced("bench_neutralisation_at_most", [](const Field& f) { return f.volume().in(unit::mL); });
        rules_.oxidant_from = share("oxidant_from");
        rules_.metal_from = share("metal_from");
        for (const Field& symbol : root()["toxic_metals"].items()) {
            rules_.toxic_metals.push_back(symbol.text());
            if (!element_by_symbol(rules_.toxic_metals.back())) symbol.problem("is no symbol of an element");
        }
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

    template<typename Reader>
    Sourced<double> sourced(std::string_view key, const Reader& read) const {
        const Field field = root()[key];
        Sourced<double> result{read(field["value"]), file_.provenance(field)};
        field.maybe("choices");
        field.close();
        return result;
    }
    Sourced<double> share(std::string_view key) const {
        return sourced(key, [](const Field& field) { return field.fraction(); });
    }
    Sourced<double> concentration(std::string_view key) const {
        return sourced(key, [](const Field& field) {
            const WrittenQuantity written = field.quantity();
            if (written.unit != "mol/L") field.problem("is not in mol/L");
            return written.value;
        });
    }

    void read_fill() {
        if (const auto choices = root()["fill_limit"].maybe("choices"))
            for (const Field& choice : choices->items())
                rules_.fill_choices.push_back(choice.fraction());
        rules_.fill_limit = share("fill_limit");
        if (!(rules_.fill_limit.value > 0)) root()["fill_limit"].problem("is not above 0");
    }

    void read_window_and_drain() {
        const Field window = root()["neutral_window"];
        rules_.neutral_low = window["low"].number();
        rules_.neutral_high = window["high"].number();
        if (!(rules_.neutral_low < rules_.neutral_high)) window.problem("low is not below high");
        rules_.neutral_from = file_.provenance(window);
        window.close();
        const Field drain = root()["drain"];
        rules_.drain_permitted = drain["permitted"].boolean();
        rules_.flush_volumes = drain["flush_volumes"].number();
        file_.provenance(drain);
        drain.close();
    }

    void read_containers() {
        for (const Field& row : root()["containers"].items()) {
            Container container{read_kind(row["kind"]), row["name"].text(), row["takes"].text(), 0, ""};
            if (const auto size = row.maybe("size")) container.size = size->volume().in(unit::mL);
            container.waste_code = text_or_empty(row, "waste_code");
            if (rules_.container(container.kind) != nullptr) row["kind"].problem("stands twice");
            row.close();
            rules_.containers.push_back(std::move(container));
        }
        // The decision needs these; a house may leave the others out.
        for (const ContainerKind kind : kinds)
            if (kind != ContainerKind::flammable_aqueous && rules_.container(kind) == nullptr)
                root()["containers"].problem(fmt::format("no container \"{}\"", id_of(kind)));
    }

    void read_words() {
        std::vector<std::string> outcomes = kind_ids();
        outcomes.insert(outcomes.end(), {"air", "trap", "drain", "own_bottle"});
        for (const Field& row : root()["handout_words"].items()) {
            HandoutWords words{row["says"].text(), {}};
            for (const Field& meaning : row["means"].items())
                words.means.push_back(meaning.one_of(outcomes));
            row.close();
            rules_.handout_words.push_back(std::move(words));
        }
    }

    void read_stops() {
        for (const Field& row : root()["stop"].items()) {
            StopRule stop;
            stop.what = row["what"].text();
            stop.why = row["why"].text();
            stop.bottle = row["bottle"].text();
            stop.set = read_substance_set(row);
            stop.from = file_.provenance(row);
            if (const auto flag = row.maybe("destroy")) stop.destroy = flag->boolean();
            if (const auto flag = row.maybe("not_in_water")) stop.not_in_water = flag->boolean();
            if (const auto flag = row.maybe("vented")) stop.vented = flag->boolean();
            row.close();
            rules_.stops.push_back(std::move(stop));
        }
    }

    void read_things() {
        for (const Field& row : root()["things"].items()) {
            rules_.things.push_back({row["thing"].text(), read_kind(row["kind"]), text_or_empty(row, "note"),
                                     file_.provenance(row)});
            row.close();
        }
    }

    SchemeFile file_;
    LocalRules rules_;
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

LocalRules read_local_rules(const Source& source) {
    return RulesReader(source).run();
}

} // namespace routeweigh::streams
