// SPDX-License-Identifier: MIT
#include "assess/streams/container_log.hpp"

#include "assess/streams/scheme_file.hpp"
#include "base/text.hpp"

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
    if (written.unit.empty()) return {}; // the problem is recorded
    try {
        return {as_mass(written).in(unit::g), std::nullopt};
    } catch (const QuantityError&) { // then it is a volume, or a mistake
    }
    return {std::nullopt, field.volume().in(unit::mL)};
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
        addition_.date = row_["date"].text();
        addition_.from = text_or_empty(row_, "from");
        addition_.by = text_or_empty(row_, "by");
        const Amount amount = read_amount(row_["amount"]);
        const auto parts = row_.maybe("parts");
        if (parts)
            read_parts(*parts);
        else
            parts_.emplace_back(row_["material"].text(), 1.0);
        addition_.words = parts ? text_or_empty(row_, "material") : parts_[0].first;
        book(amount);
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

    void book(const Amount& amount) {
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
            book_part(name, fraction * grams, fraction);
    }

    void book_part(const std::string& name, double grams, double fraction) {
        if (const Material* material = catalogue_.find_material(name)) {
            for (const Component& component : material->components)
                addition_.composition.add(*component.substance, grams * component.mass_fraction);
            return;
        }
        const GroupMember* member = groups_.find(name);
        addition_.strangers.push_back({name, nullptr, member, grams, fraction, false, false});
    }

    const Field& row_;
    const Catalogue& catalogue_;
    const ReactivityGroups& groups_;
    std::vector<std::pair<std::string, double>> parts_;
    Addition addition_;
};

} // namespace

double ContainerLog::millilitres() const {
    double sum = 0;
    for (const Addition& addition : additions)
        sum += addition.millilitres;
    return sum;
}

std::vector<Participant> ContainerLog::content(const ReactivityGroups& groups) const {
    std::vector<Participant> all;
    const auto take = [&](const Participant& part) {
        for (Participant& known : all)
            if (known.name == part.name) {
                known.grams += part.grams;
                known.share = std::max(known.share, part.share);
                known.in_water = known.in_water && part.in_water;
                return;
            }
        all.push_back(part);
    };
    for (const Addition& addition : additions) {
        for (const Participant& part : participants_of(addition.composition, groups))
            take(part);
        for (const Participant& stranger : addition.strangers)
            take(stranger);
    }
    return all;
}

ContainerLog read_container_log(const Source& source, const Catalogue& catalogue,
                                const ReactivityGroups& groups) {
    const Document document = Document::parse(source);
    Problems problems;
    const Field root = document.root(problems);
    ContainerLog log;
    log.container = root["container"].text();
    if (const auto size = root.maybe("size")) log.size = size->volume().in(unit::mL);
    for (const Field& row : root["additions"].items())
        log.additions.push_back(AdditionReader(row, catalogue, groups).run());
    for (const char* remark : {"$schema", "note"})
        root.maybe(remark);
    root.close();
    problems.throw_if_error();
    return log;
}

} // namespace routeweigh::streams
