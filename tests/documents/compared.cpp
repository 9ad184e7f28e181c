// SPDX-License-Identifier: MIT
#include "documents/compared.hpp"

#include "app/session.hpp"

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <limits>
#include <sstream>
#include <stdexcept>

namespace routeweigh::test {
namespace {

Comparison compare_sources(const std::vector<SourcePtr>& sources, const std::string& baseline) {
    Problems problems;
    return compare_routes(read_routes(sources, Catalogue::embedded(), problems), baseline, shipped_rules());
}

class TextReader {
  public:
    std::string text;

    void read(const writing::Document& document) {
        add(document.title);
        add(document.subtitle);
        add(document.colophon);
        read(document.blocks);
    }
    void operator()(const writing::Heading& heading) { add(heading.text); }
    void operator()(const writing::Paragraph& paragraph) { add(paragraph.text); }
    void operator()(const writing::BulletList& list) {
        for (const writing::Text& item : list.items)
            add(item);
    }
    void operator()(const writing::KeyValueList& list) {
        for (const writing::KeyValue& entry : list.entries) {
            add(entry.key);
            add(entry.value);
        }
    }
    void operator()(const writing::Table& table) {
        add(table.caption);
        for (const writing::Column& column : table.columns) {
            add(column.heading);
            add(column.note);
        }
        for (const writing::Row& row : table.rows)
            for (const writing::Cell& cell : row.cells) {
                add(cell.text);
                add(cell.note);
            }
        for (const writing::Text& remark : table.remarks)
            add(remark);
    }
    void operator()(const writing::Figure& figure) {
        add(figure.caption);
        add(figure.alternative);
    }
    void operator()(const writing::Pictograms& row) {
        for (const std::string& code : row.codes)
            add(code);
    }
    void operator()(const writing::LabelSheet& sheet) {
        for (const writing::LabelSheet::Label& label : sheet.labels) {
            for (const std::string& piece :
                 {label.heading, label.name, label.contents, label.signal, label.statements})
                add(piece);
            for (const std::string& line : label.foot)
                add(line);
        }
    }
    void operator()(const writing::Caution& caution) {
        add(caution.title);
        for (const writing::Text& item : caution.items)
            add(item);
    }
    void operator()(const writing::Folded& folded) {
        add(folded.summary);
        read(folded.blocks);
    }

  private:
    void read(const std::vector<writing::Block>& blocks) {
        for (const writing::Block& block : blocks)
            std::visit(*this, block.content());
    }
    void add(const std::string& piece) { text += piece + "\n"; }
    void add(const writing::Text& piece) {
        for (const writing::Run& run : piece.runs)
            text += run.text;
        text += "\n";
    }
};

void collect_targets(const writing::Text& text, Anchors& anchors) {
    for (const writing::Run& run : text.runs)
        if (!run.target.empty()) anchors.targets.push_back(run.target);
}

} // namespace

const AssessmentRules& shipped_rules() {
    static const AssessmentRules read = read_assessment_rules(Catalogue::embedded());
    return read;
}

const std::vector<RouteSet>& shipped_sets() {
    static const std::vector<RouteSet> sets{{"4-bromoacetanilide", "A1"},
                                            {"adipic-acid", "E1"},
                                            {"ibuprofen", "six-step"},
                                            {"5-5-diphenylhydantoin", "D1a-D2c-D3a"},
                                            {"4-chloro-4-methoxychalcone", "H3"}};
    return sets;
}

Comparison compare_folder(const std::string& folder, const std::string& baseline) {
    const std::filesystem::path path = std::filesystem::path(ROUTEWEIGH_ROOT) / "routes" / folder;
    std::vector<std::filesystem::path> files;
    for (const auto& entry : std::filesystem::directory_iterator(path))
        if (entry.path().extension() == ".json") files.push_back(entry.path());
    std::sort(files.begin(), files.end());
    std::vector<SourcePtr> sources;
    for (const auto& file : files) {
        std::ostringstream text;
        text << std::ifstream(file).rdbuf();
        sources.push_back(make_source(file.filename().string(), text.str()));
    }
    return compare_sources(sources, baseline);
}

Comparison compare_texts(const std::vector<std::string>& texts) {
    std::vector<SourcePtr> sources;
    for (const std::string& text : texts)
        sources.push_back(make_source("test.json", text));
    return compare_sources(sources, {});
}

std::string text_of(const writing::Document& document) {
    TextReader reader;
    reader.read(document);
    return reader.text;
}

std::vector<writing::Table> tables_in(const std::vector<writing::Block>& blocks) {
    std::vector<writing::Table> tables;
    for (const writing::Block& block : blocks) {
        if (const auto* table = std::get_if<writing::Table>(&block.content())) tables.push_back(*table);
        if (const auto* folded = std::get_if<writing::Folded>(&block.content())) {
            const auto inner = tables_in(folded->blocks);
            tables.insert(tables.end(), inner.begin(), inner.end());
        }
    }
    return tables;
}

Anchors anchors_of(const std::vector<writing::Block>& blocks) {
    Anchors anchors;
    for (const writing::Block& block : blocks) {
        const auto& content = block.content();
        if (const auto* heading = std::get_if<writing::Heading>(&content))
            anchors.places.push_back(heading->anchor);
        if (const auto* paragraph = std::get_if<writing::Paragraph>(&content))
            collect_targets(paragraph->text, anchors);
        if (const auto* table = std::get_if<writing::Table>(&content)) {
            for (const writing::Text& remark : table->remarks)
                collect_targets(remark, anchors);
            for (const writing::Row& row : table->rows)
                for (const writing::Cell& cell : row.cells)
                    if (!cell.target.empty()) anchors.targets.push_back(cell.target);
        }
        if (const auto* folded = std::get_if<writing::Folded>(&content)) {
            anchors.places.push_back(folded->anchor);
            const Anchors inner = anchors_of(folded->blocks);
            anchors.places.insert(anchors.places.end(), inner.places.begin(), inner.places.end());
            anchors.targets.insert(anchors.targets.end(), inner.targets.begin(), inner.targets.end());
        }
    }
    return anchors;
}

const writing::MachineTree& member(const writing::MachineTree& tree, std::string_view name) {
    for (const writing::Member& entry : std::get<writing::MachineObject>(tree.value))
        if (entry.name == name) return entry.value;
    throw std::runtime_error("no member " + std::string(name));
}

double number_of(const writing::MachineTree& tree) {
    if (const auto* number = std::get_if<double>(&tree.value)) return *number;
    return std::numeric_limits<double>::quiet_NaN();
}

double figure_of(const writing::MachineTree& comparison, std::string_view route, std::string_view figure) {
    for (const auto& entry : std::get<writing::MachineList>(member(comparison, "routes").value)) {
        if (std::get<std::string>(member(entry, "id").value) != route) continue;
        for (const auto& found : std::get<writing::MachineList>(member(entry, "figures").value))
            if (std::get<std::string>(member(found, "id").value) == figure)
                return number_of(member(found, "value"));
    }
    throw std::runtime_error("no figure " + std::string(figure));
}

} // namespace routeweigh::test
