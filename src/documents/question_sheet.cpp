// SPDX-License-Identifier: MIT
#include "documents/question_sheet.hpp"

#include "documents/number.hpp"
#include "documents/version.hpp"
#include "documents/words.hpp"

#include <fmt/format.h>

#include <string>
#include <utility>
#include <vector>

namespace routeweigh {
namespace {

using documents::Edition;
using documents::Question;
using writing::Block;

constexpr std::size_t letters = 26;

std::string letter(std::size_t index) {
    return std::string(1, static_cast<char>('A' + index % letters));
}

void add_key(const Question& question, std::vector<Block>& blocks) {
    std::string right = question.answer_text();
    for (std::size_t i = 0; i < question.choices.size(); ++i)
        if (question.choices[i].right) right = letter(i) + ", " + right;
    blocks.push_back(writing::Paragraph{
        {writing::strong("Answer: "), writing::strong(right),
         question.is_choice() ? "" : fmt::format(" (within {})", documents::percent(Question::tolerance))}});
    if (!question.working.empty()) {
        writing::BulletList working;
        for (const std::string& line : question.working)
            working.items.emplace_back(line);
        blocks.push_back(std::move(working));
    }
    writing::Table table;
    table.caption = "Other answers and what leads to them";
    table.columns = {{.heading = "answer"}, {.heading = "what leads to it"}};
    for (const documents::WrongAnswer& wrong : question.wrong)
        table.rows.push_back({documents::answer_text(wrong.value, question.unit), wrong.mistake});
    for (std::size_t i = 0; i < question.choices.size(); ++i)
        if (!question.choices[i].right)
            table.rows.push_back({letter(i) + ", " + question.choices[i].text, question.choices[i].why});
    if (!table.rows.empty()) blocks.push_back(std::move(table));
}

void add_question(const Question& question, std::size_t number, Edition edition, std::vector<Block>& blocks) {
    blocks.push_back(writing::Heading{3, fmt::format("{}. {}", number, question.title)});
    blocks.push_back(writing::Paragraph{question.text});
    if (question.is_choice()) {
        writing::BulletList list;
        list.boxes = true;
        for (std::size_t i = 0; i < question.choices.size(); ++i)
            list.items.emplace_back(letter(i) + ". " + question.choices[i].text);
        blocks.push_back(std::move(list));
    } else if (edition == Edition::student) {
        blocks.push_back(
            writing::Paragraph{fmt::format("Answer: {} {}; working:", documents::blank, question.unit)});
    }
    if (edition == Edition::key) add_key(question, blocks);
}

writing::MachineTree question_tree(const Question& question, Edition edition) {
    const bool key = edition == Edition::key;
    writing::MachineObject object{{"id", question.id},
                                  {"when", question.when == Question::When::before ? "before" : "after"},
                                  {"text", question.text}};
    if (question.is_choice()) {
        writing::MachineList choices;
        for (const documents::Choice& choice : question.choices) {
            writing::MachineObject one{{"text", choice.text}};
            if (key) {
                one.push_back({"right", choice.right});
                one.push_back({"why", choice.why});
            }
            choices.emplace_back(std::move(one));
        }
        object.push_back({"choices", std::move(choices)});
    } else {
        object.push_back({"unit", question.unit});
        if (key) {
            object.push_back({"answer", question.answer});
            object.push_back({"relative_tolerance", Question::tolerance});
            writing::MachineList wrong;
            for (const documents::WrongAnswer& one : question.wrong)
                wrong.emplace_back(writing::MachineObject{{"value", one.value}, {"mistake", one.mistake}});
            object.push_back({"wrong", std::move(wrong)});
        }
    }
    if (key) {
        writing::MachineList working;
        for (const std::string& line : question.working)
            working.emplace_back(line);
        object.push_back({"working", std::move(working)});
    }
    return object;
}

/// What a student gets has no column for answers at all, so that none can slip in.
writing::DataRows question_rows(const documents::QuestionSet& set, Edition edition) {
    const bool key = edition == Edition::key;
    writing::DataRows rows;
    rows.columns = {"number", "kind", "when", "text", "choices", "unit"};
    if (key) rows.columns.insert(rows.columns.end(), {"answer", "relative_tolerance"});
    for (const Question& question : set.questions) {
        std::string choices, right;
        for (std::size_t i = 0; i < question.choices.size(); ++i) {
            choices += (i == 0 ? "" : "; ") + letter(i) + ". " + question.choices[i].text;
            if (question.choices[i].right) right = letter(i);
        }
        std::vector<writing::DataCell> row{static_cast<double>(rows.rows.size() + 1),
                                           question.id,
                                           question.when == Question::When::before ? "before" : "after",
                                           question.text,
                                           choices,
                                           question.unit};
        if (key && question.is_choice())
            row.insert(row.end(), {right, writing::DataCell()});
        else if (key)
            row.insert(row.end(), {question.answer, Question::tolerance});
        rows.rows.push_back(std::move(row));
    }
    return rows;
}

} // namespace

writing::Document question_sheet(const bench::Experiment& experiment, const documents::QuestionSet& set,
                                 Edition edition) {
    const Route& route = experiment.route();
    writing::Document document;
    document.id = "questions";
    document.title = fmt::format("Questions: {}", route.title);
    document.subtitle = fmt::format("{}. Version {} of seed {}, route {}.",
                                    edition == Edition::key ? "With answers, for those who teach and mark"
                                                            : "Name: ..............................",
                                    set.version, set.seed, route.id);
    writing::MachineList list;
    std::size_t number = 0;
    auto when = Question::When::after;
    for (const Question& question : set.questions) {
        if (number == 0 || question.when != when) {
            when = question.when;
            document.blocks.push_back(writing::Heading{
                2, when == Question::When::before ? "Before the experiment" : "After the experiment"});
        }
        add_question(question, ++number, edition, document.blocks);
        list.push_back(question_tree(question, edition));
    }
    document.rows = question_rows(set, edition);
    document.machine = writing::MachineObject{
        {"document", document.id}, {"edition", edition == Edition::key ? "key" : "student"},
        {"route", route.id},       {"seed", set.seed},
        {"version", set.version},  {"questions", std::move(list)}};
    document.colophon =
        fmt::format("Made by routeweigh {}; the same route, seed and version give the same questions.",
                    program_version());
    return document;
}

} // namespace routeweigh
