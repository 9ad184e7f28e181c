// SPDX-License-Identifier: MIT
#include "assess/streams/reactivity_chart.hpp"

#include "assess/streams/scheme_file.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <cstddef>

namespace routeweigh::streams {
namespace {

std::size_t rank(const std::vector<ReactivityChart::Code>& codes, std::string_view code) {
    for (std::size_t i = 0; i < codes.size(); ++i)
        if (codes[i].code == code) return i;
    return codes.size();
}

ChartCell read_cell(const SchemeFile& file, const Field& row, const ReactivityChart& chart) {
    ChartCell cell{row["codes"].texts(), file.provenance(row),
                   row["confidence"].one_of({"high", "medium", "low"})};
    for (const std::string& code : cell.codes)
        if (rank(chart.codes, code) == chart.codes.size())
            row["codes"].problem(fmt::format("no code \"{}\"", code));
    if (cell.codes.empty()) row["codes"].problem("a pair without a consequence is not listed");
    return cell;
}

} // namespace

void ReactivityChart::add(int a, int b, ChartCell cell) {
    cells_[std::minmax(a, b)] = std::move(cell);
}

void ReactivityChart::add_never(int group, ChartCell cell) {
    never_[group] = std::move(cell);
}

const ChartCell* ReactivityChart::find(int a, int b) const {
    const auto cell = cells_.find(std::minmax(a, b));
    if (cell != cells_.end()) return &cell->second;
    for (const int group : {a, b}) {
        const auto never = never_.find(group);
        if (never != never_.end()) return &never->second;
    }
    return nullptr;
}

std::string_view ReactivityChart::meaning(std::string_view code) const {
    for (const Code& one : codes)
        if (one.code == code) return one.meaning;
    return "";
}

std::vector<std::string> ReactivityChart::sorted(std::vector<std::string> list) const {
    std::sort(list.begin(), list.end(),
              [this](const std::string& a, const std::string& b) { return rank(codes, a) < rank(codes, b); });
    list.erase(std::unique(list.begin(), list.end()), list.end());
    return list;
}

ReactivityChart read_reactivity_chart(const Source& source) {
    const SchemeFile file(source, "reactivity pairs");
    ReactivityChart chart;
    for (const Field& row : file.root()["codes"].items()) {
        chart.codes.push_back({row["code"].text(), row["meaning"].text()});
        row.close();
    }
    for (const Field& row : file.root()["pairs"].items()) {
        const int a = group_number(row["a"]), b = group_number(row["b"]);
        if (chart.cells().contains(std::minmax(a, b)))
            row.problem(fmt::format("{} with {} stands twice", a, b));
        chart.add(a, b, read_cell(file, row, chart));
        row.close();
    }
    for (const Field& row : file.root()["never"].items()) {
        row["meaning"].text();
        chart.add_never(group_number(row["group"]), read_cell(file, row, chart));
        row.close();
    }
    file.finish();
    return chart;
}

} // namespace routeweigh::streams
