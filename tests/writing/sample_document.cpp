// SPDX-License-Identifier: MIT
#include "writing/sample_document.hpp"

namespace routeweigh::writing {
namespace {

Table figures_table() {
    Table table;
    table.caption = "Figures by route, per gram of product, as written";
    table.columns = {{.heading = "figure"}, {.heading = "unit"}};
    for (const char* id : {"A1", "A2", "A2b", "A3", "A3w", "A4", "A5", "A6", "A7a", "A7b"}) {
        table.columns.push_back(
            {.heading = id, .align = Align::decimal, .baseline = std::string(id) == "A1"});
    }
    table.rows.push_back(group("Yield and equation"));
    table.rows.push_back({"yield", "%", Cell("80", 80), Cell("80", 80), Cell("80", 80), Cell("80", 80),
                          Cell("80", 80), Cell("80", 80), Cell("80", 80), Cell("80", 80), Cell("80", 80),
                          Cell("80", 80)});
    table.rows.push_back({"atom economy, net", "%", Cell("72.6", 72.6), Cell("52.4", 52.4),
                          Cell("67.11", 67.11), Cell("85.6", 85.6), Cell("85.6", 85.6), Cell("61.0", 61),
                          Cell("58.3", 58.3), Cell("70.2", 70.2), Cell("66.6", 66.6), Cell("66.6", 66.6)});
    table.rows.push_back({"chlorine economy", "%", missing("the product holds no chlorine"),
                          missing("the product holds no chlorine"), missing("the product holds no chlorine"),
                          missing("the product holds no chlorine"), missing("the product holds no chlorine"),
                          missing("the product holds no chlorine"), missing("the product holds no chlorine"),
                          missing("the product holds no chlorine"), missing("the product holds no chlorine"),
                          missing("the product holds no chlorine")});
    table.rows.push_back(group("Mass intensity"));
    table.rows.push_back({"process mass intensity", "g/g", Cell("55.8", 55.8), Cell("61.2", 61.2),
                          Cell("60.9", 60.9), Cell("53.4", 53.4), Cell("88.1", 88.1), Cell("214", 214),
                          Cell("49.7", 49.7), Cell("58", 58), Cell("63.3", 63.3), Cell("71.25", 71.25)});
    table.rows.push_back({"inhalation demand, bottles", "m3/g", Cell("1690", 1690), Cell("12.5", 12.5),
                          at_least("12.5", 12.5, "one ingredient has no upper band"), Cell("280", 280),
                          Cell("280", 280), Cell("3.1", 3.1), Cell("0.07", 0.07), Cell("0.5", 0.5),
                          Cell("44", 44), Cell("44", 44)});
    table.rows.push_back(
        Row({"hazard score", "", Cell("1.31", 1.31), Cell("1.02", 1.02), at_least("1.02", 1.02),
             Cell("1.18", 1.18), Cell("1.20", 1.2), Cell("1.44", 1.44), Cell("0.97", 0.97),
             Cell("0.99", 0.99), Cell("1.05", 1.05), Cell("1.06", 1.06)},
            RowKind::total));
    table.remarks = {"Water counts; material fed back does not. All yields are assumed."};
    return table;
}

Table charges_table() {
    Table table;
    table.caption = "What is weighed out for one run of route A3";
    table.columns = {{.heading = "material"},
                     {.heading = "role"},
                     {.heading = "amount", .align = Align::decimal, .unit = "g"},
                     {.heading = "pure", .align = Align::decimal, .unit = "mmol"},
                     {.heading = "source"}};
    table.rows = {
        {"acetanilide", "substrate", Cell("1.352", 1.352), Cell("10.0", 10), "invented for this sample"},
        {"hydrobromic acid 48 %", "reagent", Cell("2.107", 2.107), Cell("12.5", 12.5), "invented"},
        {"hydrogen peroxide 30 %", "oxidant", Cell("1.7", 1.7), Cell("15", 15), "invented"},
        {"ethanol 95 %", "solvent", Cell("12.62", 12.62), missing("not counted in moles"), "invented"},
        Row({"sum", "", Cell("17.779", 17.779)}, RowKind::total)};
    return table;
}

} // namespace

StackedBars sample_bars() {
    StackedBars chart;
    chart.unit = "g taken per g of product";
    chart.series = {{"reactants"},
                    {"reagents and catalysts"},
                    {"reaction solvent"},
                    {"workup and washing"},
                    {"water", true}};
    chart.bars = {{"A1", {2.6, 0.9, 9.3, 12.4, 30.6}, true},
                  {"A3", {2.9, 0.4, 7.1, 11.0, 32.0}},
                  {"A4, cerium ammonium nitrate", {3.2, 14.4, 61.0, 35.0, 100.4}},
                  {"A5", {2.2, 0.05, 0, 6.0, 41.4}}};
    return chart;
}

Ribbons sample_ribbons() {
    using Kind = Ribbons::Kind;
    Ribbons chart;
    chart.unit = "g per g of product";
    chart.steps = {
        {"bromination",
         {{"acetanilide", 0.79, Kind::ordinary},
          {"hydrobromic acid 48 %", 1.23, Kind::ordinary},
          {"hydrogen peroxide 30 %", 0.99, Kind::ordinary},
          {"ethanol 95 %", 7.37, Kind::ordinary},
          {"sodium thiosulfate", 0.02, Kind::ordinary},
          {"water", 30.1, Kind::water}},
         {{"4-bromoacetanilide, to recrystallisation", 1.1, Kind::intermediate},
          {"filtrate and washes", 33.2, Kind::water},
          {"oxygen and vapour", 0.3, Kind::ordinary},
          {"ethanol, fed back", 5.9, Kind::recovered}}},
        {"recrystallisation",
         {{"4-bromoacetanilide, crude", 1.1, Kind::intermediate}, {"ethanol 95 %", 9.4, Kind::ordinary}},
         {{"4-bromoacetanilide", 1.0, Kind::product},
          {"mother liquor with what it holds of the product", 9.5, Kind::ordinary}}}};
    return chart;
}

DecadeGrid sample_grid() {
    using State = DecadeGrid::State;
    DecadeGrid chart;
    chart.measure = "decades";
    for (const char* route : {"A1", "A3"}) {
        for (const char* place : {"bottle", "flask", "waste"})
            chart.columns.push_back({place, std::string(route) == "A1", route});
    }
    chart.rows = {{"inhalation",
                   "m3 of air per g",
                   {{State::value, 3.2, "1690"},
                    {State::value, 3.2, "1690"},
                    {State::value, 0.4, "1.5"},
                    {State::value, 2.4, "280"},
                    {State::value, 3.1, "1300"},
                    {State::at_least, 0.8, "5.1"}}},
                  {"aquatic, acute",
                   "m3 of water per g",
                   {{State::value, 3.0, "0.99"},
                    {State::value, 3.0, "0.99"},
                    {State::zero, 0, "0"},
                    {State::value, 0.3, "0.001"},
                    {State::value, 2.9, "0.80"},
                    {State::unassessed, 0, "0.2 g"}}},
                  {"long-term harm",
                   "g at the serious level per g",
                   {{State::zero, 0, "0"},
                    {State::zero, 0, "0"},
                    {State::zero, 0, "0"},
                    {State::value, 1.2, "0.14"},
                    {State::zero, 0, "0"},
                    {State::zero, 0, "0"}}}};
    return chart;
}

Intervals sample_intervals() {
    Intervals chart;
    chart.quantity = "process mass intensity";
    chart.unit = "g/g";
    chart.items = {{"A1, bromine in acetic acid", 55.8, 50.1, 62.3, false, true},
                   {"A3, hydrobromic acid and hydrogen peroxide", 53.4, 48.0, 60.2},
                   {"A5", 49.7, 41.0, {}, true},
                   {"A6", {}, 20.0, 44.0}};
    return chart;
}

Curve sample_curve() {
    Curve chart;
    chart.x = {"isolated yield of A3", "%"};
    chart.y = {"process mass intensity, same auxiliaries", "g/g"};
    Curve::Line baseline{"A1 at 80 %", {}, true};
    Curve::Line other{"A3", {}};
    for (int yield = 60; yield <= 95; ++yield) {
        baseline.points.push_back({static_cast<double>(yield), 53.4});
        other.points.push_back({static_cast<double>(yield), 53.4 * 84.0 / yield});
    }
    chart.lines = {baseline, other};
    chart.markers = {{{84, 53.4}, "equal at 84 %"}};
    return chart;
}

Graph sample_graph() {
    using Style = Graph::Style;
    Graph graph;
    graph.boxes = {{"acetanilide", Style::start},
                   {"hydrogen bromide", Style::start},
                   {"hydrogen peroxide", Style::start},
                   {"bromine", Style::transient},
                   {"water", Style::side},
                   {"4-bromoacetanilide", Style::goal}};
    graph.squares = {{"R1", "bromine is made"}, {"R2", "bromine is used"}};
    graph.arrows = {{2, 0, true}, {1, 0, true, "2"}, {3, 0, false}, {4, 0, false, "2"},
                    {0, 1, true}, {3, 1, true},      {5, 1, false}, {1, 1, false}};
    graph.keys = {{Style::start, "bought"},
                  {Style::transient, "made and used up"},
                  {Style::side, "by-product"},
                  {Style::goal, "product"}};
    return graph;
}

Document sample_document() {
    Document document;
    document.id = "sample";
    document.title = "Two ways to 4-bromoacetanilide at Marrow Point College";
    document.subtitle = "A sample of every block; all figures in it are invented and mean nothing";
    document.colophon = "routeweigh, sample document";
    auto& blocks = document.blocks;
    blocks = {
        Heading{2, "1. What is compared", "compared"},
        Paragraph{
            {"Route ", strong("A1"), " pours bromine from a bottle; route ", strong("A3"),
             " makes it in the flask from hydrobromic acid and hydrogen peroxide. Atom economy rises from ",
             number("72.6 %"), " to ", number("85.6 %"),
             ", and the mass intensity with the same auxiliaries falls from ", number("55.8 g/g"), " to ",
             number("53.4 g/g"),
             ", which a difference in yield of four points would turn round. The working is ",
             link("folded below", "working"), "."}},
        KeyValueList{{{"Product", "4-bromoacetanilide"},
                      {"Scale", {number("2.0 g"), " for each student run"}},
                      {"Boundary", "as written: everything charged counts"},
                      {"Status of the numbers", "designed from the equations, never run"},
                      {"Waste of one run", {number("95 g"), " with A1, ", number("91 g"), " with A3"}}}},
        Caution{"Before anybody works from this",
                {"The figures support a decision and replace no risk assessment.",
                 "Read the supplier's safety data sheet of every material.",
                 "Local rules, the safety office and licensed waste contractors decide."}},
        Heading{2, "2. In short"},
        BulletList{{{"The bottle of bromine disappears: ", number("0.99 g"), " to ", number("0 g"),
                     " per gram of product."},
                    "The mass intensity does not differ by more than the yield may.",
                    {"Overall: ", code("PhNHCOCH3 + HBr + H2O2 -> 4-BrC6H4NHCOCH3 + 2 H2O"), "."}}},
        Heading{2, "3. Figures by route"},
        figures_table(),
        Heading{3, "What is weighed out"},
        charges_table(),
        Heading{2, "4. Where the mass comes from and goes"},
        Figure{"What one gram of product takes; the water is hatched.",
               "Four bars. A4 takes 214 g, about four times as much as the others; most of it is water and "
               "solvent.",
               sample_bars()},
        Figure{"Mass flow of route A3 through its two steps.",
               "Water is three quarters of what goes in and leaves with the filtrate.", sample_ribbons()},
        Heading{2, "5. The reactions"},
        Figure{"Reactions of route A3. Bromine is made and used up in the flask.",
               "Hydrogen peroxide and hydrogen bromide give bromine, which with acetanilide gives the "
               "product and hydrogen "
               "bromide again.",
               sample_graph()},
        Heading{2, "6. Hazard by endpoint and place"},
        Figure{"Dilution demand per gram of product. The side of a square grows by the same length for every "
               "decade.",
               "In the bottle the inhalation demand falls from 1690 to 280 m3 per gram; in the flask it "
               "hardly changes.",
               sample_grid()},
        Pictograms{{"GHS02", "GHS05", "GHS09"}},
        Figure{"Process mass intensity with its interval.", "A1 and A3 overlap.", sample_intervals()},
        Figure{"Break-even of the yield.", "The curve of A3 crosses the line of A1 at 84 %.", sample_curve()},
        Heading{2, "7. Workings"},
        Folded{"Working of the atom economy of A3",
               {Paragraph{{code("214.06 / (135.17 + 80.91 + 34.01) = 0.8559")}}, charges_table()},
               "working"},
        Folded{"Ledger of A1", {Paragraph{"Every gram that enters and leaves."}}},
        Paragraph{"Gram figures are per gram of isolated product unless a unit says otherwise.", true},
    };
    document.rows = {{"route", "figure", "value", "unit", "note"},
                     {{"A1", "atom_economy", 72.6, "%", DataCell()},
                      {"A1", "chlorine_economy", DataCell(), "%", "the product holds no chlorine"}}};
    document.machine = MachineObject{
        {"routeweigh", "sample"},
        {"routes", MachineList{MachineObject{
                       {"id", "A1"},
                       {"figures", MachineList{MachineObject{{"id", "atom_economy"}, {"value", 72.6}},
                                               MachineObject{{"id", "chlorine_economy"}, {"value", {}}}}}}}}};
    return document;
}

} // namespace routeweigh::writing
