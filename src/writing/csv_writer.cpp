// SPDX-License-Identifier: MIT
#include "writing/csv_writer.hpp"

#include "writing/escape.hpp"
#include "writing/number_text.hpp"
#include "writing/tables_of.hpp"

namespace routeweigh::writing {
namespace {

std::string field_of(const DataCell& cell) {
    if (const auto* number = std::get_if<double>(&cell)) return exact_number(*number);
    if (const auto* text = std::get_if<std::string>(&cell)) return csv_text(*text);
    return {};
}

} // namespace

std::string write_csv(const Document& document, const WriteOptions&) {
    const DataRows data = document.rows.empty() ? data_rows(document) : document.rows;
    std::string out;
    for (std::size_t i = 0; i < data.columns.size(); ++i) {
        if (i > 0) out += ',';
        out += csv_text(data.columns[i]);
    }
    out += "\r\n";
    for (const auto& row : data.rows) {
        for (std::size_t i = 0; i < data.columns.size(); ++i) {
            if (i > 0) out += ',';
            if (i < row.size()) out += field_of(row[i]);
        }
        out += "\r\n";
    }
    return out;
}

} // namespace routeweigh::writing
