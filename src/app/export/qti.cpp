// SPDX-License-Identifier: MIT
#include "app/export/question_export.hpp"
#include "writing/xml.hpp"

#include <fmt/format.h>

#include <string_view>

namespace routeweigh {
namespace {

using documents::Question;
using writing::Xml;

constexpr const char* item_space = "http://www.imsglobal.org/xsd/imsqti_v2p1";
constexpr const char* package_space = "http://www.imsglobal.org/xsd/imscp_v1p1";

std::string identifier_of(const documents::QuestionSet& set, std::size_t number, const Question& question) {
    return fmt::format("s{}-v{}-{:02}-{}", set.seed, set.version, number, question.id);
}

Xml base_value(const char* type, const std::string& value) {
    return Xml::element("baseValue", {{"baseType", type}}, {Xml::words(value)});
}

Xml variable(const char* name) {
    return Xml::element("variable", {{"identifier", name}});
}

Xml set_value(const char* outcome, Xml value) {
    return Xml::element("setOutcomeValue", {{"identifier", outcome}}, {std::move(value)});
}

/// The tolerance is relative to the first of both expressions, so the expected value stands first.
Xml near(const std::string& value) {
    const std::string percent = platform_number(100 * Question::tolerance);
    return Xml::element("equal", {{"toleranceMode", "relative"}, {"tolerance", percent + " " + percent}},
                        {base_value("float", value), variable("RESPONSE")});
}

/// One branch of the marking: the condition, the score, the name of the feedback.
struct Branch {
    Xml condition;
    bool right;
    std::string feedback_id, feedback;
};

std::vector<Branch> branches_of(const Question& question) {
    std::vector<Branch> branches;
    int wrong = 0;
    if (question.is_choice()) {
        for (std::size_t i = 0; i < question.choices.size(); ++i) {
            const documents::Choice& choice = question.choices[i];
            Xml match = Xml::element(
                "match", {},
                {variable("RESPONSE"), base_value("identifier", fmt::format("choice{}", i + 1))});
            branches.push_back({std::move(match), choice.right,
                                choice.right ? "right" : fmt::format("wrong{}", ++wrong),
                                choice.right ? "Right." : choice.why + "."});
        }
        return branches;
    }
    branches.push_back({near(platform_number(question.answer)), true, "right", "Right."});
    for (const documents::WrongAnswer& one : question.wrong)
        branches.push_back({near(platform_number(one.value)), false, fmt::format("wrong{}", ++wrong),
                            "This number comes out when somebody " + one.mistake + "."});
    return branches;
}

Xml marking(const std::vector<Branch>& branches) {
    Xml condition = Xml::element("responseCondition");
    for (std::size_t i = 0; i < branches.size(); ++i)
        condition.add(Xml::element(
            i == 0 ? "responseIf" : "responseElseIf", {},
            {branches[i].condition, set_value("SCORE", base_value("float", branches[i].right ? "1" : "0")),
             set_value("FEEDBACK", base_value("identifier", branches[i].feedback_id))}));
    return Xml::element("responseProcessing", {}, {std::move(condition)});
}

Xml body_of(const Question& question) {
    Xml body = Xml::element("itemBody");
    if (!question.is_choice()) {
        body.add(Xml::leaf("p", question.text));
        body.add(Xml::element("p", {},
                              {Xml::element("textEntryInteraction",
                                            {{"responseIdentifier", "RESPONSE"}, {"expectedLength", "12"}}),
                               Xml::words(" " + question.unit)}));
        return body;
    }
    Xml interaction = Xml::element(
        "choiceInteraction", {{"responseIdentifier", "RESPONSE"}, {"shuffle", "true"}, {"maxChoices", "1"}},
        {Xml::leaf("prompt", question.text)});
    for (std::size_t i = 0; i < question.choices.size(); ++i)
        interaction.add(Xml::element("simpleChoice", {{"identifier", fmt::format("choice{}", i + 1)}},
                                     {Xml::words(question.choices[i].text)}));
    return body.add(std::move(interaction));
}

std::string correct_value(const Question& question) {
    for (std::size_t i = 0; i < question.choices.size(); ++i)
        if (question.choices[i].right) return fmt::format("choice{}", i + 1);
    return platform_number(question.answer);
}

Xml item(const Question& question, const std::string& identifier) {
    const std::vector<Branch> branches = branches_of(question);
    Xml root = Xml::element("assessmentItem", {{"xmlns", item_space},
                                               {"identifier", identifier},
                                               {"title", question.title},
                                               {"adaptive", "false"},
                                               {"timeDependent", "false"}});
    root.add(
        Xml::element("responseDeclaration",
                     {{"identifier", "RESPONSE"},
                      {"cardinality", "single"},
                      {"baseType", question.is_choice() ? "identifier" : "float"}},
                     {Xml::element("correctResponse", {}, {Xml::leaf("value", correct_value(question))})}));
    root.add(Xml::element("outcomeDeclaration",
                          {{"identifier", "SCORE"}, {"cardinality", "single"}, {"baseType", "float"}},
                          {Xml::element("defaultValue", {}, {Xml::leaf("value", "0")})}));
    root.add(
        Xml::element("outcomeDeclaration",
                     {{"identifier", "FEEDBACK"}, {"cardinality", "single"}, {"baseType", "identifier"}}));
    root.add(body_of(question));
    root.add(marking(branches));
    for (const Branch& branch : branches)
        root.add(Xml::element(
            "modalFeedback",
            {{"outcomeIdentifier", "FEEDBACK"}, {"identifier", branch.feedback_id}, {"showHide", "show"}},
            {Xml::words(branch.feedback)}));
    return root;
}

} // namespace

std::vector<ExportedFile> export_qti(const documents::QuestionSet& set) {
    std::vector<ExportedFile> files;
    Xml resources = Xml::element("resources");
    std::size_t number = 0;
    for (const Question& question : set.questions) {
        const std::string identifier = identifier_of(set, ++number, question);
        const std::string name = identifier + ".xml";
        files.push_back({name, writing::write_xml(item(question, identifier))});
        resources.add(Xml::element(
            "resource", {{"identifier", identifier}, {"type", "imsqti_item_xmlv2p1"}, {"href", name}},
            {Xml::element("file", {{"href", name}})}));
    }
    Xml manifest =
        Xml::element("manifest", {{"xmlns", package_space},
                                  {"identifier", fmt::format("manifest-s{}-v{}", set.seed, set.version)}});
    manifest.add(Xml::element("metadata", {},
                              {Xml::leaf("schema", "QTIv2.1 Package"), Xml::leaf("schemaversion", "1.0.0")}));
    manifest.add(Xml::element("organizations"));
    manifest.add(std::move(resources));
    files.push_back({"imsmanifest.xml", writing::write_xml(manifest)});
    return files;
}

} // namespace routeweigh
