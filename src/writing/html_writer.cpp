// SPDX-License-Identifier: MIT
#include "writing/html_writer.hpp"

#include "writing/caption_numbers.hpp"
#include "writing/chart_table.hpp"
#include "writing/escape.hpp"
#include "writing/html_style.hpp"
#include "writing/html_text.hpp"
#include "writing/label_sheet.hpp"
#include "writing/svg/draw.hpp"
#include "writing/svg/pictogram.hpp"
#include "writing/wrap.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace routeweigh::writing {
namespace {

/// Documents shorter than this need no list of contents.
constexpr std::size_t contents_from = 4;

class HtmlPage {
  public:
    std::string print(const Document& document) {
        for (const Block& block : document.blocks)
            std::visit(*this, block.content());
        const std::string_view style_of_paper = !page_rules_.empty() ? std::string_view(page_rules_)
                                                : document.one_page  ? html_single_page_style
                                                                     : std::string_view();
        const std::string_view kind_of_paper = !page_rules_.empty() ? " class=\"labels\""
                                               : document.one_page  ? " class=\"one-page\""
                                                                    : "";
        std::string page = fmt::format(
            "<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n"
            "<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n"
            // The page may load nothing and run nothing, whatever a name in it says.
            "<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; "
            "style-src 'unsafe-inline'\">\n"
            "<title>{0}</title>\n<style>{1}</style>\n</head>\n<body{2}>\n"
            "<a class=\"skip\" href=\"#content\">Skip to the text</a>\n<div class=\"sheet\">\n"
            "<header class=\"title\">\n<h1>{0}</h1>\n",
            html_escape(document.title), fmt::format("{}{}", html_style, style_of_paper), kind_of_paper);
        if (!document.subtitle.empty())
            page += "<p class=\"subtitle\">" + html_text(document.subtitle) + "</p>\n";
        page += "</header>\n";
        if (sections_.size() >= contents_from) {
            page += "<nav class=\"contents\" aria-labelledby=\"contents\">\n<h2 "
                    "id=\"contents\">Contents</h2>\n<ol>\n";
            for (const Section& section : sections_) {
                page += fmt::format("<li><a href=\"#{}\">{}</a></li>\n", section.id, section.words);
            }
            page += "</ol>\n</nav>\n";
        }
        page += "<main id=\"content\">\n" + body_ + "</main>\n";
        if (!document.colophon.empty())
            page += "<footer><p>" + html_text(document.colophon) + "</p></footer>\n";
        return page + "</div>\n</body>\n</html>\n";
    }

    void operator()(const Heading& heading) {
        const int level = std::clamp(heading.level, 2, 4);
        const std::string id =
            heading.anchor.empty() ? fmt::format("section-{}", ++headings_) : html_anchor(heading.anchor);
        const std::string words = html_text(heading.text);
        // Numbers of its own would count twice in the list of contents.
        if (level == 2 && !numbers_.in_fold())
            sections_.push_back({id, html_escape(without_number(plain(heading.text)))});
        body_ += fmt::format("<h{0} id=\"{1}\">{2}</h{0}>\n", level, id, words);
    }

    void operator()(const Paragraph& paragraph) {
        body_ +=
            (paragraph.small_print ? "<p class=\"small\">" : "<p>") + html_text(paragraph.text) + "</p>\n";
    }

    void operator()(const BulletList& list) {
        if (list.items.empty()) return;
        body_ += list.boxes ? "<ul class=\"boxes\">\n" : list.numbered ? "<ol>\n" : "<ul>\n";
        for (const Text& item : list.items)
            body_ += "<li>" + html_text(item) + "</li>\n";
        body_ += list.numbered && !list.boxes ? "</ol>\n" : "</ul>\n";
    }

    void operator()(const KeyValueList& list) {
        if (list.entries.empty()) return;
        body_ += "<dl class=\"pairs\">\n";
        for (const KeyValue& entry : list.entries) {
            body_ += "<dt>" + html_escape(entry.key) + "</dt><dd>" + html_text(entry.value) + "</dd>\n";
        }
        body_ += "</dl>\n";
    }

    void operator()(const Table& table) {
        const std::string caption =
            table.caption.empty() ? std::string() : numbered(numbers_.table(), table.caption);
        body_ += html_table(table, fmt::format("table-{}", ++tables_), caption);
    }

    void operator()(const Figure& figure) {
        const std::string name = fmt::format("figure-{}", ++figures_);
        // The squares of a graph are bare labels, so its table is the key and stands open.
        const bool graph = std::holds_alternative<Graph>(figure.chart);
        body_ += fmt::format("<figure id=\"{}\"{}>\n", name, graph ? " class=\"graph\"" : "");
        body_ += picture_box(figure, name, picture_width, "for-page");
        body_ += picture_box(figure, name + "-narrow", phone_width, "for-phone");
        body_ +=
            fmt::format("<figcaption>{}</figcaption>\n"
                        "<details{}><summary>{}</summary>\n{}</details>\n</figure>\n",
                        numbered(numbers_.figure(), figure.caption), graph ? " open" : "",
                        graph ? "The reactions of this figure" : "The numbers of this figure",
                        html_table(chart_table(figure.chart), fmt::format("table-{}", ++tables_),
                                   graph ? std::string("What each reaction takes and gives")
                                         : "The numbers of this figure: " + html_escape(figure.caption)));
    }

    void operator()(const Pictograms& row) {
        if (row.codes.empty()) return;
        body_ += "<div class=\"pictograms\">\n";
        for (const std::string& code : row.codes) {
            const Pictogram* pictogram = find_pictogram(code);
            const std::string id = fmt::format("pictogram-{}", ++pictograms_);
            body_ += "<span>" + (pictogram ? pictogram_svg(*pictogram, id, row.side) : std::string()) +
                     html_escape(pictogram_words(code)) + "</span>\n";
        }
        body_ += "</div>\n";
    }

    void operator()(const LabelSheet& sheet) {
        page_rules_ += label_page_rules(sheet);
        body_ += html_labels(sheet);
    }

    void operator()(const Caution& caution) {
        body_ += "<aside class=\"caution\">\n<p>" + html_escape(caution.title) + "</p>\n";
        if (!caution.items.empty()) {
            body_ += "<ul>\n";
            for (const Text& item : caution.items)
                body_ += "<li>" + html_text(item) + "</li>\n";
            body_ += "</ul>\n";
        }
        body_ += "</aside>\n";
    }

    void operator()(const Folded& folded) {
        body_ += "<details class=\"fold\"";
        if (!folded.anchor.empty()) body_ += " id=\"" + html_anchor(folded.anchor) + "\"";
        body_ += folded.open ? " open>\n" : ">\n";
        body_ += "<summary>" + html_text(folded.summary) + "</summary>\n<div class=\"inside\">\n";
        numbers_.enter_fold();
        for (const Block& block : folded.blocks)
            std::visit(*this, block.content());
        numbers_.leave_fold();
        body_ += "</div>\n</details>\n";
    }

  private:
    struct Section {
        std::string id;
        std::string words;
    };

    /// A picture is laid out twice, for pages and for phones; the style sheet shows one of the two.
    static std::string picture_box(const Figure& figure, const std::string& name, double width,
                                   const char* use) {
        const Canvas canvas = draw_chart(figure.chart, name, width);
        const bool fits = canvas.width() <= width + 10;
        // Shrunk to one sheet of paper such a picture could not be read; it runs over several.
        const bool tall = canvas.height() > 1.75 * canvas.width();
        return fmt::format("<div class=\"scroll {}\" role=\"region\" tabindex=\"0\" "
                           "aria-label=\"picture, scrolls sideways when wide\">\n{}</div>\n",
                           std::string(use) + (fits ? "" : " oversize") + (tall ? " tall" : ""),
                           canvas.svg(figure.caption, figure.alternative));
    }

    static std::string numbered(const std::string& label, const std::string& caption) {
        return (label.empty() ? "" : "<b>" + label + "</b> ") + html_escape(caption);
    }

    static std::string without_number(const std::string& words) {
        const auto digits = words.find_first_not_of("0123456789");
        if (digits == 0 || digits == std::string::npos || words.compare(digits, 2, ". ") != 0) return words;
        return words.substr(digits + 2);
    }

    std::string body_;
    std::string page_rules_; ///< of sheets of labels
    std::vector<Section> sections_;
    int headings_ = 0;
    int tables_ = 0;
    int figures_ = 0;
    int pictograms_ = 0;
    CaptionNumbers numbers_;
};

} // namespace

std::string write_html(const Document& document, const WriteOptions&) {
    return HtmlPage().print(document);
}

} // namespace routeweigh::writing
