// SPDX-License-Identifier: MIT
#include "documents/cautions.hpp"

#include <fmt/format.h>

#include <cmath>

namespace routeweigh::documents {

writing::Caution usual_cautions() {
    return {
        "Before anybody works from this",
        {"These figures support a decision. They replace no risk assessment, and they are no working "
         "instruction.",
         "Read the supplier's data sheet of every material; classifications and limits differ between "
         "suppliers and change.",
         "Local rules, the institution's safety office and licensed waste contractors decide what is done "
         "and where waste goes.",
         "Never mix streams on the word of a program."}};
}

writing::Paragraph usual_cautions_in_small_print() {
    writing::Paragraph paragraph{{}, true};
    for (const writing::Text& item : usual_cautions().items)
        for (const writing::Run& run : item.runs) {
            if (!paragraph.text.runs.empty()) paragraph.text.runs.emplace_back(" ");
            paragraph.text.runs.push_back(run);
        }
    return paragraph;
}

writing::Paragraph numbers_of(const Assessment& route) {
    return {{writing::strong(fmt::format("Numbers of {}:", route.route().id)),
             writing::Run(fmt::format(" {}{}. {}", route.route().status,
                                      route.yield_assumed() ? "; yield assumed" : "", route.route().origin))},
            true};
}

void tell_open_end(const Assessment& route, std::string_view figure_id, std::vector<writing::Block>& blocks) {
    for (const Figure& figure : route.figures())
        if (figure.id == figure_id && std::isinf(figure.high))
            blocks.push_back(writing::Paragraph{
                {writing::strong("Lowest value only."),
                 writing::Run(
                     fmt::format(" Nothing bounds the figure \"{}\" of {} from above, for something in it is "
                                 "not assessed: what is shown is the least that it can be, and no order of "
                                 "routes follows from it.",
                                 figure.name, route.route().id))}});
}

writing::Paragraph amounts_of_steps() {
    return {
        "Amounts put in are those of the step as the file writes it; amounts recovered, and what a figure "
        "divides, are for one run of the last step.",
        true};
}

writing::Paragraph not_judged() {
    return {"Not judged, because composition alone does not show it: explosion, runaway reaction, pressure, "
            "thermal "
            "stability, and what heat, dust or poor stirring do. A low figure here says nothing about them.",
            false};
}

writing::Paragraph not_predicted() {
    return {"The program predicts no pH, no solubility and no speciation. Salts and acids are bookkept in "
            "neutral "
            "formula units; a separation leaves what the route file says it leaves.",
            true};
}

std::string_view limits_of_score() {
    return "The score is a stated summary. It approves no work, no protective equipment and no ventilation, "
           "it "
           "compares neither different products nor different scales, and it grades nobody.";
}

} // namespace routeweigh::documents
