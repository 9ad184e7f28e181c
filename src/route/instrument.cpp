// SPDX-License-Identifier: MIT
#include "route/instrument.hpp"

#include "base/text.hpp"
#include "base/unit_table.hpp"
#include "route/check_report.hpp"
#include "route/route.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>

namespace routeweigh {
namespace {

double not_negative(const Field& field, std::string_view key) {
    const auto found = field.maybe(key);
    if (!found) return 0.0;
    const double value = found->number();
    if (value < 0.0) found->problem("a tolerance is not negative");
    return value;
}

InstrumentPtr read_instrument(const Field& field) {
    auto result = std::make_shared<Instrument>();
    result->id = field["id"].text();
    result->name = field["name"].text();
    result->weighs = field["measures"].one_of({"mass", "volume"}) == "mass";
    result->capacity = field["capacity"].number();
    result->division = not_negative(field, "division");
    result->repeatability = not_negative(field, "repeatability");
    result->tolerance = not_negative(field, "tolerance");
    result->relative_tolerance = not_negative(field, "relative_tolerance");
    result->source = field["source"].text();
    if (!(result->capacity > 0.0)) field["capacity"].problem("a capacity is above 0");
    field.close();
    return result;
}

} // namespace

double Instrument::reading_deviation() const {
    const double rounding = division / std::sqrt(12.0);
    return weighs ? std::sqrt(2.0) * std::hypot(rounding, repeatability)
                  : std::hypot(division / 4.0, repeatability);
}

std::vector<InstrumentPtr> read_instruments(const Catalogue& catalogue) {
    const Source* source = catalogue.scheme("instruments");
    if (source == nullptr)
        throw InputError(Problem{Severity::error, "the catalogue has no list \"instruments\"", {}, {}, {}});
    const Document document = Document::parse(*source);
    Problems problems;
    const Field root = document.root(problems);
    std::vector<InstrumentPtr> result;
    for (const Field& item : root["instruments"].items())
        result.push_back(read_instrument(item));
    problems.throw_if_error();
    return result;
}

InstrumentPtr InstrumentFinder::by_name(const std::string& name) {
    if (list_.empty()) {
        list_ = read_instruments(*catalogue_);
        for (const InstrumentPtr& instrument : list_)
            for (const std::string& word : {instrument->name, instrument->id})
                by_folded_name_.emplace(fold(word), instrument);
    }
    const auto found = by_folded_name_.find(fold(name));
    return found == by_folded_name_.end() ? nullptr : found->second;
}

std::string InstrumentFinder::nearest_name(const std::string& name) const {
    NearestSpelling search(name);
    for (const InstrumentPtr& instrument : list_)
        search.offer(instrument->name);
    return search.best();
}

void InstrumentFinder::find(Route& route, Problems& problems) {
    CheckReport report(route, problems);
    enum class Expected { mass, volume, either };
    const auto look_up = [&](const NamedInstrument& named, Expected expected) -> InstrumentPtr {
        if (named.name.empty()) return nullptr;
        InstrumentPtr found = by_name(named.name);
        if (found == nullptr)
            report.error(named.pointer, fmt::format("no instrument \"{}\"", named.name),
                         nearest_name(named.name));
        else if (expected != Expected::either && found->weighs != (expected == Expected::mass)) {
            report.error(named.pointer, fmt::format("\"{}\" measures {}", found->name,
                                                    found->weighs ? "masses" : "volumes"));
            return nullptr;
        }
        return found;
    };
    const InstrumentPtr masses = look_up(route.measured_with.masses, Expected::mass),
                        volumes = look_up(route.measured_with.volumes, Expected::volume),
                        liquids = look_up(route.measured_with.liquids, Expected::volume);
    for (Step& step : route.steps) {
        if (step.isolated.mass && !step.isolated.spread) step.isolated.instrument = masses;
        for (Stage& stage : step.stages)
            for (Charge& charge : stage.charges) {
                // Nobody weighs a trace; what starts a chain is there or not.
                if (charge.as_used || charge.spread || charge.role->is_trace()) continue;
                const UnitSpelling* unit = find_unit(charge.amount.unit);
                const bool volume = unit != nullptr && unit->kind == UnitKind::volume;
                const bool poured = charge.role->solvent && charge.material->density.has_value();
                charge.instrument = poured && liquids ? liquids : volume ? volumes : masses;
                if (charge.measured_with.name.empty()) continue;
                charge.instrument = look_up(charge.measured_with, Expected::either);
                if (charge.instrument && !charge.instrument->weighs && !charge.material->density)
                    report.error(charge.measured_with.pointer,
                                 fmt::format("the catalogue has no density for \"{}\", so a volume does not "
                                             "tell its mass",
                                             charge.material->name));
            }
    }
}

} // namespace routeweigh
