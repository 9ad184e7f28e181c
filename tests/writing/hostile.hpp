// SPDX-License-Identifier: MIT
// Names that a route file may hold and that no writer may let act.
#pragma once

#include "writing/blocks.hpp"

#include <string>
#include <vector>

namespace routeweigh::writing {

inline const std::vector<std::string>& hostile_names() {
    static const std::vector<std::string> names = {
        "<script>alert(1)</script>",
        "</style></title><img src=x onerror=alert(1)>",
        "\"><svg onload=alert(1)>",
        "' onmouseover='alert(1)",
        "]]><!-- <b>",
        "&lt;not an entity&gt; &amp; &#60;",
        "=1+1",
        "+1-1",
        "-2+3",
        "@SUM(A1:A9)",
        "\t=1+1",
        "\r=1+1",
        "a,b;\"c\"",
        "two\nlines\r\nthree",
        "| pipe | pipe |",
        "`code` ``` fence",
        "*strong* _slanted_ ~~struck~~ [link](http://example.org) ![picture](x)",
        "# heading",
        "1. list",
        "---",
        "\\ back\\slash",
        "\x1b[31mred\x1b[0m\x07",
        "right\xE2\x80\xAEtfel",              // U+202E turns the reading direction
        "broken \xFF\xC3 utf-8 \xED\xA0\x80", // bytes that are no UTF-8, and a lone surrogate
        std::string("nul\0inside", 10),
        "a_very_long_name_without_any_space_that_is_longer_than_a_whole_line_of_eighty_columns_in_a_terminal",
        "\xE9\x85\xB8\xE7\xB4\xA0 \xCE\xB1-\xC3\xA9t\xC3\xA9", // wide and accented letters
        "",
        " ",
    };
    return names;
}

/// The name in every place of a document where a text can stand.
inline Document hostile_document(const std::string& name) {
    using State = DecadeGrid::State;
    Document document;
    document.id = name;
    document.title = name;
    document.subtitle = name;
    document.colophon = name;
    Table table;
    table.caption = name;
    table.columns = {{name, Align::left, name, true, name}, {name, Align::decimal, name, false, name}};
    table.rows = {group(name),
                  {Cell(name), at_least(name, 1, name)},
                  Row({Cell(name), missing(name)}, RowKind::baseline)};
    table.rows[1].cells[0].target = name;
    table.remarks = {name};
    document.blocks = {
        Heading{2, name, name},
        Heading{3, name},
        Paragraph{{name, strong(name), code(name), number(name), link(name, name)}},
        KeyValueList{{{name, name}}},
        BulletList{{name, {strong(name)}}},
        BulletList{{name}, true},
        Caution{name, {name}},
        table,
        Figure{name, name,
               StackedBars{name, {{name}, {name, true}}, {{name, {1, 2}, true, name}, {name, {3, 4}}}}},
        Figure{
            name, name,
            Ribbons{
                name,
                {{name, {{name, 2}, {name, 1, Ribbons::Kind::water}}, {{name, 3, Ribbons::Kind::product}}}}}},
        Figure{name, name,
               DecadeGrid{name,
                          {{name, true, name}, {name}},
                          {{name, name, {{State::value, 2, name}, {State::at_least, 1, name}}}}}},
        Figure{name, name,
               Intervals{name, name, {{name, 1.0, 0.5, 2.0, false, true}, {name, {}, 0.1, {}, true}}, true}},
        Figure{name, name,
               Curve{{name, name},
                     {name, name},
                     {{name, {{0, 1}, {1, 2}}}, {name, {{0, 2}, {1, 1}}, true}},
                     {{{0.5, 1.5}, name}}}},
        Figure{name, name,
               Graph{{{name, Graph::Style::start}, {name, Graph::Style::goal}},
                     {{name, name}},
                     {{0, 0, true, name}, {1, 0, false}},
                     {{Graph::Style::start, name}}}},
        Figure{name, name, Dots{name, name, 1, 1, {{name, {{1, 2}, {3, 1}}, 1.5, 2.0, 3.0}}}},
        LabelSheet{.paper = name,
                   .paper_width = 210,
                   .paper_height = 297,
                   .width = 199,
                   .height = 143,
                   .across = 199,
                   .down = 143,
                   .labels = {{name, name, name, name, {name, "GHS05"}, name, {name}}}},
        Folded{name, {Paragraph{name}}, name},
    };
    document.rows = {{name, "value"}, {{name, 1.5}, {DataCell(), DataCell()}}};
    document.machine = MachineObject{{"name", name}, {name, MachineList{name, {}}}};
    return document;
}

} // namespace routeweigh::writing
