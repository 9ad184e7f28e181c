// SPDX-License-Identifier: MIT
#include "input/document_state.hpp"
#include "input/locate.hpp"
#include "input/syntax_error.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <utility>

namespace routeweigh {

namespace {

using nlohmann::json;

struct DuplicateKey {
    std::string object_pointer;
    std::string key;
    int count; // 1 for the second of its name
};

// Builds the values, as the library itself would, and notes keys that stand twice in one object: the library
// lets the last of them win in silence.
class Builder : public nlohmann::json_sax<json> {
  public:
    explicit Builder(json& root) : root_(root) {}

    bool null() override { return put(nullptr); }
    bool boolean(bool value) override { return put(value); }
    bool number_integer(number_integer_t value) override { return put(value); }
    bool number_unsigned(number_unsigned_t value) override { return put(value); }
    bool number_float(number_float_t value, const string_t&) override { return put(value); }
    bool string(string_t& value) override { return put(std::move(value)); }
    bool binary(binary_t&) override { return false; }

    bool start_object(std::size_t) override {
        open_.push_back({add(json::object()), {}});
        return true;
    }
    bool start_array(std::size_t) override {
        open_.push_back({add(json::array()), {}});
        return true;
    }
    bool end_object() override { return close(); }
    bool end_array() override { return close(); }

    bool key(string_t& name) override {
        if (open_.back().value->contains(name)) note_duplicate(name);
        open_.back().key = std::move(name);
        return true;
    }

    bool parse_error(std::size_t read, const std::string&,
                     const nlohmann::detail::exception& error) override {
        read_ = read;
        complaint_ = error.what();
        return false;
    }

    std::size_t read() const { return read_; }
    const std::string& complaint() const { return complaint_; }
    const std::vector<DuplicateKey>& duplicates() const { return duplicates_; }

  private:
    struct Open {
        json* value;
        std::string key; // the one whose value comes next
    };

    json* add(json&& value) {
        if (open_.empty()) {
            root_ = std::move(value);
            return &root_;
        }
        json& parent = *open_.back().value;
        if (parent.is_array()) {
            parent.push_back(std::move(value));
            return &parent.back();
        }
        json& member = parent[open_.back().key];
        member = std::move(value);
        return &member;
    }

    template<typename T>
    bool put(T&& value) {
        add(json(std::forward<T>(value)));
        return true;
    }

    bool close() {
        open_.pop_back();
        return true;
    }

    void note_duplicate(const std::string& name) {
        std::string pointer;
        for (std::size_t i = 0; i + 1 < open_.size(); ++i) {
            const Open& level = open_[i];
            pointer += '/' + (level.value->is_array() ? std::to_string(level.value->size() - 1)
                                                      : pointer_token(level.key));
        }
        const auto earlier =
            std::count_if(duplicates_.begin(), duplicates_.end(), [&](const DuplicateKey& d) {
                return d.object_pointer == pointer && d.key == name;
            });
        // One is enough to refuse the file, a hundred are enough to mend it.
        if (duplicates_.size() < 100) duplicates_.push_back({pointer, name, static_cast<int>(earlier) + 1});
    }

    json& root_;
    std::vector<Open> open_;
    std::vector<DuplicateKey> duplicates_;
    std::size_t read_ = 0;
    std::string complaint_;
};

} // namespace

Document::Document(std::unique_ptr<detail::DocumentState> state) : state_(std::move(state)) {}
Document::Document(Document&&) noexcept = default;
Document& Document::operator=(Document&&) noexcept = default;
Document::~Document() = default;

Document Document::parse(SourcePtr source) {
    check_source(*source);
    const std::size_t size = source->text.size();
    return parse_part(std::move(source), 0, size, {});
}

Document Document::parse(Source source) {
    return parse(make_source(std::move(source.name), std::move(source.text)));
}

Document Document::parse_part(SourcePtr source, std::size_t begin, std::size_t end, std::string pointer) {
    auto state = std::make_unique<detail::DocumentState>();
    state->source = std::move(source);
    state->begin = begin;
    state->end = end;
    state->prefix = std::move(pointer);

    Builder builder(state->value);
    const std::string_view text = state->text();
    if (!json::sax_parse(text.begin(), text.end(), &builder)) {
        const SyntaxError error = explain_syntax_error(text, builder.read(), builder.complaint());
        Problem problem;
        problem.message = error.message;
        problem.place = place_at(*state->source, begin + error.offset, state->prefix);
        throw InputError(std::move(problem));
    }
    std::vector<Problem> problems;
    for (const DuplicateKey& duplicate : builder.duplicates()) {
        const auto at = [&](int n) {
            const auto offset = locate_key(text, duplicate.object_pointer, duplicate.key, n);
            return place_at(*state->source, begin + offset.value_or(0),
                            state->prefix + duplicate.object_pointer + '/' + pointer_token(duplicate.key));
        };
        Problem problem;
        problem.message = fmt::format("the key \"{}\" stands twice in one object", duplicate.key);
        problem.place = at(duplicate.count);
        problem.second = at(0);
        problems.push_back(std::move(problem));
    }
    if (!problems.empty()) throw InputError(std::move(problems));
    return Document(std::move(state));
}

const Source& Document::source() const {
    return *state_->source;
}

Field Document::root(Problems& problems) const {
    detail::Reading& reading = state_->readings.emplace_back();
    reading.document = state_.get();
    reading.problems = &problems;
    reading.neutral.reading = &reading;
    detail::Node& node = reading.nodes.emplace_back();
    node.reading = &reading;
    node.value = &state_->value;
    return Field(&node);
}

} // namespace routeweigh
