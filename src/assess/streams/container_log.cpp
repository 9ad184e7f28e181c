// SPDX-License-Identifier: MIT
#include "assess/streams/container_log.hpp"

#include "assess/streams/scheme_file.hpp"
#include "base/day.hpp"
#include "base/text.hpp"
#include "base/unit_table.hpp"
#include "input/file_kind.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>

namespace routeweigh::streams {
namespace {

struct Amount {
    std::optional<double> grams, millilitres;
};

Amount read_amount(const Field& field) {
    const WrittenQuantity written = field.quantity();
    const UnitSpelling* unit_of_it = find_unit(written.unit);
    if (unit_of_it != nullptr && unit_of_it->kind == UnitKind::mass) return {field.mass().in(unit::g), {}};
    if (unit_of_it != nullptr && unit_of_it->kind == UnitKind::volume)
        return {std::nullopt, field.volume().in(unit::mL)};
    field.problem(fmt::format("an addition is a mass or a volume, not {}",
                              describe(unit_of_it != nullptr ? unit_of_it->kind : UnitKind::none)));
    return {};
}

/// "2026-02-02".
std::string read_date(const Field& field) {
    std::string date = field.text();
    if (!read_day(date)) field.problem(fmt::format("\"{}\" is no day of the calendar like 2026-02-02", date));
    return date;
}

/// The container of the local rules that is called so, by name or by kind.
const Container* find_container(const Field& field, const LocalRules& local) {
    const std::string name = field.text();
    std::vector<std::string> names;
    for (const Container& container : local.containers) {
        if (fold(container.name) == fold(name) || id_of(container.kind) == name) return &container;
        names.push_back(container.name);
    }
    field.problem(
        fmt::format("the local rules have no container \"{}\"; they have: {}", name, join(names, "; ")),
        nearest(name, names));
    return nullptr;
}

/// mL of one gram of the material; 0 where its density is unknown.
double volume_of_gram(const Material& material) {
    if (material.density) return 1.0 / *material.density;
    if (material.is_neat() && material.components[0].substance->density)
        return 1.0 / *material.components[0].substance->density;
    return 0;
}

class AdditionReader {
  public:
    AdditionReader(const Field& row, const Catalogue& catalogue, const ReactivityGroups& groups)
        : row_(row), catalogue_(catalogue), groups_(groups) {}

    Addition run() {
        addition_.date = read_date(row_["date"]);
        addition_.from = text_or_empty(row_, "from");
        addition_.by = text_or_empty(row_, "by");
        const Amount amount = read_amount(row_["amount"]);
        const auto parts = row_.maybe("parts");
        if (parts)
            read_parts(*parts);
        else
            parts_.emplace_back(row_["material"].text(), 1.0);
        addition_.words = parts ? text_or_empty(row_, "material") : parts_[0].first;
        book(amount, parts);
        row_.close();
        return std::move(addition_);
    }

  private:
    void read_parts(const Field& field) {
        double sum = 0;
        for (const std::string& name : field.keys()) {
            parts_.emplace_back(name, field[name].fraction());
            sum += parts_.back().second;
        }
        if (std::abs(sum - 1) > 1e-6)
            field.problem(fmt::format("the parts make {:g} %, not 100 %", 100 * sum));
    }

    void book(const Amount& amount, const std::optional<Field>& parts_field) {
        double volume_of_one = 0; // mL for 1 g of the whole
        bool known = true;
        for (const auto& [name, fraction] : parts_) {
            const Material* material = catalogue_.find_material(name);
            const double volume = material == nullptr ? 0 : volume_of_gram(*material);
            known = known && volume > 0;
            volume_of_one += fraction * (volume > 0 ? volume : 1.0);
        }
        const double grams = amount.grams ? *amount.grams : amount.millilitres.value_or(0) / volume_of_one;
        addition_.grams = grams;
        addition_.millilitres =
            amount.millilitres ? *amount.millilitres : (known ? grams * volume_of_one : 0);
        for (const auto& [name, fraction] : parts_)
            book_part(parts_field ? (*parts_field)[name] : row_["material"], name, fraction * grams,
                      fraction);
        for (Participant& stranger : addition_.strangers)
            stranger.in_water = addition_.composition.grams("water") >= 0.5 * addition_.grams;
    }

    void book_part(const Field& field, const std::string& name, double grams, double fraction) {
        if (const Material* material = catalogue_.find_material(name)) {
            for (const Component& component : material->components)
                addition_.composition.add(*component.substance, grams * component.mass_fraction);
            return;
        }
        const GroupMember* member = groups_.find(name);
        if (member == nullptr)
            field.warning(
                fmt::format("nobody assigned \"{}\" to a reactivity group, and the catalogue does not "
                            "have it: nothing is to be poured upon it",
                            name),
                nearest_name(name));
        addition_.strangers.push_back({name, nullptr, member, grams, fraction, false, false});
    }

    std::string nearest_name(const std::string& name) const {
        std::string material = catalogue_.nearest_material(name);
        if (!material.empty()) return material;
        std::vector<std::string> members;
        for (const GroupMember& member : groups_.members())
            members.push_back(member.name);
        return nearest(name, members);
    }

    const Field& row_;
    const Catalogue& catalogue_;
    const ReactivityGroups& groups_;
    std::vector<std::pair<std::string, double>> parts_;
    Addition addition_;
};

} // namespace

std::vector<Participant> Addition::participants(const ReactivityGroups& groups) const {
    std::vector<Participant> all = participants_of(composition, groups);
    join_participants(all, strangers);
    return all;
}

double ContainerLog::millilitres() const {
    double sum = 0;
    for (const Addition& addition : additions)
        sum += addition.millilitres;
    return sum;
}

std::vector<Participant> ContainerLog::content(const ReactivityGroups& groups) const {
    std::vector<Participant> all;
    for (const Addition& addition : additions)
        join_participants(all, addition.participants(groups));
    return all;
}

ContainerLog read_container_log(const Source& source, const Catalogue& catalogue,
                                const ReactivityGroups& groups, const LocalRules& local) {
    const Document document = Document::parse(source);
    Problems problems;
    const Field root = document.root(problems);
    expect_kind(root, FileKind::container_log);
    ContainerLog log{ContainerKind::flammable, "", source.name, 0, {}, {}};
    if (const Container* container = find_container(root["container"], local)) {
        log.container = container->kind;
        log.name = container->name;
        log.size = container->size;
    }
    if (const auto size = root.maybe("size")) log.size = size->volume().in(unit::mL);
    for (const Field& row : root["additions"].items())
        log.additions.push_back(AdditionReader(row, catalogue, groups).run());
    for (const char* remark : {"$schema", "note"})
        root.maybe(remark);
    if (log.size > 0 && log.millilitres() > log.size)
        root["additions"].problem(
            fmt::format("the additions make {} L, more than the {} L that the container holds",
                        significant(log.millilitres() / 1000, 3), significant(log.size / 1000, 3)));
    root.close();
    problems.throw_if_error();
    log.warnings = std::move(problems.all);
    return log;
}

} // namespace routeweigh::streams
