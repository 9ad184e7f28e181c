// SPDX-License-Identifier: MIT
#include "app/export/question_export.hpp"
#include "writing/escape.hpp"
#include "writing/xml.hpp"

#include <fmt/format.h>

#include <cmath>

namespace routeweigh {
namespace {

using documents::Question;
using writing::Xml;

Xml text_in(std::string name, const std::string& words) {
    return Xml::element(std::move(name), {}, {Xml::leaf("text", words)});
}

/// Text that the platform reads as HTML: escaped once for HTML here and once more for XML when printed.
Xml html_in(std::string name, const std::string& words) {
    return Xml::element(std::move(name), {{"format", "html"}},
                        {Xml::leaf("text", "<p>" + writing::html_escape(words) + "</p>")});
}

Xml answer(const std::string& text, bool right, const std::string& feedback, const char* format) {
    return Xml::element("answer", {{"fraction", right ? "100" : "0"}, {"format", format}},
                        {Xml::leaf("text", text), html_in("feedback", feedback)});
}

std::string working_of(const Question& question) {
    std::string text;
    for (const std::string& line : question.working)
        text += (text.empty() ? "" : "; ") + line;
    return text;
}

Xml numerical(const Question& question) {
    Xml element = Xml::element("question", {{"type", "numerical"}});
    const auto add = [&](double value, bool right, const std::string& feedback) {
        Xml one = answer(platform_number(value), right, feedback, "moodle_auto_format");
        one.add(Xml::leaf("tolerance", platform_number(std::abs(value) * Question::tolerance)));
        element.add(std::move(one));
    };
    add(question.answer, true, "Right.");
    for (const documents::WrongAnswer& wrong : question.wrong)
        add(wrong.value, false, "This number comes out when somebody " + wrong.mistake + ".");
    if (!question.unit.empty())
        element.add(Xml::element(
            "units", {},
            {Xml::element("unit", {},
                          {Xml::leaf("multiplier", "1"), Xml::leaf("unit_name", question.unit)})}));
    element.add(Xml::leaf("unitgradingtype", "0"));
    element.add(Xml::leaf("unitpenalty", "0.1"));
    element.add(Xml::leaf("showunits", question.unit.empty() ? "3" : "2"));
    element.add(Xml::leaf("unitsleft", "0"));
    return element;
}

Xml multichoice(const Question& question) {
    Xml element = Xml::element("question", {{"type", "multichoice"}});
    element.add(Xml::leaf("single", "true"));
    element.add(Xml::leaf("shuffleanswers", "true"));
    element.add(Xml::leaf("answernumbering", "ABCD"));
    for (const documents::Choice& choice : question.choices)
        element.add(Xml::element("answer", {{"fraction", choice.right ? "100" : "0"}, {"format", "html"}},
                                 {Xml::leaf("text", "<p>" + writing::html_escape(choice.text) + "</p>"),
                                  html_in("feedback", choice.right ? "Right." : choice.why)}));
    return element;
}

} // namespace

std::string export_moodle_xml(const bench::Experiment& experiment, const documents::QuestionSet& set) {
    Xml quiz = Xml::element("quiz");
    quiz.add(Xml::element("question", {{"type", "category"}},
                          {text_in("category", fmt::format("$course$/{} version {} of seed {}",
                                                           experiment.route().id, set.version, set.seed))}));
    for (const Question& question : set.questions) {
        Xml element = question.is_choice() ? multichoice(question) : numerical(question);
        // What every kind of question begins with.
        std::vector<Xml> head{text_in("name", fmt::format("{} {}.{}: {}", experiment.route().id, set.seed,
                                                          set.version, question.title)),
                              html_in("questiontext", question.text),
                              html_in("generalfeedback", working_of(question)),
                              Xml::leaf("defaultgrade", "1"),
                              Xml::leaf("penalty", "0.3333333"),
                              Xml::leaf("hidden", "0")};
        element.children.insert(element.children.begin(), std::make_move_iterator(head.begin()),
                                std::make_move_iterator(head.end()));
        quiz.add(std::move(element));
    }
    return writing::write_xml(quiz);
}

} // namespace routeweigh
