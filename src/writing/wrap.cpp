// SPDX-License-Identifier: MIT
#include "writing/wrap.hpp"

#include "writing/escape.hpp"
#include "writing/utf8.hpp"

#include <algorithm>

namespace routeweigh::writing {
namespace {

/// Words that touch each other, such as a strong word and the comma after it, move together.
struct Cluster {
    std::vector<Word> words;
    int width = 0;
};

std::vector<Cluster> clusters_of(const Text& text) {
    std::vector<Cluster> clusters;
    bool space = true;
    const auto add = [&](std::string_view word, Tone tone) {
        if (space || clusters.empty()) clusters.emplace_back();
        clusters.back().words.push_back({std::string(word), tone, false});
        clusters.back().width += display_width(word);
        space = false;
    };
    for (const Run& run : text.runs) {
        const std::string words = clean(run.text);
        std::size_t at = 0;
        while (at < words.size()) {
            if (words[at] == ' ') {
                space = true;
                ++at;
                continue;
            }
            std::size_t end =
                run.tone == Tone::number ? words.find_last_not_of(' ') + 1 : words.find(' ', at);
            end = std::min(end, words.size());
            add(std::string_view(words).substr(at, end - at), run.tone);
            at = end;
        }
    }
    return clusters;
}

} // namespace

std::vector<Line> wrap(const Text& text, int width) {
    width = std::max(width, 1);
    std::vector<Line> lines(1);
    int used = 0;
    for (Cluster& cluster : clusters_of(text)) {
        if (!lines.back().empty() && used + 1 + cluster.width > width) {
            lines.emplace_back();
            used = 0;
        }
        bool space = !lines.back().empty();
        for (Word& word : cluster.words) {
            std::string_view rest = word.text;
            while (!rest.empty()) {
                if (used >= width) {
                    lines.emplace_back();
                    used = 0;
                    space = false;
                }
                // Only what is longer than a line is cut here; the cluster was moved to a fresh line before.
                const std::string_view piece = fitting_prefix(rest, width - used - (space ? 1 : 0));
                lines.back().push_back({std::string(piece), word.tone, space});
                used += display_width(piece) + (space ? 1 : 0);
                space = false;
                rest.remove_prefix(piece.size());
            }
        }
    }
    return lines;
}

std::vector<std::string> wrap_plain(std::string_view text, int width) {
    std::vector<std::string> result;
    for (const Line& line : wrap(Text(std::string(text)), width)) {
        std::string& words = result.emplace_back();
        for (const Word& word : line) {
            if (word.space_before) words += ' ';
            words += word.text;
        }
    }
    return result;
}

std::string hold_per_cent(std::string text) {
    for (const std::string_view broken : {" %", "% w/", "% v/"})
        for (std::size_t at = text.find(broken); at != std::string::npos; at = text.find(broken, at + 1))
            text.replace(text.find(' ', at), 1, "\u00A0");
    return text;
}

std::string plain(const Text& text) {
    std::string result;
    for (const Run& run : text.runs)
        result += run.text;
    return result;
}

} // namespace routeweigh::writing
