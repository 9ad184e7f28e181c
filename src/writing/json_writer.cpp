// SPDX-License-Identifier: MIT
#include "writing/json_writer.hpp"

#include "writing/tables_of.hpp"

#include <nlohmann/json.hpp>

#include <cmath>
#include <type_traits>

namespace routeweigh::writing {
namespace {

using Json = nlohmann::ordered_json;

Json json_of(const MachineTree& tree) {
    return std::visit(
        [](const auto& value) -> Json {
            using Value = std::decay_t<decltype(value)>;
            if constexpr (std::is_same_v<Value, std::monostate>) {
                return nullptr;
            } else if constexpr (std::is_same_v<Value, double>) {
                return std::isfinite(value) ? Json(value) : Json(nullptr);
            } else if constexpr (std::is_same_v<Value, MachineList>) {
                Json list = Json::array();
                for (const MachineTree& item : value)
                    list.push_back(json_of(item));
                return list;
            } else if constexpr (std::is_same_v<Value, MachineObject>) {
                Json object = Json::object();
                for (const Member& member : value)
                    object[member.name] = json_of(member.value);
                return object;
            } else {
                return value;
            }
        },
        tree.value);
}

} // namespace

std::string write_json(const Document& document, const WriteOptions&) {
    const Json json = json_of(document.machine ? *document.machine : machine_tree(document));
    return json.dump(2, ' ', false, Json::error_handler_t::replace) + "\n";
}

} // namespace routeweigh::writing
