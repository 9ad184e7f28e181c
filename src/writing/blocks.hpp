// SPDX-License-Identifier: MIT
// A document as plain data: a title and a list of blocks that any writer can print.
//
// Documents build these values and know no writer; writers print them and know no document. All text is plain
// UTF-8 without markup: each writer escapes it for itself.
#pragma once

#include "writing/chart.hpp"
#include "writing/machine_tree.hpp"

#include <initializer_list>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <variant>
#include <vector>

namespace routeweigh::writing {

enum class Tone {
    plain,
    strong,
    code,   ///< a formula, an equation, a file name: fixed pitch, printed as it stands
    number, ///< a figure with its unit: never broken over two lines
    file,   ///< the path of a file beside this document: led to where the format can
};

/// A piece of running text. `target` names the anchor of a heading or folded block that it leads to.
struct Run {
    std::string text;
    Tone tone = Tone::plain;
    std::string target = {};

    Run(const char* words) : text(words) {}
    Run(std::string words, Tone how = Tone::plain, std::string anchor = {})
        : text(std::move(words)), tone(how), target(std::move(anchor)) {}
};

inline Run strong(std::string text) {
    return {std::move(text), Tone::strong};
}
inline Run code(std::string text) {
    return {std::move(text), Tone::code};
}
inline Run number(std::string text) {
    return {std::move(text), Tone::number};
}
inline Run link(std::string text, std::string anchor) {
    return {std::move(text), Tone::plain, std::move(anchor)};
}

struct Text {
    std::vector<Run> runs;

    Text() = default;
    Text(const char* words) : runs{Run(words)} {}
    Text(std::string words) : runs{Run(std::move(words))} {}
    Text(Run run) : runs{std::move(run)} {}
    Text(std::initializer_list<Run> pieces) : runs(pieces) {}

    bool empty() const { return runs.empty(); }
};

/// Level 2 opens a section and stands in the contents, level 3 and 4 divide it; the title itself is level 1.
struct Heading {
    int level = 2;
    Text text;
    std::string anchor = {};
};

struct Paragraph {
    Text text;
    bool small_print = false; ///< remarks on method and boundary, set smaller
};

struct BulletList {
    std::vector<Text> items;
    bool numbered = false;
    bool boxes = false; ///< a box to tick before each item
};

struct KeyValue {
    std::string key;
    Text value;
};

struct KeyValueList {
    std::vector<KeyValue> entries;
};

/// In a text: a hand writes here. On paper it has the room that handwriting takes.
inline constexpr std::string_view blank = "..........";

enum class Align { left, right, decimal };

struct Column {
    std::string heading;
    Align align = Align::left;
    std::string unit = {}; ///< printed under the heading
    bool baseline = false; ///< the column belongs to the baseline and is marked so
    std::string note = {}; ///< printed below the table, with a letter at the heading
};

enum class Mark {
    none,
    baseline, ///< belongs to the baseline
    at_least, ///< a lower bound: printed with ">=" before it
    missing,  ///< there is no value; `note` says why
};

/// A picture in ink only, small enough for a cell of a table: SVG path data, lines to stroke and shapes to
/// fill.
struct LineDrawing {
    double width = 0, height = 0; ///< of its own coordinates
    double unit = 1;              ///< pixels on the page per unit of its coordinates
    double pen = 1;               ///< width of the lines in units of its coordinates
    std::string lines, shapes;
    std::string alternative; ///< for those who cannot see it
};

/// One cell of a table: what is read, and the unrounded number behind it when there is one.
struct Cell {
    std::string text;
    std::optional<double> number;
    Mark mark = Mark::none;
    std::string note = {}; ///< printed below the table, with a letter at the cell; equal notes share a letter
    std::string target = {}; ///< anchor of the heading or folded block that explains the cell
    int drawing = -1; ///< of Table::drawings, shown below the text where the format shows pictures; -1: none

    Cell() = default;
    Cell(const char* words) : text(words) {}
    Cell(std::string words) : text(std::move(words)) {}
    Cell(std::string words, double value) : text(std::move(words)), number(value) {}
};

inline Cell at_least(std::string text, double value, std::string note = {}) {
    Cell cell(std::move(text), value);
    cell.mark = Mark::at_least;
    cell.note = std::move(note);
    return cell;
}

inline Cell missing(std::string reason) {
    Cell cell;
    cell.mark = Mark::missing;
    cell.note = std::move(reason);
    return cell;
}

enum class RowKind {
    plain,
    group,    ///< one cell over the whole width, heading the rows below it
    baseline, ///< the row belongs to the baseline
    total,    ///< a sum, ruled off from the rows above it
    detail,   ///< says more of the row above it: indented, not ruled off
};

struct Row {
    std::vector<Cell> cells;
    RowKind kind = RowKind::plain;

    Row() = default;
    Row(std::initializer_list<Cell> list) : cells(list) {}
    Row(std::vector<Cell> list, RowKind what = RowKind::plain) : cells(std::move(list)), kind(what) {}
};

inline Row group(std::string heading) {
    return {std::vector<Cell>{Cell(std::move(heading))}, RowKind::group};
}

/// Short rows are filled with empty cells; surplus cells are not printed.
struct Table {
    std::string caption = {}; ///< captioned tables are numbered through the document
    std::vector<Column> columns;
    std::vector<Row> rows;
    std::vector<Text> remarks = {};         ///< printed below the table before the lettered notes
    bool row_headers = true;                ///< the first cell of each row names the row
    std::vector<LineDrawing> drawings = {}; ///< that cells show
};

/// A picture. The table of its data and its terminal form are made from the chart itself.
struct Figure {
    std::string caption;
    std::string alternative; ///< what the picture shows, in a sentence or two, for those who cannot see it
    Chart chart;
};

/// Hazard pictograms in a row, by code ("GHS05"); a writer that cannot draw prints their names.
struct Pictograms {
    std::vector<std::string> codes;
    double side = 72; ///< pixels
};

/// Labels on sheets of a stated size, all lengths in mm. HTML lays them out to the millimetre and prints
/// nothing else of the document.
struct LabelSheet {
    struct Label {
        std::string heading = {}; ///< above the name: "Hazardous waste"
        std::string name = {};
        std::string contents = {};
        std::string signal = {};                  ///< "Danger", "Warning" or ""
        std::vector<std::string> pictograms = {}; ///< "GHS05"
        std::string statements = {};
        std::vector<std::string> foot = {};

        friend bool operator==(const Label&, const Label&) = default;
    };
    std::string paper; ///< "A4"
    double paper_width = 0, paper_height = 0;
    int columns = 1, rows = 1;
    double width = 0, height = 0;
    double left = 0, top = 0;    ///< of the first label
    double across = 0, down = 0; ///< from label to label
    int skip = 0;                ///< labels of the first sheet that are used up
    std::vector<Label> labels;
};

struct Caution {
    std::string title;
    std::vector<Text> items;
};

struct Block;

/// Blocks behind a summary, folded away until asked for.
struct Folded {
    Text summary;
    std::vector<Block> blocks;
    std::string anchor = {};
    bool open = false;
};

struct Block : std::variant<Heading, Paragraph, BulletList, KeyValueList, Table, Figure, Pictograms,
                            LabelSheet, Caution, Folded> {
    using variant::variant;
    const variant& content() const { return *this; }
};

/// Who reads what is written. A document may leave out what its reader never sees, for it costs time.
enum class Reader {
    people,       ///< title and blocks
    programs,     ///< the tree
    spreadsheets, ///< the rows
    anyone,
};

struct Document {
    std::string id; ///< snake case, also the stem of an output file
    std::string title;
    Text subtitle = {};
    bool one_page = false; ///< meant for one sheet of paper: printed closer
    std::vector<Block> blocks = {};
    Text colophon = {}; ///< the last line: program, version, data
    DataRows rows = {}; ///< what CSV prints; when empty, the document's tables in long form
    std::optional<MachineTree> machine = {}; ///< what JSON prints; when absent, the document's tables
};

} // namespace routeweigh::writing
