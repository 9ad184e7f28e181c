// SPDX-License-Identifier: MIT
#include "assess/mixture/limits_reader.hpp"

#include "base/text.hpp"
#include "input/field.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace routeweigh {
namespace {

double limit_percent(const Field& field) {
    const double value = field.number();
    if (!(value > 0 && value <= 100)) field.problem(fmt::format("{:g} is no limit in per cent", value));
    return value;
}

double limit_number(const Field& field) {
    const double value = field.number();
    if (!(value > 0)) field.problem(fmt::format("{:g} is not above 0", value));
    return value;
}

// Reads one file; rows that belong to a building block that is off are left out.
class LimitsReader {
  public:
    LimitsReader(const Field& root, const std::map<std::string, bool>& chosen) {
        limits_.id = root["id"].text();
        root["kind"].one_of({"mixture limits"});
        limits_.title = root["title"].text();
        const Field source = root["about"]["source"];
        limits_.source = source.is_array() ? join(source.texts(), "; ") : source.text();
        read_blocks(root["building_blocks"], chosen);
        limits_.supplemental_statements = root["supplemental_statements"].boolean();
        if (const auto elicitation = root.maybe("elicitation")) {
            limits_.elicitation_share = limit_number((*elicitation)["share"]);
            limits_.elicitation_source = (*elicitation)["source"].text();
        }
        limits_.not_covered = root["not_covered"].texts();
        read_acute(root["acute_toxicity"]);
        limits_.skin = read_contact(root["skin"]);
        limits_.eye = read_contact(root["eye"]);
        const Field ph = root["extreme_ph"];
        limits_.ph = {ph["acid_at_most"].number(), ph["base_at_least"].number(), ph["source"].text()};
        read_thresholds(root["thresholds"]);
        const Field transient = root["transient_effects"];
        limits_.transient = {limit_percent(transient["cut_off_pct"]), limit_percent(transient["sum_pct"]),
                             transient["source"].text()};
        for (const Field& field : root["aspiration"].items())
            read_aspiration(field);
        if (const auto aquatic = root.maybe("aquatic")) read_aquatic(*aquatic);
        read_flammable(root["flammable_liquids"]);
        root.close();
    }

    MixtureLimits take() { return std::move(limits_); }

  private:
    void read_blocks(const Field& list, const std::map<std::string, bool>& chosen) {
        std::vector<std::string> known;
        for (const Field& field : list.items()) {
            BuildingBlock block{field["id"].text(), field["title"].text(), field["on"].boolean()};
            field.maybe("source");
            if (const auto found = chosen.find(block.id); found != chosen.end()) block.on = found->second;
            known.push_back(block.id);
            limits_.blocks.push_back(std::move(block));
            field.close();
        }
        for (const auto& [id, on] : chosen)
            if (std::find(known.begin(), known.end(), id) == known.end())
                list.problem(fmt::format("no building block \"{}\" in {}", id, limits_.title),
                             nearest(id, known));
    }

    bool active(const Field& field) const {
        const auto key = field.maybe("block");
        if (!key) return true;
        const std::string id = key->text();
        for (const BuildingBlock& block : limits_.blocks)
            if (block.id == id) return block.on;
        key->problem(fmt::format("no building block \"{}\"", id));
        return true;
    }

    void read_acute(const Field& field) {
        for (const Field& item : field["routes"].items()) {
            AcuteRoute route;
            route.endpoint = item["endpoint"].text();
            route.route = item["route"].one_of({"oral", "dermal", "inhalation"});
            if (const auto form = item.maybe("form"))
                route.form = form->one_of({"gases", "vapours", "dusts or mists"});
            route.unit = item["unit"].text();
            route.source = item["source"].text();
            for (const Field& row : item["categories"].items()) {
                if (!active(row)) continue;
                route.categories.push_back({row["category"].text(), limit_number(row["upper"]),
                                            limit_number(row["point"]), limit_percent(row["cut_off_pct"]),
                                            row["statement"].text()});
                const std::size_t count = route.categories.size();
                if (count > 1 && !(route.categories[count - 2].upper < route.categories[count - 1].upper))
                    row["upper"].problem("categories stand most severe first");
            }
            if (route.categories.empty()) item["categories"].problem("names no category");
            limits_.acute.routes.push_back(std::move(route));
        }
        const Field unknown = field["unknown"];
        limits_.acute.unknown_corrected_above = limit_percent(unknown["corrected_above_pct"]);
        limits_.acute.unknown_source = unknown["source"].text();
    }

    ContactLimits read_contact(const Field& field) const {
        ContactLimits contact;
        contact.cut_off = limit_percent(field["cut_off_pct"]);
        contact.severe = limit_percent(field["severe_pct"]);
        contact.severe_as_irritant = limit_percent(field["severe_as_irritant_pct"]);
        contact.irritant = limit_percent(field["irritant_pct"]);
        contact.not_additive_severe = limit_percent(field["not_additive_severe_pct"]);
        contact.not_additive_irritant = limit_percent(field["not_additive_irritant_pct"]);
        if (const auto mild = field.maybe("mild"); mild && active(*mild)) {
            contact.mild = limit_percent((*mild)["sum_pct"]);
            contact.mild_irritant = limit_percent((*mild)["irritant_sum_pct"]);
        }
        if (const auto two = field.maybe("two_irritant_categories"))
            contact.two_irritant_categories = active(*two);
        contact.source = field["source"].text();
        field.close();
        return contact;
    }

    void read_thresholds(const Field& field) {
        limits_.thresholds.specific_limits_may_lift = field["specific_limits_may_lift"].boolean();
        for (const Field& item : field["endpoints"].items()) {
            ThresholdEndpoint endpoint;
            endpoint.id = item["id"].text();
            endpoint.title = item["title"].text();
            endpoint.hazard_class = item["class"].text();
            endpoint.categories = item["categories"].texts();
            for (const Field& row : item["rows"].items())
                if (active(row)) read_threshold(row, endpoint);
            limits_.thresholds.endpoints.push_back(std::move(endpoint));
        }
    }

    static void read_threshold(const Field& row, ThresholdEndpoint& endpoint) {
        ThresholdRow read;
        read.to = row["to"].one_of(endpoint.categories);
        read.percent = limit_percent(row["pct"]);
        if (const auto gas = row.maybe("gas_pct")) read.gas_percent = limit_percent(*gas);
        read.statement = row["statement"].text();
        read.source = row["source"].text();
        for (const std::string& from : row["from"].texts()) {
            read.from = from;
            endpoint.rows.push_back(read);
        }
    }

    void read_aspiration(const Field& field) {
        if (!active(field)) return;
        limits_.aspiration.push_back(
            {field["category"].text(), limit_percent(field["sum_pct"]), limit_percent(field["cut_off_pct"]),
             limit_number(field["viscosity_at_most"]), field["statement"].text(), field["source"].text()});
    }

    std::vector<AquaticCategory> read_aquatic_categories(const Field& list) const {
        std::vector<AquaticCategory> categories;
        for (const Field& field : list.items()) {
            if (!active(field)) continue;
            AquaticCategory category;
            category.category = field["category"].text();
            for (const Field& weight : field["weights"].items())
                category.weights.push_back(limit_number(weight));
            category.with_m_factor = field["with_m_factor"].boolean();
            category.statement = field["statement"].text();
            categories.push_back(std::move(category));
        }
        return categories;
    }

    void read_aquatic(const Field& field) {
        AquaticLimits& aquatic = limits_.aquatic;
        aquatic.covered = true;
        aquatic.sum = limit_percent(field["sum_pct"]);
        aquatic.cut_off_1 = limit_percent(field["cut_off_category_1_pct"]);
        aquatic.cut_off_other = limit_percent(field["cut_off_other_pct"]);
        aquatic.source = field["source"].text();
        aquatic.acute = read_aquatic_categories(field["acute"]);
        aquatic.chronic = read_aquatic_categories(field["chronic"]);
    }

    void read_flammable(const Field& field) {
        limits_.flammable.margin = limit_number(field["margin_K"]);
        limits_.flammable.source = field["source"].text();
        for (const Field& row : field["categories"].items()) {
            if (!active(row)) continue;
            FlammableCategory category;
            category.category = row["category"].text();
            if (const auto below = row.maybe("flash_point_below")) category.flash_point = below->number();
            if (const auto most = row.maybe("flash_point_at_most")) {
                category.flash_point = most->number();
                category.included = true;
            }
            if (const auto boiling = row.maybe("boiling_point_at_most"))
                category.boiling_point = boiling->number();
            category.statement = row["statement"].text();
            limits_.flammable.categories.push_back(std::move(category));
        }
        if (limits_.flammable.categories.empty()) field["categories"].problem("names no category");
    }

    MixtureLimits limits_;
};

} // namespace

const ThresholdEndpoint* ThresholdLimits::endpoint(std::string_view id) const {
    for (const ThresholdEndpoint& endpoint : endpoints)
        if (endpoint.id == id) return &endpoint;
    return nullptr;
}

bool MixtureLimits::covers(std::string_view endpoint) const {
    return std::find(not_covered.begin(), not_covered.end(), endpoint) == not_covered.end();
}

MixtureLimits read_mixture_limits(const Source& source, const std::map<std::string, bool>& blocks) {
    const Document document = Document::parse(source);
    Problems problems;
    LimitsReader reader(document.root(problems), blocks);
    problems.throw_if_error();
    return reader.take();
}

} // namespace routeweigh
