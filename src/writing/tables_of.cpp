// SPDX-License-Identifier: MIT
#include "writing/tables_of.hpp"

#include "writing/chart_table.hpp"
#include "writing/wrap.hpp"

#include <utility>

namespace routeweigh::writing {
namespace {

struct PlacedTable {
    std::string section; ///< the heading of level 2 above it
    Table table;
};

void collect(const std::vector<Block>& blocks, std::string section, std::vector<PlacedTable>& tables) {
    for (const Block& block : blocks) {
        if (const auto* heading = std::get_if<Heading>(&block.content())) {
            if (heading->level == 2) section = plain(heading->text);
        } else if (const auto* table = std::get_if<Table>(&block.content())) {
            tables.push_back({section, *table});
        } else if (const auto* figure = std::get_if<Figure>(&block.content())) {
            tables.push_back({section, chart_table(figure->chart)});
            tables.back().table.caption = figure->caption;
        } else if (const auto* folded = std::get_if<Folded>(&block.content())) {
            collect(folded->blocks, section, tables);
        }
    }
}

std::vector<PlacedTable> placed_tables(const Document& document) {
    std::vector<PlacedTable> tables;
    collect(document.blocks, {}, tables);
    return tables;
}

MachineTree machine_cell(const Cell& cell) {
    if (cell.mark == Mark::missing) return {};
    return cell.number ? MachineTree(*cell.number) : MachineTree(cell.text);
}

} // namespace

std::vector<Table> tables_of(const Document& document) {
    std::vector<Table> tables;
    for (PlacedTable& placed : placed_tables(document))
        tables.push_back(std::move(placed.table));
    return tables;
}

DataRows data_rows(const Document& document) {
    DataRows data;
    data.columns = {"section", "table", "group", "line", "row", "column", "value", "unit", "note"};
    for (const auto& [section, table] : placed_tables(document)) {
        std::string group;
        int line = 0; // one reagent may stand twice in a group
        for (const Row& row : table.rows) {
            if (row.cells.empty()) continue;
            if (row.kind == RowKind::group) {
                group = row.cells[0].text;
                continue;
            }
            ++line;
            const std::size_t first = table.row_headers ? 1 : 0;
            const std::string name = table.row_headers ? row.cells[0].text : std::string();
            for (std::size_t i = first; i < row.cells.size() && i < table.columns.size(); ++i) {
                const Cell& cell = row.cells[i];
                DataCell value;
                if (cell.mark != Mark::missing) {
                    value = cell.number ? DataCell(*cell.number) : DataCell(cell.text);
                }
                const std::string note = cell.mark == Mark::at_least ? "at least; " + cell.note : cell.note;
                data.rows.push_back({section, table.caption, group, static_cast<double>(line), name,
                                     table.columns[i].heading, value, table.columns[i].unit, note});
            }
        }
    }
    return data;
}

MachineTree machine_tree(const Document& document) {
    MachineList tables;
    for (const Table& table : tables_of(document)) {
        MachineList columns;
        for (const Column& column : table.columns) {
            columns.push_back(object({{"heading", column.heading}, {"unit", column.unit}}));
        }
        MachineList rows, notes, remarks;
        for (const Row& row : table.rows) {
            if (row.kind == RowKind::group) continue;
            MachineList cells;
            for (const Cell& cell : row.cells) {
                if (!cell.note.empty())
                    notes.push_back(object({{"row", static_cast<int>(rows.size())},
                                            {"column", static_cast<int>(cells.size())},
                                            {"note", cell.note}}));
                cells.push_back(machine_cell(cell));
            }
            rows.push_back(std::move(cells));
        }
        for (const Text& remark : table.remarks)
            remarks.emplace_back(plain(remark));
        tables.push_back(object({{"caption", table.caption},
                                 {"columns", std::move(columns)},
                                 {"rows", std::move(rows)},
                                 {"notes", std::move(notes)},
                                 {"remarks", std::move(remarks)}}));
    }
    return object({{"document", document.id}, {"title", document.title}, {"tables", std::move(tables)}});
}

} // namespace routeweigh::writing
