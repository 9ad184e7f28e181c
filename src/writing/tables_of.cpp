// SPDX-License-Identifier: MIT
#include "writing/tables_of.hpp"

#include "writing/chart_table.hpp"
#include "writing/wrap.hpp"

namespace routeweigh::writing {
namespace {

void collect(const std::vector<Block>& blocks, std::vector<Table>& tables) {
    for (const Block& block : blocks) {
        if (const auto* table = std::get_if<Table>(&block.content())) {
            tables.push_back(*table);
        } else if (const auto* figure = std::get_if<Figure>(&block.content())) {
            tables.push_back(chart_table(figure->chart));
            tables.back().caption = figure->caption;
        } else if (const auto* folded = std::get_if<Folded>(&block.content())) {
            collect(folded->blocks, tables);
        }
    }
}

MachineTree machine_cell(const Cell& cell) {
    if (cell.mark == Mark::missing) return {};
    return cell.number ? MachineTree(*cell.number) : MachineTree(cell.text);
}

} // namespace

std::vector<Table> tables_of(const Document& document) {
    std::vector<Table> tables;
    collect(document.blocks, tables);
    return tables;
}

DataRows data_rows(const Document& document) {
    DataRows data;
    data.columns = {"table", "row", "column", "value", "unit", "note"};
    for (const Table& table : tables_of(document)) {
        for (const Row& row : table.rows) {
            if (row.kind == RowKind::group || row.cells.empty()) continue;
            const std::size_t first = table.row_headers ? 1 : 0;
            const std::string name = table.row_headers ? row.cells[0].text : std::string();
            for (std::size_t i = first; i < row.cells.size() && i < table.columns.size(); ++i) {
                const Cell& cell = row.cells[i];
                DataCell value;
                if (cell.mark != Mark::missing) {
                    value = cell.number ? DataCell(*cell.number) : DataCell(cell.text);
                }
                const std::string note = cell.mark == Mark::at_least ? "at least; " + cell.note : cell.note;
                data.rows.push_back(
                    {table.caption, name, table.columns[i].heading, value, table.columns[i].unit, note});
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
