// SPDX-License-Identifier: MIT
#include "documents/papers.hpp"

#include "documents/compared.hpp"
#include "writing/writer_list.hpp"

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <sstream>

namespace routeweigh::test {
namespace {

std::filesystem::path folder() {
    return std::filesystem::path(ROUTEWEIGH_ROOT) / "routes";
}

const writing::MachineTree* member_of(const writing::MachineObject& object, std::string_view name) {
    for (const writing::Member& entry : object)
        if (entry.name == name) return &entry.value;
    return nullptr;
}

std::string string_of(const writing::MachineTree* tree) {
    const auto* text = tree == nullptr ? nullptr : std::get_if<std::string>(&tree->value);
    return text == nullptr ? std::string() : *text;
}

void collect(const writing::MachineTree& tree, std::map<std::string, std::vector<Stated>>& found) {
    if (const auto* list = std::get_if<writing::MachineList>(&tree.value)) {
        for (const writing::MachineTree& item : *list)
            collect(item, found);
        return;
    }
    const auto* object = std::get_if<writing::MachineObject>(&tree.value);
    if (object == nullptr) return;
    if (const writing::MachineTree* id = member_of(*object, "figure")) {
        Stated stated;
        const writing::MachineTree* value = member_of(*object, "value");
        const auto* number = value == nullptr ? nullptr : std::get_if<double>(&value->value);
        stated.open = number == nullptr;
        stated.value = number == nullptr ? 0 : *number;
        stated.unit = string_of(member_of(*object, "unit"));
        stated.text = string_of(member_of(*object, "text"));
        found[string_of(id)].push_back(stated);
    }
    for (const writing::Member& entry : *object)
        collect(entry.value, found);
}

} // namespace

std::vector<std::string> shipped_routes() {
    std::vector<std::string> files;
    for (const auto& entry : std::filesystem::recursive_directory_iterator(folder()))
        if (entry.path().extension() == ".json" && entry.path().parent_path() != folder())
            files.push_back(std::filesystem::relative(entry.path(), folder()).string());
    std::sort(files.begin(), files.end());
    return files;
}

std::string text_of_route(const std::string& file) {
    std::ostringstream text;
    text << std::ifstream(folder() / file).rdbuf();
    return text.str();
}

std::unique_ptr<LaidOutRoute> lay_out_text(const std::string& text, const std::string& jurisdiction) {
    Problems problems;
    return std::make_unique<LaidOutRoute>(
        read_one_route({make_source("test.json", text)}, Catalogue::embedded(), problems), shipped_rules(),
        Catalogue::embedded(), streams::shipped_local_rules(Catalogue::embedded(), jurisdiction));
}

std::unique_ptr<LaidOutRoute> lay_out_file(const std::string& file) {
    return lay_out_text(text_of_route(file));
}

std::map<std::string, std::vector<Stated>> shared_figures(const writing::Document& document) {
    std::map<std::string, std::vector<Stated>> found;
    if (document.machine) collect(*document.machine, found);
    return found;
}

std::string in_every_format(const writing::Document& document) {
    std::string all;
    writing::WriteOptions options;
    options.unfold = true;
    options.width = 400; // so that no line break falls into a number
    for (const writing::Writer& writer : writing::writer_list())
        all += writer.write(document, options) + "\n";
    return all;
}

} // namespace routeweigh::test
