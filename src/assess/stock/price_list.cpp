// SPDX-License-Identifier: MIT
#include "assess/stock/price_list.hpp"

#include "assess/streams/local_rules.hpp"
#include "base/day.hpp"
#include "base/text.hpp"
#include "input/file_kind.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace routeweigh::stock {
namespace {

/// What can have a price of disposal.
std::vector<std::string> ids_with_price() {
    std::vector<std::string> ids{"own_bottle"};
    for (int kind = 0; kind <= static_cast<int>(streams::ContainerKind::recovery); ++kind)
        ids.emplace_back(streams::id_of(static_cast<streams::ContainerKind>(kind)));
    return ids;
}

double price_at(const Field& field) {
    const double price = field.number();
    if (price < 0) field.problem("a price is not negative");
    return price;
}

constexpr double least_pack = 1e-3; ///< g; below, a unit is wrong

Pack read_pack(const Field& row, const Catalogue& catalogue) {
    Pack pack;
    const std::string name = row["material"].text();
    if (!name.empty()) {
        pack.material = catalogue.find_material(name);
        if (pack.material == nullptr)
            row["material"].problem(fmt::format("no material \"{}\"", name),
                                    catalogue.nearest_material(name));
    }
    const Field size = row["pack"];
    pack.size = size.text();
    if (pack.material != nullptr && !pack.size.empty()) {
        try {
            pack.grams = grams_of_amount(size.quantity(), *pack.material);
            if (!(pack.grams >= least_pack))
                size.problem(fmt::format("a pack of {} is none: at least {:g} mg are sold", pack.size,
                                         1000.0 * least_pack));
        } catch (const QuantityError& error) {
            size.problem(error.what(), error.nearest);
        }
    }
    pack.price = price_at(row["price"]);
    if (const auto note = row.maybe("note")) pack.note = note->text();
    row.close();
    return pack;
}

} // namespace

double grams_of_amount(const WrittenQuantity& amount, const Material& material) {
    try {
        return as_mass(amount).in(unit::g);
    } catch (const QuantityError&) { // then it may be a volume
    }
    double millilitres = 0;
    try {
        millilitres = as_volume(amount).in(unit::mL);
    } catch (const QuantityError&) {
        throw QuantityError("is neither a mass nor a volume; write it as \"100 g\" or \"1 L\"");
    }
    if (!material.density)
        throw QuantityError(
            fmt::format("{} has no density in the catalogue; give the amount by mass", material.name));
    return millilitres * *material.density;
}

std::vector<const Pack*> PriceList::packs_of(const Material& material) const {
    std::vector<const Pack*> found;
    for (const Pack& pack : packs)
        if (pack.material == &material) found.push_back(&pack);
    return found;
}

const double* PriceList::disposal_of(const std::string& container) const {
    const auto found = disposal.find(container);
    return found == disposal.end() ? nullptr : &found->second;
}

std::string PriceList::words() const {
    if (packs.empty()) return {};
    return fmt::format("prices of {} in {}{}", date, currency,
                       invented ? ", invented for a demonstration" : "");
}

PriceList read_price_list(const SourcePtr& source, const Catalogue& catalogue) {
    Problems problems;
    const Document document = Document::parse(source);
    const Field root = document.root(problems);
    expect_kind(root, FileKind::price_list);
    PriceList prices;
    prices.title = root["title"].text();
    prices.currency = root["currency"].text();
    const Field date = root["date"];
    prices.date = date.text();
    if (!prices.date.empty() && !read_day(prices.date))
        date.problem(fmt::format("\"{}\" is no day; write it as 2026-09-14", prices.date));
    prices.source = root["source"].text();
    if (const auto invented = root.maybe("invented")) prices.invented = invented->boolean();
    for (const Field& row : root["packs"].items())
        prices.packs.push_back(read_pack(row, catalogue));
    if (const auto disposal = root.maybe("disposal_per_L"))
        for (const std::string& container : disposal->keys()) {
            const Field price = (*disposal)[container];
            prices.disposal[container] = price_at(price);
            if (const auto ids = ids_with_price(); std::find(ids.begin(), ids.end(), container) == ids.end())
                price.problem(fmt::format("no container \"{}\"", container), nearest(container, ids));
        }
    if (const auto price = root.maybe("electricity_per_kWh")) prices.electricity = price_at(*price);
    if (const auto price = root.maybe("water_per_m3")) prices.water = price_at(*price);
    root.close();
    problems.throw_if_error();
    return prices;
}

} // namespace routeweigh::stock
