// SPDX-License-Identifier: MIT
#include "documents/bench_listing.hpp"

#include "documents/classified_mixture.hpp"

#include <fmt/format.h>

namespace routeweigh::documents {

std::vector<std::string> only_in(const Listing& one, const Listing& other) {
    std::vector<std::string> list;
    for (const auto& [name, of] : one) {
        if (other.contains(name)) continue;
        std::string words;
        for (const std::string& whose : of)
            words += (words.empty() ? "" : "; ") + whose; // names have commas in them
        list.push_back(words.empty() ? name : fmt::format("{} ({})", name, words));
    }
    return list;
}

std::string not_assessed(const BenchBottle& bottle) {
    return bottle.material->name + ": not assessed";
}

Listing statements_on_bench(const std::vector<BenchBottle>& bench) {
    Listing found;
    for (const BenchBottle& bottle : bench)
        for (const std::string& statement : bottle.statements)
            found[statement].insert(bottle.material->name);
    return found;
}

Listing hazards_on_bench(const std::vector<BenchBottle>& bench) {
    Listing found = statements_on_bench(bench);
    for (const BenchBottle& bottle : bench)
        if (!bottle.assessed) found[not_assessed(bottle)];
    return found;
}

std::string limits_of_statements(const MixtureRules& classified_by) {
    return "Hazard statements name what a bottle can do, not how likely it is; fewer of them prove nothing. "
           "The label of the supplier goes before ours. " +
           judged_by(classified_by);
}

} // namespace routeweigh::documents
