// SPDX-License-Identifier: MIT
#include "writing/terminal_writer.hpp"

#include "writing/caption_numbers.hpp"
#include "writing/chart_text.hpp"
#include "writing/escape.hpp"
#include "writing/ink.hpp"
#include "writing/label_sheet.hpp"
#include "writing/svg/pictogram.hpp"
#include "writing/terminal_table.hpp"
#include "writing/utf8.hpp"
#include "writing/wrap.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace routeweigh::writing {
namespace {

class TerminalText {
  public:
    explicit TerminalText(const WriteOptions& options)
        : ink_{options.colour}, width_(std::max(options.width, 40)), unfold_(options.unfold),
          unfold_by_(options.unfold_by) {}

    std::string print(const Document& document) {
        underlined(document.title, '=');
        if (!document.subtitle.empty()) text(document.subtitle);
        blocks(document.blocks);
        if (folded_away_) {
            blank();
            text((unfold_by_.empty()
                      ? "Lines marked [+] are folded here"
                      : "Lines marked [+] are folded; " + unfold_by_ + " prints them in full") +
                 "; the other formats hold them whole.");
        }
        if (!document.colophon.empty()) {
            blank();
            for (const Line& line : wrap(document.colophon, width_))
                put(ink_.dim(styled(line, false)));
        }
        return out_;
    }

    void operator()(const Heading& heading) {
        blank();
        if (heading.level <= 2) {
            underlined(plain(heading.text), '-');
        } else {
            for (const std::string& line : wrap_plain(plain(heading.text), width_))
                put(ink_.bold(line));
        }
    }

    void operator()(const Paragraph& paragraph) {
        blank();
        text(paragraph.text, "", paragraph.small_print);
    }

    void operator()(const BulletList& list) {
        blank();
        int number = 0;
        for (const Text& item : list.items)
            text(item, list.numbered ? fmt::format("{}. ", ++number) : "- ");
    }

    void operator()(const KeyValueList& list) {
        blank();
        int width = 1;
        for (const KeyValue& entry : list.entries)
            width = std::max(width, display_width(clean(entry.key)));
        width = std::min(width, width_ / 3);
        for (const KeyValue& entry : list.entries) {
            std::vector<std::string> keys = wrap_plain(entry.key, width);
            const std::vector<Line> values = wrap(entry.value, width_ - width - 2);
            for (std::size_t i = 0; i < std::max(keys.size(), values.size()); ++i) {
                const std::string key = pad_right(i < keys.size() ? keys[i] : std::string(), width);
                put(i < values.size() ? key + "  " + styled(values[i]) : key);
            }
        }
    }

    void operator()(const Table& table) {
        blank();
        if (!table.caption.empty()) caption(numbers_.table(), table.caption);
        for (const std::string& line : terminal_table(table, width_, ink_))
            put(line);
    }

    void operator()(const Figure& figure) {
        blank();
        caption(numbers_.figure(), figure.caption);
        text(figure.alternative, "", true);
        for (const std::string& line : chart_text(figure.chart, width_, ink_))
            put(line);
    }

    void operator()(const Pictograms& row) {
        std::string words;
        for (const std::string& code : row.codes)
            words += (words.empty() ? "Pictograms: " : ", ") + pictogram_words(code);
        if (words.empty()) return;
        blank();
        text(words);
    }

    void operator()(const LabelSheet& sheet) {
        for (const auto& [label, copies] : distinct_labels(sheet)) {
            blank();
            const std::string times = copies > 1 ? fmt::format(" ({} labels)", copies) : std::string();
            for (const std::string& line : wrap_plain(label->name + times, width_))
                put(ink_.bold(line));
            for (const std::string& line : label_lines(*label))
                text(line, "  ");
        }
    }

    void operator()(const Caution& caution) {
        blank();
        for (const std::string& line : wrap_plain("! " + caution.title, width_))
            put(ink_.bold(line));
        for (const Text& item : caution.items)
            text(item, "! ");
    }

    void operator()(const Folded& folded) {
        if (!last_was_folded_) blank();
        text(folded.summary, unfold_ || folded.open ? "[-] " : "[+] ");
        if (unfold_ || folded.open) {
            numbers_.enter_fold();
            blocks(folded.blocks);
            numbers_.leave_fold();
        } else {
            folded_away_ = true;
        }
    }

  private:
    void blocks(const std::vector<Block>& list) {
        for (const Block& block : list) {
            std::visit(*this, block.content());
            last_was_folded_ = std::holds_alternative<Folded>(block.content());
        }
    }

    void put(std::string line) {
        line.erase(line.find_last_not_of(' ') + 1);
        out_ += line;
        out_ += '\n';
    }

    void blank() { out_ += '\n'; }

    void underlined(const std::string& words, char mark) {
        int longest = 0;
        for (const std::string& line : wrap_plain(words, width_)) {
            put(ink_.bold(line));
            longest = std::max(longest, display_width(line));
        }
        put(std::string(static_cast<std::size_t>(longest), mark));
    }

    void caption(const std::string& label, const std::string& words) {
        for (const std::string& piece : wrap_plain(label.empty() ? words : label + " " + words, width_))
            put(ink_.bold(piece));
    }

    std::string styled(const Line& line, bool strong_too = true) const {
        std::string words;
        for (const Word& word : line) {
            if (word.space_before) words += ' ';
            words += word.tone == Tone::strong && strong_too ? ink_.bold(word.text) : word.text;
        }
        return words;
    }

    void text(const Text& words, const std::string& lead = "", bool dim = false) {
        const int indent = display_width(lead);
        bool first = true;
        for (const Line& line : wrap(words, width_ - indent)) {
            const std::string start = first ? lead : std::string(static_cast<std::size_t>(indent), ' ');
            put(start + (dim ? ink_.dim(styled(line, false)) : styled(line)));
            first = false;
        }
    }

    std::string out_;
    Ink ink_;
    int width_;
    bool unfold_;
    std::string unfold_by_;
    CaptionNumbers numbers_;
    bool folded_away_ = false;
    bool last_was_folded_ = false;
};

} // namespace

std::string write_terminal(const Document& document, const WriteOptions& options) {
    return TerminalText(options).print(document);
}

} // namespace routeweigh::writing
