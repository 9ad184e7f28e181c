// SPDX-License-Identifier: MIT
#include "assess/stock/shelf.hpp"

#include "assess/stock/price_list.hpp"
#include "base/text.hpp"
#include "input/csv_number.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <utility>

namespace routeweigh::stock {
namespace {

constexpr std::array<const char*, 4> headings{"material", "amount", "unit", "best before"};
constexpr std::size_t most_shelf_faults = 50, most_unknown_materials = 20;
enum ShelfColumn { material_column, amount_column, unit_column, date_column, column_count };

/// Where each column stands; -1 where the file has none.
std::array<int, column_count> find_columns(const CsvReader& rows) {
    std::array<int, column_count> places{-1, -1, -1, -1};
    std::vector<Problem> problems;
    for (std::size_t i = 0; i < rows.fields().size(); ++i) {
        const std::string heading = fold(rows.fields()[i]);
        if (heading.empty()) continue;
        const auto* const found = std::find(headings.begin(), headings.end(), heading);
        if (found == headings.end()) {
            Problem problem =
                rows.problem(fmt::format("no column \"{}\" is known; there are: {}", rows.fields()[i],
                                         join({headings.begin(), headings.end()}, ", ")));
            problem.nearest = nearest(heading, {headings.begin(), headings.end()});
            problems.push_back(problem);
            continue;
        }
        int& place = places[static_cast<std::size_t>(found - headings.begin())];
        if (place >= 0)
            problems.push_back(rows.problem(fmt::format("the column \"{}\" stands twice", heading)));
        place = static_cast<int>(i);
    }
    for (const int column : {material_column, amount_column, unit_column})
        if (places[static_cast<std::size_t>(column)] < 0)
            problems.push_back(rows.problem(
                fmt::format("a column \"{}\" is missing", headings[static_cast<std::size_t>(column)])));
    if (!problems.empty()) throw InputError(problems);
    return places;
}

class ShelfReader {
  public:
    ShelfReader(CsvReader& rows, const Catalogue& catalogue, Problems& problems)
        : rows_(rows), catalogue_(catalogue), problems_(problems), numbers_(rows.separator()),
          places_(find_columns(rows)) {}

    /// All rows to the end, or until there are too many faults.
    void read_into(std::vector<ShelfItem>& items) {
        while (rows_.next()) {
            if (faults_ >= most_shelf_faults) {
                fault(rows_.problem(
                    fmt::format("{} faults were found; the rest of the file was not read", faults_)));
                return;
            }
            if (auto item = read_row()) items.push_back(*item);
        }
        if (unknown_ <= most_unknown_materials) return;
        Problem more;
        more.severity = Severity::warning;
        more.message = fmt::format("the catalogue has no material for {} more rows; they are left out",
                                   unknown_ - most_unknown_materials);
        more.place.source = rows_.name();
        problems_.add(std::move(more));
    }

  private:
    std::optional<ShelfItem> read_row() {
        ShelfItem item;
        item.line = rows_.line();
        const std::string name(cell(material_column));
        item.material = catalogue_.find_material(name);
        if (item.material == nullptr) {
            warn_of_unknown(name);
            return std::nullopt;
        }
        try {
            item.grams = read_amount(*item.material);
        } catch (const CellError& error) {
            fault(rows_.problem(error.what(), "amount"));
        } catch (const QuantityError& error) {
            Problem problem = rows_.problem(error.what(), "unit");
            problem.nearest = error.nearest;
            fault(std::move(problem));
        }
        if (places_[date_column] >= 0 && !cell(date_column).empty()) {
            item.best_before = read_day(cell(date_column));
            if (!item.best_before)
                fault(
                    rows_.problem(fmt::format("\"{}\" is no day; write it as 2027-03-31", cell(date_column)),
                                  "best before"));
        }
        return item;
    }

    void fault(Problem problem) {
        problems_.add(std::move(problem));
        ++faults_;
    }

    void warn_of_unknown(const std::string& name) {
        if (++unknown_ > most_unknown_materials) return;
        Problem problem = rows_.problem(
            fmt::format("the catalogue has no material \"{}\"; the row is left out", name), "material");
        problem.severity = Severity::warning;
        problem.nearest = catalogue_.nearest_material(name);
        problems_.add(std::move(problem));
    }

    std::string_view cell(ShelfColumn column) const {
        return rows_.field(static_cast<std::size_t>(places_[column]));
    }

    double read_amount(const Material& material) {
        const auto number = numbers_.read(cell(amount_column));
        if (!number) throw CellError("the amount is missing");
        if (number->value < 0) throw CellError(fmt::format("\"{}\" is negative", cell(amount_column)));
        WrittenQuantity amount = parse_written(fmt::format("1 {}", cell(unit_column)));
        amount.value = number->value;
        return grams_of_amount(amount, material);
    }

    CsvReader& rows_;
    const Catalogue& catalogue_;
    Problems& problems_;
    CsvNumbers numbers_;
    std::array<int, column_count> places_;
    std::size_t faults_ = 0, unknown_ = 0;
};

bool usable(const ShelfItem& item, std::optional<Day> on) {
    return !on || !item.best_before || !(*item.best_before < *on);
}

} // namespace

double Shelf::grams_of(const Material& material, std::optional<Day> on) const {
    double grams = 0;
    for (const ShelfItem& item : items)
        if (item.material == &material && usable(item, on)) grams += item.grams;
    return grams;
}

bool Shelf::has_expired(const Material& material, std::optional<Day> on) const {
    return std::any_of(items.begin(), items.end(), [&](const ShelfItem& item) {
        return item.material == &material && !usable(item, on);
    });
}

Shelf read_shelf(CsvReader& rows, const Catalogue& catalogue, Problems& problems) {
    Shelf shelf;
    shelf.name = rows.name();
    if (!rows.next()) throw InputError(rows.problem("the file is empty"));
    ShelfReader(rows, catalogue, problems).read_into(shelf.items);
    problems.throw_if_error();
    return shelf;
}

} // namespace routeweigh::stock
