// SPDX-License-Identifier: MIT
#include "route/route_reader.hpp"

#include "base/text.hpp"
#include "input/file_kind.hpp"
#include "route/name_reader.hpp"
#include "route/route_checks.hpp"
#include "route/spread.hpp"
#include "route/step_reader.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>

namespace routeweigh {
namespace {

/// Any value in words; what was changed may have been an amount, a flag or a whole stage.
std::string read_words(const Field& field, std::string_view key) {
    const auto value = field.maybe(key);
    if (!value) return {};
    if (value->is_text()) return value->text();
    if (value->is_number()) return fmt::format("{}", value->number());
    if (value->is_boolean()) return value->boolean() ? "true" : "false";
    if (value->is_array()) return "a list";
    const auto material = value->maybe("material"), amount = value->maybe("amount"); // a charge
    if (material && amount && material->is_text() && amount->is_text())
        return fmt::format("{}, {}", material->text(), amount->text());
    return "an object";
}

Parentage read_parentage(const Field& field) {
    Parentage parent;
    parent.id = field["id"].text();
    for (const Field& item : field["changes"].items()) {
        parent.changes.push_back({item["at"].text(), read_words(item, "before"), read_words(item, "after")});
        item.close();
    }
    field.close();
    return parent;
}

constexpr std::size_t longest_id = 64;

void read_identity(const Field& field, Route& route) {
    const Field id = field["id"];
    route.id = id.text();
    const bool plain = std::all_of(route.id.begin(), route.id.end(), [](char c) {
        return (c >= '0' && c <= '9') || (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || c == '-' ||
               c == '_' || c == '.';
    });
    if (id.is_text() && (route.id.empty() || !plain))
        id.problem(
            fmt::format("an id is made of letters, digits, \"-\", \"_\" and \".\", not \"{}\"", route.id));
    if (route.id.size() > longest_id)
        id.problem(fmt::format("an id heads columns and has at most {} characters, not {}", longest_id,
                               route.id.size()));
    route.title = field["title"].text();
    route.origin = field["source"].text();
    route.status = field["status"].one_of(route_statuses());
    if (const auto schema = field.maybe("$schema")) route.schema = schema->text();
    if (const auto notes = field.maybe("notes")) route.notes = notes->texts();
    if (const auto parent = field.maybe("parent")) route.parent = read_parentage(*parent);
}

/// Index of the step that a text names; a problem and -1 when there is none.
int read_step_name(const Field& field, const Route& route) {
    std::vector<std::string> ids;
    for (const Step& step : route.steps)
        ids.push_back(step.id);
    const std::string name = field.one_of(ids);
    const auto found = std::find(ids.begin(), ids.end(), name);
    return found == ids.end() ? -1 : static_cast<int>(found - ids.begin());
}

Reuse read_reuse(const Field& field, const Route& route, const Catalogue& catalogue) {
    Reuse reuse;
    reuse.pointer = field.pointer();
    reuse.substance = read_substance(field["substance"], catalogue);
    const Field from = field["from"];
    reuse.from_step = read_step_name(from["step"], route);
    reuse.from_stream = from["stream"].text();
    from.close();
    reuse.to_step = read_step_name(field["to"], route);
    if (const auto fraction = field.maybe("fraction")) {
        reuse.fraction = fraction->fraction(PlusMinus::read);
        reuse.spread = read_spread(field, *fraction, fraction->quantity(PlusMinus::read), share_in_percent);
    }
    if (const auto note = field.maybe("note")) reuse.note = note->text();
    field.close();
    return reuse;
}

Bottle read_bottle(const Field& field, const Catalogue& catalogue) {
    Bottle bottle;
    bottle.pointer = field.pointer();
    const Field material = field["material"];
    bottle.material = read_material(material, catalogue);
    if (const auto of = field.maybe("of")) bottle.of = read_substance(*of, catalogue);
    const Field strength = field["strength"];
    const double stated = strength.fraction(PlusMinus::read);
    bottle.spread = read_spread(field, strength, strength.quantity(PlusMinus::read), share_in_percent);
    if (const auto note = field.maybe("note")) bottle.note = note->text();
    field.close();
    if (bottle.material == nullptr) return bottle;
    const Component* component =
        bottle.of != nullptr ? bottle.material->component_of(*bottle.of) : bottle.material->only_active();
    if (bottle.material->is_neat())
        material.problem(fmt::format(
            "\"{}\" holds nothing else that could make up for what it lacks: charge as much of it as "
            "is the substance, \"1.96 +/- 0.02 g\" for 2.00 g of 98 +/- 1 %",
            bottle.material->name));
    else if (component == nullptr)
        (bottle.of != nullptr ? field["of"] : material)
            .problem(fmt::format("say in \"of\" which component of \"{}\" has this strength",
                                 bottle.material->name));
    else if (strength.is_text() && std::abs(stated - component->mass_fraction) > 5e-4)
        strength.problem(fmt::format("the catalogue has {:g} % by mass for this bottle; its strength varies "
                                     "about that",
                                     100.0 * component->mass_fraction));
    if (component != nullptr) bottle.of = component->substance;
    return bottle;
}

NamedInstrument read_named_instrument(const Field& parent, std::string_view key) {
    const auto field = parent.maybe(key);
    return field ? NamedInstrument{field->text(), field->pointer()} : NamedInstrument{};
}

} // namespace

const std::vector<std::string>& route_statuses() {
    static const std::vector<std::string> statuses{
        std::string(status::published), std::string(status::as_weighed), std::string(status::run_since),
        std::string(status::never_run), std::string(status::equations_only)};
    return statuses;
}

Route read_route(const SourcePtr& source, const Catalogue& catalogue, Problems& problems) {
    const Document document = Document::parse(source);
    Problems found;
    const Field field = document.root(found);
    expect_kind(field, FileKind::route);
    Route route;
    route.source = source;
    route.weights = catalogue.atomic_weights();
    read_identity(field, route);
    route.product = read_substance(field["product"], catalogue);
    const Field steps = field["steps"];
    for (const Field& item : steps.items())
        route.steps.push_back(read_step(item, catalogue));
    if (steps.is_array() && route.steps.empty()) steps.problem("a route needs at least one step");
    if (const auto reuse = field.maybe("reuse"))
        for (const Field& item : reuse->items())
            route.reuse.push_back(read_reuse(item, route, catalogue));
    if (const auto coproducts = field.maybe("coproducts"))
        for (const Field& item : coproducts->items()) {
            const auto note = item.maybe("note");
            route.coproducts.push_back(
                {read_substance(item["substance"], catalogue), note ? note->text() : "", item.pointer()});
            item.close();
        }
    if (const auto bottles = field.maybe("bottles"))
        for (const Field& item : bottles->items()) {
            const Bottle bottle = read_bottle(item, catalogue);
            for (const Bottle& other : route.bottles)
                if (bottle.material != nullptr && other.material == bottle.material && other.of == bottle.of)
                    item.problem(
                        fmt::format("the strength of this bottle is stated already, at {}", other.pointer));
            route.bottles.push_back(bottle);
        }
    if (const auto correlations = field.maybe("correlations"))
        route.correlated = read_correlations(*correlations, route);
    if (const auto instruments = field.maybe("measured_with")) {
        route.measured_with = {read_named_instrument(*instruments, "masses"),
                               read_named_instrument(*instruments, "volumes"),
                               read_named_instrument(*instruments, "liquids")};
        instruments->close();
    }
    field.close();
    found.throw_if_error(); // chemistry is only asked of names that were found
    check_route(route, found);
    found.throw_if_error();
    for (Problem& problem : found.all)
        problems.add(std::move(problem));
    return route;
}

} // namespace routeweigh
