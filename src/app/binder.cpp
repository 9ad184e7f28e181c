// SPDX-License-Identifier: MIT
#include "app/binder.hpp"

#include "app/classification.hpp"
#include "app/labels_session.hpp"
#include "app/what_if.hpp"
#include "assess/bench/experiment.hpp"
#include "documents/bench_sheet.hpp"
#include "documents/cautions.hpp"
#include "documents/costs_document.hpp"
#include "documents/question_sheet.hpp"
#include "documents/route_workbook.hpp"
#include "documents/stock_list_document.hpp"
#include "documents/talk_card.hpp"
#include "documents/term_document.hpp"
#include "documents/version.hpp"
#include "documents/waste/waste_document.hpp"
#include "documents/words.hpp"
#include "input/file_kind.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cctype>
#include <utility>

namespace routeweigh {
namespace {

using documents::Edition;

bool stands_alone(const course::Experiment& experiment) {
    return experiment.week == 0;
}

/// "week-05-a3/": letters and digits of the id only, so that no id leaves the folder; "" of one that stands
/// alone.
std::string folder_of(const course::Experiment& experiment) {
    if (stands_alone(experiment)) return {};
    std::string folder = fmt::format("week-{:02}-", experiment.week);
    for (const char letter : experiment.use.route->route().id) {
        const auto byte = static_cast<unsigned char>(letter);
        folder += std::isalnum(byte) != 0 && byte < 128 ? static_cast<char>(std::tolower(byte)) : '-';
    }
    return folder + "/";
}

class Binder {
  public:
    explicit Binder(const Course& course)
        : course_(course), bench_rules_(course.house().catalogue, course.house().waste.local) {}

    std::vector<BinderPage> make() {
        if (!is_single())
            add("term.html", "The term", term_document(course_.use(), nullptr, course_.house()));
        for (const course::Experiment& experiment : course_.use().experiments)
            add_experiment(experiment);
        pages_.insert(pages_.begin(), {"index.html", "Contents", index()});
        return std::move(pages_);
    }

  private:
    bool is_single() const { return stands_alone(course_.use().experiments.front()); }

    void add(std::string path, std::string title,
             std::variant<writing::Document, writing::Workbook> content) {
        pages_.push_back({std::move(path), std::move(title), std::move(content)});
    }

    void add_experiment(const course::Experiment& experiment) {
        const std::string folder = folder_of(experiment);
        const course::ClassUse& use = experiment.use;
        const Assessment& route = *use.route;
        const bench::Experiment laid_out(route, bench_rules_);
        const auto improvements = waste_improvements_of(route);
        const auto questions = documents::make_questions(laid_out, improvements ? &*improvements : nullptr,
                                                         std::max(experiment.week, 1), 1);
        add(folder + "bench-sheet.html", "Bench sheet for students", bench_sheet(laid_out, Edition::student));
        add(folder + "bench-sheet-key.html", "Bench sheet with the key", bench_sheet(laid_out, Edition::key));
        add(folder + "questions.html", "Questions", question_sheet(laid_out, questions, Edition::student));
        add(folder + "questions-key.html", "Questions with the key",
            question_sheet(laid_out, questions, Edition::key));
        add(folder + "talk-card.html", "Talk card", talk_card(laid_out));
        add(folder + "stock.html", "Stock list",
            stock_list_document(laid_out, use.stock, course_.house().prices, {}));
        LabelRequest labels;
        labels.size = {use.plan.students, use.plan.sections, "0 %", {}};
        labels.local = course_.house().waste.local;
        if (!is_single()) labels.course = course_.use().title;
        add(folder + "labels.html", "Labels", labels_document(route, labels, course_.house().catalogue));
        const std::vector<streams::ContainerLog> logs;
        add(folder + "waste.html", "Waste plan",
            waste_document({&course_.house().waste, &logs, {&use.waste, 1}, use.runs(), 1.0}));
        add(folder + "hazards.html", "Hazards of bottles and streams",
            classify_routes({route.route()}, course_.house().catalogue,
                            {bench::regime_of(course_.house().waste.local), {}}));
        add(folder + "costs.html", "Time, energy, water and money", costs_document(use, course_.house()));
        add(folder + "workbook.xlsx", "Workbook", route_workbook(use, course_.house()));
    }

    writing::Document index() const {
        const course::CourseUse& course = course_.use();
        writing::Document document;
        document.id = "index";
        document.title = is_single() ? course.title : fmt::format("{}, {}", course.title, course.term);
        document.subtitle = is_single() ? class_words() : course.college;
        std::string folder;
        writing::KeyValueList list;
        const auto flush = [&document, &list] {
            if (!list.entries.empty()) document.blocks.push_back(std::move(list));
            list = {};
        };
        for (const BinderPage& page : pages_) {
            const std::string::size_type slash = page.path.find('/');
            const std::string here = slash == std::string::npos ? "" : page.path.substr(0, slash + 1);
            if (here != folder) {
                flush();
                for (const course::Experiment& experiment : course.experiments)
                    if (folder_of(experiment) == here)
                        document.blocks.push_back(
                            writing::Heading{2, fmt::format("Week {}: {}, {}", experiment.week,
                                                            experiment.use.route->route().product->name,
                                                            experiment.use.route->route().title)});
                folder = here;
            }
            list.entries.push_back({page.title, writing::Run(page.path, writing::Tone::file)});
        }
        flush();
        document.blocks.push_back(documents::usual_cautions());
        document.colophon =
            fmt::format("Made by routeweigh {} from the {} file; the same files give the same binder.",
                        program_version(), is_single() ? "route" : "course");
        return document;
    }

    /// Of a single experiment: what is made, and for whom the amounts are.
    std::string class_words() const {
        const course::ClassUse& use = course_.use().experiments.front().use;
        return fmt::format(
            "{}, route {}; {} of {}", use.route->route().product->name, use.route->route().id,
            documents::counted(static_cast<std::size_t>(use.plan.sections), "section", "sections"),
            documents::counted(static_cast<std::size_t>(use.plan.students), "student", "students"));
    }

    const Course& course_;
    bench::BenchRules bench_rules_;
    std::vector<BinderPage> pages_;
};

} // namespace

std::vector<BinderPage> make_binder(const Course& course) {
    return Binder(course).make();
}

bool is_route_file(const SourcePtr& source) {
    Problems none; // nothing is read but its keys
    const Document document = Document::parse(source);
    return is_kind(document.root(none), FileKind::route);
}

} // namespace routeweigh
