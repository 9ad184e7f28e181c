// SPDX-License-Identifier: MIT
#include "chemistry/formula.hpp"

#include "base/text.hpp"
#include "base/typed.hpp"
#include "chemistry/element.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cstdint>
#include <cstdlib>
#include <map>

namespace routeweigh {

namespace {

using Counts = std::map<int, std::int64_t>; // by atomic number

constexpr std::int64_t most_atoms = 1000000; // of one element; more is a slip of the pen
constexpr std::array<std::string_view, 3> dots = {".", "\xC2\xB7",
                                                  "\xE2\x8B\x85"}; // full stop, middle dot, dot operator

bool is_digit(char c) {
    return c >= '0' && c <= '9';
}
bool is_upper(char c) {
    return c >= 'A' && c <= 'Z';
}
bool is_lower(char c) {
    return c >= 'a' && c <= 'z';
}
bool is_sign(char c) {
    return c == '+' || c == '-';
}

class Parser {
  public:
    explicit Parser(std::string_view text) : text_(text) {}

    Formula parse() {
        Formula result;
        result.text = text_;
        if (text_.empty()) fail("a formula is missing", 0);
        if (text_ == "e-" || text_ == "e^-") {
            result.charge = -1;
            return result;
        }
        const std::string_view whole = text_;
        text_ = text_.substr(0, charge_start());
        Counts sum;
        bool joined = false;
        do {
            const std::size_t start = at_;
            const std::int64_t times = is_digit(peek()) ? number() : 1;
            add(sum, part(), times);
            const bool more = take_dot();
            if (start == 0 && times != 1 && !more)
                fail("a formula does not begin with a number; in an equation write a space behind the "
                     "coefficient",
                     0);
            joined = more;
        } while (joined);
        result.atoms.reserve(sum.size());
        for (const auto& [element, count] : sum)
            result.atoms.emplace_back(element, static_cast<int>(count));
        const std::size_t end = text_.size();
        text_ = whole;
        at_ = end;
        result.charge = charge(result.atoms);
        return result;
    }

  private:
    [[noreturn]] void fail(const std::string& message, std::size_t position) const {
        throw FormulaError(fmt::format("{}, at character {} of \"{}\"", message, position + 1, text_),
                           position);
    }

    char peek() const { return at_ < text_.size() ? text_[at_] : '\0'; }

    bool take_dot() {
        for (const std::string_view dot : dots) { // NOLINT(readability-use-anyofallof): it moves the cursor
            if (!text_.substr(at_).starts_with(dot)) continue;
            at_ += dot.size();
            return true;
        }
        return false;
    }

    // A whole number of at least 1.
    std::int64_t number() {
        const std::size_t start = at_;
        std::int64_t value = 0;
        while (is_digit(peek()) && value <= most_atoms)
            value = 10 * value + (text_[at_++] - '0');
        if (text_[start] == '0') fail("a count or multiplier must be a whole number from 1 on", start);
        if (value > most_atoms) fail(fmt::format("a count above {}", most_atoms), start);
        return value;
    }

    std::int64_t count() { return is_digit(peek()) ? number() : 1; }

    void add(Counts& sum, const Counts& group, std::int64_t times) const {
        for (const auto& [element, count] : group) {
            std::int64_t& total = sum[element];
            total += count * times;
            if (total > most_atoms) fail(fmt::format("more than {} atoms of one element", most_atoms), at_);
        }
    }

    int element() {
        const std::size_t start = at_++;
        while (is_lower(peek()))
            ++at_;
        const std::string_view symbol = text_.substr(start, at_ - start);
        const auto found = element_by_symbol(symbol);
        if (!found) fail(fmt::format("no element \"{}\"", symbol), start);
        if (!element_has_weight(*found))
            fail(fmt::format("{} ({}) has no standard atomic weight", element_name(*found), symbol), start);
        return *found;
    }

    // What stands between two dots: elements and bracketed groups with their counts.
    Counts part() {
        struct Group {
            char close;
            std::size_t start;
            Counts atoms;
        };
        std::vector<Group> open = {{'\0', at_, {}}};
        for (;;) {
            const char c = peek();
            if (is_upper(c)) {
                const int symbol = element();
                add(open.back().atoms, {{symbol, 1}}, count());
            } else if (c == '(' || c == '[') {
                open.push_back({c == '(' ? ')' : ']', at_++, {}});
            } else if (c == ')' || c == ']') {
                if (open.size() == 1 || open.back().close != c)
                    fail(fmt::format("the bracket {} closes nothing that is open", c), at_);
                if (open.back().atoms.empty()) fail("empty brackets", open.back().start);
                ++at_;
                const Counts inner = std::move(open.back().atoms);
                open.pop_back();
                add(open.back().atoms, inner, count());
            } else {
                break;
            }
        }
        if (open.size() > 1) fail("a bracket is not closed", open.back().start);
        if (open.back().atoms.empty()) unexpected();
        const std::size_t before = at_;
        const bool dot = take_dot();
        at_ = before;
        if (!dot && at_ < text_.size()) unexpected();
        return open.back().atoms;
    }

    [[noreturn]] void unexpected() const {
        if (at_ >= text_.size()) fail("the formula ends where an element is due", at_);
        if (is_lower(text_[at_])) fail("an element symbol begins with a capital letter", at_);
        if (text_[at_] == ' ') fail("a space in a formula", at_);
        std::size_t end = at_ + 1; // the whole character where it has several bytes
        while (end < text_.size() && (static_cast<unsigned char>(text_[end]) & 0xC0U) == 0x80U)
            ++end;
        fail(fmt::format("\"{}\" does not belong in a formula here", text_.substr(at_, end - at_)), at_);
    }

    // Where the charge begins; the size where there is none.
    std::size_t charge_start() const {
        if (const std::size_t caret = text_.find('^'); caret != std::string_view::npos) return caret;
        std::size_t start = text_.size();
        while (start > 0 && is_sign(text_[start - 1]))
            --start;
        return start;
    }

    int charge(const std::vector<std::pair<int, int>>& atoms) {
        if (at_ == text_.size()) return 0;
        const std::size_t start = at_;
        std::int64_t size = 1;
        if (peek() == '^') {
            ++at_;
            if (is_digit(peek()))
                size = number();
            else if (is_sign(peek()) && at_ + 1 < text_.size() && is_digit(text_[at_ + 1]))
                fail("in a charge the number comes before the sign, as in \"SO4^2-\"", at_);
        } else {
            refuse_two_readings(start, atoms);
            size = static_cast<std::int64_t>(text_.size() - start);
            if (text_.substr(start).find_first_not_of(text_[start]) != std::string_view::npos)
                fail("a charge is either positive or negative", start);
            at_ = text_.size() - 1;
        }
        if (!is_sign(peek()) || at_ + 1 != text_.size())
            fail("a charge is written \"+\", \"-\", \"^2+\", \"^2-\" at the end", start);
        if (size > 99) fail("a charge of more than 99", start);
        return static_cast<int>(peek() == '+' ? size : -size);
    }

    // "Fe3+" may be one atom with three charges or three atoms with one; "SO42-" and "[Fe(CN)6]3-" are no
    // clearer.
    void refuse_two_readings(std::size_t sign, const std::vector<std::pair<int, int>>& atoms) const {
        std::size_t digits = sign;
        while (digits > 0 && is_digit(text_[digits - 1]))
            --digits;
        if (digits == sign) return;
        const bool lone_element =
            atoms.size() == 1 &&
            std::all_of(text_.begin(), text_.begin() + static_cast<std::ptrdiff_t>(digits),
                        [](char c) { return is_upper(c) || is_lower(c); });
        if (lone_element || sign - digits > 1 || text_[digits - 1] == ']')
            fail(fmt::format(
                     "the digits before the sign may be a count or a charge; write \"{}^{}\" or \"{}^{}\"",
                     text_.substr(0, sign - 1), text_.substr(sign - 1), text_.substr(0, sign),
                     text_.substr(sign)),
                 digits);
    }

    std::string_view text_;
    std::size_t at_ = 0;
};

} // namespace

Formula parse_formula(std::string_view text) {
    const std::string typed = typed_formula(trim(text));
    Formula result = Parser(typed).parse();
    result.text = trim(text);
    return result;
}

double molar_mass(const Formula& formula, const AtomicWeights& weights) {
    double sum = 0;
    for (const auto& [element, count] : formula.atoms)
        sum += count * weights.of(element);
    return sum;
}

int atoms_of(const Formula& formula, int element) {
    const auto found = std::find_if(formula.atoms.begin(), formula.atoms.end(),
                                    [&](const auto& pair) { return pair.first == element; });
    return found == formula.atoms.end() ? 0 : found->second;
}

std::string hill_text(const Formula& formula) {
    constexpr int hydrogen = 1;
    constexpr int carbon = 6;
    const bool organic = atoms_of(formula, carbon) > 0;
    const auto rank = [&](int element) {
        if (!organic) return 2;
        return element == carbon ? 0 : element == hydrogen ? 1 : 2;
    };
    auto atoms = formula.atoms;
    std::sort(atoms.begin(), atoms.end(), [&](const auto& a, const auto& b) {
        if (rank(a.first) != rank(b.first)) return rank(a.first) < rank(b.first);
        return element_symbol(a.first) < element_symbol(b.first);
    });
    std::string result = atoms.empty() ? "e" : ""; // only the electron has no atoms
    for (const auto& [element, count] : atoms) {
        result += element_symbol(element);
        if (count > 1) result += std::to_string(count);
    }
    const int size = std::abs(formula.charge);
    if (size > 0) result += '^' + (size > 1 ? std::to_string(size) : "") + (formula.charge > 0 ? '+' : '-');
    return result;
}

} // namespace routeweigh
