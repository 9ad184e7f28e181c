// SPDX-License-Identifier: MIT
#include "input/csv_reader.hpp"

#include "base/text.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cstring>
#include <memory>
#include <utility>

namespace routeweigh {
namespace {

constexpr std::size_t chunk = std::size_t{256} * 1024;
constexpr std::size_t longest_row = std::size_t{64} * 1024;

bool ends_line(char c) {
    return c == '\n' || c == '\r';
}

/// Squeezes doubled quotes in place.
std::string_view without_doubled_quotes(char* begin, const char* end) {
    char* out = begin;
    for (const char* in = begin; in != end; ++in) {
        *out++ = *in;
        if (*in == '"') ++in; // the pairs were counted when the field was read
    }
    return {begin, static_cast<std::size_t>(out - begin)};
}

std::string too_long() {
    return fmt::format("the row has more than {} bytes; is a quote opened and never closed?", longest_row);
}

} // namespace

CsvReader::CsvReader(std::string name, ReadBytes read)
    : name_(std::move(name)), read_(std::move(read)), buffer_(chunk + longest_row + 1) {}

Problem CsvReader::problem(std::string message, std::string_view column) const {
    Problem problem;
    problem.message = column.empty() ? std::move(message) : fmt::format("column \"{}\": {}", column, message);
    problem.place.source = name_;
    problem.place.line = static_cast<int>(line_);
    return problem;
}

bool CsvReader::refill() {
    if (file_ended_) return false;
    std::memmove(buffer_.data(), buffer_.data() + begin_, end_ - begin_);
    end_ -= begin_;
    begin_ = 0;
    const std::size_t got = read_(buffer_.data() + end_, buffer_.size() - 1 - end_);
    end_ += got;
    buffer_[end_] = '\n';
    file_ended_ = got == 0;
    return !file_ended_;
}

void CsvReader::open() {
    opened_ = true;
    while (end_ < longest_row && refill()) {
    }
    std::string_view start(buffer_.data(), std::min<std::size_t>(end_, longest_row));
    line_ = 1;
    if (start.substr(0, 4) == "PK\x03\x04")
        throw InputError(problem("this is a spreadsheet, not its text; save it as \"CSV UTF-8\""));
    if (start.substr(0, 2) == "\xFF\xFE" || start.substr(0, 2) == "\xFE\xFF" ||
        start.substr(0, 200).find('\0') != std::string_view::npos)
        throw InputError(problem("this is no plain text, perhaps UTF-16; save it as \"CSV UTF-8\""));
    if (start.substr(0, 3) == "\xEF\xBB\xBF") begin_ = 3;
    start.remove_prefix(std::min(start.find_first_not_of(" \t\r\n", begin_), start.size()));
    if (start.starts_with('{'))
        throw InputError(problem("this is JSON, and a table is wanted: CSV with headings in the first row"));
    choose_separator();
}

void CsvReader::choose_separator() {
    std::size_t commas = 0, semicolons = 0, tabs = 0;
    bool quoted = false, any = false;
    for (std::size_t i = begin_; i < end_ && i < longest_row; ++i) {
        const char c = buffer_[i];
        if (c == '"') quoted = !quoted;
        if (quoted) continue;
        if (ends_line(c) && any) break; // of the first line that holds anything
        any = any || !ends_line(c);
        commas += c == ',' ? 1 : 0;
        semicolons += c == ';' ? 1 : 0;
        tabs += c == '\t' ? 1 : 0;
    }
    // A heading may hold a comma where semicolons or tabs separate, hardly the other way round.
    separator_ = semicolons > 0 && semicolons >= tabs ? ';' : tabs > 0 ? '\t' : ',';
    if (separator_ == ';' && commas > 3 * semicolons) separator_ = ',';
    for (const char c : {separator_, '\n', '\r'})
        ends_field_[static_cast<unsigned char>(c)] = true;
}

bool CsvReader::read_field(std::size_t& at) {
    const char* data = buffer_.data();
    while (at < end_ && (data[at] == ' ' || (data[at] == '\t' && separator_ != '\t')))
        ++at;
    if (at < end_ && data[at] == '"') {
        const std::size_t start = ++at;
        bool doubled = false;
        for (;; ++at) {
            if (at >= end_) return false;
            if (data[at] == '\n') ++breaks_;
            if (data[at] != '"') continue;
            if (at + 1 >= end_ && !file_ended_) return false;
            if (at + 1 >= end_ || data[at + 1] != '"') break;
            doubled = true;
            ++at;
        }
        char* begin = buffer_.data() + start;
        // Doubled quotes are squeezed only once the whole row is there, for it may be read again.
        fields_.emplace_back(begin, at - start);
        if (doubled) squeeze_.push_back(fields_.size() - 1);
        ++at;
        while (at < end_ && data[at] == ' ')
            ++at;
        return true;
    }
    const std::size_t start = at;
    while (!ends_field_[static_cast<unsigned char>(data[at])]) // refill() put a line end behind the last byte
        ++at;
    std::size_t last = at;
    while (last > start && (data[last - 1] == ' ' || data[last - 1] == '\t'))
        --last;
    fields_.emplace_back(data + start, last - start);
    return true;
}

CsvReader::Row CsvReader::read_row() {
    fields_.clear();
    squeeze_.clear();
    breaks_ = 0;
    if (begin_ >= end_) return file_ended_ ? Row::none : Row::incomplete;
    std::size_t at = begin_;
    line_ = next_line_;
    for (;;) {
        if (!read_field(at)) {
            if (file_ended_) throw InputError(problem("a quote is opened and never closed"));
            return Row::incomplete;
        }
        if (at >= end_) {
            if (!file_ended_) return Row::incomplete;
            break;
        }
        if (buffer_[at] == separator_) {
            ++at;
            continue;
        }
        if (!ends_line(buffer_[at]))
            throw InputError(problem("text stands behind a quoted field; double the quotes within it"));
        if (buffer_[at] == '\r') {
            if (at + 1 >= end_ && !file_ended_) return Row::incomplete;
            if (at + 1 < end_ && buffer_[at + 1] == '\n') ++at;
        }
        ++at;
        break;
    }
    for (const std::size_t field : squeeze_) {
        char* begin = buffer_.data() + (fields_[field].data() - buffer_.data());
        fields_[field] = without_doubled_quotes(begin, begin + fields_[field].size());
    }
    if (at - begin_ > longest_row) throw InputError(problem(too_long()));
    begin_ = at;
    next_line_ = line_ + 1 + breaks_;
    return Row::read;
}

bool CsvReader::next() {
    if (!opened_) open();
    for (;;) {
        switch (read_row()) {
        case Row::none:
            return false;
        case Row::incomplete:
            if (end_ - begin_ > longest_row) throw InputError(problem(too_long()));
            refill();
            continue;
        case Row::read:
            break;
        }
        const bool blank =
            std::all_of(fields_.begin(), fields_.end(), [](std::string_view field) { return field.empty(); });
        if (!blank) return true;
    }
}

ReadBytes bytes_of(std::string text) {
    const auto held = std::make_shared<std::string>(std::move(text));
    return [held, used = std::size_t{0}](char* buffer, std::size_t size) mutable {
        const std::size_t count = std::min(size, held->size() - used);
        std::copy_n(held->data() + used, count, buffer);
        used += count;
        return count;
    };
}

} // namespace routeweigh
