// SPDX-License-Identifier: MIT
#include "writing/markdown_writer.hpp"

#include "writing/caption_numbers.hpp"
#include "writing/chart_table.hpp"
#include "writing/escape.hpp"
#include "writing/label_sheet.hpp"
#include "writing/svg/pictogram.hpp"
#include "writing/table_layout.hpp"
#include "writing/wrap.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace routeweigh::writing {
namespace {

std::string inline_text(const Text& text) {
    std::string line;
    for (const Run& run : text.runs) {
        switch (run.tone) {
        case Tone::code:
            line += markdown_code(run.text, false);
            break;
        case Tone::strong: {
            // Two asterisks make strong text only when no space follows the first pair or precedes the
            // second.
            const auto first = run.text.find_first_not_of(' ');
            if (first == std::string::npos) break;
            const auto last = run.text.find_last_not_of(' ');
            line += (first > 0 ? " " : "") +
                    ("**" + markdown_escape(run.text.substr(first, last - first + 1)) + "**") +
                    (last + 1 < run.text.size() ? " " : "");
            break;
        }
        case Tone::plain:
        case Tone::number:
            line += markdown_escape(run.text);
            break;
        }
    }
    return line;
}

class MarkdownText {
  public:
    std::string print(const Document& document) {
        put("# " + markdown_escape(document.title));
        if (!document.subtitle.empty()) put(inline_text(document.subtitle));
        blocks(document.blocks);
        if (!document.colophon.empty()) {
            put("---");
            put(inline_text(document.colophon));
        }
        return out_;
    }

    void operator()(const Heading& heading) {
        const auto level = static_cast<std::size_t>(std::clamp(heading.level, 2, 6));
        put(std::string(level, '#') + " " + inline_text(heading.text));
    }

    void operator()(const Paragraph& paragraph) { put(inline_text(paragraph.text)); }

    void operator()(const BulletList& list) {
        std::string lines;
        int number = 0;
        for (const Text& item : list.items) {
            if (!lines.empty()) lines += '\n';
            lines += (list.numbered ? fmt::format("{}. ", ++number) : std::string("- ")) + inline_text(item);
        }
        put(lines);
    }

    void operator()(const KeyValueList& list) {
        std::string lines;
        for (const KeyValue& entry : list.entries) {
            if (!lines.empty()) lines += '\n';
            lines += "- **" + markdown_escape(entry.key) + "**: " + inline_text(entry.value);
        }
        put(lines);
    }

    void operator()(const Table& table) {
        if (!table.caption.empty()) put(numbered(numbers_.table(), table.caption));
        write_table(table);
    }

    void operator()(const Figure& figure) {
        put(numbered(numbers_.figure(), figure.caption));
        if (!figure.alternative.empty()) put(markdown_escape(figure.alternative));
        write_table(chart_table(figure.chart));
    }

    void operator()(const Pictograms& row) {
        std::string words;
        for (const std::string& code : row.codes)
            words += (words.empty() ? "Pictograms: " : ", ") + markdown_escape(pictogram_words(code));
        put(words);
    }

    void operator()(const LabelSheet& sheet) {
        for (const auto& [label, copies] : distinct_labels(sheet)) {
            std::string lines = fmt::format("**{}**{}", markdown_escape(label->name),
                                            copies > 1 ? fmt::format(" ({} labels)", copies) : std::string());
            for (const std::string& line : label_lines(*label))
                lines += "\n- " + markdown_escape(line);
            put(lines);
        }
    }

    void operator()(const Caution& caution) {
        std::string lines = "> **" + markdown_escape(caution.title) + "**\n>";
        for (const Text& item : caution.items)
            lines += "\n> - " + inline_text(item);
        put(lines);
    }

    void operator()(const Folded& folded) {
        put(std::string(folded.open ? "<details open>" : "<details>") + "\n<summary>" +
            html_escape(plain(folded.summary)) + "</summary>");
        numbers_.enter_fold();
        blocks(folded.blocks);
        numbers_.leave_fold();
        put("</details>");
    }

  private:
    void blocks(const std::vector<Block>& list) {
        for (const Block& block : list)
            std::visit(*this, block.content());
    }

    void put(const std::string& paragraph) {
        if (paragraph.empty()) return;
        if (!out_.empty()) out_ += '\n';
        out_ += paragraph + '\n';
    }

    static std::string numbered(const std::string& label, const std::string& caption) {
        return (label.empty() ? "" : "**" + label + "** ") + markdown_escape(caption);
    }

    static std::string cell_text(const Cell& cell, const TableNotes& notes, bool baseline) {
        std::string words = markdown_escape(cell_words(cell, "\u2265", "\u2013"));
        if (baseline || cell.mark == Mark::baseline) words += " (baseline)";
        if (!cell.note.empty()) words += " \\[" + notes.letter(cell.note) + "\\]";
        return words;
    }

    void write_table(const Table& table) {
        const TableNotes notes(table);
        std::string head = "|";
        std::string rule = "|";
        for (const Column& column : table.columns) {
            std::string words = markdown_escape(column.heading);
            if (!column.unit.empty()) words += " (" + markdown_escape(column.unit) + ")";
            if (column.baseline) words += " (baseline)";
            if (!column.note.empty()) words += " \\[" + notes.letter(column.note) + "\\]";
            head += " " + words + " |";
            rule += column.align == Align::left ? " --- |" : " ---: |";
        }
        std::string lines = head + "\n" + rule;
        for (const Row& row : table.rows) {
            lines += "\n|";
            for (std::size_t i = 0; i < table.columns.size(); ++i) {
                const Cell cell = i < row.cells.size() ? row.cells[i] : Cell();
                std::string words = cell_text(cell, notes, row.kind == RowKind::baseline && i == 0);
                const bool strong = row.kind == RowKind::group || row.kind == RowKind::total;
                if (strong && words.find_first_not_of(' ') != std::string::npos) words = "**" + words + "**";
                lines += " " + words + " |";
            }
        }
        put(lines);
        std::string below;
        for (const Text& remark : table.remarks)
            below += (below.empty() ? "" : "\n") + ("- " + inline_text(remark));
        for (std::size_t i = 0; i < notes.notes().size(); ++i) {
            below += (below.empty() ? "" : "\n") + fmt::format("- \\[{}\\] {}", TableNotes::letter_at(i),
                                                               markdown_escape(notes.notes()[i]));
        }
        put(below);
    }

    std::string out_;
    CaptionNumbers numbers_;
};

} // namespace

std::string write_markdown(const Document& document, const WriteOptions&) {
    return MarkdownText().print(document);
}

} // namespace routeweigh::writing
