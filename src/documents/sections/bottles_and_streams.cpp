// SPDX-License-Identifier: MIT
// Bottles and streams: what each route opens and leaves, with signal word and statements, so that one sees
// what arrives where something left.
#include "assess/classified_route.hpp"
#include "base/text.hpp"
#include "documents/classified_mixture.hpp"
#include "documents/number.hpp"
#include "documents/sections/sections.hpp"
#include "documents/words.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <map>
#include <set>
#include <utility>

namespace routeweigh::documents {
namespace {

/// A material with the routes that open a bottle of it.
struct Opened {
    const Material* material;
    const MixtureClassification* classification;
    std::vector<bool> by; ///< route
    std::size_t count() const { return static_cast<std::size_t>(std::count(by.begin(), by.end(), true)); }
};

std::vector<Opened> opened_bottles(const ReportView& view) {
    std::vector<Opened> all;
    for (std::size_t r = 0; r < view.routes.size(); ++r)
        for (const ClassifiedBottle& bottle : view.routes[r].classified.bottles) {
            if (!bottle.made_in.empty()) continue; // nobody opens a bottle of it
            auto found = std::find_if(all.begin(), all.end(),
                                      [&](const Opened& other) { return other.material == bottle.material; });
            if (found == all.end()) {
                all.push_back(
                    {bottle.material, &bottle.classification, std::vector<bool>(view.routes.size())});
                found = std::prev(all.end());
            }
            found->by[r] = true;
        }
    // What most routes open stands last: what sets them apart is read first.
    std::stable_sort(all.begin(), all.end(),
                     [](const Opened& a, const Opened& b) { return a.count() < b.count(); });
    return all;
}

std::vector<std::string> routes_of(const Opened& opened, const ReportView& view) {
    std::vector<std::string> ids;
    for (std::size_t r = 0; r < view.routes.size(); ++r)
        if (opened.by[r]) ids.push_back(view.routes[r].id);
    return ids;
}

std::string where(const Opened& opened, const ReportView& view) {
    return opened.count() == view.routes.size() ? std::string("all") : join(routes_of(opened, view), ", ");
}

std::string with_codes(const std::string& name, const MixtureClassification& classification) {
    return fmt::format("{} ({}; {})", name, signal_word(classification), statement_codes(classification));
}

writing::Table bottle_table(const std::vector<Opened>& all, const ReportView& view) {
    writing::Table table;
    table.caption = "Bottles opened: signal word, statements, and the routes that open them (x)";
    table.columns = {{.heading = "bottle"}, {.heading = "statements"}};
    for (const RouteView& route : view.routes)
        table.columns.push_back(route.column());
    std::vector<std::string> quiet;
    for (const char* signal : {"Danger", "Warning"}) {
        bool first = true;
        for (const Opened& opened : all) {
            if (opened.classification->label.signal != signal) continue;
            if (std::exchange(first, false)) table.rows.push_back(writing::group(signal));
            writing::Row row{opened.material->name, statement_codes(*opened.classification)};
            for (const bool opens : opened.by)
                row.cells.emplace_back(opens ? "x" : "");
            table.rows.push_back(std::move(row));
        }
    }
    for (const Opened& opened : all) {
        if (!opened.classification->label.signal.empty()) continue;
        const std::string codes = statement_codes(*opened.classification);
        std::string name = opened.material->name;
        if (codes != "none" && codes != "unknown") name += " " + codes;
        if (opened.classification->unassessed_percent > 0) name += " (not assessed)";
        quiet.push_back(fmt::format("{} [{}]", name, where(opened, view)));
    }
    if (!quiet.empty())
        table.remarks.push_back(writing::Text("Without a signal word: " + join(quiet, "; ") + "."));
    return table;
}

/// What the baseline alone opens, and what opens in its place.
void add_exchange(const std::vector<Opened>& all, const ReportView& view, Blocks& blocks) {
    std::vector<std::string> left, arrived;
    for (const Opened& opened : all) {
        if (opened.classification->label.signal != "Danger") continue;
        const bool in_baseline = opened.by[view.baseline_index];
        const std::string words = with_codes(opened.material->name, *opened.classification);
        if (in_baseline && opened.count() == 1) left.push_back(words);
        if (!in_baseline) arrived.push_back(fmt::format("{} in {}", words, where(opened, view)));
    }
    if (!left.empty())
        blocks.push_back(writing::Paragraph{
            writing::Text(fmt::format("Only {} opens {}.", view.baseline().id, listed(left)))});
    if (arrived.empty()) return;
    blocks.push_back(writing::Paragraph{writing::Text(fmt::format(
        "Bottles of the signal word Danger that {} does not open, and others do:", view.baseline().id))});
    std::vector<writing::Text> items(arrived.begin(), arrived.end());
    blocks.push_back(writing::BulletList{std::move(items)});
}

std::string stream_words(const ClassifiedStream& stream, const MixtureClassification& classification) {
    const std::string codes = statement_codes(classification);
    return codes == "none" ? stream.stream.title : stream.stream.title + " " + codes;
}

/// Streams of one route under their signal word; a stream whose readings differ stands under the worse.
writing::Row stream_row(const RouteView& route) {
    std::map<std::string, std::vector<std::string>> by_signal;
    for (const ClassifiedStream& stream : route.classified.streams) {
        if (stream.stream.stays_on_product()) continue;
        const MixtureClassification* worst = &stream.first().classification;
        std::string note;
        if (stream.readings_differ()) {
            const MixtureClassification& other = stream.unreacted->classification;
            const bool other_is_worse = worst->label.signal != "Danger" && !other.label.signal.empty();
            note = fmt::format(" (or {}, if the loss never reacted)", statement_codes(other));
            if (other_is_worse) {
                note = fmt::format(" (or {}, if the loss is product)", statement_codes(*worst));
                worst = &other;
            }
        }
        by_signal[worst->label.signal].push_back(stream_words(stream, *worst) + note);
    }
    std::vector<writing::Cell> cells{route.head()};
    for (const char* signal : {"Danger", "Warning", ""})
        cells.emplace_back(join(by_signal[signal], "; "));
    return writing::Row(std::move(cells), route.row_kind());
}

writing::Folded stream_details(const RouteView& route) {
    writing::Folded fold{writing::Text(fmt::format("Streams of {}, with what is not assessed", route.id)),
                         {}};
    writing::Table table;
    table.caption = fmt::format("Streams of {} as mixtures, one run of their step", route.id);
    table.columns = {{.heading = "stream"},
                     {.heading = "left", .align = writing::Align::decimal, .unit = "g"},
                     {.heading = "classes"},
                     {.heading = "not assessed", .align = writing::Align::decimal, .unit = "%"},
                     {.heading = "a test decides"},
                     {.heading = "paired off before"}};
    for (const ClassifiedStream& stream : route.classified.streams) {
        const ClassifiedReading& reading = stream.first();
        std::vector<std::string> tests, pairs;
        for (const MixtureResult& result : reading.classification.results)
            if (result.outcome == MixtureOutcome::test_needed) tests.emplace_back(result.title);
        for (const streams::PairingStep& step : reading.paired.steps)
            pairs.push_back(step.equation);
        const std::string classes = classes_text(reading.classification);
        table.rows.push_back({stream.stream.title, digits_cell(reading.grams),
                              classes.empty() ? "none" : classes,
                              writing::Cell(unassessed_text(reading.classification),
                                            reading.classification.unassessed_percent),
                              join(tests, "; "), join(pairs, "; ")});
    }
    fold.blocks.push_back(std::move(table));
    return fold;
}

writing::Folded statement_texts(const ReportView& view) {
    std::set<std::string> codes;
    const auto collect = [&](const MixtureClassification& classification) {
        codes.insert(classification.label.statements.begin(), classification.label.statements.end());
        codes.insert(classification.label.supplemental.begin(), classification.label.supplemental.end());
    };
    for (const RouteView& route : view.routes) {
        for (const ClassifiedBottle& bottle : route.classified.bottles)
            collect(bottle.classification);
        for (const ClassifiedStream& stream : route.classified.streams)
            for (const auto* reading : {&stream.nominal, &stream.unreacted})
                if (*reading) collect((*reading)->classification);
    }
    writing::KeyValueList list;
    for (const std::string& code : codes) {
        std::string text(view.classification.mixture.labels.text(code));
        if (const std::size_t gap = text.find("{}"); gap != std::string::npos)
            text.replace(gap, 2, "the sensitiser");
        list.entries.push_back({code, writing::Text(text)});
    }
    writing::Folded fold{"What the statements say", {}};
    fold.blocks.push_back(std::move(list));
    return fold;
}

} // namespace

void add_bottles_and_streams(const ReportView& view, Blocks& blocks) {
    blocks.push_back(writing::Paragraph{writing::Text(
        judged_by(view.classification.mixture) +
        " Bottles are judged from what the catalogue says they hold, streams from what the ledger "
        "says they carry.")});
    const std::vector<Opened> all = opened_bottles(view);
    if (!view.single()) add_exchange(all, view, blocks);
    blocks.push_back(bottle_table(all, view));
    writing::Table streams;
    streams.caption = "Streams by signal word, with their statements";
    streams.columns = {
        {.heading = "route"}, {.heading = "Danger"}, {.heading = "Warning"}, {.heading = "no signal word"}};
    for (const RouteView& route : view.routes)
        streams.rows.push_back(stream_row(route));
    streams.remarks = {
        "Water poured into a stream takes classes away and no gram of hazard with them; that is why "
        "no route is ranked by the classes of its streams."};
    blocks.push_back(std::move(streams));
    blocks.push_back(statement_texts(view));
    for (const RouteView& route : view.routes)
        blocks.push_back(stream_details(route));
    blocks.push_back(standing_of_classification(true));
}

} // namespace routeweigh::documents
