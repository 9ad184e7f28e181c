// SPDX-License-Identifier: MIT
#include "documents/words.hpp"

#include <fmt/format.h>

namespace routeweigh::documents {

std::string counted(std::size_t count, std::string_view singular, std::string_view plural) {
    static constexpr std::string_view numbers[] = {"no",  "one",   "two",   "three", "four", "five",
                                                   "six", "seven", "eight", "nine",  "ten"};
    const std::string_view noun = count == 1 ? singular : plural;
    return count < std::size(numbers) ? fmt::format("{} {}", numbers[count], noun)
                                      : fmt::format("{} {}", count, noun);
}

std::string in_sentence(std::string name) {
    const bool word = name.size() > 1 && name[1] >= 'a' && name[1] <= 'z';
    if (word && name[0] >= 'A' && name[0] <= 'Z') name[0] = static_cast<char>(name[0] - 'A' + 'a');
    return name;
}

std::string_view verb(std::size_t subjects, std::string_view singular, std::string_view plural) {
    return subjects == 1 ? singular : plural;
}

} // namespace routeweigh::documents
