// SPDX-License-Identifier: MIT
#include "app/export/question_export.hpp"
#include "app/what_if.hpp"
#include "documents/compared.hpp"
#include "documents/papers.hpp"
#include "documents/question_sheet.hpp"

#include <doctest/doctest.h>
#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <map>
#include <memory>
#include <regex>
#include <set>
#include <utility>

namespace routeweigh {
namespace {

using documents::Question;
using documents::QuestionSet;

const Question* find(const QuestionSet& set, std::string_view id) {
    for (const Question& question : set.questions)
        if (question.id == id) return &question;
    return nullptr;
}

/// Questions of a route, whose improvements are looked for once.
class Asking {
  public:
    explicit Asking(std::unique_ptr<LaidOutRoute> route)
        : route_(std::move(route)), improvements_(waste_improvements_of(experiment().assessment())) {}
    QuestionSet operator()(int seed, int version) const {
        return documents::make_questions(experiment(), improvements_ ? &*improvements_ : nullptr, seed,
                                         version);
    }
    const bench::Experiment& experiment() const { return route_->experiment(); }
    const std::optional<Improvements>& improvements() const { return improvements_; }

  private:
    std::unique_ptr<LaidOutRoute> route_;
    std::optional<Improvements> improvements_;
};

/// Of a file of routes/, laid out once for all tests.
const Asking& asking(const std::string& file) {
    static std::map<std::string, std::unique_ptr<Asking>> known;
    std::unique_ptr<Asking>& found = known[file];
    if (found == nullptr) found = std::make_unique<Asking>(test::lay_out_file(file));
    return *found;
}

/// All numbers of a text, in their order.
std::vector<double> numbers_in(const std::string& text) {
    static const std::regex number(R"((^|[^\w.])(\d+(?:\.\d+)?))");
    std::vector<double> found;
    for (auto it = std::sregex_iterator(text.begin(), text.end(), number); it != std::sregex_iterator(); ++it)
        found.push_back(std::stod((*it)[2]));
    return found;
}

namespace {

std::size_t times(const std::string& text, const std::string& part) {
    std::size_t count = 0;
    for (std::size_t at = text.find(part); at != std::string::npos; at = text.find(part, at + part.size()))
        ++count;
    return count;
}

} // namespace

TEST_CASE("every question has one right answer, and mistakes that lead elsewhere") {
    std::set<std::string> kinds;
    for (const std::string& file : test::shipped_routes()) {
        const Asking& ask = asking(file);
        for (int version = 1; version <= 4; ++version) {
            const QuestionSet set = ask(2026, version);
            CHECK(set.questions.size() >= 4);
            for (const Question& question : set.questions) {
                CAPTURE(file);
                CAPTURE(version);
                CAPTURE(question.id);
                kinds.insert(question.id);
                CHECK(question.text.size() > 20);
                if (question.is_choice()) {
                    CHECK(std::count_if(question.choices.begin(), question.choices.end(),
                                        [](const auto& choice) { return choice.right; }) == 1);
                    CHECK(question.choices.size() >= 2);
                    for (const documents::Choice& choice : question.choices)
                        CHECK(choice.right == choice.why.empty());
                    std::set<std::string> texts;
                    for (const documents::Choice& choice : question.choices)
                        texts.insert(choice.text);
                    CHECK(texts.size() == question.choices.size());
                    continue;
                }
                CHECK(std::isfinite(question.answer));
                CHECK(question.answer > 0);
                std::vector<double> all{question.answer};
                for (const documents::WrongAnswer& wrong : question.wrong)
                    all.push_back(wrong.value);
                for (std::size_t i = 0; i < all.size(); ++i)
                    for (std::size_t j = 0; j < i; ++j) // no answer lies within the tolerance of two
                        CHECK(std::abs(all[i] - all[j]) >
                              Question::tolerance * (std::abs(all[i]) + std::abs(all[j])) * 0.999);
            }
        }
    }
    // Every kind is asked of some shipped route.
    CHECK(kinds.size() == documents::all_question_kinds().size());
}

TEST_CASE("the question for a container names one stream, and no other stream of that name goes elsewhere") {
    std::size_t of_several_steps = 0;
    for (const std::string& file : test::shipped_routes()) {
        const Asking& ask = asking(file);
        for (int version = 1; version <= 12; ++version) {
            const QuestionSet set = ask(2026, version);
            const Question* question = find(set, "container");
            if (question == nullptr) continue;
            CAPTURE(file);
            CAPTURE(question->text);
            std::size_t named = 0;
            for (const streams::StreamAdvice& advice : ask.experiment().waste().streams)
                if (times(question->text, "\"" + advice.stream.title + "\"") == 1) {
                    ++named;
                    CHECK(question->working.front() == advice.decision.summary);
                }
            CHECK(named == 1);
            of_several_steps += ask.experiment().steps().size() > 1 ? 1U : 0U;
        }
    }
    CHECK(of_several_steps > 20);
}

TEST_CASE("what is said of a wrong choice of the limiting reagent is true") {
    const std::string_view mass = "the smallest mass of pure substance was taken for the smallest amount",
                           moles = "the smallest amount was taken without its coefficient";
    std::size_t by_mass = 0, by_moles = 0;
    for (const std::string& file : test::shipped_routes()) {
        const Asking& ask = asking(file);
        for (int version = 1; version <= 4; ++version) {
            const QuestionSet set = ask(2026, version);
            const Question* question = find(set, "limiting_reagent");
            if (question == nullptr) continue;
            CAPTURE(file);
            CAPTURE(version);
            // "acetanilide: 10.00 mmol / 1 = 10.00 mmol"
            std::string lightest, fewest;
            double least_mass = 1e9, least_moles = 1e9;
            for (const std::string& line : question->working) {
                const std::string name = line.substr(0, line.rfind(": "));
                const double amount = numbers_in(line.substr(line.rfind(": ") + 1))[0];
                const double grams = amount * Catalogue::embedded().find_substance(name)->molar_mass;
                if (grams < least_mass) {
                    least_mass = grams;
                    lightest = name;
                }
                if (amount < least_moles) {
                    least_moles = amount;
                    fewest = name;
                }
            }
            for (const documents::Choice& choice : question->choices) {
                const bool of_mass = choice.why.find(mass) != std::string::npos,
                           of_moles = choice.why.find(moles) != std::string::npos;
                by_mass += of_mass ? 1 : 0;
                by_moles += of_moles ? 1 : 0;
                CHECK((!of_mass || choice.text == lightest));
                CHECK((!of_moles || choice.text == fewest));
                CHECK(choice.why.find("smallest mass was") == std::string::npos);
            }
        }
    }
    CHECK(by_mass > 3);
    CHECK(by_moles > 0);
}

TEST_CASE("the best single change is asked wherever one is clearly best, with the figures of improve") {
    // Equivalents, loading and yield are for students to work out: no choice names them.
    const auto may_stand = [](const Improvement& entry) {
        const std::string_view kind = entry.candidate.kind;
        return kind != "excess" && kind != "catalyst" && kind != "better_yield";
    };
    std::size_t asked = 0;
    for (const std::string& file : test::shipped_routes()) {
        CAPTURE(file);
        const Asking& ask = asking(file);
        const QuestionSet set = ask(1, 1);
        const Question* question = find(set, "best_change");
        std::vector<const Improvement*> all;
        if (ask.improvements())
            for (const auto* list : {&ask.improvements()->ranked, &ask.improvements()->no_help})
                for (const Improvement& entry : *list)
                    if (may_stand(entry)) all.push_back(&entry);
        const Improvement* best = nullptr;
        for (const Improvement* entry : all)
            if (best == nullptr || entry->gain > best->gain) best = entry;
        const double clear = ask.improvements() ? 0.01 * ask.improvements()->value : 0;
        const bool another = std::any_of(all.begin(), all.end(), [&](const Improvement* entry) {
            return entry != best && best->gain - entry->gain >= clear;
        });
        CHECK((question != nullptr) == (best != nullptr && best->gain >= clear && another));
        if (question == nullptr) continue;
        ++asked;
        CHECK(question->right().text == best->candidate.what);
        for (const documents::Choice& choice : question->choices) {
            const auto named = std::find_if(all.begin(), all.end(), [&](const Improvement* entry) {
                return entry->candidate.what == choice.text;
            });
            REQUIRE(named != all.end());
            if (!choice.right) CHECK(best->gain - (*named)->gain >= clear);
        }
    }
    CHECK(asked >= 15);
}

TEST_CASE("the same seed and version give the same questions, another version other numbers") {
    const Asking& ask = asking("4-bromoacetanilide/A3.json");
    const auto texts = [&](int seed, int version) {
        std::string all;
        for (const Question& question : ask(seed, version).questions)
            all += question.text + question.answer_text() + "\n";
        return all;
    };
    CHECK(texts(7, 1) == texts(7, 1));
    CHECK(texts(7, 1) != texts(7, 2));
    CHECK(texts(7, 1) != texts(8, 1));
}

TEST_CASE("the answer follows from the numbers of the question alone") {
    std::size_t checked = 0;
    for (const std::string& file : test::shipped_routes()) {
        const Asking& ask = asking(file);
        for (int version = 1; version <= 3; ++version) {
            const QuestionSet set = ask(1, version);
            if (const Question* question = find(set, "solution")) {
                // Names hold numbers too ("hydrobromic acid 48 %"): the last four are volume's companions.
                const auto numbers = numbers_in(question->text);
                REQUIRE(numbers.size() >= 4);
                const std::size_t n = numbers.size();
                const double expected =
                    numbers_in(question->text.substr(question->text.find(" are in ")))[0] * numbers[n - 2] *
                    numbers[n - 3] / 100 / numbers[n - 1] * 1000;
                CAPTURE(question->text);
                CHECK(question->answer == doctest::Approx(expected).epsilon(0.006));
                ++checked;
            }
            if (const Question* question = find(set, "hydrate")) {
                const auto numbers = numbers_in(question->text);
                REQUIRE(numbers.size() >= 4);
                const std::size_t n =
                    numbers.size(); // grams first; dry molar mass, waters, 18.015, "one mol"
                CAPTURE(question->text);
                CHECK(question->answer ==
                      doctest::Approx(1000 * numbers[0] / (numbers[n - 3] + numbers[n - 2] * numbers[n - 1]))
                          .epsilon(0.006));
                ++checked;
            }
            if (const Question* question = find(set, "waste_per_gram")) {
                const auto numbers = numbers_in(question->text);
                REQUIRE(numbers.size() >= 2);
                CAPTURE(question->text);
                CHECK(question->answer ==
                      doctest::Approx((numbers[0] - numbers[1]) / numbers[1]).epsilon(0.006));
                ++checked;
            }
        }
    }
    CHECK(checked > 40);
}

// By hand for route A3: 10.00 mmol of acetanilide limit while 12.50 mmol of HBr and 13.00 mmol of peroxide
// are there, so m g of 4-bromoacetanilide are m / 2.141 of theory; divided by 1.352 g of acetanilide they
// would seem 58 % more.
TEST_CASE("percent yield and its mass-ratio mistake agree with a sum by hand") {
    const Asking& ask = asking("4-bromoacetanilide/A3.json");
    const Question* question = nullptr;
    const QuestionSet set = ask(3, 1);
    question = find(set, "percent_yield");
    REQUIRE(question != nullptr);
    const double grams = numbers_in(question->text).front();
    CHECK(question->answer == doctest::Approx(100 * grams / 2.141).epsilon(0.002));
    const bool told = std::any_of(question->wrong.begin(), question->wrong.end(), [&](const auto& wrong) {
        return std::abs(wrong.value - 100 * grams / 1.3517) < 0.01;
    });
    CHECK(told);
}

TEST_CASE("the key of the yield over all steps is the yield of the route with those yields") {
    for (const char* const file : {"4-chloro-4-methoxychalcone/convergent.json", "ibuprofen/three-step.json",
                                   "ibuprofen/six-step.json"}) {
        CAPTURE(file);
        const Asking& ask = asking(file);
        const Assessment& route = ask.experiment().assessment();
        std::vector<double> yields;
        for (const bench::BenchStep& step : ask.experiment().steps())
            yields.push_back(step.theory.yield());
        const std::vector<int> line = route.flat().scale_plan().longest_sequence(yields);
        const QuestionSet set = ask(2026, 1);
        const Question* question = find(set, "overall_yield");
        REQUIRE(question != nullptr);
        const std::string give = " give ";
        const std::vector<double> asked = numbers_in(question->text.substr(question->text.find(give)));
        REQUIRE(asked.size() == line.size());
        RouteChange change;
        Problems problems;
        for (std::size_t i = 0; i < line.size(); ++i)
            change.places.push_back(read_assignment(
                fmt::format("/steps/{}/isolated/yield={:g} %", line[i], asked[i]), route.route(), problems));
        const Assessment changed(
            read_changed(changed_source(route.route(), change), Catalogue::embedded(), problems),
            test::shipped_rules());
        CHECK(question->answer == doctest::Approx(changed.metric("yield")).epsilon(1e-9));
    }
}

TEST_CASE("the sheet for students holds no answer, no working and no mistake") {
    for (const std::string& file : test::shipped_routes()) {
        CAPTURE(file);
        const Asking& ask = asking(file);
        const QuestionSet set = ask(5, 2);
        const std::string student =
            test::in_every_format(question_sheet(ask.experiment(), set, documents::Edition::student));
        const std::string key =
            test::in_every_format(question_sheet(ask.experiment(), set, documents::Edition::key));
        for (const Question& question : set.questions) {
            CAPTURE(question.id);
            for (const std::string& line : question.working) {
                CHECK(student.find(line) == std::string::npos);
                CHECK(key.find(line) != std::string::npos);
            }
            for (const documents::WrongAnswer& wrong : question.wrong)
                CHECK(student.find(wrong.mistake) == std::string::npos);
            if (question.is_choice()) continue;
            // The same number may be given in another question, so the key holds it oftener than the sheet.
            std::string answer = question.answer_text();
            CHECK(times(key, answer) > times(student, answer));
            if (const std::size_t space = answer.find("\u00A0"); space != std::string::npos)
                answer.replace(space, 2, " ");
            CHECK(times(student, answer) <= times(key, answer));
        }
        CHECK(student.find("\"right\"") == std::string::npos);
        CHECK(student.find("\"answer\"") == std::string::npos);
    }
}

TEST_CASE("exports write one item a question and escape every name") {
    std::string text = test::text_of_route("4-bromoacetanilide/A3.json");
    const std::string name = "filtrate and washes";
    for (std::size_t at = 0; (at = text.find(name, at)) != std::string::npos;)
        text.replace(at, name.size(), "<b>&</b>]]>");
    const Asking ask(test::lay_out_text(text));
    const QuestionSet set = ask(1, 1);
    const auto files = export_qti(set);
    CHECK(files.size() == set.questions.size() + 1);
    for (const ExportedFile& file : files)
        CHECK(file.text.find("<b>") == std::string::npos);
    CHECK(export_moodle_xml(ask.experiment(), set).find("<b>") == std::string::npos);
}

TEST_CASE("questions as rows: one each, with the answers in the key alone") {
    for (const std::string& file : test::shipped_routes()) {
        CAPTURE(file);
        const Asking& ask = asking(file);
        const QuestionSet set = ask(1, 1);
        const writing::DataRows student =
            question_sheet(ask.experiment(), set, documents::Edition::student).rows;
        const writing::DataRows key = question_sheet(ask.experiment(), set, documents::Edition::key).rows;
        CHECK(student.columns ==
              std::vector<std::string>{"number", "kind", "when", "text", "choices", "unit"});
        REQUIRE(key.columns.size() == student.columns.size() + 2);
        REQUIRE(student.rows.size() == set.questions.size());
        REQUIRE(key.rows.size() == set.questions.size());
        for (std::size_t i = 0; i < set.questions.size(); ++i) {
            const Question& question = set.questions[i];
            CHECK(std::get<double>(key.rows[i].at(0)) == static_cast<double>(i + 1));
            CHECK(std::get<std::string>(key.rows[i].at(1)) == question.id);
            CHECK(std::equal(student.rows[i].begin(), student.rows[i].end(), key.rows[i].begin()));
            CHECK(student.rows[i].size() == student.columns.size());
            if (!question.is_choice()) {
                CHECK(std::get<double>(key.rows[i].at(6)) == question.answer);
                CHECK(std::get<double>(key.rows[i].at(7)) == Question::tolerance);
                continue;
            }
            // The letter of the key stands before the right choice in the text of both.
            const std::string right = std::get<std::string>(key.rows[i].at(6));
            CHECK(std::get<std::string>(student.rows[i].at(4)).find(right + ". " + question.right().text) !=
                  std::string::npos);
        }
    }
}

} // namespace
} // namespace routeweigh
