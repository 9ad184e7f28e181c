// SPDX-License-Identifier: MIT
#include "assess/hazard/scheme_reader.hpp"

#include "assess/hazard/endpoint.hpp"
#include "assess/hazard/statement.hpp"
#include "base/text.hpp"

#include "chemistry/catalogue.hpp"
#include "input/field.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <cstddef>

namespace routeweigh {
namespace {

double positive(const Field& field) {
    const double value = field.number();
    if (!(value > 0)) field.problem(fmt::format("{:g} is not above 0", value));
    return value > 0 ? value : 1.0;
}

// Several sources in a list read as one text.
std::string source_text(const Field& about) {
    const Field source = about["source"];
    return source.is_array() ? join(source.texts(), "; ") : source.text();
}

EndpointRule read_endpoint(const Field& field) {
    EndpointRule rule;
    rule.id = field["id"].text();
    rule.title = field["title"].text();
    rule.unit = field["unit"].text();
    rule.x0 = positive(field["x0"]);
    field.maybe("x0_unit");
    rule.weight = field["weight"].number();
    if (rule.weight < 0) field["weight"].problem("a weight is not below 0");
    if (const auto source = field.maybe("source")) rule.source = source->text();

    std::vector<std::string> kinds;
    for (const EndpointFamily& family : endpoint_families())
        kinds.emplace_back(family.kind);
    const std::string kind = field["kind"].one_of(kinds);
    for (const EndpointFamily& family : endpoint_families())
        if (family.kind == kind) rule.family = &family;
    if (rule.family != nullptr) {
        rule.family->read(field, rule);
        field.close();
    }
    return rule;
}

void read_places(const Field& list, HazardScheme& scheme) {
    std::array<bool, place_count> seen{};
    for (const Field& field : list.items()) {
        const std::string id = field["id"].one_of({place_ids.begin(), place_ids.end()});
        const auto found = std::find(place_ids.begin(), place_ids.end(), id);
        if (found == place_ids.end()) continue;
        const auto place = static_cast<std::size_t>(found - place_ids.begin());
        if (seen[place]) field["id"].problem(fmt::format("the place \"{}\" stands twice", id));
        seen[place] = true;
        scheme.places[place] = {field["title"].text(), field["scored"].boolean()};
        if (place == index_of(HazardPlace::product) && scheme.places[place].scored)
            field["scored"].problem("the product is shown and not scored, for it is the same in every route");
        field.close();
    }
    for (std::size_t i = 0; i < place_count; ++i)
        if (!seen[i]) list.problem(fmt::format("no place \"{}\"", place_ids[i]));
}

BandEdges read_edges(const Field& field) {
    BandEdges edges;
    if (const auto lower = field.maybe("lower")) edges.lower = positive(*lower);
    if (const auto upper = field.maybe("upper")) edges.upper = positive(*upper);
    if (edges.lower && edges.upper && *edges.lower >= *edges.upper)
        field.problem("the lower edge is not below the upper edge");
    if (!edges.lower && !edges.upper) field.problem("a band without any edge says nothing");
    field.close();
    return edges;
}

// Milder bands first: the upper edge never rises from one band to the next.
void check_order(const Field& list, const std::vector<Band>& bands) {
    const auto upper = [](const BandEdges& edges) { return edges.upper.value_or(HUGE_VAL); };
    for (std::size_t i = 1; i < bands.size(); ++i)
        if (upper(bands[i].gas) > upper(bands[i - 1].gas) ||
            upper(bands[i].particle) > upper(bands[i - 1].particle))
            list.problem(fmt::format("band {} is milder than band {} before it", bands[i].letter,
                                     bands[i - 1].letter));
}

int read_band(const Field& field, const Banding& banding) {
    const std::string letter = field.text();
    std::vector<std::string> letters;
    for (std::size_t i = 0; i < banding.bands.size(); ++i) {
        if (banding.bands[i].letter == letter) return static_cast<int>(i);
        letters.push_back(banding.bands[i].letter);
    }
    field.problem(fmt::format("no band \"{}\" among {}", letter, join(letters, ", ")));
    return 0;
}

BandRow read_row(const Field& field, const Banding& banding) {
    BandRow row;
    row.endpoint = field["endpoint"].text();
    for (const Field& item : field["statements"].items()) {
        const std::string statement = item.text();
        const int number = statement_number(statement);
        // Supplemental statements ("EUH066") belong to no GHS class, so no substance is found by them.
        if (number == 0 && !statement.starts_with("EUH")) item.problem("is no hazard statement");
        if (number != 0) row.statements.push_back(number);
    }
    if (const auto categories = field.maybe("categories")) row.categories = categories->texts();
    row.band = read_band(field["band"], banding);
    if (const auto other = field.maybe("alternative_band")) row.alternative = read_band(*other, banding);
    row.confidence = field["confidence"].text();
    row.provenance = field["provenance"].text();
    for (const char* remark : {"r_phrases", "note"})
        field.maybe(remark);
    field.close();
    return row;
}

} // namespace

const EndpointRule* HazardScheme::endpoint(std::string_view endpoint_id) const {
    for (const EndpointRule& rule : endpoints)
        if (rule.id == endpoint_id) return &rule;
    return nullptr;
}

HazardScheme read_hazard_scheme(const Source& source) {
    const Document document = Document::parse(source);
    Problems problems;
    const Field root = document.root(problems);
    HazardScheme scheme;
    scheme.id = root["id"].text();
    root["kind"].one_of({"hazard score"});
    scheme.title = root["title"].text();
    scheme.banding_ids = root["bandings"].texts();
    if (scheme.banding_ids.empty()) root["bandings"].problem("names no banding");
    for (const Field& factor : root["x0_factors"].items())
        scheme.x0_factors.push_back(positive(factor));
    read_places(root["places"], scheme);
    scheme.air_molar_volume = positive(root["air"]["molar_volume_L_per_mol"]);
    for (const Field& field : root["endpoints"].items()) {
        EndpointRule rule = read_endpoint(field);
        if (scheme.endpoint(rule.id) != nullptr)
            field["id"].problem(fmt::format("the endpoint \"{}\" stands twice", rule.id));
        scheme.endpoints.push_back(std::move(rule));
    }
    if (scheme.endpoints.empty()) root["endpoints"].problem("names no endpoint");
    for (const char* remark : {"about", "suffix_letters"})
        root.maybe(remark);
    root.close();
    problems.throw_if_error();
    return scheme;
}

Banding read_banding(const Source& source) {
    const Document document = Document::parse(source);
    Problems problems;
    const Field root = document.root(problems);
    Banding banding;
    banding.id = root["id"].text();
    root["kind"].one_of({"health banding"});
    banding.title = root["title"].text();
    banding.source = source_text(root["about"]);
    for (const Field& field : root["bands"].items()) {
        banding.bands.push_back(
            {field["band"].text(), read_edges(field["particle_mg_m3"]), read_edges(field["gas_vapour_ppm"])});
        for (const char* remark : {"provenance", "confidence", "note"})
            field.maybe(remark);
        field.close();
    }
    if (banding.bands.empty()) root["bands"].problem("names no band");
    check_order(root["bands"], banding.bands);
    for (const Field& field : root["rows"].items())
        banding.rows.push_back(read_row(field, banding));
    for (const char* remark : {"edge_convention", "unused", "skin_and_eye", "derived_checks"})
        root.maybe(remark);
    root.close();
    problems.throw_if_error();
    return banding;
}

HazardSchemes read_hazard_schemes(const Catalogue& catalogue) {
    const auto required = [&](const std::string& stem) -> const Source& {
        const Source* source = catalogue.scheme(stem);
        if (source != nullptr) return *source;
        Problem problem;
        problem.message =
            fmt::format("no scheme \"{0}\" in the catalogue: there is no file schemes/{0}.json", stem);
        problem.nearest = nearest(stem, catalogue.scheme_stems());
        throw InputError(problem);
    };
    HazardSchemes schemes;
    schemes.score = read_hazard_scheme(required("hazard_score"));
    for (const std::string& id : schemes.score.banding_ids)
        schemes.bandings.push_back(read_banding(required(id)));
    return schemes;
}

} // namespace routeweigh
