// SPDX-License-Identifier: MIT
// The charts a document can ask for, as plain data without colours or coordinates.
//
// Every chart can be drawn as SVG (writing/svg), printed in a terminal (chart_text) and listed as a table
// (chart_table). Magnitude is one hue, the baseline one accent, and nothing is told by colour alone.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <variant>
#include <vector>

namespace routeweigh::writing {

/// Horizontal bars made of parts, for instance what one gram of product takes. Water parts are drawn last,
/// hatched.
struct StackedBars {
    struct Series {
        std::string name;
        bool water = false;
    };
    struct Bar {
        std::string label;
        std::vector<double> values; ///< one for each series, not negative
        bool baseline = false;
        std::string group = {}; ///< bars of one group stand together under its name
    };
    std::string unit; ///< "g per g of product"
    std::vector<Series> series;
    std::vector<Bar> bars;
};

/// Mass flow through the steps of one route: inputs on the left, outputs on the right, widths to one scale.
struct Ribbons {
    enum class Kind {
        ordinary,
        water,        ///< hatched
        intermediate, ///< made in one step and used in another
        recovered,    ///< fed back
        product,
    };
    struct Flow {
        std::string label;
        double mass = 0;
        Kind kind = Kind::ordinary;
    };
    struct Step {
        std::string label;
        std::vector<Flow> inputs;
        std::vector<Flow> outputs;
    };
    std::string unit;
    std::vector<Step> steps;
};

/// Rows by columns, each cell a square whose side grows by the same length for every decade.
struct DecadeGrid {
    enum class State {
        value,
        at_least,   ///< no upper bound is known: drawn open at one side, printed ">="
        unassessed, ///< no data: a dashed outline
        zero,       ///< assessed as nothing
    };
    struct Cell {
        State state = State::zero;
        double decades = 0; ///< side of the square, not negative: log10(1 + x / x0)
        std::string text;   ///< the figure as printed below the square
    };
    struct Row {
        std::string label;
        std::string unit;
        std::vector<Cell> cells; ///< one for each column
    };
    struct Column {
        std::string label;
        bool baseline = false;
        std::string group = {}; ///< columns of one group stand together under its name
    };
    std::string measure; ///< what a decade counts: "decades above the reference amount"
    std::vector<Column> columns;
    std::vector<Row> rows;
};

/// Points with bars on one scale.
struct Intervals {
    struct Item {
        std::string label;
        std::optional<double> value;
        std::optional<double> low;
        std::optional<double> high;
        bool unbounded = false; ///< no upper end is known
        bool baseline = false;
    };
    std::string quantity;
    std::string unit;
    std::vector<Item> items;
    bool logarithmic = false; ///< falls back to a linear scale when a shown number is not above zero
};

/// Lines over a common axis, for instance mass intensity against yield, with their crossings marked.
struct Curve {
    struct Axis {
        std::string quantity;
        std::string unit;
    };
    struct Point {
        double x = 0;
        double y = 0;
    };
    struct Line {
        std::string label;
        std::vector<Point> points; ///< in order of x
        bool baseline = false;
    };
    struct Marker {
        Point at;
        std::string label; ///< "break-even at 84 %"
    };
    Axis x;
    Axis y;
    std::vector<Line> lines;
    std::vector<Marker> markers;
};

/// A directed graph of boxes (substances) and small squares (reactions). Arrows join a box and a square.
struct Graph {
    enum class Style {
        plain,
        start,     ///< comes from outside: square corners, where the others are round
        transient, ///< appears and disappears: dashed outline
        side,      ///< leaves unused: no outline, only a line below
        goal,      ///< what it is all for: heavy outline
    };
    struct Box {
        std::string label;
        Style style = Style::plain;
    };
    struct Square {
        std::string label;      ///< short, drawn inside: "R1"
        std::string title = {}; ///< printed beside the equation in the table
    };
    struct Arrow {
        int box = 0;
        int square = 0;
        bool into_square = true;
        std::string coefficient = {}; ///< empty for 1
    };
    struct Key {
        Style style = Style::plain;
        std::string meaning;
    };
    std::vector<Box> boxes;
    std::vector<Square> squares;
    std::vector<Arrow> arrows;
    std::vector<Key> keys; ///< legend, in the document's words
};

/// Results as dots stacked over a scale, one lane for each group, with quartiles and median below it.
struct Dots {
    struct Stack {
        double from = 0; ///< the stack counts what is from here on and below the next bin
        std::uint64_t count = 0;
    };
    struct Group {
        std::string label;
        std::vector<Stack> stacks; ///< ascending
        std::optional<double> quartile1, median, quartile3;
    };
    std::string quantity;
    std::string unit;
    double bin = 1; ///< width of a stack in units of the scale
    std::uint64_t per_dot = 1;
    std::vector<Group> groups;
};

using Chart = std::variant<StackedBars, Ribbons, DecadeGrid, Intervals, Curve, Graph, Dots>;

} // namespace routeweigh::writing
