// SPDX-License-Identifier: MIT
#include "support/route_builder.hpp"

#include "base/index.hpp"
#include "base/text.hpp"
#include "chemistry/equation.hpp"
#include "route/ledger.hpp"
#include "route/route_reader.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <cstddef>

namespace routeweigh::test {
namespace {

std::string with(std::string object, std::string_view more) {
    if (!more.empty()) object.append(", ").append(more);
    return "{" + object + "}";
}

std::string list(const Items& items) {
    return "[" + join(items, ", ") + "]";
}

Route read(std::string text, const Catalogue& catalogue, Problems& problems) {
    return read_route(make_source("test.json", std::move(text)), catalogue, problems);
}

bool is(const Substance& substance, std::string_view name) {
    return name.empty() || substance.name == name || substance.id == name;
}

} // namespace

std::string charge(std::string_view material, std::string_view amount, std::string_view role,
                   std::string_view more) {
    return with(fmt::format(R"("material": "{}", "amount": "{}", "role": "{}")", material, amount, role),
                more);
}

std::string reaction(std::string_view equation, std::string_view more) {
    return with(fmt::format(R"("equation": "{}")", equation), more);
}

std::string filtration(std::string_view to, std::string_view more) {
    return with(fmt::format(R"("by": "filtration", "to": "{}")", to), more);
}

std::string stage(std::string_view phase, const Items& charges, const Items& reactions,
                  const Items& separations, std::string_view more) {
    return with(
        fmt::format(R"("title": "{}", "phase": "{}", "charges": {}, "reactions": {}, "separations": {})",
                    phase, phase, list(charges), list(reactions), list(separations)),
        more);
}

std::string step(std::string_view product, std::string_view reference, std::string_view overall,
                 const Items& stages, std::string_view more) {
    std::string object = fmt::format(R"("product": "{}", "reference": "{}", "overall": "{}", "stages": {})",
                                     product, reference, overall, list(stages));
    if (more.find("\"id\"") == std::string_view::npos) object += fmt::format(R"(, "id": "{}")", product);
    if (more.find("\"isolated\"") == std::string_view::npos) object += R"(, "isolated": {"yield": "100 %"})";
    return with(std::move(object), more);
}

std::string route(std::string_view product, const Items& steps, std::string_view more) {
    std::string object = fmt::format(R"("title": "test", "product": "{}", "source": "invented for a test",
"status": "equations only, amounts are stoichiometric", "steps": {})",
                                     product, list(steps));
    if (more.find("\"id\"") == std::string_view::npos) object += R"(, "id": "T")";
    return with(std::move(object), more);
}

std::string one_pot(std::string_view product, std::string_view reference, std::string_view overall,
                    const Items& charges, const Items& reactions, std::string_view more) {
    return route(product, {step(product, reference, overall, {stage("reaction", charges, reactions)}, more)});
}

std::string equation_only(std::string_view overall, std::string_view product, std::string_view more) {
    const Equation equation = parse_equation(overall);
    Items charges;
    for (const EquationTerm& term : equation.left)
        charges.push_back(charge(term.name, fmt::format("{} mol", term.coefficient), "reagent"));
    return one_pot(product, equation.left.front().name, overall, charges, {reaction(overall)}, more);
}

Built::Built(std::string text, const Catalogue& catalogue)
    : route(read(std::move(text), catalogue, problems)), flat(route), nominal(flat.evaluate(flat.nominal())) {
}

double Built::out(std::string_view name, std::string_view substance, bool unreacted) const {
    double sum = 0.0;
    for (const FlatStream& stream : flat.streams()) {
        const FlatStep& compiled = flat.steps()[at(stream.step)];
        if (stream.name != name) continue;
        for (std::size_t s = 0; s < compiled.substances.size(); ++s)
            if (is(*compiled.substances[s], substance))
                sum += (unreacted ? nominal.out_unreacted : nominal.out)[at(stream.first_outflow) + s];
    }
    return sum;
}

double Built::mmol_out(std::string_view name, std::string_view substance, bool unreacted) const {
    double sum = 0.0;
    for (const FlatStream& stream : flat.streams()) {
        const FlatStep& compiled = flat.steps()[at(stream.step)];
        if (stream.name != name) continue;
        for (std::size_t s = 0; s < compiled.substances.size(); ++s)
            if (is(*compiled.substances[s], substance))
                sum += (unreacted ? nominal.out_unreacted : nominal.out)[at(stream.first_outflow) + s] /
                       compiled.molar_mass[s];
    }
    return 1000 * sum;
}

double Built::in(std::string_view substance) const {
    double sum = 0.0;
    for (std::size_t i = 0; i < flat.inflows().size(); ++i)
        if (flat.inflows()[i].fed_by < 0 && is(*flat.inflows()[i].substance, substance)) sum += nominal.in[i];
    return sum;
}

double Built::mmol_in_flask(std::string_view substance, int index) const {
    const FlatStep& compiled = flat.steps()[at(index)];
    for (std::size_t s = 0; s < compiled.substances.size(); ++s)
        if (is(*compiled.substances[s], substance))
            return 1000 * nominal.flask[at(compiled.first_flask) + s] / compiled.molar_mass[s];
    return 0.0;
}

double Built::closure(bool unreacted) const {
    return make_ledger(flat, nominal, unreacted).closure_error();
}

bool Built::has_stream(std::string_view name) const {
    return std::any_of(flat.streams().begin(), flat.streams().end(),
                       [&](const FlatStream& stream) { return stream.name == name; });
}

std::vector<std::string> problems_of(const std::string& text, const Catalogue& catalogue) {
    std::vector<std::string> lines;
    const auto add = [&](const std::vector<Problem>& problems) {
        for (const Problem& problem : problems)
            lines.push_back(format(problem));
    };
    Problems warnings;
    try {
        read(text, catalogue, warnings);
        add(warnings.all);
    } catch (const InputError& error) {
        add(error.problems);
    }
    return lines;
}

bool any_holds(const std::vector<std::string>& lines, std::initializer_list<std::string_view> parts) {
    return std::any_of(lines.begin(), lines.end(), [&](const std::string& line) {
        return std::all_of(parts.begin(), parts.end(),
                           [&](std::string_view part) { return line.find(part) != std::string::npos; });
    });
}

Catalogue catalogue_of(std::initializer_list<std::string_view> substances) {
    Items entries;
    for (const std::string_view line : substances) {
        std::vector<std::string> parts(1);
        for (const char c : line)
            if (c == '|')
                parts.emplace_back();
            else
                parts.back() += c;
        for (std::string& part : parts) {
            part.erase(0, part.find_first_not_of(' '));
            part.erase(part.find_last_not_of(' ') + 1);
        }
        std::string id = parts[0];
        std::replace(id.begin(), id.end(), ' ', '-');
        const bool mixture = parts[1] == "-";
        const std::string composition =
            mixture ? R"("is_mixture": true)" : fmt::format(R"("formula": "{}")", parts[1]);
        const std::string density =
            parts.size() > 3 ? fmt::format(R"("density_g_per_mL": {}, )", parts[3]) : "";
        entries.push_back(fmt::format(
            R"({{"id": "{}", "name": "{}", {}, "phase_at_25C": "{}", {}"ghs_status": "no-data",
"sources": {{"formula": "given by a test", "density_g_per_mL": "given by a test"}}}})",
            id, parts[0], composition, parts.size() > 2 ? parts[2] : "solid", density));
    }
    std::vector<Source> sources;
    sources.push_back({"test-substances.json", "{\"substances\": " + list(entries) + "}"});
    return Catalogue::from_sources(std::move(sources));
}

} // namespace routeweigh::test
