// SPDX-License-Identifier: MIT
#include "base/typed.hpp"

#include <algorithm>
#include <array>
#include <utility>

namespace routeweigh {
namespace {

using Spelling = std::pair<std::string_view, char>; // bytes of the character in UTF-8, and what is typed

constexpr std::array quantity_signs = {
    Spelling{"\xC2\xA0", ' '},     // no-break space
    Spelling{"\xE2\x80\x87", ' '}, // figure space
    Spelling{"\xE2\x80\x89", ' '}, // thin space
    Spelling{"\xE2\x80\xAF", ' '}, // narrow no-break space
    Spelling{"\xE2\x88\x92", '-'}, // minus sign
};

constexpr std::array lowered = {
    Spelling{"\xE2\x82\x80", '0'}, Spelling{"\xE2\x82\x81", '1'}, Spelling{"\xE2\x82\x82", '2'},
    Spelling{"\xE2\x82\x83", '3'}, Spelling{"\xE2\x82\x84", '4'}, Spelling{"\xE2\x82\x85", '5'},
    Spelling{"\xE2\x82\x86", '6'}, Spelling{"\xE2\x82\x87", '7'}, Spelling{"\xE2\x82\x88", '8'},
    Spelling{"\xE2\x82\x89", '9'},
};

constexpr std::array raised = {
    Spelling{"\xE2\x81\xB0", '0'}, Spelling{"\xC2\xB9", '1'},     Spelling{"\xC2\xB2", '2'},
    Spelling{"\xC2\xB3", '3'},     Spelling{"\xE2\x81\xB4", '4'}, Spelling{"\xE2\x81\xB5", '5'},
    Spelling{"\xE2\x81\xB6", '6'}, Spelling{"\xE2\x81\xB7", '7'}, Spelling{"\xE2\x81\xB8", '8'},
    Spelling{"\xE2\x81\xB9", '9'}, Spelling{"\xE2\x81\xBA", '+'}, Spelling{"\xE2\x81\xBB", '-'},
};

// The one of these that the text starts with; nullptr for none.
template<std::size_t N>
const Spelling* starts_with(std::string_view text, const std::array<Spelling, N>& spellings) {
    const auto* const found = std::find_if(spellings.begin(), spellings.end(), [&](const Spelling& spelling) {
        return text.starts_with(spelling.first);
    });
    return found == spellings.end() ? nullptr : found;
}

// What nearly every text is; it needs no second look.
bool all_ascii(std::string_view text) {
    return std::none_of(text.begin(), text.end(),
                        [](char c) { return static_cast<unsigned char>(c) > 0x7F; });
}

} // namespace

std::string typed_quantity(std::string_view text) {
    if (all_ascii(text)) return std::string(text);
    std::string result;
    while (!text.empty()) {
        const Spelling* const sign = starts_with(text, quantity_signs);
        result += sign == nullptr ? text.front() : sign->second;
        text.remove_prefix(sign == nullptr ? 1 : sign->first.size());
    }
    return result;
}

std::string typed_formula(std::string_view text) {
    if (all_ascii(text)) return std::string(text);
    std::string result;
    bool in_charge = false;
    while (!text.empty()) {
        const Spelling* found = starts_with(text, lowered);
        const bool up = found == nullptr && (found = starts_with(text, raised)) != nullptr;
        if (up && !in_charge) result += '^';
        in_charge = up;
        result += found == nullptr ? text.front() : found->second;
        text.remove_prefix(found == nullptr ? 1 : found->first.size());
    }
    return result;
}

} // namespace routeweigh
